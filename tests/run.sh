#!/bin/sh
# run.sh - installs what the tests need, builds, and runs all of them; ends with "N passed, N failed"
# SPDX-License-Identifier: GPL-3.0-or-later
set -eu
cd "$(dirname "$0")/.."
. examples/setup.sh

# attribute NAME FILE: its sum over the test suites of a JUnit log
attribute () {
  grep -o '<testsuite [^>]*>' "$2" | sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" | awk '{ n += $1 } END { print n + 0 }'
}

# run_suite NAME COMMAND...: runs a suite and adds it to passed and failed; what is skipped in "gui" has failed
run_suite () {
  suite=$1
  shift
  log=build/meson-logs/$suite.junit.xml
  rm -f "$log"

  status=0
  "$@" meson test -C build --no-rebuild --suite "$suite" --logbase "$suite" --print-errorlogs </dev/null || status=$?

  bad=0
  if [ -f "$log" ]; then
    skipped=$(attribute skipped "$log")
    bad=$(($(attribute errors "$log") + $(attribute failures "$log")))
    passed=$((passed + $(attribute tests "$log") - bad - skipped))
    [ "$suite" != gui ] || bad=$((bad + skipped))
  fi
  # a program that died without a word about its tests
  [ "$status" -eq 0 ] || [ "$bad" -gt 0 ] || bad=1
  failed=$((failed + bad))
}

install_packages examples/packages.txt tests/packages.txt

export LC_ALL=C.UTF-8 GSETTINGS_BACKEND=memory
if [ -n "${CI:-}" ]; then
  configure_lookroom -Dgui_tests=enabled -Dwerror=true
else
  configure_lookroom -Dgui_tests=enabled
fi
meson compile -C build

passed=0
failed=0
run_suite headless env -u DISPLAY -u WAYLAND_DISPLAY
# each test has an X server of its own; those that may run together mostly wait
run_suite gui env -u DISPLAY -u WAYLAND_DISPLAY MESON_TESTTHREADS=4 dbus-run-session --

echo
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]

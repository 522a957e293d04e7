#!/bin/sh
# run.sh - builds Lookroom and opens the finished example; without a display, writes its page and prints its remarks
# SPDX-License-Identifier: GPL-3.0-or-later
set -eu
cd "$(dirname "$0")/.."
. examples/setup.sh

example=examples/loft.lookroom

install_packages examples/packages.txt
use_utf8
configure_lookroom
# the program and its settings; tests are built by tests/run.sh
ninja -C build lookroom data/gschemas.compiled

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] && build/lookroom "$example"; then
  exit 0
fi

echo
build/lookroom page "$example" -o build/loft.pdf
# exit code 1 says that something is to fix: the example leaves that to play with
build/lookroom check "$example" || [ $? -eq 1 ]
echo "The page: $PWD/build/loft.pdf"

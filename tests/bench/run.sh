#!/bin/sh
# run.sh - measures what there is a budget for and prints one table
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: run.sh [BENCH...]: study plan floor page drag start; all without a name. Figures over their budget are marked; they do
# not make this fail. All figures of a ratio come from one run, by turns. The machine should be quiet, but need not be.
set -eu
cd "$(dirname "$0")/../.."
. examples/setup.sh

configure_lookroom >/dev/null
meson compile -C build >/dev/null

export LC_ALL=C.UTF-8 GSETTINGS_BACKEND=memory GSETTINGS_SCHEMA_DIR="$PWD/build/data"
export GDK_BACKEND=x11 GSK_RENDERER=cairo GDK_DEBUG=gl-disable GTK_A11Y=none
home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
export HOME="$home" XDG_CONFIG_HOME="$home" XDG_CACHE_HOME="$home" XDG_DATA_HOME="$home" XDG_STATE_HOME="$home"

# on_screen COMMAND...
on_screen () {
  xvfb-run -a -s '-screen 0 1920x1200x24 -extension MIT-SHM -noreset' dbus-run-session -- "$@"
}

printf '%-52s %12s %12s\n' '' figure budget
for bench in ${*:-study light plan floor page drag start}; do
  program=build/tests/bench/bench-$bench
  case $bench in
    drag) on_screen "$program" ;;
    start) on_screen "$program" build/tests/bench/whole-window build/tests/bench/empty-window ;;
    *) "$program" ;;
  esac || echo "bench-$bench could not measure" >&2
done

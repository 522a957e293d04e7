#!/bin/sh
# pictures.sh - drives the program with keys and pointer, and leaves a picture of every state of window and page
# SPDX-License-Identifier: GPL-3.0-or-later
#
# pictures.sh PROGRAM EXAMPLES OUT page: the printed page
# pictures.sh PROGRAM EXAMPLES OUT light|dark WIDTH HEIGHT [kinds]: the window, under an X server of 1920 x 1200;
#   with "kinds" the details of each kind of thing too
#
# Writes TAP: one line a picture. A picture is good when the window was there, more was drawn than a blank, and the
# program said nothing on its error stream.
set -u

program=$1
examples=$2
out=$3
what=$4

count=0
work=$(mktemp -d)
errors=$work/errors
pid=
window=

trap 'close_program; rm -rf "$work"' EXIT
mkdir -p "$out"
rm -f "$out/$what-${5:-}"*

export GDK_BACKEND=x11 GSK_RENDERER=cairo GDK_DEBUG=gl-disable GTK_A11Y=none GSETTINGS_BACKEND=keyfile
export XDG_CONFIG_HOME="$work/config" XDG_DATA_HOME="$work/data" XDG_CACHE_HOME="$work/cache" XDG_STATE_HOME="$work/state"
# no other copy of the program is asked to open the file
export DBUS_SESSION_BUS_ADDRESS=disabled: NO_AT_BRIDGE=1

# rounds the corners of menus; does without
! command -v xcompmgr >/dev/null || xcompmgr >/dev/null 2>&1 &

# answer GOOD NAME WHY: one line of TAP
answer () {
  count=$((count + 1))
  if [ "$1" = yes ]; then
    echo "ok $count - $2"
  else
    echo "not ok $count - $2: $3"
  fi
}

# judge_picture NAME LEAST: answers for a picture that was taken; it needs LEAST colors
judge_picture () {
  colors=$(identify -format %k "$out/$1.png" 2>/dev/null || echo 0)
  if [ "${colors:-0}" -lt "$2" ]; then
    answer no "$1" "blank: $colors colors"
  elif [ -s "$errors" ]; then
    cp "$errors" "$out/$1.txt"
    answer no "$1" "$(head -n 1 "$errors")"
  else
    answer yes "$1"
  fi
  : >"$errors"
}

# settings WIDTH HEIGHT DARK UNITS: what the program remembers from the last time; nothing else
settings () {
  rm -rf "$work/config" "$work/data" "$work/cache" "$work/state"
  mkdir -p "$work/config/glib-2.0/settings" "$work/config/gtk-4.0"
  printf '[io/github/lookroom/Lookroom]\nwindow=(%d, %d, false)\ndark=%s\nunits="%s"\n' "$1" "$2" "$3" "$4" \
    | sed "s/\"/'/g" >"$work/config/glib-2.0/settings/keyfile"
  printf '[Settings]\ngtk-enable-animations=0\ngtk-cursor-blink=0\n' >"$work/config/gtk-4.0/settings.ini"
}

# open_program [FILE]: sets pid and window
open_program () {
  : >"$errors"
  "$program" "$@" 2>"$errors" &
  pid=$!
  window=$(timeout 20 xdotool search --sync --onlyvisible --pid "$pid" --name . 2>/dev/null | head -n 1)
  if [ -z "$window" ]; then
    answer no "${state:-window}" 'no window'
    return 1
  fi
  sleep 0.5
  xdotool windowmove "$window" 0 0 windowfocus "$window" mousemove 1900 1190
}

close_program () {
  [ -n "$pid" ] && kill "$pid" 2>/dev/null && wait "$pid" 2>/dev/null
  pid=
}

# The newest window that is not the first: a dialog
dialog () {
  xdotool search --onlyvisible --pid "$pid" --name . 2>/dev/null | grep -vx "$window" | tail -n 1
}

press () {
  for key in "$@"; do
    xdotool key "$key"
    sleep 0.04
  done
}

# Takes the screen as far as the window reaches
take () {
  sleep 0.25
  import -silent -window root -crop "$crop" +repage -define png:compression-level=1 "$out/$look-$1.png"
  judge_picture "$look-$1" 60
}

# take_dialog NAME: a dialog, put in the middle as a window manager would; the focus is in it afterwards
take_dialog () {
  for try in 1 2 3 4 5 6 7 8 9 10; do
    box=$(dialog)
    [ -n "$box" ] && break
    sleep 0.1
  done
  if [ -z "$box" ]; then
    answer no "$look-$1" 'no dialog'
    return
  fi
  sleep 0.2
  eval "$(xdotool getwindowgeometry --shell "$box" | grep -E '^(WIDTH|HEIGHT)=')"
  left=$(((width - WIDTH) / 2))
  top=$(((height - HEIGHT) / 2))
  xdotool windowmove "$box" $((left > 0 ? left : 0)) $((top > 0 ? top : 0)) windowfocus "$box"
  take "$1"
}

back_to_window () {
  sleep 0.2
  xdotool windowfocus "$window"
}

# Middle of what is in hand, found by its halo: sets at_x and at_y
find_in_hand () {
  sleep 0.3
  box=$(import -silent -window root -crop "$crop" +repage png:- \
          | convert png:- -fuzz 4% -fill black +opaque "$halo" -fill white -opaque "$halo" -threshold 1% -format '%@' info:)
  at_x=$(echo "$box" | awk -F '[x+]' '{ print int($3 + $1 / 2) }')
  at_y=$(echo "$box" | awk -F '[x+]' '{ print int($4 + $2 / 2) }')
}

# The sheet gets the focus by a click outside the room, and nothing is in hand
to_sheet () {
  xdotool mousemove "$floor_x" "$floor_y" click 1 mousemove 1900 1190
  press Escape
}

# step_to N: the thing in hand is the Nth of the sheet, counted from 1; the sheet has the focus
step_to () {
  to_sheet
  steps=$1
  while [ "$steps" -gt 0 ]; do
    xdotool key Next
    steps=$((steps - 1))
  done
}

# Takes camera B along with the pointer and, before it is let go, a picture
take_dragging () {
  step_to 4
  find_in_hand
  if [ -z "$at_x" ] || [ "$at_x" -lt 100 ]; then
    answer no "$look-dragging" 'nothing in hand'
    return
  fi
  xdotool mousemove "$at_x" "$at_y" mousedown 1
  for by in 10 25 40 55; do
    xdotool mousemove $((at_x + by)) $((at_y + by / 2))
    sleep 0.05
  done
  take dragging
  xdotool mouseup 1 mousemove 1900 1190
  press ctrl+z Escape
}

# Kinds of thing, and which thing of the example is one
kinds='person:1 interviewer:2 camera:3 light:5 boom:8 lavalier:9 reflector:10 lead:11 door:14 window:16 socket:18
       furniture:20 noise:23 house-light:25'

take_kinds () {
  for kind in $kinds; do
    step_to "${kind#*:}"
    take "${kind%:*}"
  done
}

# Each family alone, then all
take_overlays () {
  to_sheet
  press alt+1
  take shown-none
  for family in 1:sight 2:light 3:sound 4:power; do
    press "alt+${family%:*}"
    take "shown-${family#*:}"
    press "alt+${family%:*}"
  done
  press alt+1 alt+2 alt+3 alt+4
  take shown-all
  press alt+2 alt+3 alt+4
}

# The remarks follow the sheet by the way back: tray, then remarks; Tab walks their lines
take_remarks () {
  to_sheet
  press shift+F6 shift+F6 Tab Tab Tab
  take remark-in-hand
  press shift+Tab space
  take fine
  press space
}

take_windows () {
  press ctrl+e
  take_dialog page
  press Escape
  back_to_window
  step_to 4
  press Menu
  take item-menu
  press Escape F10
  take menu
  press Escape F1
  take_dialog shortcuts
  press Escape
  back_to_window
}

# Before the example is changed: an empty plan in the same window; a room is drawn in it
take_empty () {
  to_sheet
  press ctrl+n
  take empty
  press Tab Return
  take_dialog room-typed
  press shift+Tab Right space
  take room-wall-by-wall
  press Escape
  back_to_window
  press Tab Return
  press Return Right 5 Return Up 3 period 5
  take room-drawn
  press Escape
}

# The example is changed, and the window is asked to close
take_unsaved () {
  step_to 4
  press Left ctrl+w
  take_dialog unsaved
  press Escape
  back_to_window
}

take_example () {
  take start
  step_to 4
  take camera-in-hand
  take_overlays
  take_remarks
  [ "$1" = kinds ] && take_kinds
  take_windows
  take_dragging
  take_unsaved
}

# The program is ended before a change was saved, and comes back
take_recovered () {
  open_program || return
  step_to 4
  press Left Left
  sleep 2.5
  kill -KILL "$pid"
  wait "$pid" 2>/dev/null
  open_program && take recovered
  close_program
}

take_error () {
  printf '{ "format": "lookroom-plan", "version": 1, "setups": [' >"$work/cut off.lookroom"
  open_program "$work/cut off.lookroom" && take_dialog error
  close_program
}

# look_at THEME WIDTH HEIGHT [kinds]
look_at () {
  width=$2
  height=$3
  look=$1-$2x$3
  crop=${2}x${3}+0+0
  # under the scale, left of the room
  floor_x=250
  floor_y=$(($3 / 5))
  halo='#6FBFEB'
  dark=false
  if [ "$1" = dark ]; then
    dark=true
    halo='#4F9FCC'
  fi

  settings "$width" "$height" $dark metric
  open_program && take_example "${4:-}"
  close_program
  settings "$width" "$height" $dark imperial
  open_program && step_to 4 && take imperial
  close_program
  settings "$width" "$height" $dark metric
  open_program && take_empty
  close_program
  take_error
  take_recovered
}

# take_page NAME PAPER [OPTION]: the page as it is printed; OPTION is one of pdftoppm
take_page () {
  "$program" page "$examples/loft.lookroom" -o "$work/page.pdf" --paper "$2" 2>"$errors"
  pdftoppm -png -r 150 -singlefile ${3:-} "$work/page.pdf" "$out/$1" 2>>"$errors"
  judge_picture "$1" 60
}

if [ "$what" = page ]; then
  take_page page-a4 a4
  take_page page-letter letter
  take_page page-grey a4 -gray
else
  look_at "$what" "$5" "$6" "${7:-}"
fi
echo "1..$count"

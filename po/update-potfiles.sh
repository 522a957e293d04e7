#!/bin/sh
# update-potfiles.sh - writes the list of files with sentences to translate
# SPDX-License-Identifier: GPL-3.0-or-later
set -eu
cd "$(dirname "$0")/.."
{
  echo data/io.github.lookroom.Lookroom.desktop.in
  echo data/io.github.lookroom.Lookroom.gschema.xml
  echo data/io.github.lookroom.Lookroom.metainfo.xml.in
  grep -lE '(^|[^A-Za-z0-9_])(_|N_|C_|NC_|ngettext) ?\(' src/*.c src/*/*.c
  ls ui/*.ui 2>/dev/null
} | LC_ALL=C sort >po/POTFILES

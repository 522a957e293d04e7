# setup.sh - shared by run.sh here and in tests: install what is missing, build
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Read with ". examples/setup.sh" from the top folder. Works on Debian 12 and its kin; elsewhere the packages are yours.

# Names in the package lists given
listed_packages () {
  sed 's/#.*//' "$@"
}

is_installed () {
  case "$(dpkg-query -W -f '${db:Status-Abbrev}' "$1" 2>/dev/null)" in
    ii*) return 0 ;;
  esac
  return 1
}

missing_packages () {
  for package in $(listed_packages "$@"); do
    is_installed "$package" || echo "$package"
  done
}

apt_get () {
  if [ "$(id -u)" -eq 0 ]; then
    DEBIAN_FRONTEND=noninteractive apt-get "$@" </dev/null
  else
    sudo DEBIAN_FRONTEND=noninteractive apt-get "$@"
  fi
}

# install_packages LIST...: what is missing of the lists; apt is left alone when nothing is
install_packages () {
  if ! command -v dpkg-query >/dev/null; then
    echo "No dpkg here: please install what $* name." >&2
    return 0
  fi

  missing=$(missing_packages "$@")
  [ -n "$missing" ] || return 0

  echo "Installing:" $missing
  # an index that is not there, or older than the mirror, is fetched
  ls /var/lib/apt/lists/*Packages* >/dev/null 2>&1 || apt_get -qq update
  apt_get -qq -y --no-install-recommends install $missing \
    || { apt_get -qq update && apt_get -qq -y --no-install-recommends install $missing; }
}

# configure_lookroom [OPTION...]: for a build in build/
configure_lookroom () {
  if [ ! -f build/build.ninja ]; then
    meson setup build "$@"
  elif [ $# -gt 0 ]; then
    meson configure build "$@"
  fi
}

# A terminal without UTF-8 would lose "22°"
use_utf8 () {
  [ "$(locale charmap 2>/dev/null)" = UTF-8 ] || export LC_ALL=C.UTF-8
}

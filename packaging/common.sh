# shellcheck shell=bash
# Shared by run, test and ../.ci/run; sourced, not run. Bash, Debian 12.

root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"

say() { printf '== %s\n' "$*"; }

die() {
  printf '== %s\n' "$*" >&2
  exit 1
}

as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    die "Packages are missing and this is neither root nor is there sudo. Install: ${missing[*]}"
  fi
}

# The names in package lists, without comments.
names_in() { sed -e 's/#.*//' -e '/^[[:space:]]*$/d' "$@"; }

installed() { [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]; }

# install_missing LIST...: installs what the lists name and is not there; quick when all is.
install_missing() {
  command -v apt-get >/dev/null || { say "No apt-get here: packages are left to you"; return 0; }
  missing=()
  local name
  for name in $(names_in "$@"); do
    installed "$name" || missing+=("$name")
  done
  if [ "${#missing[@]}" -eq 0 ]; then
    say "All packages are there"
    return 0
  fi
  say "Installing ${#missing[@]} packages: ${missing[*]}"
  as_root env DEBIAN_FRONTEND=noninteractive apt-get update -q
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "${missing[@]}"
}

# configure FOLDER [CMAKE OPTIONS...]: with Ninja, through ccache and mold if they are there. Quiet unless it
# fails; the log lies beside the folder.
configure() {
  local folder="$1"
  shift
  local options=(-G Ninja "$@")
  if command -v ccache >/dev/null; then options+=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache); fi
  # Some eighty test programs are linked: quicker with mold, the same without it.
  if command -v mold >/dev/null; then options+=(-DCMAKE_EXE_LINKER_FLAGS=-fuse-ld=mold); fi
  # Without these ccache keeps nothing that was compiled with a precompiled header.
  export CCACHE_SLOPPINESS="${CCACHE_SLOPPINESS:-pch_defines,time_macros,include_file_mtime,include_file_ctime}"
  mkdir -p "$(dirname "$folder")"
  cmake -S "$root" -B "$folder" "${options[@]}" >"$folder.configure.log" 2>&1 ||
    { cat "$folder.configure.log" >&2; die "cmake failed"; }
}

# build FOLDER [CMAKE OPTIONS...]
build() {
  say "Building in $1 (the first time: some minutes)"
  configure "$@"
  cmake --build "$1"
}

has_display() { [ -n "${DISPLAY:-}" ] || [ -n "${WAYLAND_DISPLAY:-}" ]; }

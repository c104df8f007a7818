# Sourced by tests/run.sh and demo/run.sh: installs what is missing, and nothing else. Debian 12, root or sudo.

build_packages="g++ cmake ninja-build ccache pkg-config
  libsqlite3-dev libproj-dev proj-data catch2 libexpected-dev nlohmann-json3-dev rapidjson-dev libfmt-dev libcli11-dev libexiv2-dev
  libheif-dev libsodium-dev libarchive-dev libssl-dev libpugixml-dev libhowardhinnant-date-dev tzdata"
window_packages="qt6-base-dev qt6-svg-dev libqrencode-dev libgl-dev fonts-inter fonts-noto-core fonts-noto-mono"
test_packages="python3 sqlite3 libimage-exiftool-perl python3-stdnum
  poppler-utils zbar-tools unzip"

install_packages() {
  local missing="" package
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' || missing="$missing $package"
  done
  [ -n "$missing" ] || return 0
  local as=""
  if [ "$(id -u)" != 0 ]; then
    command -v sudo >/dev/null || { echo "Needed packages:$missing. Please install them, or run this as root." >&2; exit 1; }
    as=sudo
  fi
  echo "Installing:$missing"
  $as env DEBIAN_FRONTEND=noninteractive apt-get update -qq
  $as env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
}

# Objects are shared between checkouts of the project on one machine.
export CCACHE_BASEDIR="$PWD" CCACHE_NOHASHDIR=1

# configure_and_build FOLDER TARGET... -- CMAKE-OPTION...
configure_and_build() {
  local folder=$1 targets=""
  shift
  while [ $# -gt 0 ] && [ "$1" != "--" ]; do targets="$targets $1"; shift; done
  [ $# -gt 0 ] && shift
  cmake -S . -B "$folder" -G Ninja "$@" >"$folder.configure.log" 2>&1 || { cat "$folder.configure.log"; exit 1; }
  # shellcheck disable=SC2086
  NINJA_STATUS="[%f of %t] " ninja -C "$folder" $targets
}

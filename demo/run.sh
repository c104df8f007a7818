#!/usr/bin/env bash
# The main job on an invented season, from nothing: installs what is needed, builds, and walks from typed-up tables to
# decided records and a closed sample. Everything lies in demo/out afterwards.
#
#   bash demo/run.sh            the walk, in words
#   bash demo/run.sh --window   the window on the same store
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
case "${1:-}" in "" | --window) ;; *) sed -n '2,7p' "$0" >&2; exit 2 ;; esac

# shellcheck disable=SC2086
install_packages $build_packages $window_packages
export LC_ALL=C.UTF-8
mkdir -p build
configure_and_build build/release cupule make_season make_practice -- -DCMAKE_BUILD_TYPE=Release

out=demo/out
store=$out/tharn-vale.cupule
cupule=build/release/app/cupule
if [ "${1:-}" = --window ]; then
  [ -f $store ] || bash demo/run.sh
  exec $cupule $store --profile $out/people/ruth --today 2026-10-24
fi

rm -rf $out
mkdir -p $out/people
. demo/walk.sh
. demo/laptops.sh
. demo/elsewhere.sh
rm -f $out/last.txt $out/visits.set-aside.csv $out/gpx*.set-aside.csv $out/coordinates*.set-aside.csv
printf '\nEverything lies in demo/out. The page: demo/out/account.html. The window on the same store: bash demo/run.sh --window\n'

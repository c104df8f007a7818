#!/usr/bin/env bash
# Installs what is needed, builds, runs the tests through ctest.
#
#   bash tests/run.sh              everything but the label "full"
#   bash tests/run.sh --full       everything
#   bash tests/run.sh --sanitize   core's fast tests and those on damaged input once more under the address and undefined-behaviour sanitizers
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh

mode=${1:-}
case "$mode" in "" | --full | --sanitize) ;; *) sed -n '2,7p' "$0" >&2; exit 2 ;; esac

# shellcheck disable=SC2086
install_packages $build_packages $test_packages
export QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8
mkdir -p build
if [ "$mode" = --sanitize ]; then
  folder=build/asan
  configure_and_build $folder -- -DCMAKE_BUILD_TYPE=Debug -DCUPULE_SANITIZE=ON -DCUPULE_WINDOW=OFF
  export ASAN_OPTIONS=detect_leaks=1:allocator_may_return_null=1 UBSAN_OPTIONS=print_stacktrace=1
  choice=(-L 'fast|mutation')
else
  # shellcheck disable=SC2086
  install_packages $window_packages
  folder=build/release
  configure_and_build $folder -- -DCMAKE_BUILD_TYPE=Release
  choice=(-LE full)
  [ "$mode" = --full ] && choice=()
fi

log=$folder/tests.log
status=0
ctest --test-dir $folder --output-on-failure --no-tests=error -j 2 "${choice[@]}" 2>&1 | tee "$log.short" || status=$?
left_out=0
if [ ${#choice[@]} -gt 0 ]; then
  whole=$(ctest --test-dir $folder -N | sed -n 's/^Total Tests: //p')
  ran=$(ctest --test-dir $folder -N "${choice[@]}" | sed -n 's/^Total Tests: //p')
  left_out=$((whole - ran))
fi
skipped=$(grep -h '^SKIPPED:' $folder/Testing/Temporary/LastTest.log 2>/dev/null || true)
[ -z "$skipped" ] || { echo "Left out for want of data or tools:"; printf '%s\n' "$skipped" | sort | uniq -c; }
echo "Test programs left out of this run: $left_out (bash tests/run.sh --full runs all)."
exit $status

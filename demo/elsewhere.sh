# What nobody here made: files of public suites, and generated visits with known bad rows. Sourced by demo/run.sh.
# Both lie beside the project where it is developed; elsewhere they are named as left out.

shared=${CUPULE_SHARED:-../shared}
guest=$out/elsewhere.cupule
on 2026-10-24

tell "Last, files that nobody here made, in a store of their own: photos and points of public test suites, odd and damaged ones among them."
if [ -d "$shared/reference/files" ]; then
  quietly office new $guest --name "Elsewhere" --demonstration
  for files in "$shared"/reference/files/photos "$shared/reference/files/gpx/*.gpx"; do
    code=0
    # shellcheck disable=SC2086
    $cupule import $guest $files --profile $out/people/office --today $today >$out/last.txt || code=$?
    [ $code -le 1 ] || { cat $out/last.txt; exit 1; }
    sed -n '2p' $out/last.txt
    sed 1d $out/last.txt >>$out/elsewhere.txt
  done
  grep 'zero_zero\|day_behind\|undefined.gpx: line 5\|4096' $out/elsewhere.txt | grep -v clock.is
  echo "All that was said about them lies in demo/out/elsewhere.txt."
else
  echo "Left out: the files of public suites are not here ($shared/reference/files)."
fi

tell "And a hundred thousand generated visits, about one in a hundred of them made bad on purpose. Every bad row is to be set aside for its kind, and no good row lost."
if [ -f "$shared/bench/make_records.py" ] && command -v python3 >/dev/null; then
  python3 "$shared/bench/make_records.py" --visits 100000 --out $out/generated
  on 2026-06-30   # the generator's own day: what it dates later is bad
  quietly office new $out/generated.cupule --demonstration
  expect 1 office import $out/generated.cupule $out/generated/visits.csv --json >$out/generated.json
  python3 demo/compare_bad.py $out/generated.json $out/generated/expected_bad.csv
  rm -rf $out/generated $out/generated.*
else
  echo "Left out: the generator is not here ($shared/bench/make_records.py), or there is no python3."
fi

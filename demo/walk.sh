# The walk itself; sourced by demo/run.sh, which has built the program and made an empty demo/out.
# Each step says what it does, runs the program, and stops the walk where the program answers otherwise than it should.

step=0
tell() { step=$((step + 1)); printf '\n%s. %s\n' "$step" "$*" | fold -s -w 100; }
as() { # PERSON VERB... : the program as that person, on the demonstration's own day
  local person=$1
  shift
  $cupule "$@" --profile "$out/people/$person" --today 2026-10-24
}
expect() { # CODE PERSON VERB... : the same, where another exit code than 0 is right
  local code=$1 got=0
  shift
  as "$@" || got=$?
  [ "$got" = "$code" ] || { echo "Expected exit code $code, got $got: $*" >&2; exit 1; }
}
quietly() { as "$@" >/dev/null; }

printf 'Tharn Vale is invented: its woods, its people, its finds. The map squares were chosen only because they lie on land.\n'

tell "Eight volunteers, two verifiers and the office say once who they are. Person and device are kept outside the store."
person() { # FOLDER CODE NAME ROLE [BLOCK]
  $cupule profile make --profile "$out/people/$1" --code "$2" --name "$3" --role "$4" ${5:+--block "$5"} >/dev/null
}
person maud MH "Maud Harrow" volunteer,sample-handler TV
person ines IC "Ines Calloway" volunteer
person ruth RA "Ruth Abara" verifier,volunteer
person jonah JK "Jonah Kettle" verifier
person office HV "Hester Vane" office

tell "The office makes the store. It is a demonstration from birth: everything that comes out of it says so."
as office new $store --name "Tharn Vale" --zone Europe/London --region MAR --kind office --demonstration

tell "The season lies there as people typed it up: one table, the points of a receiver, a folder of photos."
QT_QPA_PLATFORM=offscreen build/release/demo/make_season $out/inputs

tell "First a look that keeps nothing: what would be taken in, what would be set aside, and why."
expect 1 office import $store $out/inputs/season.csv --dry-run

tell "Then for good. The rows that cannot be read are set aside in a file of their own, to be mended and taken in again."
expect 1 office import $store $out/inputs/season.csv
quietly office import $store $out/inputs/receiver.gpx
as office import $store $out/inputs/photos

tell "The same table once more adds nothing."
expect 1 office import $store $out/inputs/season.csv --json >$out/again.json
grep -o '"kept": *[0-9]*\|"known_already": *[0-9]*' $out/again.json | paste -sd' '

tell "Maud looks at her day of 11 June. The checks ask about what does not agree; nothing is refused for being odd."
expect 1 maud check $store T-03@2026-06-11 || true

tell "She hands the day in. Each record becomes a version that is never changed afterwards."
as maud hand-in $store --day 2026-06-11 --observer MH
tell "The other days follow; what a check stops stays a draft, with the reason."
for day in 2026-05-16 2026-05-23 2026-05-30 2026-06-06 2026-06-11 2026-06-13 2026-06-20 2026-06-27 2026-07-04 2026-07-11 \
  2026-07-25 2026-08-15 2026-09-12 2026-10-10 2026-10-17; do
  as office hand-in $store --day $day >>$out/hand-in.txt || [ $? = 1 ]
done
grep -c . $out/hand-in.txt | sed 's/$/ lines in demo\/out\/hand-in.txt/'

tell "Ruth, the verifier, opens the queue. What an authority must hear about soon stands first, and each line says why it stands there."
as ruth queue $store --count 5

tell "The first find is in new ground. One verifier accepts it: it stays \"one of two\"."
as ruth decide $store T-03@2026-06-11 accept --reason host-and-gall-shown --remark "Midrib gall and leaf margin in one picture."
tell "She may not decide what she saw herself."
expect 1 ruth decide $store Q-01@2026-06-11@RA accept
tell "Jonah decides too, without being shown what Ruth decided. Now it is accepted."
as jonah decide $store T-03@2026-06-11 accept --reason host-and-gall-shown

tell "The authority has been told; the program never sends anything itself."
as ruth told $store T-03@2026-06-11 --to "plant-health authority" --reference "TV-2026-01"

tell "A record is returned with a question, another rejected with a reason."
as ruth decide $store L-05@2026-06-13 return --reason null-without-effort --remark "How long did you look, and how much of the crown?"
as jonah decide $store N-03@2026-07-11 reject --reason position-impossible --remark "This is the car park."

tell "A sample needs leave first. Without it none can be opened."
expect 1 maud sample open $store T-03@2026-06-27 --part "leaf with galls" --pieces 3
as maud leave add $store --giver owner --name "the owner of Tanner's Hanger" --scope enter,photograph,sample --site "Tanner's Hanger" --from 2026-05-01 --reference TV-11
as maud leave add $store --giver authority --scope sample,move --from 2026-06-12 --to 2026-09-30 --reference TV-31

tell "With both leaves in force she opens one, and writes down each pair of hands. Seal numbers are read off the bag."
as maud sample open $store T-03@2026-06-27 --part "leaf with galls" --pieces 3 --condition fresh --host "sweet chestnut" \
  --reason "asked for by the authority" --json >$out/sample.json
number=$(sed -n 's/.*"number": *"\([^"]*\)".*/\1/p' $out/sample.json | head -n 1)
echo "Sample $number"
line() { local who=$1; shift; quietly "$who" sample line $store "$number" "$@"; }
line maud cut --at "2026-06-27 10:05" --from MH --place "T-03, Tanner's Hanger" --pieces 3
line maud inner-bag --at "2026-06-27 10:08" --bag B-1041
line maud outer-bag --at "2026-06-27 10:11" --bag B-1042 --seal 008813
line maud on-site --at "2026-06-27 10:14" --confirmed yes --clothes done --boots done --vehicle done --tools done
line maud hand-over --from MH --to IC --out "2026-06-27 17:00" --in "2026-06-27 17:05" --place "Pellow hall" --seal 008813 \
  --seal-whole yes --pieces 3

tell "Closing is refused, and everything that is missing is said at once."
expect 1 maud sample close $store "$number"

tell "The laboratory takes it in, reports, and what is left is destroyed on a written instruction. Then it closes."
line office receipt --from IC --to "Tharn laboratory" --in "2026-06-28 09:10" --place "Tharn laboratory" --seal 008813 --seal-whole yes --pieces 3
line office result --at "2026-07-02 15:00" --report TL-2026-118 --finding found --method "gall opened, insect compared" \
  --limits "about the material only" --host "sweet chestnut" --signed "A. Quell"
line office disposal --at "2026-07-03 11:00" --disposal destroyed --method autoclaved --order TV-44 --signed "A. Quell" --place "Tharn laboratory"
as maud sample close $store "$number"

tell "The journal is read from its first line to its last; each follows from the one before."
as office prove $store

tell "One page tells of the season."
as office account $store --out $out/account.html

printf '\nEverything lies in demo/out. The window on the same store: bash demo/run.sh --window\n'

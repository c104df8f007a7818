# The walk itself; sourced by demo/run.sh, which has built the program and made an empty demo/out.
# Each step says what it does, runs the program, and stops the walk where the program answers otherwise than it should.
# The store is a demonstration, so that --today moves its clock too: every step happens on the day that it tells of.

step=0
today=2026-05-02
shown_mark=""
on() { today=$1; }
tell() { step=$((step + 1)); printf '\n%s. %s\n' "$step" "$*" | fold -s -w 100; }
aside() { printf '%s\n' "$*" | fold -s -w 100; }
# What a demonstration answers begins with a line that says so. It is shown once, and left out of this account afterwards.
unmarked() {
  if [ -z "$shown_mark" ]; then cat; else sed '1{/^Demonstration: /d}'; fi
}
as() { # PERSON VERB... : the program as that person, on the day of the step
  local person=$1 code=0
  shift
  $cupule "$@" --profile "$out/people/$person" --today "$today" 2>&1 | unmarked || code=$?
  shown_mark=yes
  return $code
}
expect() { # CODE PERSON VERB... : the same, where another exit code than 0 is right
  local code=$1 got=0
  shift
  as "$@" || got=$?
  [ "$got" = "$code" ] || { echo "Expected exit code $code, got $got: $*" >&2; exit 1; }
}
stays() { awk '/^Stays/ { on = 1; print; next } /^  / { if (on) print; next } { on = 0 }' $out/hand-in.txt; }
quietly() { as "$@" >$out/last.txt || { cat $out/last.txt; return 1; }; }

printf 'Tharn Vale is invented: its woods, its people, its finds. The map squares were chosen only because they lie on land.\n'

tell "The people. Eight volunteers, two verifiers and the office each say once who they are. That is kept in a profile outside every store, and decides what the program lets them do."
person() { # FOLDER CODE NAME ROLE [BLOCK]
  $cupule profile make --profile "$out/people/$1" --code "$2" --name "$3" --role "$4" ${5:+--block "$5"} >/dev/null
}
volunteers="maud ines tobias oswin delia fenn bryony corin"
person maud MH "Maud Harrow" volunteer
person ines IC "Ines Calloway" volunteer,sample-handler TV
person tobias TW "Tobias Wren" volunteer
person oswin OP "Oswin Petherley" volunteer
person delia DM "Delia Marchbank" volunteer
person fenn FA "Fenn Aldous" volunteer
person bryony BS "Bryony Sallow" volunteer
person corin CT "Corin Tapper" volunteer
person ruth RA "Ruth Abara" verifier,volunteer
person jonah JK "Jonah Kettle" verifier
person office HV "Hester Vane" office
ls $out/people | wc -l | sed 's/^ */Profiles made: /'

tell "The store. On 2 May the office makes one file for the season. It is a demonstration from birth: everything that comes out of it says so, and it can never become a real one."
as office new $store --name "Tharn Vale" --zone Europe/London --region MAR --kind office --demonstration
aside "(That first line stands before every answer from this store. It is left out below.)"

on 2026-05-08
tell "The season. Chestnut comes into leaf on 8 May this year, a week late, and the windows of the signs move with it. What can be seen on 11 June, and what would finding nothing be worth?"
quietly maud season $store --leafing 2026-05-08
as maud season $store --on 2026-06-11 | head -n 8
aside "..."

tell "The season as people wrote it down: tables, a receiver, photos."
QT_QPA_PLATFORM=offscreen build/release/demo/make_season $out/inputs

on 2026-06-11
tell "11 June, in the evening. The office takes in what was seen so far; first a look that keeps nothing."
expect 1 office import $store $out/inputs/spring.csv --dry-run

tell "Then for good. Rows that cannot be read are not lost: they lie in a file of their own, each with its reason."
expect 1 office import $store $out/inputs/spring.csv | grep -v '^  line\|^Set aside'

tell "Hester looks at the paper forms, mends what she can in that file, and takes it in. One date and one spoilt reference stay open."
sed -e 's/SI \([0-9]\)/SO \1/' -e 's/2026-06-31/2026-06-06/' -e 's/,142,/,14.2,/' -e 's/SO 5223 412,/SO 5223 4123,/' \
  "$out/spring.set-aside.csv" >$out/inputs/mended.csv
expect 1 office import $store $out/inputs/mended.csv

tell "The same table once more adds nothing."
expect 1 office import $store $out/inputs/spring.csv | head -n 1

tell "The receiver's points. They give a better place to trees that were only read off a map; the photos find their visits by place and time."
as office import $store $out/inputs/receiver.gpx
as office import $store $out/inputs/photos/spring

tell "Is it a chestnut? The program says so only when the characters leave no other tree, names what tells the others apart, and says what to look at next where it is open."
for tree in T-03 H-08 Q-12 N-05 P-02; do as maud show tree $tree $store | grep -v '^At \|^  '; done

tell "Maud looks over her find of the day. The checks ask about what does not agree; nothing is refused for being odd."
expect 1 maud check $store T-03@2026-06-11

tell "She says what her photos show, and hands the day in. What is handed in becomes a version that is never changed afterwards."
quietly maud photo $store IMG_0411.jpg --shows S02
quietly maud photo $store IMG_0413.jpg --shows K03
quietly maud photo $store IMG_0412.jpg --shows K01,shoot
as maud hand-in $store --day 2026-06-11

tell "The others hand in their days. What a check stops stays a draft, with the reason."
for person in $volunteers ruth; do
  as $person hand-in $store >>$out/hand-in.txt || [ $? = 1 ]
done
stays
grep -c 'handed in$' $out/hand-in.txt | sed 's/$/ records went to the verifiers./'

on 2026-06-12
tell "12 June. Ruth, a verifier, opens the queue. What an authority must hear about soon stands first, each with the reason why."
as ruth queue $store --count 4

tell "The first find lies in new ground. One verifier accepts it: it stays \"one of two\"."
as ruth decide $store T-03@2026-06-11 accept --reason host-and-gall-shown --remark "Midrib gall and leaf margin, one picture each."
tell "The authority is told at once; a suspicion is enough. The program notes it and never sends anything itself."
as ruth told $store T-03@2026-06-11 --to "plant-health authority" --reference "TV-2026-01"
tell "Ruth was out herself that day. On what she saw she may not decide."
expect 1 ruth decide $store Q-01@2026-06-11@RA accept
tell "Jonah decides too, without being shown what Ruth decided. Now the find is accepted."
as jonah decide $store T-03@2026-06-11 accept --reason host-and-gall-shown

tell "A record is rejected for a stated reason, another sent back with a question."
as jonah decide $store N-03@2026-05-30 reject --reason position-impossible --remark "This is the car park."
as ruth decide $store L-05@2026-05-23 return --reason null-without-effort --remark "How long did you look, and how much of the crown?"
tell "Oswin answers the question. His correction is a new version beside the old one; Ruth accepts it."
quietly oswin correct $store L-05@2026-05-23 minutes=11 trees=1 crown=70 height=6 binoculars=yes light=good
quietly oswin hand-in $store --day 2026-05-23
as ruth decide $store L-05@2026-05-23 accept --reason search-described
tell "Jonah goes on with plain \"nothing seen\" records. Each keeps the worth that its month and its care give it."
as jonah queue $store --json | awk -F'"' '$2 == "id" { id = $4 } $2 == "place" && $4 == "routine-null" { print id }' | head -n 12 >$out/routine.txt
while read -r visit; do as jonah decide $store "$visit" accept --reason search-described; done <$out/routine.txt >$out/last.txt
head -n 3 $out/last.txt
grep -c 'accepted' $out/last.txt | sed 's/$/ accepted in all./'
rm -f $out/routine.txt

tell "Over a hundred such records still wait. Jonah puts them into a batch, and chance draws as many as Ruth must look at."
as jonah audit make $store --auditor RA --tolerable 10
tell "Ruth sees one after the other, some of them decided before, and is not told which. She would accept every one."
as ruth audit next $store 1
looks=$(as jonah audit show $store 1 --json | sed -n 's/^ *"to_answer": \([0-9]*\).*/\1/p')
for place in $(seq "$looks"); do quietly ruth audit answer $store 1 "$place" accept; done
tail -n 1 $out/last.txt
tell "So Jonah closes the batch: all of it is accepted in one step, and the program says how sure that is, and of what it is not."
as jonah audit finish $store 1

. demo/walk_samples.sh

on 2026-10-24
tell "24 October. The journal is read from its first line to its last; each follows from the one before."
as office prove $store
tell "The store is examined, row by row and picture by picture, and one whole copy is written elsewhere."
as office health $store
as office back-up $store $out/copy

tell "Files that travel are signed. Ruth rings the office up and reads the fingerprint of her key; Hester types what she hears, and trusts the key."
as ruth key
key() { as "$1" key --json | sed -n "s/^ *\"$2\": \"\\(.*\\)\",*$/\\1/p"; }
expect 1 office vouch $store "$(key ruth key)" RA --role verifier
as office vouch $store "$(key ruth key)" RA --role verifier --fingerprint "$(key ruth fingerprint)"
tell "The decisions go home to the volunteers' laptops in one file. It holds every decision with its reasons and the lines of the journal that prove them."
as ruth hand-in $store --kind decision --out $out/decisions.zip
if command -v unzip >/dev/null; then unzip -l $out/decisions.zip | awk 'NR > 3 && NF == 4 { print "  " $4 ": " $1 " bytes" }'; fi

tell "One page tells of the season, for anybody: no exact place, no name."
as office account $store --out $out/account.html

tell "Practice. Three recruits answered drawn cases on autumn evenings: the same twelve, then twenty more that came back to what each confused. How far can their yes and no be believed?"
build/release/demo/make_practice $store $out/people/office 2026-10-24
as office practice $store --cohort "autumn evenings" --no-names --out $out/practice.html
tell "Bram agrees before Hester that what was measured may be told. It stands beside his records from now on, and changes none of them."
as office skill $store --person BM --tell --agreed-before HV | head -n 3

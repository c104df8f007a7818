# The samples of the walk: one from the tree to its close, four more in other states. Sourced by demo/walk.sh.

line() { # PERSON NUMBER KIND... : one line of a custody record
  local who=$1 sample=$2
  shift 2
  quietly "$who" sample line $store "$sample" "$@"
}
open_sample() { # PERSON VISIT PART PIECES CONDITION : prints the number
  as "$1" sample open $store "$2" --part "$3" --pieces "$4" --condition "$5" --host "sweet chestnut" --reason "asked for by the authority" \
    --json | sed -n 's/.*"number": *"\([^"]*\)".*/\1/p' | head -n 1
}
bagged() { # PERSON NUMBER CODE DAY BAGS SEAL : cut, two bags, and what was cleaned before leaving
  line "$1" "$2" cut --at "$4 10:35" --from "$3" --place "Tanner's Hanger"
  line "$1" "$2" inner-bag --at "$4 10:38" --from "$3" --bag "$5-A"
  line "$1" "$2" outer-bag --at "$4 10:41" --from "$3" --bag "$5-B" --seal "$6"
  line "$1" "$2" on-site --at "$4 10:44" --from "$3" --confirmed yes --clothes done --boots done --vehicle done --tools done
}

on 2026-06-27
tell "27 June. Ines goes back to the tree and enters the visit herself, with a photo, instead of having it typed up."
quietly ines enter $store T-03 time=10:05 S02=seen:16.5 S01=not-seen S03=not-seen S04=not-seen S05=not-seen S13=not-seen S29=not-seen \
  minutes=12 trees=1 crown=70 height=5 binoculars=yes inner-crown=yes light=good leaves=open clothes=done boots=done vehicle=done \
  tools=done "note=the lump of 11 June, now pink"
as ines import $store $out/inputs/photos/IMG_0461.jpg
quietly ines photo $store IMG_0461.jpg --shows S02
as ines hand-in $store --day 2026-06-27

tell "The authority has asked for a sample. It needs leave first, from two sides; without it none can be opened."
expect 1 ines sample open $store T-03@2026-06-27 --part "leaf with galls" --pieces 3
as ines leave add $store --giver owner --name "the owner of Tanner's Hanger" --scope enter,photograph,sample --site "Tanner's Hanger" --from 2026-05-01 --reference TV-11
as ines leave add $store --giver authority --scope sample,move --from 2026-06-15 --to 2026-10-31 --reference TV-31

tell "With both in force she opens one. It is cut, bagged twice and sealed at the tree, and every pair of hands is written down; seal numbers are read off the bag."
number=$(open_sample ines T-03@2026-06-27 "leaf with galls" 3 fresh)
bagged ines "$number" IC 2026-06-27 1041 008813
line ines "$number" hand-over --from IC --to TW --out "2026-06-27 17:00" --in "2026-06-27 17:05" --place "Pellow hall" --seal 008813 \
  --seal-whole yes --pieces 3
as ines sample show $store "$number" | head -n 1

tell "Closing it is refused, and everything that is missing is said at once."
expect 1 ines sample close $store "$number"

on 2026-06-28
tell "28 June. The laboratory takes it in; it reports on 2 July; what is left is destroyed on a written instruction. Then it closes."
line office "$number" receipt --from TW --to "Tharn laboratory" --in "2026-06-28 09:10" --place "Tharn laboratory" --seal 008813 \
  --seal-whole yes --pieces 3
on 2026-07-02
line office "$number" result --at "2026-07-02 15:00" --report TL-2026-118 --finding found --method "gall opened, insect compared" \
  --limits "about the material only" --host "sweet chestnut" --signed "A. Quell"
on 2026-07-03
line office "$number" disposal --at "2026-07-03 11:00" --disposal destroyed --method autoclaved --order TV-44 --signed "A. Quell" \
  --place "Tharn laboratory"
as ines sample close $store "$number"

tell "The laboratory found it, so the authority is told of this visit too, and Ruth accepts it on the report."
as office told $store T-03@2026-06-27 --to "plant-health authority" --reference "TV-2026-02"
as ruth decide $store T-03@2026-06-27 accept --reason laboratory-report --report TL-2026-118

on 2026-10-17
tell "17 October. The rest of the season is typed up and taken in, its photos too. More was found, and more honest mistakes were made."
expect 1 office import $store $out/inputs/summer.csv
as office import $store $out/inputs/photos/summer
for pair in "ines IMG_0460.jpg S01" "oswin IMG_0521.jpg S01" "oswin IMG_0522.jpg K03" "ines IMG_0520.jpg S02" "delia IMG_0610.jpg S05" \
  "ines IMG_0640.jpg S05" "ines IMG_0641.jpg S05" "ines IMG_0642.jpg S05" "ines IMG_0643.jpg S05"; do
  read -r who photo shows <<<"$pair"
  quietly "$who" photo $store "$photo" --shows "$shows"
done

tell "The days are handed in. A gall on a horse chestnut cannot go: either it is no gall, or it is another tree. Two questions of spring are still open."
rm -f $out/hand-in.txt
for person in $volunteers; do
  as $person hand-in $store >>$out/hand-in.txt || [ $? = 1 ]
done
stays
grep -c 'handed in$' $out/hand-in.txt | sed 's/$/ records went to the verifiers./'
as ruth queue $store --count 3

tell "Four samples of dry galls are taken that day. The first is sealed and waits; the second is on its way with a courier."
sealed=$(open_sample ines T-01@2026-10-17 "dry gall" 1 dry)
bagged ines "$sealed" IC 2026-10-17 1051 008821
moving=$(open_sample ines T-03@2026-10-17 "dry gall" 1 dry)
bagged ines "$moving" IC 2026-10-17 1052 008822
line ines "$moving" hand-over --from IC --to courier --travel "consignment 77-104" --out "2026-10-17 16:00" --in "2026-10-17 16:02" \
  --place "Pellow hall" --seal 008822 --seal-whole yes --pieces 1
as ines sample show $store "$sealed" | head -n 1
as ines sample show $store "$moving" | head -n 1

tell "The third was carried home in a single bag. It can never close: it ends void, and its disposal is recorded all the same."
single=$(open_sample ines T-05@2026-10-17 "dry gall" 2 dry)
line ines "$single" cut --at "2026-10-17 11:30" --from IC --place "Tanner's Hanger"
line ines "$single" inner-bag --at "2026-10-17 11:33" --from IC --bag 1053-A
line ines "$single" on-site --at "2026-10-17 11:40" --from IC --confirmed no --clothes done --boots done --vehicle done --tools done
line ines "$single" void --at "2026-10-17 18:00" --from IC --reason "no outer bag left; carried in one bag"
expect 1 ines sample close $store "$single"
line office "$single" disposal --at "2026-10-17 18:05" --disposal destroyed --method burnt --order TV-51 --signed "H. Vane" --place "Pellow hall"
as ines sample show $store "$single" | head -n 1

tell "The fourth comes to the laboratory under another seal than was put on. The field record stands; the sample closes only with that break, for a reason, with a second person, and its result is never sole proof."
broken=$(open_sample ines T-06@2026-10-17 "dry gall" 1 dry)
bagged ines "$broken" IC 2026-10-17 1054 008824
line ines "$broken" receipt --from IC --to "Tharn laboratory" --in "2026-10-17 17:30" --travel "by car" --place "Tharn laboratory" \
  --out "2026-10-17 16:30" --seal 008842 --seal-whole yes --pieces 1
on 2026-10-20
line office "$broken" result --at "2026-10-20 15:00" --report TL-2026-161 --finding "not found" --method "gall opened" \
  --limits "about the material only" --host "sweet chestnut" --signed "A. Quell"
line office "$broken" disposal --at "2026-10-20 16:00" --disposal destroyed --method autoclaved --order TV-52 --signed "A. Quell" \
  --place "Tharn laboratory"
expect 1 ines sample close $store "$broken"
as ines sample close $store "$broken" --with-break --reason "two figures of the seal number were exchanged on the label" --second RA | head -n 1

tell "Five samples, and where each of them stands:"
as ines list samples $store

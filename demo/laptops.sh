# Five laptops and one region: files that were signed on each of them come into two offices in opposite orders, and both know the same
# afterwards. One laptop's clock is wrong, one was copied whole, one belongs to somebody who says to be Maud. Sourced by demo/run.sh.

laptops=$out/laptops
mkdir -p $laptops
on 2026-06-11

at_home() { # PERSON VERB... : on that person's own laptop; every other word after the verb as it stands
  local who=$1 verb=$2
  shift 2
  as "$who" "$verb" "$laptops/$who.cupule" "$@"
}
looked() { # PERSON TREE POSITION : a whole search of one tree that found nothing
  quietly "$1" enter "$laptops/$1.cupule" "$2" --at "$3" --date 2026-06-11 time=10:05 K01=alternate S01=not-seen S02=not-seen S03=not-seen \
    S04=not-seen S05=not-seen S13=not-seen S29=not-seen minutes=12 trees=1 crown=70 height=5 binoculars=yes inner-crown=yes light=good \
    leaves=open clothes=done boots=done vehicle=done tools=done
}
digits() { key "$1" fingerprint; }   # as they are read out over the telephone

tell "Five laptops. Maud, Tobias and Ines each keep a store of their own this time; nobody has a network in the Vale. Tobias' clock is eight days ahead."
person stranger MH "Maud Harrow" volunteer
for who in maud tobias ines stranger; do
  quietly $who new "$laptops/$who.cupule" --name "Laptop of $who" --zone Europe/London --region MAR --demonstration
done
looked maud L-01 "SO 5223 4123"
looked ines L-02 "SO 5243 4133"
looked stranger L-04 "SO 5283 4153"
on 2026-06-19
looked tobias L-03 "SO 5263 4143"
at_home tobias hand-in --out $laptops/tobias.zip
on 2026-06-11
for who in maud ines stranger; do quietly $who hand-in "$laptops/$who.cupule" --out "$laptops/$who.zip"; done

tell "Ines' laptop was copied whole, profile and store, and both copies go on: one corrects the minutes and the height, the other the minutes."
cp -r "$out/people/ines" "$out/people/ines-copy"
for part in "$laptops"/ines.cupule*; do cp -r "$part" "${part/ines/ines-copy}"; done
quietly ines correct $laptops/ines.cupule L-02@2026-06-11 minutes=15
quietly ines-copy correct $laptops/ines-copy.cupule L-02@2026-06-11 minutes=20 height=6
quietly ines hand-in $laptops/ines.cupule --out $laptops/ines-2.zip
quietly ines-copy hand-in $laptops/ines-copy.cupule --out $laptops/ines-copy.zip

tell "The office takes in the first file. Nothing of a key that nobody knows is taken in; Hester rings Maud up and types what she hears."
quietly office new $laptops/office.cupule --name "Tharn Vale" --zone Europe/London --region MAR --kind office --demonstration
expect 1 office merge $laptops/office.cupule $laptops/maud.zip
as office vouch $laptops/office.cupule $laptops/maud.zip --fingerprint "$(digits maud)"
tell "First a look that changes nothing, then for good; once more does no harm."
as office merge $laptops/office.cupule $laptops/maud.zip --dry-run | tail -n 1
as office merge $laptops/office.cupule $laptops/maud.zip | tail -n 1
as office merge $laptops/office.cupule $laptops/maud.zip | tail -n 1

tell "The next ones. Ines' copy is noticed by its journal; where the two say different things, both are kept and one question stays."
trust() { quietly office vouch "$1" "$laptops/$2.zip" --fingerprint "$(digits "$3")"; }
trust $laptops/office.cupule tobias tobias
trust $laptops/office.cupule ines ines
for file in tobias ines ines-2; do quietly office merge $laptops/office.cupule $laptops/$file.zip; done
as office merge $laptops/office.cupule $laptops/ines-copy.zip

tell "The last file says that it comes from Maud, in another key. Maud reads out her own digits: they are not this key's, and nothing of it is taken in."
expect 1 office merge $laptops/office.cupule $laptops/stranger.zip
expect 1 office vouch $laptops/office.cupule $laptops/stranger.zip --fingerprint "$(digits maud)" --another-person

tell "A second office takes the same files in the opposite order. Both know the same: each tree, each visit, each version, each open question."
quietly office new $laptops/second.cupule --name "Tharn Vale" --zone Europe/London --region MAR --kind office --demonstration
trust $laptops/second.cupule maud maud
trust $laptops/second.cupule tobias tobias
trust $laptops/second.cupule ines ines
for file in ines-copy ines-2 ines tobias maud; do quietly office merge $laptops/second.cupule $laptops/$file.zip; done
known() { # STORE : everything that it knows of its visits; what came in first stands first where nothing else decides, hence sorted
  as office list visits "$1" | sort
  for visit in L-01@2026-06-11@MH L-02@2026-06-11@IC L-03@2026-06-11@TW; do as office show visit "$visit" "$1" --json; done
  as ruth queue "$1" --json | sort
}
known $laptops/office.cupule >$laptops/one.txt
known $laptops/second.cupule >$laptops/other.txt
cmp $laptops/one.txt $laptops/other.txt
echo "The same in both: $(wc -l <$laptops/one.txt) lines, to the last letter."
as ruth queue $laptops/office.cupule --count 3
as office prove $laptops/second.cupule

tell "Ruth decides in the office's store, and her decisions go home. On Maud's laptop they stand with their reasons."
as ruth decide $laptops/office.cupule L-01@2026-06-11@MH return --reason null-without-effort --remark "Which side of the crown did you see?"
quietly ruth hand-in $laptops/office.cupule --kind decision --out $laptops/decisions.zip
quietly maud vouch $laptops/maud.cupule $laptops/decisions.zip --fingerprint "$(digits ruth)" --role verifier
as maud merge $laptops/maud.cupule $laptops/decisions.zip | tail -n 1
as maud show visit L-01@2026-06-11 $laptops/maud.cupule | sed -n 1,2p

// What went wrong outside the program: what happened, what was kept, what to do.

#include "ui/bridge/words.h"
#include "ui/bridge/words_arrival.h"

#include <QCoreApplication>
#include <QStringList>

#include "ui/bridge/text.h"
#include "ui/bridge/words_detail.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

struct FaultSentence {
    const char* code;
    const char* what;
    const char* kept;
    const char* toDo;
};

#define SAY(code, what, kept, toDo)                                                                          \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("faults", what), QT_TRANSLATE_NOOP("faults", kept),                          \
            QT_TRANSLATE_NOOP("faults", toDo)                                                                \
    }
constexpr FaultSentence faults[] = {
    // files
    SAY("file.open", "{file} could not be opened.", "", "Look whether it is there and may be read."),
    SAY("file.read", "{file} could not be read to its end.", "Nothing of it was kept.",
        "Copy it to this disk and try again."),
    SAY("file.write", "{file} could not be written.", "What was there before is untouched.",
        "Look whether the folder may be written and the disk has room."),
    SAY("file.full", "The disk is full; {file} was not written.", "What was there before is untouched.",
        "Make room and try again."),
    SAY("file.folder", "{file} is a folder, or its folder cannot be used.", "Nothing was changed.",
        "Choose a file."),
    SAY("file.large", "{file} is too large to be read at once.", "Nothing of it was kept.", "Split it."),
    SAY("job.cancelled", "Stopped, as you asked.", "Nothing of this work was kept.", ""),
    SAY("labels.which", "It is not said which labels: numbers, or how many blank ones.", "Nothing was written.",
        "Name numbers, or say how many, not both."),
    SAY("labels.sheet", "“{value}” is no sheet of labels that can be used.", "Nothing was written.",
        "It is given as ROWSxCOLUMNS, as in 4x2, with margins and gaps in mm where they differ, as in 5x2 top=6 bottom=6 "
        "down=0. A label needs {width} × {height} mm at least."),
    // store
    SAY("store.missing", "There is no store {file}.", "", ""),
    SAY("store.exists", "There is a file {file} already.", "It is untouched.", "Choose another name."),
    SAY("store.newer",
        "{file} was made by a newer Cupule (its form {version}; this program knows up to {known}).",
        "It is untouched.", ""),
    SAY("store.foreign", "{file} is not a store of Cupule.", "It is untouched.", ""),
    SAY("store.cycle", "Revisions name each other as parents in a circle.", "Nothing was changed.",
        "Have the file sent once more. If it stays so, tell the office."),
    SAY("store.damaged", "{file} is damaged.", "It is left as it is.", ""),
    SAY("store.in-use", "Another program is writing to {file}.", "Nothing was changed.", ""),
    SAY("store.full", "The disk is full.", "Everything up to the last saved change is kept.", ""),
    SAY("store.read-only", "The store may only be read.", "Nothing was changed.", ""),
    SAY("store.older-read-only",
        "{file} is of an older form and cannot be brought up to date, since it may only be read.",
        "It is untouched.", ""),
    SAY("store.upgrade", "{file} could not be brought up to date.", "It is as it was; a copy lies beside it.",
        ""),
    SAY("store.io", "The store could not be read or written.",
        "Everything up to the last saved change is kept.", ""),
    SAY("store.folder", "The folder of {file} cannot be used.", "Nothing was changed.", ""),
    SAY("store.memory", "There was not enough memory.", "Everything up to the last saved change is kept.",
        "Close other programs and try again."),
    SAY("store.constraint", "The store refused a value ({constraint}).", "Nothing of this change was kept.",
        "Please report this with the details."),
    SAY("store.reference", "Something named here is not in the store.", "Nothing of this change was kept.",
        "Please report this with the details."),
    SAY("store.change-open", "Another change is still being written.", "Nothing was changed.", "Try again."),
    SAY("store.change-lost", "The change was broken off before it was saved.",
        "Everything before it is kept.", "Enter it once more."),
    SAY("store.region", "The protocol knows no region “{region}”.", "Nothing was made.",
        "Choose one of the protocol’s regions."),
    SAY("backup.full", "The disk is too small for the backup {file}.",
        "The store is untouched; no half backup is left.", "Make room or choose another folder."),
    SAY("backup.exists", "There is a backup {file} already.", "It is untouched.", "Choose another folder."),
    SAY("backup.write", "The backup {file} could not be written.", "The store is untouched.",
        "Look whether the folder may be written."),
    SAY("media.missing", "The picture is not in the store’s media folder.", "Its record is kept.",
        "Look for it in a backup, or take the photo in again."),
    SAY("media.damaged", "The picture in the media folder is not the one that was taken in.",
        "Its record is kept.", "Look for it in a backup, or take the photo in again."),
    SAY("media.write", "A picture could not be written into the media folder.", "Nothing of it was kept.",
        "Look whether the folder may be written."),
    SAY("media.full", "The disk is full; a picture was not taken in.", "What was taken in before is kept.",
        "Make room and try again."),
    // person, device, role
    SAY("profile.missing", "There is no profile in {folder}.", "", "Make one: name, code and role."),
    SAY("profile.json", "The profile in {folder} cannot be read.", "It is untouched.",
        "Put back a copy of it, or make a new one."),
    SAY("profile.exists", "There is a profile in {folder} already.", "It is untouched.",
        "Choose another folder."),
    SAY("profile.code", "“{code}” cannot be a person’s code.", "Nothing was changed.",
        "Use two to eight letters or digits."),
    SAY("profile.code-taken", "The code {code} belongs to another person in this store.",
        "Nothing was changed.", "Choose another code in your profile."),
    SAY("profile.roles", "The profile names no role.", "Nothing was changed.", "Name at least one."),
    SAY("profile.block", "“{block}” is no block of sample numbers.", "Nothing was changed.",
        "Ask the office for two letters or digits."),
    SAY("session.hidden", "The hidden mode is on: what the screen shows is not what is kept.", "Nothing was changed.",
        "Switch it off with Ctrl+Shift+H."),
    SAY("role.needed", "This needs another role: {roles}.", "Nothing was changed.",
        "Ask somebody who has it."),
    // keys
    SAY("key.changed", "This key is new, and this person has another one that is trusted.",
        "Nothing was changed.", "Ask the person by voice whether the key was changed. Only then vouch for it instead of the old one, which is withdrawn."),
    SAY("key.same-code", "This key is new, and somebody else here has the code {code} and a key that is trusted.",
        "Nothing was changed.", "Ring the one you know by that code. If the file is theirs, from a new profile, vouch for it instead of the old one, which is withdrawn. If two people chose one code, say so when you vouch. Otherwise somebody says to be another: keep the file, and tell the office."),
    SAY("key.exists", "There is a key in {folder} already.",
        "It is untouched.", "Renew it instead: the old key then speaks for the new one."),
    SAY("key.file", "The key in {folder} cannot be read.",
        "It is untouched.", "Put back a copy of that folder, or move key.json away, make a new key and have it vouched for."),
    SAY("key.fingerprint", "{typed} is not the fingerprint of this key, which is {fingerprint}.",
        "Nothing was changed.", "Have it read out once more. If it still differs, the file does not come from that person."),
    SAY("key.follows", "The word of an earlier key for this one does not hold.",
        "Nothing was changed.", "Ring the sender up, compare the fingerprint, and vouch for it."),
    SAY("key.form", "“{value}” is no key: that has 64 digits of 0–9 and a–f.",
        "Nothing was changed.", "Copy it whole."),
    SAY("key.memory", "There was not enough memory ({bytes} bytes) to open or lock the key.",
        "Nothing was changed.", "Close other programs and try again."),
    SAY("key.missing", "There is no key in {folder}.",
        "Nothing was changed.", "Make one with “cupule key --make”, and have it vouched for."),
    SAY("key.not-compared", "The fingerprint of this key is {fingerprint}. Nobody has compared it yet.",
        "Nothing was changed.", "Have the person read theirs out over the telephone, and type what they read."),
    SAY("key.other-person", "This key is vouched for as another person’s.",
        "Nothing was changed.", "Ask both people: a key is never shared."),
    SAY("key.own", "Nobody vouches for their own key.",
        "Nothing was changed.", "Ask the office."),
    SAY("key.passphrase", "The passphrase does not open the key.",
        "Nothing was changed.", "Type it once more."),
    SAY("key.passphrase-empty", "A passphrase cannot be empty.",
        "Nothing was changed.", "Choose a few words."),
    SAY("key.passphrase-needed", "The key in {folder} is locked by a passphrase.",
        "Nothing was changed.", "Give the passphrase."),
    SAY("key.unknown", "Nobody here has said anything about this key.",
        "Nothing was changed.", "Compare its fingerprint by voice, then vouch for it."),
    SAY("key.vouched", "This key is vouched for already.",
        "Nothing was changed.", ""),
    SAY("key.withdrawn", "This key was withdrawn.",
        "Nothing was changed.", "Its owner makes a new key, and that is vouched for."),
    // visits, trees, people
    SAY("visit.unknown", "There is no such visit.", "Nothing was changed.", ""),
    SAY("visit.not-yours", "This visit was made by somebody else.", "Nothing was changed.",
        "Ask the observer to change it."),
    SAY("visit.not-draft", "This visit is handed in already.", "Nothing was changed.",
        "Make a new revision of it."),
    SAY("visit.decided", "This visit is decided already.", "Nothing was changed.",
        "Make a new revision, or have it reopened."),
    SAY("visit.changed-meanwhile", "This visit was changed elsewhere meanwhile.",
        "Your last entry was not saved.", "Look at the new state and enter it once more."),
    SAY("effort.first", "The minutes of looking come first.", "Nothing was answered.",
        "Type them, then answer “nothing seen”."),
    SAY("tree.unknown", "There is no such tree.", "Nothing was changed.", ""),
    SAY("tree.fate", "“{value}” is nothing that becomes of a tree.", "Nothing was changed.", "It is felled or not found."),
    SAY("tree.fate-date", "The day on which that was seen is missing or lies ahead.", "Nothing was changed.",
        "Give the day, today or earlier."),
    SAY("tree.merge-same", "These are entries of one tree, {label}, already.", "Nothing was changed.", "Look at its page."),
    SAY("tree.not-merged", "{label} stands for a tree of its own.", "Nothing was changed.", "Choose an entry that was merged."),
    SAY("tree.split-none", "To split a tree, some of its visits must go and some must stay.", "Nothing was changed.",
        "Choose the visits that were to the other tree."),
    SAY("tree.label", "A tree needs a label.", "Nothing was made.", "Type the label on its tag."),
    SAY("tree.label-taken", "There is a tree {label} at this place already.", "Nothing was made.",
        "Choose it, or use another label."),
    SAY("site.unknown", "There is no such site.", "Nothing was changed.", ""),
    SAY("site.name", "A site needs a name.", "Nothing was made.", ""),
    SAY("site.name-taken", "There is a site {name} already.", "Nothing was made.",
        "Choose it, or use another name."),
    SAY("person.unknown", "There is no such person.", "Nothing was changed.", ""),
    SAY("person.code-taken", "The code {code} belongs to somebody else.", "Nothing was made.",
        "Choose another code."),
    SAY("name.unknown", "There is no {noun} “{name}”.", "Nothing was changed.",
        "Look at the list for how it is written."),
    SAY("name.ambiguous", "“{name}” is the name of several: {candidates}.", "Nothing was changed.",
        "Name it by its id."),
    SAY("photo.unknown", "There is no such photo.", "Nothing was changed.", ""),
    SAY("photo.picture", "The picture of this photo cannot be shown.", "Its record is kept.", ""),
    SAY("photo-measure.scale-short", "A stretch of {pixels} pixels is too short for a scale.", "Nothing was measured.",
        "Take a longer stretch, at least {least} pixels, or zoom in."),
    SAY("photo-measure.known-length", "The known length must be a number above 0.", "Nothing was measured.",
        "Type it in mm."),
    SAY("photo-measure.no-line", "Both ends of the line lie on one place.", "Nothing was measured.",
        "Set the ends apart."),
    SAY("photo.not-a-picture", "{file} is not a picture that can be read.", "Nothing of it was kept.",
        "JPEG, PNG and HEIC are read."),
    SAY("undo.nothing", "There is nothing to undo.", "", ""),
    SAY("redo.nothing", "There is nothing to redo.", "", ""),
    SAY("undo.changed-meanwhile", "It was changed elsewhere meanwhile and cannot be undone here.",
        "Nothing was changed.", ""),
    // deciding
    SAY("audit.auditor", "Nobody was named who is to look at the drawn records, or nobody whom this store knows.",
        "No batch was made.", "Name another verifier."),
    SAY("audit.closed", "This batch is closed.", "Nothing was changed.", ""),
    SAY("audit.linked", "The auditor and you may not decide for each other.", "No batch was made.",
        "Name another verifier."),
    SAY("audit.no-answer", "No answer of this round is left to take back.", "Nothing was changed.", ""),
    SAY("audit.not-finished", "Records of the round still to be looked at: {count}.", "Nothing was decided.",
        "Wait for the auditor."),
    SAY("audit.not-maker", "Only who made the batch closes it.", "Nothing was changed.", "Ask them."),
    SAY("audit.not-passed", "No acceptance of this batch stands.", "Nothing was changed.", ""),
    SAY("audit.not-yours", "Another verifier was named for this round.", "Nothing was kept.", "Ask them."),
    SAY("audit.nothing", "No record can be accepted in a batch now.", "Nothing was decided.",
        "Decide them one by one."),
    SAY("audit.other-record", "The round shows another record now.", "The answer was not kept.",
        "Look at the record that is shown."),
    SAY("audit.same-person", "Nobody audits a batch of their own.", "No batch was made.", "Name another verifier."),
    SAY("audit.share", "Confidence and tolerable share lie above 0 and below 100 %.", "No batch was made.",
        "Type other numbers."),
    SAY("audit.unknown", "There is no batch “{audit}” here.", "Nothing was changed.", "See the list of batches."),
    SAY("decide.may-not", "You may not decide on this record.", "Nothing was decided.", ""),
    SAY("decide.reason-needed", "A rejection or return needs a reason.", "Nothing was decided.",
        "Choose one."),
    SAY("decide.reason-unknown", "The protocol knows no reason “{reason}”.", "Nothing was decided.", ""),
    SAY("decide.reason-other-outcome", "The reason “{reason}” does not fit this decision.",
        "Nothing was decided.", "Choose another."),
    SAY("decide.report-needed", "Accepting on a laboratory report needs its number.", "Nothing was decided.",
        "Type the number of the report."),
    SAY("decide.not-submitted", "This record is not waiting for a decision.", "Nothing was decided.", ""),
    SAY("decide.not-decided", "This record has no decision yet.", "Nothing was changed.", ""),
    SAY("decide.revision-changed", "The record was corrected while you looked at it.", "Nothing was decided.",
        "Look at the new revision."),
    SAY("decide.outcome", "That is not a decision.", "Nothing was decided.", "Accept, reject or return."),
    SAY("decide.undo-handed-out", "This decision has left in a file, so it stands.", "Nothing was changed.",
        "Have the record reopened."),
    SAY("decide.undo-others", "Somebody else has decided since, so this decision stands.",
        "Nothing was changed.", "Have the record reopened."),
    SAY("decide.nothing-to-undo", "There is no decision of yours to undo.", "Nothing was changed.", ""),
    SAY("queue.square", "“{typed}” is no square of a grid.", "The list was left as it was.", "Type letters and figures, such as SO54."),
    SAY("queue.dates", "The last day, {to}, lies before the first, {from}.", "The list was left as it was.", "Change one of them."),
    SAY("queue.which", "There is no such part of the queue: {which}.", "The list was left as it was.", ""),
    SAY("queue.name", "The choice has no name.", "Nothing was kept.", "Type one."),
    SAY("conflict.none", "There are no versions here that do not agree.", "Nothing was changed.", "Look again: somebody may have settled it."),
    SAY("conflict.field-left", "One field is not settled yet: {path}.", "Nothing was changed.", "Choose a version for it."),
    SAY("conflict.changed-meanwhile", "Another version came in while you looked.", "Nothing was changed.", "Look at all of them."),
    SAY("notice.no-find", "No gall is seen in this record on a tree that may be a host.", "Nothing was written.",
        "A notice tells of a find. For what else must be told, use the account, or write to the authority."),
    SAY("told.to", "It is not said who was told.", "Nothing was noted.", "Name the authority."),
    SAY("erase.order", "Erasing personal data needs the number of the order.", "Nothing was erased.",
        "Type it."),
    // samples, leaves
    SAY("sample.unknown", "There is no sample {number}.", "Nothing was changed.",
        "Read the number once more."),
    SAY("sample.no-block", "This device has no block of sample numbers.", "No sample was opened.",
        "Ask the office for one and put it into your profile."),
    SAY("sample.block-used-up", "All numbers of block {block} are used.", "No sample was opened.",
        "Ask the office for another block."),
    SAY("sample.block-elsewhere",
        "Block {block} belongs to another device, or to this one before its store was restored from a copy.",
        "No number was issued.", "Ask the office for another block."),
    SAY("sample.number-used", "There is a sample {number} already.", "No sample was opened.",
        "Read the number off the label once more."),
    SAY("sample.number-not-reserved", "{number} was not reserved for a printed label here.", "No sample was opened.",
        "Read the number off the label once more, or leave it empty for the next number."),
    SAY("sample.reserve-count", "{count} numbers cannot be reserved at once.", "None was reserved.",
        "Reserve from 1 to {most}."),
    SAY("programme.hours", "The hours must rise from the first to the last, above 0 and at most {most}.",
        "Nothing was changed.", "Correct the hours."),
    SAY("sample.may-not-open", "No sample may be opened here.", "Photograph it and leave it on the tree.",
        ""),
    SAY("sample-number.form", "“{value}” is not a sample number.", "", "It reads like 26-TV-0147-H."),
    SAY("sample-number.check", "The check character of {value} does not fit.", "",
        "Read the number once more: one character is wrong or two are swapped."),
    SAY("custody.correction", "There is no line {line} to correct.", "Nothing was added.", ""),
    SAY("custody.closed", "Sample {number} is closed.", "Nothing was added.", ""),
    SAY("custody.close-by-closing", "A sample is closed by closing it, not by a line.", "Nothing was added.",
        "Close the sample."),
    SAY("leave.unknown", "There is no such leave.", "Nothing was changed.", ""),
    SAY("leave.dates", "The leave ends before it begins.", "Nothing was kept.", "Correct the dates."),
    SAY("leave.scopes", "The leave does not say what for.", "Nothing was kept.",
        "Choose at least one: enter, photograph, sample, move, pass on."),
    SAY("regime.dates", "The regime ends before it begins.", "Nothing was kept.", "Correct the dates."),
    SAY("regime.issuer", "It is not said who issued the regime.", "Nothing was kept.", "Name the authority."),
    SAY("regime.dry-galls", "“{value}” says nothing about dry galls.", "Nothing was kept.",
        "Say keep, destroy or ask."),
    SAY("leafing.year", "{date} is not in {year}.", "Nothing was kept.", "Correct the date."),
    // bundles
    SAY("bundle.altered", "A file of {who} is known here by the same number, with other contents.",
        "Nothing of it was taken in.", "Ring {who} up: a laptop may have been copied, or somebody changed the file."),
    SAY("bundle.counts", "{file} holds less or more than its list of contents counts.",
        "Nothing of it was taken in.", "Have it sent once more."),
    SAY("bundle.damaged", "{file} is damaged.",
        "Nothing of it was taken in.", "Have it sent once more."),
    SAY("bundle.demonstration", "It comes from a demonstration: everything in it is invented.",
        "Nothing of it was taken in.", "It belongs into a demonstration."),
    SAY("bundle.hash", "A part of {file} is not the one that was signed: {part}.",
        "Nothing of it was taken in.", "Have it sent once more."),
    SAY("bundle.library", "The library libarchive is missing; without it no signed file is written or read.",
        "Nothing of it was taken in.", "Install the package libarchive13."),
    SAY("bundle.limit", "A limit must be above 0: {limit}.",
        "Nothing was changed.", "Correct the limit."),
    SAY("bundle.line", "Line {line} of {part} in {file} does not hold: {reason}.",
        "Nothing of it was taken in.", "Have it sent once more. If it stays so, tell the office."),
    SAY("bundle.manifest", "The list of contents of {file} is wrong at {path}: {reason}.",
        "Nothing of it was taken in.", "Have it sent once more. If it stays so, tell the office."),
    SAY("bundle.not-theirs", "The key of {who} may not say this: {what}.",
        "Nothing of the file was taken in.", "Ask the office whose key it is, and what it was vouched for."),
    SAY("merge.line", "A record stands behind a line of the journal that is not in the file: {incarnation} {number}.",
        "Nothing of the file was taken in.", "Ask for the file to be made again."),
    SAY("decide.fields-in-conflict", "Fields of this visit were changed differently by two people: {count}.",
        "Nothing was decided.", "Settle the fields first; what would be accepted is not clear before."),
    SAY("merge.altered", "A record is known here by the same id with another content: {noun} {id}.",
        "Nothing of it was taken in.", "Ring the sender up: a file or a store was changed by another program."),
    SAY("bundle.newer", "{file} is of form {format}; this program knows up to {known}.",
        "Nothing of it was taken in.", "Install the newer program."),
    SAY("bundle.not-zip", "{file} is not a file that Cupule signs and hands on.",
        "Nothing of it was taken in.", "Look whether it is the right file and was sent whole."),
    SAY("bundle.nothing", "There is nothing to hand in that has not been taken in already.",
        "No file was written.", "Hand in visits first."),
    SAY("bundle.part-clash", "Two parts of {file} have names that some computers take for one: {part}.",
        "Nothing of it was taken in.", "Ask the sender: no file that Cupule hands on has such names."),
    SAY("bundle.part-count", "{file} has {found} parts; {limit} are allowed.",
        "Nothing of it was taken in.", "Ask the sender. The limit can be moved."),
    SAY("bundle.part-kind", "{file} holds a link, a folder or something locked: {part}.",
        "Nothing of it was taken in.", "Ask the sender: no file that Cupule hands on does."),
    SAY("bundle.part-large", "A part of {file} unpacks to {found} bytes; {limit} are allowed.",
        "Nothing of it was taken in.", "Ask the sender. The limit can be moved."),
    SAY("bundle.part-missing", "{file} lacks the part {part}.",
        "Nothing of it was taken in.", "Have it sent once more."),
    SAY("bundle.part-twice", "{file} holds the part {part} twice.",
        "Nothing of it was taken in.", "Ask the sender: no file that Cupule hands on does."),
    SAY("bundle.part-unknown", "{file} holds a part that belongs into no such file: {part}.",
        "Nothing of it was taken in.", "Ask the sender what it is."),
    SAY("bundle.path-outside", "{file} holds a part whose name leads out of its folder: {part}.",
        "Nothing of it was taken in.", "Do not unpack it with another program; ask the sender."),
    SAY("bundle.real", "It holds real records, and this store is a demonstration.",
        "Nothing of it was taken in.", "Take it into a real store."),
    SAY("bundle.signature", "The signature of {file} does not fit its list of contents.",
        "Nothing of it was taken in.", "Have it sent once more. If it stays so, ring the sender up."),
    SAY("bundle.size-lies", "{file} says a part has another size than it has: {part}.",
        "Nothing of it was taken in.", "Ask the sender: no file that Cupule hands on does."),
    SAY("bundle.too-dense", "{file} unpacks to {found} times its size; {limit} times is allowed.",
        "Nothing of it was taken in.", "Ask the sender. The limit can be moved."),
    SAY("bundle.too-large", "{file} has {found} bytes; {limit} are allowed.",
        "Nothing of it was taken in.", "Ask the sender. The limit can be moved."),
    SAY("bundle.whole-large", "{file} unpacks to {found} bytes; {limit} are allowed.",
        "Nothing of it was taken in.", "Ask the sender. The limit can be moved."),
    // what is read from files and texts
    SAY("csv.empty", "{file} holds nothing.", "Nothing was kept.", ""),
    SAY("csv.binary", "{file} is not a table of text: {found}.", "Nothing of it was kept.",
        "Save it as CSV and try again."),
    SAY("csv.no-header", "{file} has no line with the names of the columns.", "Nothing of it was kept.",
        "Give the columns names in the first line."),
    SAY("csv.broken-header",
        "The names of the columns in {file} are damaged: a quotation mark that is not closed, or no text.",
        "Nothing of it was kept.", "Mend line {line}."),
    SAY("csv.encoding", "The encoding “{encoding}” is not known here.", "Nothing was kept.",
        "utf-8, windows-1252, utf-16le and utf-16be are."),
    SAY("csv.delimiter", "“{delimiter}” cannot separate columns.", "Nothing was kept.",
        "comma, semicolon, tab, pipe or one character can."),
    SAY("csv.decimal", "“{decimal}” is no decimal sign.", "Nothing was kept.", "Say point or comma."),
    SAY("csv.date-order", "“{order}” is no order of day, month and year.", "Nothing was kept.",
        "Say dmy, mdy or ymd."),
    SAY("columns.json", "The saved columns cannot be read.", "Nothing was kept.",
        "Match the columns once more and save them."),
    SAY("columns.member", "The saved columns hold something unknown: {member}.", "Nothing was kept.",
        "Match the columns once more and save them."),
    SAY("columns.field", "The saved columns name an unknown field: {field}.", "Nothing was kept.",
        "Match the column {heading} once more."),
    SAY("gpx.not-gpx", "{file} is not a GPX file.", "Nothing of it was kept.", ""),
    SAY("gpx.malformed", "{file} is damaged.", "Nothing of it was kept.",
        "Take the points before the damage, or save the file once more."),
    SAY("gpx.encoding", "{file} is in an encoding that is not known here: {encoding}.",
        "Nothing of it was kept.", "Save it as UTF-8."),
    SAY("gpx.deep", "{file} is nested too deeply to be a GPX file.", "Nothing of it was kept.", ""),
    SAY("date.form", "“{text}” is not a date.", "", "Write it as 2026-06-11."),
    SAY("date.impossible", "There is no day {text}.", "", "Correct it."),
    SAY("time.form", "“{text}” is not a time of day.", "", "Write it as 09:14."),
    SAY("instant.form", "“{text}” is not a moment.", "", "Write it as 2026-06-11T09:14:00+01:00."),
    SAY("instant.zone", "“{text}” says nothing about its zone.", "", "Add Z or an offset such as +01:00."),
    SAY("zone.unknown", "There is no zone “{zone}”.", "", "Use a name such as Europe/London."),
    SAY("base.uid", "“{text}” is not an id.", "", ""),
    SAY("base.hex", "“{text}” is not a digest.", "", ""),
    SAY("lesson.form", "This is no lesson that can be read: at {path}, {why}.", "Nothing of it was used.",
        "Save the lesson once more where it was made."),
    SAY("lesson.newer", "The lesson was saved by a newer Cupule (its form {format}).", "Nothing of it was used.",
        "Install the newer program."),
    SAY("photo-case.form", "A case made from photos cannot be kept as it is: {why}.", "Nothing was kept.",
        "Give it at least one photo and one question, and answers that it offers."),
    SAY("photo-case.unknown", "There is no such case made from photos here: {id}.", "Nothing was changed.",
        "Choose one from the list."),
    SAY("practice.answered", "Case {number} of this session has been answered already.", "The earlier answer stands.",
        "Open the session again and go on with the next case."),
    SAY("practice.answers", "{given} answers were given to {asked} questions.", "Nothing was kept.",
        "Answer every question, or say that it could not be judged."),
    SAY("practice.cases", "A session has {least} to {most} cases, not {value}.", "Nothing was begun.",
        "Give another number; 0 goes on as long as you like."),
    SAY("practice.month", "There is no month {value}.", "Nothing was begun.",
        "Give 1 to 12, or 0 for any month."),
    SAY("practice.pack", "This session was begun with another protocol ({protocol}).", "Its answers are kept and counted.",
        "Begin a new session."),
    SAY("practice.rules", "Limits and the share that is there lie above 0 and below 1.", "The earlier ones stand.",
        "Give shares such as 0.8."),
    SAY("practice.step", "There is no step of difficulty {value}.", "Nothing was begun.",
        "Give 1 to {most}, or 0 to follow the answers."),
    SAY("practice.topics", "No case can be made of what is wanted in that region and month.", "Nothing was begun.",
        "Choose another month, or ask for more kinds of questions."),
    SAY("practice.unknown", "There is no such session of practice here: {id}.", "Nothing was changed.",
        "Choose one from the list."),
    SAY("skill.consent", "It is not said to whom the person agreed.", "Nothing was kept.",
        "Say to whom they agreed, by code."),
    SAY("skill.erased", "This person asked to be erased; nothing is told of them.", "Nothing was kept.",
        "Make a new entry for them if they want to take part again."),
    SAY("skill.none", "Nothing has been measured yet that could be told.", "Nothing was kept.",
        "Practise first."),
    SAY("record.json", "A record cannot be read: {path} {why}.", "It is left as it is.",
        "Please report this with the details."),
    SAY("seen.json", "What this device remembers of its stores cannot be read.", "The store is untouched.",
        "Put back a copy of the profile."),
    SAY("position.grid-folder", "The folder of grid files {folder} cannot be used.", "",
        "Correct it in the profile, or leave it empty."),
    SAY("position.grid-missing", "The grid file {name} is not in {folder}.",
        "Positions are worked out without it, to about 5 m.", "Put it there, or leave the folder empty."),
    SAY("position.grid-wrong", "The grid file {file} gives wrong positions and is not used.",
        "Positions are worked out without it, to about 5 m.", "Get it from its publisher once more."),
    SAY("position.precision", "A position cannot be written so: {precision}.", "", ""),
};
#undef SAY

/// Argument "can" of a fault of the store.
constexpr Sentence ways[] = {
    {"get-newer-program", QT_TRANSLATE_NOOP("faults", "Install the newer program.")},
    {"choose-other-file", QT_TRANSLATE_NOOP("faults", "Choose another file.")},
    {"restore-backup",
     QT_TRANSLATE_NOOP("faults", "Open the newest backup instead: it lies beside the store.")},
    {"try-again", QT_TRANSLATE_NOOP("faults", "Try again in a moment.")},
    {"free-space", QT_TRANSLATE_NOOP("faults", "Make room on the disk and try again.")},
    {"copy-elsewhere",
     QT_TRANSLATE_NOOP("faults", "Copy it to a folder that may be written and open it there.")},
};

QString placeText(const Place& place)
{
    QStringList parts;
    if (!place.file.empty())
        parts << text(place.file);
    if (place.line > 0)
        parts << QCoreApplication::translate("faults", "line %1", "of a file").arg(place.line);
    if (place.row > 0)
        parts << QCoreApplication::translate("faults", "row %1", "of a table").arg(place.row);
    if (!place.field.empty())
        parts << text(place.field);
    return parts.isEmpty()
               ? QString()
               : QCoreApplication::translate("faults", "Where: %1.").arg(parts.join(QStringLiteral(", ")));
}

/// The place names the file where the arguments do not; codes inside a file are said in words.
Arguments withFile(const Fault& fault)
{
    Arguments arguments = fault.arguments;
    if (fault.argument("file").empty())
        arguments.push_back({"file", fault.place.file});
    if (fault.code.starts_with("bundle."))
        for (Argument& argument : arguments)
            if (argument.name == "why" || argument.name == "what")
                argument = {argument.name == "why" ? "reason" : "what", utf8(bundleWhyText(argument.value))};   // "why" is a list elsewhere
    return arguments;
}

FaultWords positionFault(const Fault& fault)
{
    FaultWords words;
    const std::string kind = fault.code.substr(std::string_view("position.").size());
    words.what = positionKindText(kind);
    if (words.what.isEmpty())
        return words;
    if (const std::string typed = fault.argument("value"); !typed.empty())
        words.what =
            QCoreApplication::translate("faults", "“%1”: %2", "what was typed, what is wrong with it")
                .arg(text(typed), words.what);
    const std::string suggestion = fault.argument("suggestion");
    if (suggestion == "swapped?")
        words.toDo = QCoreApplication::translate(
            "faults", "The other order of the two numbers would fit. Is it meant so?");
    else if (!suggestion.empty())
        words.toDo = QCoreApplication::translate("faults", "Is %1 meant?", "a proposed position")
                         .arg(text(suggestion));
    return words;
}

} // namespace

QString FaultWords::all() const
{
    QStringList parts{what, where, kept, toDo};
    parts.removeAll(QString());
    return parts.join(QLatin1Char(' '));
}

FaultWords faultWords(const Fault& fault)
{
    FaultWords words;
    for (const FaultSentence& entry : faults) {
        if (fault.code != entry.code)
            continue;
        const auto said = [&](const char* english) {
            return *english ? filled(QCoreApplication::translate("faults", english), withFile(fault), nullptr)
                            : QString();
        };
        words = {said(entry.what), {}, said(entry.kept), said(entry.toDo)};
        if (fault.code == "decide.may-not")
            words.what = words.what + QLatin1Char(' ') + mayNotText(fault.argument("why"));
        break;
    }
    if (words.what.isEmpty() && fault.code.starts_with("position."))
        words = positionFault(fault);
    if (words.what.isEmpty())
        return words;
    words.where = placeText(fault.place);
    if (const QString way = sentence(ways, "faults", fault.argument("can")); !way.isEmpty())
        words.toDo = way;
    return words;
}

QString faultText(const Fault& fault)
{
    return faultWords(fault).all();
}

} // namespace cupule::ui

// What the checks on a visit have to say, in sentences.

#include "ui/bridge/words.h"

#include <QCoreApplication>

#include "core/base/text.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_detail.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("findings", text)                                                            \
    }
constexpr Sentence findings[] = {
    // the visit
    SAY("date.missing", "The visit has no date."),
    SAY("date.unreadable", "“{typed}” could not be read as a date. Type day, month and year."),
    SAY("date.future", "The date {date} is after today, {today}."),
    SAY("date.long-ago", "The date {date} is {years} years ago. Is the year right?"),
    SAY("observer.missing", "Nobody is named as the observer."),
    SAY("companion.is-observer", "The observer is also listed as a companion."),
    SAY("tree.missing", "The visit belongs to no tree."),
    SAY("tree.moved", "This position is {metres} from where tree {tree} stands, more than both uncertainties "
                      "explain. Is it the same tree?"),
    SAY("visit.empty", "Nothing is entered: no answer, no character, no photo, no note."),
    SAY("visit.repeats", "You entered the same answers for this tree on {date} already."),
    SAY("visit.same-day",
        "This tree has another visit of yours on {date}, with other answers. Which one is right?"),
    // positions
    SAY("position.missing", "Neither the visit nor the tree has a position."),
    SAY("position.impossible", "“{typed}” is not a place on the globe."),
    SAY("position.null-island", "The position is 0, 0, which is in the sea. It was most likely never set."),
    SAY("position.coarse", "The position is uncertain by {metres}; up to {limitMetres} is useful. Give a "
                           "finer reference if you can."),
    SAY("position.off-area", "The position {latitude}, {longitude} lies outside the area of this programme."),
    SAY("position.outside-site", "This position is {metres} outside the boundary of {site}."),
    // the host
    SAY("host.contradicted", "Something speaks against a chestnut: {characters}. Look once more, or say that "
                             "it could not be judged."),
    SAY("host.not-shown",
        "No photo shows a character of the chestnut. The verifier needs one: leaf, husk or bud."),
    SAY("character.ground-not-asked",
        "It lay on the ground. Could another tree of that kind near by have dropped it?"),
    SAY("character.hard", "{value} {unit} is not possible for {character}: {least} to {most} {unit}."),
    SAY("character.twice", "{character} is answered twice. Only the first answer counts."),
    SAY("character.unknown",
        "The protocol knows no character “{character}”. The answer is kept and counts for nothing."),
    SAY("character.state-unknown",
        "The protocol knows no answer “{state}” to {character}. It is kept and counts for nothing."),
    // what was seen
    SAY("sign.none-and-seen", "{sign} is answered as seen and also as having none on the tree."),
    SAY("sign.counted-not-seen", "{sign} has a number but is not answered as seen."),
    SAY("sign.seen-none-counted", "{sign} is answered as seen, with a count of 0."),
    SAY("sign.twice", "{sign} is answered twice. Only the first answer counts."),
    SAY("sign.unknown", "The protocol knows no sign “{sign}”. The answer is kept and counts for nothing."),
    SAY("sign.computed", "{sign} is worked out by the program, not answered."),
    SAY("sign.laboratory", "{sign} needs a laboratory report. Nothing is cut open in the field."),
    SAY("sign.on-other-tree", "{sign} is claimed on a tree that is not a host, by {characters}."),
    SAY("sign.points-elsewhere",
        "{sign} belongs to another kind of tree. Go through the host key once more."),
    SAY("gall.on-other-tree", "A gall is claimed on a tree that is not a host, by {characters}. It counts "
                              "for nothing until this is settled."),
    SAY("gall.which",
        "A gall was counted or described, but no gall line is answered as seen. Which gall was it?"),
    SAY("gall.which-year", "Is the dry gall on this year’s wood or on older wood? Write it into the note."),
    SAY("gall.no-evidence", "A gall needs evidence: at least one photo, or a sample taken with leave."),
    SAY("gall.photo-unmarked", "No photo is marked as showing {signs}."),
    SAY("gall.few-photos",
        "Photos: {photos}. Three are best: the whole tree, the host, and the gall with a ruler."),
    SAY("gall.host-open", "A gall is seen, but the tree is not settled as a chestnut. Lacking: {lacking}."),
    SAY("gall-size.unusual", "{millimetres} is an unusual size for a gall. Is the unit right?"),
    SAY("gall-size.hard",
        "{millimetres} is not possible for a gall: {leastMillimetres} to {mostMillimetres}."),
    SAY("measure.unusual", "{value} {unit} is unusual for {sign}: usual is {least} to {most} {unit}."),
    SAY("measure.hard", "{value} {unit} is not possible for {sign}: {least} to {most} {unit}."),
    SAY("measure.error",
        "The error of a measurement must be a number below the measurement itself; here it is {error}."),
    SAY("count.impossible", "A count of {count} is not possible."),
    SAY("count.many", "A count of {count} is a great many. Is it a count?"),
    SAY("count.class-unknown",
        "The protocol knows no class “{class}” of counts. It is kept and counts for nothing."),
    SAY("distortion.no-gall", "{sign} without a gall is not a find: frost, insects and viruses do it too. "
                              "Look for a lump at the base of the leaf."),
    SAY("disease.own-route",
        "{sign} is a sign of a disease, not of the gall wasp. Report it by its own route."),
    // nothing seen
    SAY("nothing.incomplete",
        "Not every gall line in season is answered, so this is not yet “nothing seen”. Open: {signs}."),
    SAY("nothing.not-judged",
        "Could not be judged: {signs}. So this is not “nothing seen”. Say why in the note."),
    SAY("nothing.no-crown",
        "Nothing was seen, and none of the crown could be seen. Is the share of the crown right?"),
    SAY("nothing.host-open",
        "The tree is not settled as a chestnut, so “nothing seen” is worth {worth} at most."),
    SAY("nothing.not-host", "The tree is not a host, so “nothing seen” is worth {worth}."),
    SAY("nothing.after-find", "A find on this tree was accepted on {date}. “Nothing seen” does not undo it."),
    SAY("effort.missing",
        "The minutes of looking are not entered. Without them “nothing seen” is worth {worth}."),
    SAY("effort.short", "{minutes} at a tree is short: usual is {leastMinutes} to {mostMinutes}."),
    SAY("effort.long", "{minutes} at a tree is long: usual is {leastMinutes} to {mostMinutes}."),
    SAY("effort.hard", "{value} is not possible here."),
    // season
    SAY("shift.beyond-limit", "Leafing moved by {days} days, more than the {limitDays} that count. The "
                              "calendar is moved by {limitDays}; ask the verifier."),
    SAY("shift.unsourced",
        "The season is moved by {days} days. Say who saw the chestnuts leafing, and on which trees."),
    // photos
    SAY("photo.undated", "The photo {name} carries no date of taking."),
    SAY("photo.other-day", "The photo {name} was taken on {taken}, the visit was on {date}. Does it belong here?"),
    SAY("photo.other-time", "The photo {name} was taken {minutes} from the time of the visit. Does it belong here, or "
                            "is the camera’s clock wrong?"),
    SAY("photo.other-place",
        "This position is {metres} from the photo’s, {name}. Does the photo belong here?"),
    SAY("photo.used-twice", "This photo is also used for tree {otherTree} on {otherDate}."),
    // leaving the place
    SAY("hygiene.open", "Not confirmed clean before leaving: {items}."),
    SAY("hygiene.left-before-visit", "The place was left at {left}, before the visit began at {time}."),
    // where finds are
    SAY("find.first", "There is no accepted find yet. This would be the first: tell the authority at once, "
                      "leave the gall on the tree."),
    SAY("find.far", "The nearest accepted find is {metres} away; spread explains {explainedMetres} "
                    "(flights since: {years}). This is urgent, not wrong."),
};
#undef SAY

/// "observations/S02/measure" gives "S02" for "observations".
std::string idInPath(const std::string& path, std::string_view noun)
{
    const std::vector<std::string> parts = split(path, '/');
    return parts.size() >= 2 && parts[0] == noun ? parts[1] : std::string();
}

} // namespace

QString findingText(const Finding& finding, const Pack* pack)
{
    if (QString custody = custodySentence(finding, pack); !custody.isEmpty())
        return custody;
    for (const Argument& argument : finding.arguments)
        if (argument.name == "words") // the protocol's own question
            return text(argument.value);
    const char* english = sentenceOf(findings, finding.code);
    if (!english)
        return {};
    Arguments arguments = finding.arguments;
    arguments.push_back({"sign", utf8(signName(idInPath(finding.field, "observations"), pack))});
    arguments.push_back({"character", utf8(characterName(idInPath(finding.field, "characters"), pack))});
    return sentenceStart(filled(QCoreApplication::translate("findings", english), arguments, pack));
}

QString severityWord(Severity severity)
{
    switch (severity) {
    case Severity::stop:
        return QCoreApplication::translate("words", "stop", "severity of a finding: it blocks handing in");
    case Severity::ask:
        return QCoreApplication::translate("words", "question", "severity of a finding");
    case Severity::note:
        break;
    }
    return QCoreApplication::translate("words", "note", "severity of a finding");
}

} // namespace cupule::ui

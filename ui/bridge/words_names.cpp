// Words for states, roles and the other short stable names.

#include <QCoreApplication>

#include "core/record/names.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("names", text)                                                               \
    }
constexpr Sentence names[] = {
    SAY("state/draft", "draft"),
    SAY("state/submitted", "handed in"),
    SAY("state/accepted", "accepted"),
    SAY("state/rejected", "rejected"),
    SAY("state/returned", "returned"),
    SAY("sample/collected", "collected"),
    SAY("sample/sealed", "sealed"),
    SAY("sample/moving", "moving"),
    SAY("sample/received", "received"),
    SAY("sample/examined", "examined"),
    SAY("sample/disposed", "disposed of"),
    SAY("sample/closed", "closed, whole"),
    SAY("sample/closed-with-break", "closed with a break"),
    SAY("sample/void", "void"),
    SAY("answer/open", "not answered"),
    SAY("answer/seen", "seen"),
    SAY("answer/not-seen", "not seen"),
    SAY("answer/not-judged", "can’t be judged"),
    SAY("confirmed/open", "not confirmed"),
    SAY("confirmed/done", "clean"),
    SAY("confirmed/none-used", "none used"),
    SAY("role/volunteer", "volunteer"),
    SAY("role/sample-handler", "sample handler"),
    SAY("role/trainer", "trainer"),
    SAY("role/verifier", "verifier"),
    SAY("role/office", "office"),
    SAY("outcome/accept", "accepted"),
    SAY("outcome/reject", "rejected"),
    SAY("outcome/return", "returned"),
    SAY("outcome/withdraw", "withdrawn"),
    SAY("outcome/reopen", "reopened"),
    SAY("custody/cut", "cut"),
    SAY("custody/inner-bag", "inner bag closed"),
    SAY("custody/outer-bag", "outer bag closed"),
    SAY("custody/on-site", "confirmed before leaving"),
    SAY("custody/hand-over", "handed over"),
    SAY("custody/receipt", "received"),
    SAY("custody/result", "result"),
    SAY("custody/disposal", "disposed of"),
    SAY("custody/close", "closed"),
    SAY("custody/void", "void"),
    SAY("giver/owner", "owner"),
    SAY("giver/occupier", "occupier"),
    SAY("giver/authority", "authority"),
    SAY("scope/enter", "enter"),
    SAY("scope/photograph", "photograph"),
    SAY("scope/sample", "take samples"),
    SAY("scope/move", "move material"),
    SAY("scope/pass-on", "pass on"),
    SAY("link/tree", "tree"),
    SAY("link/cut", "cut"),
    SAY("link/inner-bag", "inner bag"),
    SAY("link/outer-bag", "outer bag"),
    SAY("link/hands", "hands"),
    SAY("link/laboratory", "laboratory"),
    SAY("link/result", "result"),
    SAY("link/disposal", "disposal"),
    SAY("summary/empty", "nothing entered yet"),
    SAY("summary/nothing-seen", "nothing seen"),
    SAY("summary/gall", "green galls"),
    SAY("summary/older-gall", "older dry galls"),
    SAY("summary/not-host", "not a chestnut"),
    SAY("summary/other-signs", "other signs"),
    SAY("summary/incomplete", "not complete yet"),
};

constexpr Sentence queue[] = {
    SAY("new-ground", "A gall in new ground: two verifiers decide."),
    SAY("one-of-two", "One of two has decided; yours is the second look."),
    SAY("conflict", "Two decisions disagree. A third person decides."),
    SAY("fields-apart", "Two laptops say different things in the same field."),
    SAY("positive", "A gall, where finds are known."),
    SAY("answered", "Returned before, now answered."),
    SAY("doubtful-null", "“Nothing seen”, with questions open."),
    SAY("batch-failed", "“Nothing seen”; the batch it was in did not pass its blind audit."),
    SAY("routine-null", "“Nothing seen”, nothing unusual."),
    SAY("in-batch", "“Nothing seen”, in a batch that waits for its blind audit."),
    SAY("other", "Neither a gall nor “nothing seen”."),
    SAY("decided", "It does not wait: it has been decided."),
};

constexpr Sentence mayNot[] = {
    SAY("no-role", "Your profile does not have the role of a verifier."),
    SAY("observer", "You are the observer."),
    SAY("companion", "You were there as a companion."),
    SAY("trainer", "You were there as the trainer."),
    SAY("landowner", "The land is yours."),
    SAY("may-not-decide-for", "The office has set that you and the observer do not decide for each other."),
    SAY("decided-before", "You have decided on this revision already."),
    SAY("first-of-two", "You were the first of the two. Somebody else gives the second look."),
    SAY("last-decision", "You gave the last decision. A reopened record goes to somebody else."),
};

constexpr Sentence proofs[] = {
    SAY("hash", "the line does not follow from the line before it"),
    SAY("gap", "a line is missing"),
    SAY("content", "the record is not what the line says"),
    SAY("commitment", "the personal data is not what the line says"),
    SAY("shorter-than-seen", "the chain is shorter than this device remembers"),
};

constexpr Sentence health[] = {
    SAY("page", "A page of the file is damaged."),
    SAY("schema", "The form of the file is not the one that this program makes."),
    SAY("media-unused", "A picture lies in the media folder that no record names."),
    SAY("foreign-key", "Something points to a record that is not there."),
    SAY("invariant", "Something stands in the store that must not."),
    SAY("reference", "A record names another that is not there."),
    SAY("media-missing", "A picture is missing from the media folder."),
    SAY("media-damaged", "A picture in the media folder is not the one taken in."),
    SAY("journal", "The journal does not hold."),
    SAY("search", "The search text does not agree with the records."),
    SAY("shorter", "The store knows less than this device remembers."),
};

constexpr Sentence advice[] = {
    SAY("restore-backup", "Open the newest backup and compare."),
    SAY("find-picture", "Look for the picture in a backup or on the camera and take it in again."),
    SAY("tell-office", "Tell the office before you go on."),
    SAY("rebuild", "It can be worked out again: no record is concerned."),
    SAY("none", "Nothing needs to be done."),
};
#undef SAY

QString named(const char* family, std::string_view code)
{
    return sentence(names, "names", std::string(family) + std::string(code));
}

} // namespace

QString stateWord(RecordState state)
{
    return named("state/", name(state));
}
QString sampleStateWord(SampleState state)
{
    return named("sample/", name(state));
}
QString answerWord(Answer answer)
{
    return named("answer/", name(answer));
}
QString confirmedWord(Confirmed value)
{
    return named("confirmed/", name(value));
}
QString roleWord(Role role)
{
    return named("role/", name(role));
}
QString outcomeWord(Outcome outcome)
{
    return named("outcome/", name(outcome));
}
QString custodyKindWord(CustodyKind kind)
{
    return named("custody/", name(kind));
}
QString leaveGiverWord(LeaveGiver giver)
{
    return named("giver/", name(giver));
}
QString leaveScopeWord(LeaveScope scope)
{
    return named("scope/", name(scope));
}
QString linkWord(const std::string& kind)
{
    return named("link/", kind);
}
QString summaryWord(const std::string& code)
{
    return named("summary/", code);
}
QString personWords(const Person& person)
{
    if (person.name.empty() || person.name == person.code)
        return person.code.empty() ? QCoreApplication::translate("names", "somebody") : text(person.code);
    return text(person.name) + QStringLiteral(" (") + text(person.code) + QLatin1Char(')');
}

QString reasonsText(const std::vector<std::string>& reasons, const Pack& pack)
{
    QStringList words;
    for (const std::string& id : reasons)
        if (const Reason* reason = pack.reason(id))
            words << text(reason->sentence);
    return words.join(QLatin1Char(' '));
}

QString decisionText(const Decision& decision, const Person& by, const Pack& pack)
{
    QStringList words{outcomeWord(decision.outcome) + (decision.laboratory ? QCoreApplication::translate("names", " on report %1").arg(text(decision.reportNumber)) : QString())
                      + QStringLiteral(", ") + personWords(by) + QStringLiteral(", ") + momentText(decision.at) + QLatin1Char('.')};
    words << reasonsText(decision.reasons, pack) << text(decision.remark);
    words.removeAll(QString());
    return words.join(QLatin1Char(' '));
}

QString queueText(const std::string& code)
{
    return sentence(queue, "names", code);
}
QString mayNotText(const std::string& code)
{
    return sentence(mayNot, "names", code);
}
QString proofText(const std::string& why)
{
    return sentence(proofs, "names", why);
}
QString healthText(const std::string& code)
{
    return sentence(health, "names", code);
}
QString healthAdviceText(const std::string& code)
{
    return sentence(advice, "names", code);
}

QString basisWord(Basis basis)
{
    switch (basis) {
    case Basis::read:
        return QCoreApplication::translate("names", "read in the source");
    case Basis::secondHand:
        return QCoreApplication::translate("names", "read second hand");
    case Basis::judgement:
        return QCoreApplication::translate("names", "a judgement, no published figure");
    case Basis::commonPractice:
        return QCoreApplication::translate("names", "common practice, no source");
    case Basis::memory:
        break;
    }
    return QCoreApplication::translate("names", "from memory, unverified");
}

} // namespace cupule::ui

// What is wrong in a protocol pack.

#include <QCoreApplication>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("pack", text)                                                                \
    }
constexpr Sentence faults[] = {
    SAY("pack.syntax", "this is not JSON"),
    SAY("pack.too-deep", "it is nested more than 24 levels deep"),
    SAY("pack.duplicate-member", "the member stands twice; the first one counts"),
    SAY("pack.missing", "a member is missing"),
    SAY("pack.type", "the value is of another type than it must be"),
    SAY("pack.empty", "it holds nothing"),
    SAY("pack.unknown-member", "the member is not known"),
    SAY("pack.unknown-value", "the word is none of those that may stand here"),
    SAY("pack.range", "the number is outside its range"),
    SAY("pack.length", "the list has another length than it must have"),
    SAY("pack.letter", "the letter is none of A, B, C and 0"),
    SAY("pack.date", "there is no such day"),
    SAY("pack.duplicate", "it stands twice"),
    SAY("pack.dangling", "the name points nowhere"),
    SAY("pack.region-missing", "a region is missing where all must be named"),
    SAY("pack.order", "the values are in the wrong order"),
    SAY("pack.alias-form", "an alias must be in small letters without blanks around it"),
    SAY("pack.mark", "the mark does not fit the kind or the character"),
    SAY("pack.no-limit", "it counts only above a limit, and no limit is given"),
    SAY("pack.host-ruled-out", "a host shows a state that rules the host out"),
    SAY("pack.no-host", "no kind is a host"),
    SAY("pack.too-many", "there are more than 64 kinds"),
    SAY("pack.no-value", "a value stands where there is no unit"),
    SAY("pack.not-on-ground", "months on the ground stand where it is not looked for on the ground"),
    SAY("pack.no-end", "the window has no end, and the sign does not stay"),
    SAY("pack.group", "an earlier generation that is no gall"),
    SAY("pack.checklist", "what is never answered stands on the checklist, or the other way round"),
};
#undef SAY

} // namespace

QString packFaultText(const PackFault& fault)
{
    const QString what = sentence(faults, "pack", fault.code);
    if (what.isEmpty())
        return {};
    const QString detail = fault.detail.empty() ? QString() : QStringLiteral(" (%1)").arg(text(fault.detail));
    return QCoreApplication::translate("pack", "%1: %2%3.", "path in the pack, what is wrong, detail")
        .arg(text(fault.path), what, detail);
}

} // namespace cupule::ui

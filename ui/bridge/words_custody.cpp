// What the chain of a sample lacks, what is broken in it, what must be known about it.

#include "ui/bridge/words.h"

#include <QCoreApplication>

#include "core/base/text.h"
#include "ui/bridge/words_detail.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

struct CustodyWords {
    const char* code;
    const char* brief; ///< what would close the link, or what is broken: a few words
    const char* sentence;
};

#define SAY(code, brief, text)                                                                               \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("custody", brief), QT_TRANSLATE_NOOP("custody", text)                        \
    }
constexpr CustodyWords custody[] = {
    SAY("custody.leave-owner", "leave of the owner or occupier",
        "No leave of the owner or occupier covers {day}: {lacking}. {why}"),
    SAY("custody.leave-authority", "leave of the authority",
        "No leave of the authority covers {day}: {lacking}. {why} Tell the authority."),
    SAY("custody.host-ruled-out", "the tree is not a host",
        "The tree is not a host. No sample is opened on it; one already taken goes on to its disposal."),
    SAY("custody.number", "sample number", "The sample has no number that its check character proves."),
    SAY("custody.plant-part", "plant part", "The plant part is not named."),
    SAY("custody.collector", "who took it", "Nobody is named as having taken the sample."),
    SAY("custody.cut", "when and by whom it was cut", "It is not written down when and by whom it was cut."),
    SAY("custody.cut-time", "time of cutting", "The time of cutting is missing."),
    SAY("custody.pieces", "number of pieces", "The number of pieces taken is missing."),
    SAY("custody.inner-bag", "inner bag", "There is no inner bag."),
    SAY("custody.inner-bag-number", "number of the inner bag", "The number of the inner bag is missing."),
    SAY("custody.inner-bag-time", "closing time of the inner bag",
        "The time at which the inner bag was closed is missing."),
    SAY("custody.outer-bag", "outer bag", "There is no outer bag."),
    SAY("custody.outer-bag-number", "number of the outer bag", "The number of the outer bag is missing."),
    SAY("custody.outer-bag-time", "closing time of the outer bag",
        "The time at which the outer bag was closed is missing."),
    SAY("custody.outer-bag-seal", "seal of the outer bag", "The outer bag has no seal number."),
    SAY("custody.same-bag", "two different bag numbers",
        "Inner and outer bag have the same number. Two bags have two numbers."),
    SAY("custody.not-confirmed-on-site", "double-bagging confirmed at the tree",
        "It is not confirmed that both bags were closed before leaving the tree."),
    SAY("custody.on-site-time", "time of the confirmation",
        "The time at which double-bagging was confirmed is missing."),
    SAY("custody.hygiene-clothes", "clothes clean", "Clothes are not confirmed clean before leaving."),
    SAY("custody.hygiene-boots", "boots clean", "Boots are not confirmed clean before leaving."),
    SAY("custody.hygiene-vehicle", "vehicle clean, or none used",
        "The vehicle is not confirmed clean, nor is it said that none was used."),
    SAY("custody.hygiene-tools", "tools clean, or none used",
        "Tools are not confirmed clean, nor is it said that none were used."),
    SAY("custody.hand-over-from", "who gave it", "Line {line}: nobody is named as having given it."),
    SAY("custody.hand-over-to", "who took it over", "Line {line}: nobody is named as having taken it over."),
    SAY("custody.hand-over-out", "time out", "Line {line}: the time “out” is missing."),
    SAY("custody.hand-over-in", "time in", "Line {line}: the time “in” is missing. Ask whoever took it."),
    SAY("custody.hand-over-seal", "seal read off the bag",
        "Line {line}: the seal number was not read off the bag."),
    SAY("custody.hand-over-seal-whole", "whether the seal was whole",
        "Line {line}: it is not said whether the seal was whole."),
    SAY("custody.no-receipt", "receipt by the laboratory",
        "The laboratory has not received it yet, or nobody has written when."),
    SAY("custody.receipt-from", "from whom the laboratory had it",
        "Line {line}: it is not said from whom the laboratory had it."),
    SAY("custody.receipt-by", "who received it", "Line {line}: nobody is named as having received it."),
    SAY("custody.receipt-in", "time of receipt", "Line {line}: the time of receipt is missing."),
    SAY("custody.receipt-seal", "seal read on receipt",
        "Line {line}: the seal number was not read on receipt."),
    SAY("custody.receipt-seal-whole", "whether the seal was whole on receipt",
        "Line {line}: it is not said whether the seal was whole on receipt."),
    SAY("custody.receipt-pieces", "pieces counted on receipt",
        "Line {line}: the pieces were not counted on receipt."),
    SAY("custody.result", "result of the laboratory", "There is no result yet."),
    SAY("custody.result-finding", "found, not found or not examined",
        "Line {line}: the result says neither found, not found nor not examined."),
    SAY("custody.result-report", "number of the report",
        "Line {line}: the number of the laboratory’s report is missing."),
    SAY("custody.result-time", "date of the result", "Line {line}: the date of the result is missing."),
    SAY("custody.result-signed", "who signed the result",
        "Line {line}: nobody is named as having signed the result."),
    SAY("custody.disposal", "disposal", "It is not written down what became of the material."),
    SAY("custody.disposal-kind", "destroyed, kept or returned",
        "Line {line}: it is not said whether the material was destroyed, kept as a voucher or returned."),
    SAY("custody.disposal-time", "time of disposal", "Line {line}: the time of disposal is missing."),
    SAY("custody.disposal-order", "written instruction",
        "Line {line}: the number of the written instruction is missing. Nothing is destroyed without one."),
    SAY("custody.disposal-method", "how it was destroyed",
        "Line {line}: it is not said how it was destroyed."),
    SAY("custody.disposal-witness", "witness", "Line {line}: no witness is named."),
    SAY("custody.disposal-place", "where the voucher is kept",
        "Line {line}: it is not said where the voucher is kept."),
    SAY("custody.disposal-to", "to whom it was returned",
        "Line {line}: it is not said to whom it was returned."),
    SAY("custody.close-reason", "reason for closing with a break",
        "Line {line}: closing with a break needs a reason."),
    SAY("custody.close-second-person", "second person for closing with a break",
        "Line {line}: closing with a break needs a second person."),
    SAY("custody.void-reason", "reason for voiding it", "A void sample needs a reason."),
    // broken for good
    SAY("custody.pieces-differ", "pieces differ",
        "Line {line}: {taken} pieces were taken, {counted} were counted here."),
    SAY("custody.bag-before-cut", "bag closed before the cut",
        "Line {line}: the inner bag was closed before anything was cut."),
    SAY("custody.outer-before-inner", "outer bag closed first",
        "Line {line}: the outer bag was closed {minutes} before the inner one."),
    SAY("custody.same-closing-time", "both bags closed at one time",
        "Line {line}: both bags carry the same closing time."),
    SAY("custody.bag-used-before", "bag number used before",
        "Line {line}: bag {bag} is on another sample too."),
    SAY("custody.sample-number-twice", "number of another sample",
        "The number {number} is also that of a sample from tree {tree}. Neither is renumbered: write seal and bags beside the number on "
        "every paper, and tell the laboratory and the office."),
    SAY("custody.seal-used-before", "seal number used before",
        "Line {line}: seal {seal} is on another sample too."),
    SAY("custody.late-bagging", "bagged after leaving",
        "Line {line}: the bag was closed {minutes} after the tree was left."),
    SAY("custody.not-double-bagged", "not double-bagged",
        "Line {line}: it was not double-bagged at the tree. It can never close; end it as void, dispose of "
        "it and record that."),
    SAY("custody.confirmed-after-leaving", "confirmed after leaving",
        "Line {line}: double-bagging was confirmed after the place was left at {left}."),
    SAY("custody.confirmed-by-correction", "confirmed only by a correction",
        "Line {line}: double-bagging was first denied and confirmed by a correction."),
    SAY("custody.same-person", "giver and taker are one person", "Line {line}: {name} both gives and takes."),
    SAY("custody.not-joined", "hands do not join", "Line {line}: {giver} gives it, but {holder} held it."),
    SAY("custody.in-before-out", "in before out", "Line {line}: it came in {minutes} before it went out."),
    SAY("custody.gap", "gap between out and in",
        "Line {line}: {minutes} lie between “out” and “in”, and no way of travel is named."),
    SAY("custody.out-before-in", "given before it was held",
        "Line {line}: it was given {minutes} before its giver had it."),
    SAY("custody.seal-differs", "seal differs", "Line {line}: seal {read} was read; {put} was put on."),
    SAY("custody.seal-broken", "seal not whole", "Line {line}: the seal was not whole."),
    SAY("custody.result-before-receipt", "result before receipt",
        "Line {line}: the result is older than the receipt."),
    SAY("custody.host-differs", "laboratory names another tree",
        "Line {line}: the laboratory names {laboratory}, which is no host; {believed} was believed."),
    // to be known
    SAY("custody.hours-warn", "time since the seal",
        "{hours} have gone by since the seal; it should be with the laboratory within {limitHours}."),
    SAY("custody.hours-ask", "long since the seal",
        "{hours} have gone by since the seal, more than {limitHours}. Ask the laboratory whether it still "
        "wants it."),
    SAY("custody.hours-rearing", "too long for rearing",
        "{hours} have gone by since the seal, more than {limitHours}: it is void for rearing."),
    SAY("custody.written-afterwards", "written afterwards",
        "Line {line} was written {hours} afterwards, and says so."),
    SAY("custody.written-afterwards-unsaid", "written afterwards, without saying so",
        "Line {line} was written {hours} afterwards without saying why. A line that corrects it can say why."),
    SAY("custody.number-twice", "line number twice", "Line {line} stands there twice. Two devices wrote it."),
    SAY("custody.correction-unknown", "corrects no line",
        "Line {line} corrects line {corrects}, which does not exist."),
    SAY("custody.corrected-unexplained", "corrected without a reason",
        "Line {line} corrects line {corrects} without a reason."),
    SAY("custody.corrected", "corrected", "Line {line} corrects line {corrects}."),
    SAY("custody.line-twice", "said twice",
        "Line {line} says once more what an earlier line says, and does not correct it."),
    SAY("custody.future", "time in the future", "Line {line} carries a time that has not come yet."),
    SAY("custody.temperature", "temperature", "Line {line}: {celsius} °C is outside the usual 2 to 8 °C."),
    SAY("custody.found", "found",
        "The laboratory found it. Tell the authority, and look at the visit again."),
    SAY("custody.disposed-before-result", "disposed of before the result",
        "Line {line}: it was disposed of before there was a result."),
    SAY("custody.host-named-otherwise", "laboratory names another kind",
        "The laboratory names {laboratory}; {believed} was believed."),
    SAY("custody.visit-rejected", "visit rejected",
        "The visit was rejected. The sample goes on to its disposal."),
    SAY("custody.close-not-good", "closed too early",
        "Line {line} closes the sample, but it may not close yet: see what is missing."),
};
#undef SAY

const CustodyWords* wordsOf(const std::string& code)
{
    for (const CustodyWords& words : custody)
        if (code == words.code)
            return &words;
    return nullptr;
}

constexpr Sentence lineParts[] = {
    {"out", QT_TRANSLATE_NOOP("custody", "time")},
    {"in", QT_TRANSLATE_NOOP("custody", "time in")},
    {"from", QT_TRANSLATE_NOOP("custody", "given by")},
    {"to", QT_TRANSLATE_NOOP("custody", "taken by")},
    {"bag", QT_TRANSLATE_NOOP("custody", "bag number")},
    {"seal", QT_TRANSLATE_NOOP("custody", "seal")},
    {"sealWhole", QT_TRANSLATE_NOOP("custody", "seal whole")},
    {"pieces", QT_TRANSLATE_NOOP("custody", "pieces")},
    {"celsius", QT_TRANSLATE_NOOP("custody", "temperature")},
    {"confirmed", QT_TRANSLATE_NOOP("custody", "double-bagged")},
    {"hygiene", QT_TRANSLATE_NOOP("custody", "debris")},
    {"reportNumber", QT_TRANSLATE_NOOP("custody", "report number")},
    {"finding", QT_TRANSLATE_NOOP("custody", "finding")},
    {"host", QT_TRANSLATE_NOOP("custody", "host")},
    {"signedBy", QT_TRANSLATE_NOOP("custody", "signature")},
    {"disposal", QT_TRANSLATE_NOOP("custody", "what became of it")},
    {"order", QT_TRANSLATE_NOOP("custody", "instruction")},
    {"method", QT_TRANSLATE_NOOP("custody", "method")},
    {"place", QT_TRANSLATE_NOOP("custody", "place")},
    {"reason", QT_TRANSLATE_NOOP("custody", "reason")},
    {"secondPerson", QT_TRANSLATE_NOOP("custody", "second person")},
    {"number", QT_TRANSLATE_NOOP("custody", "number")},
    {"plantPart", QT_TRANSLATE_NOOP("custody", "plant part")},
    {"collector", QT_TRANSLATE_NOOP("custody", "collector")},
    {"owner", QT_TRANSLATE_NOOP("custody", "owner or occupier")},
    {"authority", QT_TRANSLATE_NOOP("custody", "authority")},
};

constexpr Sentence lineKinds[] = {
    {"sample", QT_TRANSLATE_NOOP("custody", "sample")},
    {"cut", QT_TRANSLATE_NOOP("custody", "cut")},
    {"inner-bag", QT_TRANSLATE_NOOP("custody", "inner bag")},
    {"outer-bag", QT_TRANSLATE_NOOP("custody", "outer bag")},
    {"on-site", QT_TRANSLATE_NOOP("custody", "before leaving the tree")},
    {"hand-over", QT_TRANSLATE_NOOP("custody", "hand-over")},
    {"receipt", QT_TRANSLATE_NOOP("custody", "receipt")},
    {"result", QT_TRANSLATE_NOOP("custody", "result")},
    {"disposal", QT_TRANSLATE_NOOP("custody", "disposal")},
    {"close", QT_TRANSLATE_NOOP("custody", "closing")},
    {"void", QT_TRANSLATE_NOOP("custody", "voiding")},
    {"voided", QT_TRANSLATE_NOOP("custody", "voiding")},
    {"leaves", QT_TRANSLATE_NOOP("custody", "leave")},
    {"pieces", QT_TRANSLATE_NOOP("custody", "pieces")},
};

} // namespace

QString custodySentence(const Finding& finding, const Pack* pack)
{
    const CustodyWords* words = wordsOf(finding.code);
    return words ? filled(QCoreApplication::translate("custody", words->sentence), finding.arguments, pack)
                 : QString();
}

QString custodyText(const std::string& code)
{
    const CustodyWords* words = wordsOf(code);
    return words ? QCoreApplication::translate("custody", words->brief) : QString();
}

QString custodyFieldWords(const std::string& path)
{
    const std::vector<std::string> parts = split(path, '/');
    const QString kind = sentence(lineKinds, "custody", parts[0]);
    if (kind.isEmpty() || parts.size() < 2)
        return kind;
    const QString part = parts[1] == "hygiene" && parts.size() > 2
                             ? filled(QStringLiteral("{items}"), {{"items", parts[2]}}, nullptr)
                             : sentence(lineParts, "custody", parts[1]);
    return part.isEmpty() ? kind : kind + QStringLiteral(", ") + part;
}

} // namespace cupule::ui

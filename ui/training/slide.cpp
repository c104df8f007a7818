#include "ui/training/slide.h"

#include <QCoreApplication>

#include "ui/bridge/text.h"
#include "ui/figures/figure_names.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr int leapYear = 2024;
constexpr std::size_t mostOthers = 4;

QString tr(const char* words)
{
    return QCoreApplication::translate("cupule::ui::Slide", words);
}

QStringList linesOf(const std::vector<std::string>& from)
{
    QStringList lines;
    for (const std::string& one : from)
        lines << sentenceStart(text(one));
    return lines;
}

void addText(Slide& slide, const QString& head, const QStringList& lines, bool framed = false)
{
    if (!lines.isEmpty())
        slide.texts.push_back({head, lines, framed});
}

/// As on the season ribbon; nothing for what is not on it.
QColor fillOf(const Sign& sign)
{
    if (sign.group == SignGroup::gall)
        return sign.earlierGeneration ? data::orange : data::green;
    return sign.ribbon == "holes" ? data::purple : sign.ribbon == "adults" ? data::blue : QColor();
}

QString weightWords(const std::string& weight)
{
    if (weight == "strong")
        return tr("Strong evidence: %1");
    if (weight == "supporting")
        return tr("Supports other evidence: %1");
    return weight == "weak" ? tr("Weak by itself: %1") : tr("Another cause: %1");
}

QStringList kindNames(const std::vector<std::string>& kinds, const Pack& pack)
{
    QStringList names;
    for (const std::string& id : kinds)
        if (const Kind* kind = pack.kind(id))
            names << text(kind->commonName.empty() ? kind->name : kind->commonName);
    return names;
}

void describeCharacter(Slide& slide, const WalkStep& step, const Pack& pack)
{
    QStringList own, away;
    for (const StateMeaning& state : step.states) {
        const QString figure = figureForState(step.subject, state.state);
        const QString words = text(state.words);
        if (!state.hosts.empty()) {
            own << sentenceStart(words) + (state.diagnostic ? tr(" (a good character)") : state.ifCounted ? tr(" (good where it was counted)") : QString());
            if (!slide.figure && hasFigure(figure))
                slide.figure = plate(figure);
        } else if (!state.others.empty()) {
            const QStringList names = kindNames(state.others, pack).mid(0, 3);
            away << sentenceStart(words) + QStringLiteral(": ") + listText(names) + (state.rulesOut ? tr(". Never a chestnut") : QString());
            if (hasFigure(figure) && slide.others.size() < mostOthers)
                slide.others.push_back({plate(figure), names.value(0)});
        }
    }
    addText(slide, tr("Look at"), linesOf(step.look));
    addText(slide, tr("On a chestnut"), own);
    addText(slide, tr("On other trees"), away);
    QStringList careful = linesOf(step.cautions);
    if (own.size() > 0)
        careful << tr("One character alone proves no chestnut");
    addText(slide, tr("Be careful"), careful, true);
}

void describeSign(Slide& slide, const WalkStep& step, const Pack& pack)
{
    const Sign* sign = pack.sign(step.subject);
    if (const QString figure = figureForSign(step.subject); hasFigure(figure))
        slide.figure = plate(figure);
    if (sign != nullptr) {
        slide.title = text(sign->shortName);
        slide.more = sentenceStart(text(sign->name));
        slide.fill = fillOf(*sign);
    }
    if (step.unit == "mm") {
        slide.usualMin = step.usualMin;
        slide.usualMax = step.usualMax;
    }
    addText(slide, tr("Look at"), linesOf(partsOf(step.action)));
    QStringList shows;
    const auto reasons = partsOf(step.weightReason);
    for (std::size_t i = 0; i < reasons.size(); ++i)
        shows << (i == 0 ? weightWords(step.weight).arg(text(reasons[i])) : sentenceStart(text(reasons[i])));
    addText(slide, tr("It shows"), shows);
    addText(slide, tr("It does not show"), linesOf(step.mustNotConclude), true);
    QStringList care;
    for (const std::string& caution : step.cautions)
        care << linesOf(partsOf(caution));
    addText(slide, tr("Take care"), care);
}

std::vector<SeasonState> yearOf(const WalkStep& step, const Pack& pack, const WalkPlace& place)
{
    std::vector<SeasonState> days;
    const Sign* sign = pack.sign(step.subject);
    const Character* character = pack.character(step.subject);
    if (step.kind == StepKind::caution)
        return days;
    const CivilDate first = CivilDate::make(leapYear, 1, 1).value();
    const auto in = [&](const std::map<std::string, Months>& months, int month) {
        const auto at = months.find(place.region);
        return at != months.end() && (at->second & (1U << static_cast<unsigned>(month - 1))) != 0;
    };
    for (int day = 0; day < 366; ++day) {
        const CivilDate date{first.days + day};
        if (sign != nullptr)
            days.push_back(seasonOf(*sign, date, {place.region, place.shiftDays}, pack).state);
        else if (character != nullptr)
            days.push_back(in(character->visible, date.month())    ? SeasonState::expected
                           : in(character->onGround, date.month()) ? SeasonState::possible
                                                                   : SeasonState::outOfSeason);
    }
    return days;
}

} // namespace

QString stepName(const WalkStep& step, const Pack& pack)
{
    const Sign* sign = step.kind == StepKind::sign ? pack.sign(step.subject) : nullptr;
    return sentenceStart(text(sign != nullptr ? sign->shortName : step.title));
}

Slide slideOf(const ArrangedStep& arranged, const Pack& pack, const WalkPlace& place)
{
    const WalkStep& step = arranged.step;
    Slide slide;
    slide.title = stepName(step, pack);
    slide.month = place.month;
    if (step.kind == StepKind::character)
        describeCharacter(slide, step, pack);
    else if (step.kind == StepKind::sign)
        describeSign(slide, step, pack);
    else
        for (const QString& line : linesOf(step.cautions)) // each may go on to a page of its own
            addText(slide, QString(), {line});
    slide.year = yearOf(step, pack, place);
    for (const LessonPhoto& photo : arranged.lesson.photos)
        slide.photos.push_back({QString(), text(photo.caption)});
    return slide;
}

} // namespace cupule::ui

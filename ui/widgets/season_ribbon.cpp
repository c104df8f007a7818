#include "ui/widgets/season_ribbon.h"

#include <algorithm>
#include <array>

#include <QAccessible>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/ribbon_painter.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/worth_tile.h"

namespace cupule::ui {

namespace {

constexpr int foldBelow = 720; // px of window height

} // namespace

SeasonRibbon::SeasonRibbon(QWidget* parent) : QWidget(parent), m_today(2026, 6, 11)
{
    setObjectName(QStringLiteral("ribbon"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("season ribbon"));
}

void SeasonRibbon::setPack(const Pack* pack)
{
    m_pack = pack;
    rebuild();
}

void SeasonRibbon::setSeason(const QString& region, std::optional<int> shiftDays)
{
    if (m_region == region && m_shift == shiftDays)
        return;
    m_region = region;
    m_shift = shiftDays;
    rebuild();
}

void SeasonRibbon::setToday(const QDate& today)
{
    const bool otherYear = today.year() != m_today.year();
    m_today = today;
    m_looked.reset();
    if (otherYear)
        rebuild();
    say();
}

void SeasonRibbon::setFolding(Folding folding)
{
    m_folding = folding;
    refold();
}

bool SeasonRibbon::isFolded() const
{
    return m_folded;
}

QDate SeasonRibbon::lookedAt() const
{
    return m_looked.value_or(m_today);
}

void SeasonRibbon::lookAt(const QDate& date)
{
    const QDate kept = QDate(m_today.year(), date.month(),
                             std::min(date.day(), QDate(m_today.year(), date.month(), 1).daysInMonth()));
    if (kept == lookedAt())
        return;
    m_looked = kept == m_today ? std::nullopt : std::optional(kept);
    say();
    Q_EMIT lookedAtChanged(kept);
}

/// Asks the rules for every day of the year, so that bars and words cannot differ from them.
void SeasonRibbon::rebuild()
{
    m_rows.clear();
    m_worth.clear();
    if (m_pack && m_today.isValid()) {
        const SeasonContext moved{utf8(m_region), m_shift.value_or(0)};
        const SeasonContext calendar{utf8(m_region), 0};
        const struct {
            const char* id;
            QString words;
            QColor fill;
        } kinds[] = {
            {"green", tr("green galls"), data::green},
            {"holes", tr("exit holes"), data::purple},
            {"adults", tr("adults"), data::blue},
            {"dry", tr("older dry galls"), data::orange},
        };
        const int days = m_today.daysInYear();
        const CivilDate first = fromDate(QDate(m_today.year(), 1, 1));
        for (const auto& kind : kinds) {
            Row row{QString::fromLatin1(kind.id), kind.words, kind.fill, {}, {}};
            row.days.assign(std::size_t(days), SeasonState::outOfSeason);
            row.calendar = row.days;
            for (const Sign& sign : m_pack->signs) {
                if (sign.ribbon != kind.id)
                    continue;
                for (int day = 0; day < days; ++day) {
                    const CivilDate date{first.days + day};
                    auto& now = row.days[std::size_t(day)];
                    now = std::min(now, seasonOf(sign, date, moved, *m_pack).state);
                    auto& usual = row.calendar[std::size_t(day)];
                    usual = std::min(usual, seasonOf(sign, date, calendar, *m_pack).state);
                }
            }
            m_rows.push_back(std::move(row));
        }
        for (int day = 0; day < days; ++day)
            m_worth.push_back(worthOfDate(CivilDate{first.days + day}, moved, *m_pack));
    }
    say();
    update();
}

QString SeasonRibbon::seenWords(bool shortened) const
{
    const auto day = std::size_t(lookedAt().dayOfYear() - 1);
    QStringList expected, possible;
    for (const Row& row : m_rows) {
        if (row.days[day] == SeasonState::expected)
            expected << row.words;
        else if (row.days[day] == SeasonState::possible)
            possible << row.words;
    }
    if (expected.isEmpty() && possible.isEmpty())
        return m_rows.empty() ? QString() : tr("No sign is in season.");
    if (shortened)
        return sentenceStart(expected.isEmpty() ? tr("%1 possible").arg(listText(possible))
                                                : listText(expected));
    if (expected.isEmpty())
        return sentenceStart(tr("%1 possible.").arg(listText(possible)));
    if (possible.isEmpty())
        return sentenceStart(tr("%1 expected.").arg(listText(expected)));
    return sentenceStart(
        tr("%1 expected, %2 possible.", "signs, signs").arg(listText(expected), listText(possible)));
}

QString SeasonRibbon::worthWords(bool shortened) const
{
    if (m_worth.empty())
        return {};
    const QString meaning = worthWord(m_worth[std::size_t(lookedAt().dayOfYear() - 1)]);
    if (shortened)
        return tr("“nothing seen”: %1", "what it is worth").arg(meaning);
    if (m_looked)
        return tr("“Nothing seen” on %1 is %2.", "date, what it is worth")
            .arg(plainDate(fromDate(*m_looked), m_today.year()), meaning);
    return tr("“Nothing seen” today is %1.", "what it is worth").arg(meaning);
}

QString SeasonRibbon::spoken() const
{
    QStringList parts{dayDate(fromDate(lookedAt())) + QLatin1Char('.'), seenWords(false), worthWords(false),
                      sentenceStart(shiftText(m_shift)) + QLatin1Char('.')};
    parts.removeAll(QString());
    return parts.join(QLatin1Char(' '));
}

void SeasonRibbon::say()
{
    setAccessibleDescription(spoken());
    if (QAccessible::isActive()) {
        QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
        QAccessible::updateAccessibility(&changed);
    }
    update();
}

/// Where the parts lie at this width; which of them have room.
struct SeasonRibbon::Places {
    QRect words, band, tile, worth;
    bool shortened = false; ///< words in their short form
    bool named = false;     ///< row names in the band
};

SeasonRibbon::Places SeasonRibbon::places() const
{
    const QFontMetrics body(font());
    const int pad = scaled(16, font());
    const int em = body.horizontalAdvance(QStringLiteral("n"));
    Places at;
    at.shortened = m_folded || width() < 128 * em;
    const int side = m_folded ? height() - 14 : std::min(height() - 24, scaled(48, font()));
    int left = at.shortened ? 22 * em : 31 * em;
    int right = at.shortened ? body.horizontalAdvance(worthWords(true)) + 2 : 23 * em;
    if (m_folded) {
        const QFontMetrics strong(roleFont(TextRole::strong, font()));
        const int day = strong.horizontalAdvance(shortDate(fromDate(lookedAt()))) + 2 * em + 2;
        const int most = width() * 42 / 100;
        const int whole = day + body.horizontalAdvance(seenWords(false));
        left = whole <= most ? whole : std::min(most, day + body.horizontalAdvance(seenWords(true)) + 2);
    }
    if (width() < 70 * em) // the tile alone, with its words in the tip
        right = 0;
    at.words = QRect(pad, 0, left, height());
    at.worth = QRect(width() - pad - right, 0, right, height());
    const int tileRight = right > 0 ? at.worth.left() - scaled(11, font()) : width() - pad;
    at.tile = QRect(tileRight - side, (height() - side) / 2, side, side);
    const int bandLeft = at.words.right() + pad;
    at.band = QRect(bandLeft, 0, at.tile.left() - scaled(20, font()) - bandLeft, height() - 1);
    at.named = !m_folded && at.band.width() >= 80 * em;
    return at;
}

QSize SeasonRibbon::sizeHint() const
{
    const QFontMetrics small(roleFont(TextRole::small, font()));
    if (m_folded)
        return {800, std::max(44, small.height() + scaled(28, font()))};
    const QFontMetrics body(font());
    const int text = 3 * body.lineSpacing() + scaled(14, font());
    return {800, std::max({76, text, ribbonBandHeight(font())})};
}

QSize SeasonRibbon::minimumSizeHint() const
{
    return {scaled(360, font()), sizeHint().height()};
}

void SeasonRibbon::paintEvent(QPaintEvent*)
{
    const Theme& theme = themeOf(*this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), theme.page);
    painter.fillRect(QRect(0, height() - 1, width(), 1), theme.line);
    const Places at = places();
    paintWords(painter, at);
    RibbonBand band{at.band,  m_today,  m_looked, &m_rows,
                    &m_worth, at.named, m_folded, m_shift.value_or(0) != 0};
    paintRibbonBand(painter, band, theme, font());
    paintWorthPart(painter, at);
    if (hasFocus())
        paintFocusRing(painter, rect().adjusted(1, 1, -1, -2), palette(), 2);
}

void SeasonRibbon::paintWords(QPainter& painter, const Places& at) const
{
    const Theme& theme = themeOf(*this);
    const QFont strong = roleFont(TextRole::strong, font());
    const QFont caption = roleFont(TextRole::caption, font());
    const CivilDate date = fromDate(lookedAt());
    const QString day = at.shortened ? shortDate(date) : dayDate(date);
    painter.setFont(strong);
    painter.setPen(theme.ink);
    const int dayWidth = QFontMetrics(strong).horizontalAdvance(day);
    if (m_folded) {
        painter.drawText(at.words, Qt::AlignVCenter | Qt::AlignLeft, day);
        painter.setFont(font());
        const QRect rest = at.words.adjusted(dayWidth + scaled(14, font()), 0, 0, 0);
        const QString whole = seenWords(false);
        const QFontMetrics metrics(font());
        const QString words = metrics.horizontalAdvance(whole) <= rest.width() ? whole : seenWords(true);
        painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft,
                         metrics.elidedText(words, Qt::ElideRight, rest.width()));
        return;
    }
    const int line = QFontMetrics(font()).lineSpacing();
    const QRect first(at.words.left(), scaled(7, font()), at.words.width(), line + 2);
    painter.drawText(first, Qt::AlignVCenter | Qt::AlignLeft, day);
    painter.setFont(caption);
    painter.setPen(theme.ink2);
    const QString shift = shiftText(m_shift);
    const QRect beside = first.adjusted(dayWidth + scaled(12, font()), 0, 0, 0);
    if (QFontMetrics(caption).horizontalAdvance(shift) <= beside.width())
        painter.drawText(beside, Qt::AlignVCenter | Qt::AlignLeft, shift);
    const QRect below(at.words.left(), first.bottom() + 1, at.words.width(), height() - first.bottom() - 4);
    painter.setFont(font());
    painter.setPen(theme.ink);
    QString words = seenWords(at.shortened);
    if (QFontMetrics(font())
            .boundingRect(QRect(0, 0, below.width(), 9999), Qt::TextWordWrap, words)
            .height() > below.height())
        words = seenWords(true);
    painter.drawText(below, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, words);
}

void SeasonRibbon::paintWorthPart(QPainter& painter, const Places& at) const
{
    if (m_worth.empty())
        return;
    const Theme& theme = themeOf(*this);
    cupule::ui::paintWorth(painter, at.tile, m_worth[std::size_t(lookedAt().dayOfYear() - 1)], font(),
                           palette());
    painter.setFont(roleFont(at.shortened ? TextRole::body : TextRole::caption, font()));
    painter.setPen(theme.ink);
    painter.drawText(at.worth, Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, worthWords(at.shortened));
}

void SeasonRibbon::keyPressEvent(QKeyEvent* event)
{
    const bool month = event->modifiers().testFlag(Qt::ControlModifier);
    const QDate at = lookedAt();
    const QDate first(m_today.year(), 1, 1);
    const QDate last(m_today.year(), 12, 31);
    switch (event->key()) {
    case Qt::Key_Left:
        return lookAt(std::max(first, month ? at.addMonths(-1) : at.addDays(-1)));
    case Qt::Key_Right:
        return lookAt(std::min(last, month ? at.addMonths(1) : at.addDays(1)));
    case Qt::Key_Home:
        return lookAt(m_today);
    case Qt::Key_Escape:
        if (!m_looked) {
            event->ignore();
            return;
        }
        return lookAt(m_today);
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT calendarAsked(at);
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void SeasonRibbon::mouseMoveEvent(QMouseEvent* event)
{
    const QRect band = places().band;
    const QPoint point = event->position().toPoint();
    if (!band.contains(point) || band.width() < 12)
        return lookAt(m_today);
    const int day = (point.x() - band.left()) * m_today.daysInYear() / band.width();
    lookAt(QDate(m_today.year(), 1, 1).addDays(day));
}

void SeasonRibbon::leaveEvent(QEvent*)
{
    if (!hasFocus())
        lookAt(m_today);
}

void SeasonRibbon::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    lookAt(m_today); // words that nobody asked for must not stay
    update();
}

void SeasonRibbon::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event)) {
        updateGeometry();
        say();
    }
}

bool SeasonRibbon::event(QEvent* event)
{
    switch (event->type()) {
    case QEvent::ToolTip:
        QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), spoken(), this);
        return true;
    case QEvent::ParentChange:
    case QEvent::Show:
        window()->installEventFilter(this);
        refold();
        break;
    default:
        break;
    }
    return QWidget::event(event);
}

bool SeasonRibbon::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::Resize && watched == window())
        refold();
    return QWidget::eventFilter(watched, event);
}

void SeasonRibbon::refold()
{
    const bool low = !isWindow() && window()->height() < foldBelow;
    const bool folded = m_folding == Folding::always || (m_folding == Folding::byWindowHeight && low);
    if (folded == m_folded)
        return;
    m_folded = folded;
    updateGeometry();
    update();
}

} // namespace cupule::ui

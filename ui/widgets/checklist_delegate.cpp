#include "ui/widgets/checklist_delegate.h"

#include <algorithm>

#include <QPainter>

#include "ui/bridge/text.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/measure_editor.h"

namespace cupule::ui {

namespace {

int margin(const QFont& font)
{
    return scaled(18, font);
}
int nameLeft(const QFont& font)
{
    return scaled(44, font);
}

QString seasonMark(SeasonState state)
{
    switch (state) {
    case SeasonState::expected:
        return QStringLiteral("sign-expected");
    case SeasonState::possible:
        return QStringLiteral("sign-possible");
    case SeasonState::outOfSeason:
        break;
    }
    return QStringLiteral("sign-out-of-season");
}

} // namespace

ChecklistDelegate::ChecklistDelegate(ChecklistView* view) : QStyledItemDelegate(view), m_view(view) {}

bool ChecklistDelegate::showsEditor(const QModelIndex& index) const
{
    const ChecklistRow& row = m_view->checklist()->row(index);
    return row.kind == ChecklistRow::Kind::sign && row.answer == Answer::seen && !row.measureName.isEmpty() &&
           !row.readOnly && index == m_view->currentIndex();
}

/// What stands in smaller letters behind the name.
QString ChecklistDelegate::aside(const ChecklistRow& row) const
{
    if (row.struck)
        return tr("counts for nothing: not a host");
    if (row.answer == Answer::notSeen && row.noneOnTree)
        return tr("none on the tree");
    if (row.answer == Answer::seen && row.measure) {
        const QString number = numberText(*row.measure, row.wholeNumber ? 0 : 1);
        const QString unit = row.wholeNumber                        ? row.measureName
                             : row.unit == QLatin1String("percent") ? QStringLiteral("%")
                                                                    : row.unit;
        return number + QLatin1Char(' ') + unit;
    }
    return {};
}

bool ChecklistDelegate::wraps(const ChecklistRow& row, int width) const
{
    const QFont& font = m_view->font();
    const int name = QFontMetrics(font).horizontalAdvance(row.words);
    return nameLeft(font) + name + scaled(16, font) + answerStripSize(font).width() + margin(font) > width;
}

/// Heading and what stands at its right need two lines.
bool ChecklistDelegate::headingWraps(const ChecklistRow& row, int width) const
{
    const QFontMetrics metrics(roleFont(TextRole::caption, m_view->font()));
    const int gap = row.aside.isEmpty() ? 0 : scaled(12, m_view->font());
    return metrics.horizontalAdvance(row.words) + gap + metrics.horizontalAdvance(row.aside) >
           width - 2 * margin(m_view->font());
}

int ChecklistDelegate::stripRoom(int width) const
{
    return width - nameLeft(m_view->font()) - margin(m_view->font());
}

int ChecklistDelegate::rowHeight(const ChecklistRow& row, int width) const
{
    const QFont& font = m_view->font();
    const int caption = QFontMetrics(roleFont(TextRole::caption, font)).height();
    if (row.kind == ChecklistRow::Kind::heading || row.kind == ChecklistRow::Kind::fold)
        return std::max(28, QFontMetrics(font).height() + scaled(19, font)) +
               (headingWraps(row, width) ? caption : 0);
    int height = answerStripSize(font, stripRoom(width)).height() + scaled(9, font);
    if (row.season == SeasonState::outOfSeason && !row.reason.isEmpty())
        height += caption;
    if (wraps(row, width))
        height += QFontMetrics(font).height() + scaled(6, font);
    return height;
}

QSize ChecklistDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const
{
    const int width = m_view->viewport()->width();
    int height = rowHeight(m_view->checklist()->row(index), width);
    if (showsEditor(index))
        height += MeasureEditor::heightFor(m_view->font());
    return {std::min(width, 200), height};
}

AnswerCells ChecklistDelegate::cells(const QRect& item, const ChecklistRow& row) const
{
    const QFont& font = m_view->font();
    const int room = stripRoom(item.width());
    const QSize strip = answerStripSize(font, room);
    const int height = rowHeight(row, item.width());
    if (wraps(row, item.width()))
        return answerCells(
            {item.left() + nameLeft(font), item.top() + height - strip.height() - scaled(5, font)}, font,
            room);
    return answerCells(
        {item.right() - margin(font) - strip.width() + 1, item.top() + (height - strip.height()) / 2}, font);
}

QRect ChecklistDelegate::editorRect(const QRect& item) const
{
    const QFont& font = m_view->font();
    const int height = MeasureEditor::heightFor(font);
    return {item.left() + nameLeft(font), item.bottom() - height,
            item.width() - nameLeft(font) - margin(font), height - 2};
}

void ChecklistDelegate::setUnder(const QModelIndex& index, Answer answer)
{
    if (index == m_under && answer == m_underAnswer)
        return;
    const QModelIndex before = m_under;
    m_under = index;
    m_underAnswer = answer;
    m_view->update(before);
    m_view->update(index);
}

void ChecklistDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const
{
    const ChecklistRow& row = m_view->checklist()->row(index);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool current = index == m_view->currentIndex();
    if (row.kind == ChecklistRow::Kind::sign)
        paintSign(*painter, option.rect, row, index);
    else
        paintHeading(*painter, option.rect, row, current);
    painter->setPen(QPen(themeOf(*m_view).hair, 1));
    painter->setRenderHint(QPainter::Antialiasing, false);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    painter->restore();
}

void ChecklistDelegate::paintSign(QPainter& painter, const QRect& item, const ChecklistRow& row,
                                  const QModelIndex& index) const
{
    const Theme& theme = themeOf(*m_view);
    const QFont& font = m_view->font();
    const bool current = index == m_view->currentIndex();
    const QRect line(item.left(), item.top(), item.width(), rowHeight(row, item.width()));
    if (current)
        painter.fillRect(item, theme.nutSoft);
    const AnswerCells at = cells(item, row);
    QRect names = line.adjusted(nameLeft(font), 0, 0, 0);
    if (wraps(row, item.width()))
        names.setBottom(at.all().top() - scaled(2, font));
    else
        names.setRight(at.all().left() - scaled(12, font));
    const int mark = scaled(18, font);
    paintMark(painter, QRect(item.left() + margin(font), names.center().y() - mark / 2, mark, mark),
              seasonMark(row.season), theme.ink);
    paintNames(painter, names, row);
    const AnswerLook look{row.answer, !row.readOnly, !row.readOnly,
                          index == m_under ? m_underAnswer : Answer::open};
    paintAnswerStrip(painter, at, look, font, m_view->palette());
    if (current && m_view->hasFocus())
        paintFocusRing(painter, line, m_view->palette(), 1);
}

void ChecklistDelegate::paintNames(QPainter& painter, const QRect& where, const ChecklistRow& row) const
{
    const Theme& theme = themeOf(*m_view);
    QFont font = m_view->font();
    const QFont small = roleFont(TextRole::caption, font);
    QRect name = where;
    const bool reasoned = row.season == SeasonState::outOfSeason && !row.reason.isEmpty();
    if (reasoned) {
        const int both = QFontMetrics(font).height() + QFontMetrics(small).height();
        name.setTop(where.center().y() - both / 2);
        name.setHeight(QFontMetrics(font).height());
        painter.setFont(small);
        painter.setPen(theme.ink2);
        const QRect below(name.left(), name.bottom(), name.width(), QFontMetrics(small).height() + 2);
        painter.drawText(below, Qt::AlignVCenter | Qt::AlignLeft,
                         QFontMetrics(small).elidedText(row.reason, Qt::ElideRight, below.width()));
    }
    font.setStrikeOut(row.struck);
    painter.setFont(font);
    painter.setPen(theme.ink);
    const QString shown = QFontMetrics(font).elidedText(row.words, Qt::ElideRight, name.width());
    painter.drawText(name, Qt::AlignVCenter | Qt::AlignLeft, shown);
    const QString beside = aside(row);
    if (beside.isEmpty())
        return;
    painter.setFont(small);
    painter.setPen(theme.ink2);
    const QRect rest = name.adjusted(QFontMetrics(font).horizontalAdvance(shown) + scaled(12, font), 0, 0, 0);
    const QString fits = QFontMetrics(small).elidedText(beside, Qt::ElideRight, rest.width());
    if (fits.size() > 4 || fits == beside) // a stump says nothing; the number is in the editor too
        painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft, fits);
}

void ChecklistDelegate::paintHeading(QPainter& painter, const QRect& item, const ChecklistRow& row,
                                     bool current) const
{
    const Theme& theme = themeOf(*m_view);
    const QFont small = roleFont(TextRole::caption, m_view->font());
    const QRect inside = item.adjusted(margin(m_view->font()), 0, -margin(m_view->font()), 0);
    painter.setFont(small);
    painter.setPen(theme.ink2);
    const bool two = headingWraps(row, item.width());
    const QRect words = two ? inside.adjusted(0, scaled(6, m_view->font()), 0, -inside.height() / 2) : inside;
    const QRect other = two ? inside.adjusted(0, inside.height() / 2, 0, -scaled(6, m_view->font())) : inside;
    painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, row.words);
    QFont asideFont = small;
    const bool link = row.kind == ChecklistRow::Kind::fold;
    asideFont.setUnderline(link);
    painter.setFont(asideFont);
    painter.setPen(link ? theme.link : theme.ink2);
    painter.drawText(other, int(Qt::AlignVCenter | (two ? Qt::AlignLeft : Qt::AlignRight)), row.aside);
    if (current && m_view->hasFocus())
        paintFocusRing(painter, item, m_view->palette(), 1);
}

} // namespace cupule::ui

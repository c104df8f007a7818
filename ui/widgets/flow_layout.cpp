#include "ui/widgets/flow_layout.h"

#include <QWidget>

namespace cupule::ui {

FlowLayout::FlowLayout(QWidget* parent, int spacing) : QLayout(parent)
{
    setContentsMargins(0, 0, 0, 0);
    setSpacing(spacing);
}

FlowLayout::~FlowLayout()
{
    while (!m_items.isEmpty())
        delete m_items.takeFirst();
}

QLayoutItem* FlowLayout::takeAt(int index)
{
    return index >= 0 && index < m_items.size() ? m_items.takeAt(index) : nullptr;
}

QSize FlowLayout::minimumSize() const
{
    QSize size;
    for (const QLayoutItem* item : m_items)
        size = size.expandedTo(item->minimumSize());
    return size;
}

void FlowLayout::setGeometry(const QRect& where)
{
    QLayout::setGeometry(where);
    lay(where, true);
}

int FlowLayout::lay(const QRect& where, bool place) const
{
    int x = where.x();
    int y = where.y();
    int rowHeight = 0;
    for (QLayoutItem* item : m_items) {
        if (item->isEmpty())
            continue;
        QSize size = item->sizeHint().boundedTo(QSize(where.width(), QWIDGETSIZE_MAX));
        if (item->hasHeightForWidth())
            size.setHeight(item->heightForWidth(size.width()));
        if (x > where.x() && x + size.width() > where.right() + 1) {
            x = where.x();
            y += rowHeight + spacing();
            rowHeight = 0;
        }
        if (place)
            item->setGeometry(QRect(QPoint(x, y), size));
        x += size.width() + spacing();
        rowHeight = std::max(rowHeight, size.height());
    }
    return y + rowHeight - where.y();
}

} // namespace cupule::ui

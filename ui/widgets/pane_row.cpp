#include "ui/widgets/pane_row.h"

#include <algorithm>

#include <QEvent>
#include <QVBoxLayout>

namespace cupule::ui {

namespace {

// In average characters of the text size in force.
constexpr int threePanes = 130;
constexpr int twoPanes = 100;

} // namespace

PaneRow::PaneRow(QWidget* list, QWidget* chooser, QWidget* page, QWidget* checks, QWidget* parent)
    : QSplitter(Qt::Horizontal, parent), m_list(list), m_chooser(chooser), m_checks(checks)
{
    setHandleWidth(1);
    setChildrenCollapsible(false);
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(chooser);
    m_inner = new QSplitter(Qt::Horizontal, middle);
    m_inner->setHandleWidth(1);
    m_inner->setChildrenCollapsible(false);
    m_inner->addWidget(page);
    m_inner->addWidget(checks);
    m_inner->setStretchFactor(0, 1);
    column->addWidget(m_inner, 1);
    addWidget(list);
    addWidget(middle);
    setStretchFactor(1, 1);
    setSizes({236, 1070});
    m_inner->setSizes({780, 290});
    chooser->hide();
}

void PaneRow::setChecksShown(bool shown)
{
    m_checks->setVisible(shown);
}

void PaneRow::resizeEvent(QResizeEvent* event)
{
    QSplitter::resizeEvent(event);
    place();
}

void PaneRow::changeEvent(QEvent* event)
{
    QSplitter::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        place();
}

void PaneRow::place()
{
    const int characters = width() / std::max(1, fontMetrics().averageCharWidth());
    const Qt::Orientation wanted = characters < threePanes ? Qt::Vertical : Qt::Horizontal;
    if (m_inner->orientation() != wanted) {
        m_inner->setOrientation(wanted);
        m_inner->setSizes(wanted == Qt::Vertical ? QList<int>{height() * 3 / 4, height() / 4} : QList<int>{width() * 3 / 4, width() / 4});
        Q_EMIT stackedChanged();
    }
    m_checks->setMaximumHeight(wanted == Qt::Vertical ? std::max(120, height() / 3) : QWIDGETSIZE_MAX);
    const bool away = characters < twoPanes;
    m_list->setVisible(!away);
    m_chooser->setVisible(away);
}

} // namespace cupule::ui

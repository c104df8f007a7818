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
    connect(m_inner, &QSplitter::splitterMoved, this, [this] { m_moved = true; });
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
        if (wanted == Qt::Horizontal)
            m_inner->setSizes({width() * 3 / 4, width() / 4});
        m_moved = false;
        Q_EMIT stackedChanged();
    }
    if (wanted == Qt::Vertical && !m_moved) // a low strip; whoever wants more of it moves the handle
        m_inner->setSizes({height() * 7 / 10, height() * 3 / 10});
    const bool away = characters < twoPanes;
    m_list->setVisible(!away);
    m_chooser->setVisible(away);
}

} // namespace cupule::ui

#include "ui/widgets/word_fit.h"

#include <algorithm>

#include <QDialog>
#include <QEvent>
#include <QLayout>

#include "ui/theme/theme.h"

namespace cupule::ui {

QSize onAnyScreen(const QSize& wanted)
{
    return wanted.boundedTo({1340, 690});
}

WordFit::WordFit(QDialog* dialog, int width) : QObject(dialog), m_dialog(dialog), m_width(width)
{
    dialog->installEventFilter(this);
}

bool WordFit::eventFilter(QObject* watched, QEvent* event)
{
    switch (event->type()) {
    case QEvent::Show:
    case QEvent::FontChange:
    case QEvent::LayoutRequest:
    case QEvent::Resize:
        fit();
        break;
    default:
        break;
    }
    return QObject::eventFilter(watched, event);
}

void WordFit::fit()
{
    QLayout* layout = m_dialog->layout();
    if (layout == nullptr || m_fitting)
        return;
    m_fitting = true;
    const int least = std::max(scaled(m_width, m_dialog->font()), layout->totalMinimumSize().width());
    const int width = std::max(least, m_dialog->width());
    const int high = layout->hasHeightForWidth() ? layout->totalHeightForWidth(width) : layout->totalMinimumSize().height();
    m_dialog->setMinimumSize(least, high);
    m_fitting = false;
}

} // namespace cupule::ui

#include "ui/widgets/page_area.h"

#include <QScrollArea>

namespace cupule::ui {

QScrollArea* makePageArea(QWidget* parent)
{
    auto* area = new QScrollArea(parent);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    return area;
}

QScrollArea* makeReadingArea(const char* name, const QString& accessibleName, QWidget* parent)
{
    QScrollArea* area = makePageArea(parent);
    area->setObjectName(QString::fromLatin1(name));
    area->setAccessibleName(accessibleName);
    area->setProperty("reads", true);
    return area;
}

} // namespace cupule::ui

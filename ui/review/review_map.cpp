#include "ui/review/review_map.h"

#include <QCoreApplication>

#include "core/task/session.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

MapScene reviewScene(const ReviewPage& page, const Session& session)
{
    MapScene scene;
    scene.notation = session.info().notation;
    scene.gridFolder = session.profile().gridFolder;
    const auto& tree = page.visit.tree;
    const QString label = !page.whole && page.at ? text(page.at->typed) : tree ? text(tree->label) : QString();
    if (page.at)
        scene.tree = MapSpot{label, {page.at->latitude, page.at->longitude}, reachMetres(*page.at), tree ? tree->id : Uid{}};
    for (const FindAround& find : page.finds)
        scene.finds.push_back({text(find.treeLabel) + QLatin1Char(' ') + QString::number(find.date.year()), find.at, 0, find.visit});
    if (!page.finds.empty() && page.spreadExplainsMetres > 0)
        scene.rings.push_back({page.finds.front().at, page.spreadExplainsMetres,
                               QCoreApplication::translate("cupule::ui::Review", "spread explains %1").arg(distanceText(page.spreadExplainsMetres))});
    return scene;
}

} // namespace cupule::ui

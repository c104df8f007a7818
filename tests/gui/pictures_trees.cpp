// The place Trees: a tree with a past, and what is asked about it.


#include "core/task/trees_merge.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/dates.h"
#include "ui/trees/tree_dialogs.h"
#include "ui/trees/trees_view.h"

namespace cupule::test {

namespace {

/// Two entries of one tree, merged, and the tree felled; its page as the part named has the focus.
std::unique_ptr<QWidget> withPast(const char* focus)
{
    auto window = std::make_unique<WholeWindow>(pictureLook(), pictureStore().profile);
    if (pictureStore().today.isValid())
        window->bench().setToday(ui::fromDate(pictureStore().today));
    window->openStore(pictureStore().store);
    Session& session = *window->bench().session();
    window->goToPlace(QStringLiteral("trees"));
    const auto finds = treeLines(session, {.show = TreesShown::findAccepted}, 0, 1);
    const auto others = treeLines(session, {.show = TreesShown::standing}, 0, 3);
    if (finds && !finds->empty() && others && others->size() > 2) {
        const Uid other = (*others)[1].id == finds->front().id ? (*others)[2].id : (*others)[1].id;
        if (mergeTrees(session, finds->front().id, other, "picture"))
            static_cast<void>(markTree(session, finds->front().id, "felled", session.today(), "picture"));
        window->bench().tellChanged();
        Q_EMIT window->bench().goToAsked(QStringLiteral("trees"), finds->front().id);
    }
    window->resize(1366, 768);
    window->show();
    window->activateWindow();
    if (auto* part = window->findChild<QWidget*>(QString::fromLatin1(focus)))
        part->setFocus();
    return window;
}

/// The dialogs need a desk that outlives them.
class Asking : public QWidget {
public:
    explicit Asking(const std::function<QDialog*(ui::TreesDesk&)>& make)
        : m_window(pictureLook(), pictureStore().profile)
    {
        if (pictureStore().today.isValid())
            m_window.bench().setToday(ui::fromDate(pictureStore().today));
        m_window.openStore(pictureStore().store);
        m_window.goToPlace(QStringLiteral("trees"));
        auto& desk = m_window.findChild<ui::TreesView*>()->desk();
        QDialog* dialog = make(desk);
        showWithin(*this, *dialog);
    }

private:
    WholeWindow m_window;
};

bool addAll()
{
    addPicture({QStringLiteral("trees-past"), [] { return withPast("treeHistory"); }, true, 1366, true});
    addPicture({QStringLiteral("trees-evidence"), [] { return withPast("treePhotos"); }, true, 1366, true});
    addPicture({QStringLiteral("trees-place"), [] { return withPast("treeNote"); }, true, 1366, true});
    const auto dialog = [](const char* name, int width, const std::function<QDialog*(ui::TreesDesk&)>& make) {
        addPicture({QString::fromLatin1(name), [make] { return std::make_unique<Asking>(make); }, false, width, true});
    };
    dialog("trees-merge", 620, [](ui::TreesDesk& desk) { return new ui::MergeDialog(desk); });
    dialog("trees-split", 560, [](ui::TreesDesk& desk) { return new ui::SplitDialog(desk); });
    dialog("trees-fate", 420, [](ui::TreesDesk& desk) { return new ui::FateDialog(desk); });
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test

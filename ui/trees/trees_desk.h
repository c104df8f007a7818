// The register of trees as a window of rows, and the tree that is open. No widget here.

#pragma once

#include <optional>
#include <vector>

#include <QObject>

#include "core/task/trees_merge.h"
#include "ui/map/map_scene.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class TreesDesk : public QObject {
    Q_OBJECT
public:
    explicit TreesDesk(Workbench& bench, QObject* parent = nullptr);
    void refresh();
    [[nodiscard]] const TreeQuery& query() const { return m_query; }
    void setQuery(const TreeQuery& query);
    [[nodiscard]] int count() const { return m_count; }
    /// Rows [from, from + count); short where the store has fewer. A fault is told and gives none.
    [[nodiscard]] virtual std::vector<TreeLine> rows(int from, int count);
    [[nodiscard]] std::vector<Site> sites();

    [[nodiscard]] const std::optional<TreePage>& page() const { return m_page; }
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }
    [[nodiscard]] CivilDate today() const { return m_bench.session()->today(); }
    [[nodiscard]] QString placeText(const Position& position) const;
    [[nodiscard]] QString photoPath(const Uid& photo) const;   ///< empty where the picture is not there
    /// The tree of the page, what stands around it, and where it was said to stand before.
    [[nodiscard]] MapScene scene() const;
    void show(const Uid& tree);

    void setFate(const std::string& fate, std::optional<CivilDate> day);
    void setGirth(std::optional<double> centimetres);
    void setNote(const QString& note);

    /// Trees that may be the same as the one of the page: by label, else the nearest.
    [[nodiscard]] std::vector<TreeHit> otherTrees(const QString& typed) const;
    /// What merging would do; a fault is told and gives nothing.
    [[nodiscard]] std::optional<MergeMeaning> meaning(const Uid& kept, const Uid& other);
    /// Then shows the kept tree.
    void merge(const Uid& kept, const Uid& other);
    void split(const Uid& entry);
    void splitVisits(const std::vector<Uid>& visits, const QString& label);

    void goToVisit(const Uid& visit);
    void goToSample(const Uid& sample);
    /// A tree is shown here, a visit in Day, a photo with its visit.
    void goToNoun(const Uid& noun);

Q_SIGNALS:
    void listChanged();
    void pageChanged();

private:
    void change(const QString& what, const std::function<void(Tree&)>& edit);
    void tell(const Status& status, const QString& what);

    Workbench& m_bench;
    TreeQuery m_query;
    int m_count = 0;
    std::optional<TreePage> m_page;
};

} // namespace cupule::ui

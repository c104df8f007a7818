#include "ui/trees/trees_desk.h"

#include <algorithm>

#include "core/task/photos.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_trees.h"

namespace cupule::ui {

TreesDesk::TreesDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_page.reset();
        m_count = 0;
        m_query = {};
    });
}

void TreesDesk::refresh()
{
    if (m_bench.session() == nullptr)
        return;
    const auto count = countTrees(*m_bench.session(), m_query);
    if (!count)
        m_bench.complain(count.error());
    m_count = count.value_or(0);
    Q_EMIT listChanged();
    if (m_page) {
        show(m_page->tree.id);
    } else if (m_count > 0) {
        const auto first = rows(0, 1);
        if (!first.empty())
            show(first.front().id);
    } else {
        Q_EMIT pageChanged();
    }
}

void TreesDesk::setQuery(const TreeQuery& query)
{
    TreeQuery before = m_query;
    before.order = query.order;
    before.descending = query.descending;
    const bool onlyOrder = before == query; // the same trees: counting them again takes as long as finding them
    m_query = query;
    if (onlyOrder && m_bench.session() != nullptr)
        return Q_EMIT listChanged();
    // The view sorts its table while it is built, before any store is open.
    m_count = m_bench.session() ? countTrees(*m_bench.session(), m_query).value_or(0) : 0;
    Q_EMIT listChanged();
}

std::vector<TreeLine> TreesDesk::rows(int from, int count)
{
    auto lines = treeLines(*m_bench.session(), m_query, from, count);
    if (!lines) {
        m_bench.complain(lines.error());
        return {};
    }
    return std::move(*lines);
}

std::vector<Site> TreesDesk::sites()
{
    auto sites = allSites(*m_bench.session());
    return sites ? *sites : std::vector<Site>{};
}

void TreesDesk::show(const Uid& tree)
{
    auto page = treePage(*m_bench.session(), tree);
    if (page)
        m_page = std::move(*page);
    else
        m_page.reset();
    Q_EMIT pageChanged();
}

void TreesDesk::change(const QString& what, const std::function<void(Tree&)>& edit)
{
    if (!m_page)
        return;
    Tree changed = m_page->tree;
    edit(changed);
    if (changed == m_page->tree)
        return;
    tell(changeTree(*m_bench.session(), changed, utf8(what)), what);
}

void TreesDesk::tell(const Status& status, const QString& what)
{
    if (!status)
        m_bench.complain(status.error());
    else
        m_bench.say(tr("Saved: %1.").arg(what));
    m_bench.tellChanged();
}

void TreesDesk::setFate(const std::string& fate, std::optional<CivilDate> day)
{
    if (!m_page || (m_page->tree.fate == fate && m_page->tree.fateDate == day))
        return;
    const QString what = tr("%1: %2").arg(text(m_page->tree.label), fateWord(fate));
    tell(markTree(*m_bench.session(), m_page->tree.id, fate, day, utf8(what)), what);
}

void TreesDesk::setGirth(std::optional<double> centimetres)
{
    change(tr("girth"), [&](Tree& tree) { tree.girthCentimetres = centimetres; });
}

void TreesDesk::setNote(const QString& note)
{
    change(tr("note"), [&](Tree& tree) { tree.note = utf8(note); });
}

QString TreesDesk::placeText(const Position& position) const
{
    return text(positionText(*m_bench.session(), position));
}

QString TreesDesk::photoPath(const Uid& photo) const
{
    const auto path = cupule::photoPath(*m_bench.session(), photo);
    return path ? text(*path) : QString();
}

MapScene TreesDesk::scene() const
{
    if (!m_page)
        return {};
    const auto around = surroundingsOf(*m_bench.session(), {m_page->tree.id, {}, {}, {}});
    if (!around)
        return {};
    MapScene scene = sceneOf(*around, *m_bench.session());
    for (const TreePlace& place : m_page->places)
        if (place.visit < 0 && !place.inForce)
            scene.visits.push_back({tr("%1 on %2").arg(text(place.label), plainDate(place.day, 0)),
                                    {place.position.latitude, place.position.longitude},
                                    place.position.uncertaintyMetres,
                                    {}});
    return scene;
}

std::vector<TreeHit> TreesDesk::otherTrees(const QString& typed) const
{
    constexpr int most = 30;
    const Tree& tree = m_page->tree;
    auto hits = findTrees(*m_bench.session(), utf8(typed), tree.site, tree.position, most);
    if (!hits)
        return {};
    std::erase_if(*hits, [&](const TreeHit& hit) { return hit.tree.id == tree.id; });
    return std::move(*hits);
}

std::optional<MergeMeaning> TreesDesk::meaning(const Uid& kept, const Uid& other)
{
    auto meaning = mergeMeaning(*m_bench.session(), kept, other);
    if (meaning)
        return std::move(*meaning);
    m_bench.complain(meaning.error());
    return std::nullopt;
}

void TreesDesk::merge(const Uid& kept, const Uid& other)
{
    const QString what = tr("merging two entries of one tree");
    const Status merged = mergeTrees(*m_bench.session(), kept, other, utf8(what));
    if (merged)
        show(kept);
    tell(merged, what);
}

void TreesDesk::split(const Uid& entry)
{
    const QString what = tr("splitting an entry off");
    tell(splitTree(*m_bench.session(), entry, utf8(what)), what);
}

void TreesDesk::splitVisits(const std::vector<Uid>& visits, const QString& label)
{
    const QString what = tr("moving visits to %1").arg(label);
    const auto made = cupule::splitVisits(*m_bench.session(), m_page->tree.id, visits, utf8(label), utf8(what));
    tell(made ? Status() : fail(made.error()), what);
}

void TreesDesk::goToVisit(const Uid& visit)
{
    Q_EMIT m_bench.goToAsked(QStringLiteral("day"), visit);
}

void TreesDesk::goToSample(const Uid& sample)
{
    Q_EMIT m_bench.goToAsked(QStringLiteral("samples"), sample);
}

void TreesDesk::goToNoun(const Uid& noun)
{
    if (noun.isNull() || !m_page)
        return;
    const auto& photos = m_page->photos;
    const auto photo = std::find_if(photos.begin(), photos.end(), [&](const PhotoNote& note) { return note.id == noun; });
    if (photo != photos.end())
        return goToVisit(photo->visit);
    if (treePage(*m_bench.session(), noun))
        return show(noun);
    goToVisit(noun);
}

} // namespace cupule::ui

#include "ui/trees/trees_desk.h"

#include "ui/bridge/text.h"

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
    m_query = query;
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
    if (const auto status = changeTree(*m_bench.session(), changed, utf8(what)); !status)
        m_bench.complain(status.error());
    else
        m_bench.say(tr("Saved: %1.").arg(what));
    m_bench.tellChanged();
}

void TreesDesk::setFate(const QString& fate)
{
    change(tr("what became of the tree"), [&](Tree& tree) { tree.fate = utf8(fate); });
}

void TreesDesk::setGirth(std::optional<double> centimetres)
{
    change(tr("girth"), [&](Tree& tree) { tree.girthCentimetres = centimetres; });
}

void TreesDesk::setNote(const QString& note)
{
    change(tr("note"), [&](Tree& tree) { tree.note = utf8(note); });
}

void TreesDesk::goToVisit(const Uid& visit)
{
    Q_EMIT m_bench.goToAsked(QStringLiteral("day"), visit);
}

} // namespace cupule::ui

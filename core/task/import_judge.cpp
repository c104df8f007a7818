#include "core/task/import_judge.h"

#include <algorithm>

#include "core/base/text.h"

namespace cupule {

namespace {

constexpr std::size_t mostVerdicts = 4096;

} // namespace

const HostVerdict& RowJudge::verdict(const Visit& visit, const std::string& region)
{
    m_key.assign(region);
    m_key += static_cast<char>(visit.date.month());
    for (const auto& seen : visit.characters) {
        m_key.append(seen.character).append("=").append(seen.state);
        if (seen.value)
            m_key.append("#").append(numberText(*seen.value));
        m_key += seen.notJudged ? '?' : ';';
    }
    if (const auto met = m_verdicts.find(m_key); met != m_verdicts.end())
        return met->second;
    if (m_verdicts.size() >= mostVerdicts)
        m_verdicts.clear();
    return m_verdicts.emplace(m_key, m_hostKey.judge(visit.characters, {region, visit.date.month()})).first->second;
}

void RowJudge::around(const TableRow& row, const ResolvedRow& resolved)
{
    if (!m_facts.tree)
        m_facts.tree.emplace();
    Tree& tree = *m_facts.tree;
    tree.id = resolved.tree.id;
    tree.site = resolved.site == nullptr ? Uid{} : resolved.site->id;
    tree.label.assign(row.label);
    if (resolved.tree.placed) {
        if (!tree.position)
            tree.position.emplace();
        tree.position->system = "WGS84";
        tree.position->latitude = resolved.tree.latitude;
        tree.position->longitude = resolved.tree.longitude;
        tree.position->uncertaintyMetres = resolved.tree.uncertaintyMetres;
        tree.position->operationAccuracyMetres = 0;
    } else {
        tree.position = row.visit.position;
    }
    if (resolved.site == nullptr)
        m_facts.site.reset();
    else if (!m_facts.site || m_facts.site->id != resolved.site->id)
        m_facts.site = *resolved.site;
    m_facts.season = resolved.season;
}

void RowJudge::judge(const TableRow& row, const ResolvedRow& resolved, VisitShown& out)
{
    around(row, resolved);
    Judged judged = judgeVisit(row.visit, {}, m_facts, m_pack, m_today, verdict(row.visit, resolved.season.region));
    m_codes.clear();
    for (const auto& finding : judged.findings)
        m_codes.push_back(finding.code);
    std::sort(m_codes.begin(), m_codes.end());
    const auto end = std::unique(m_codes.begin(), m_codes.end());
    for (auto code = m_codes.begin(); code != end; ++code) {
        auto known = m_findings.find(*code);
        if (known == m_findings.end())
            known = m_findings.emplace(*code, 0).first;
        ++known->second;
    }
    out = std::move(judged.shown);
}

} // namespace cupule

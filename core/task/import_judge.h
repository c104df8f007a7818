// What the rules say about a row of a table, at the speed of a table: the host verdict once for each set of characters
// and month, everything else as for a single visit. Pure; one judge a thread.

#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/rules/host_key.h"
#include "core/task/import_resolve.h"
#include "core/task/judge.h"

namespace cupule {

class RowJudge {
public:
    /// Both must outlive the judge.
    RowJudge(const Pack& pack, const HostKey& key, CivilDate today) : m_pack(pack), m_hostKey(key), m_today(today) {}
    void judge(const TableRow& row, const ResolvedRow& resolved, VisitShown& out);
    /// Drafts with findings, by code.
    [[nodiscard]] const std::map<std::string, std::int64_t, std::less<>>& findings() const { return m_findings; }

private:
    const HostVerdict& verdict(const Visit& visit, const std::string& region);
    void around(const TableRow& row, const ResolvedRow& resolved);

    const Pack& m_pack;
    const HostKey& m_hostKey;
    CivilDate m_today;
    VisitFacts m_facts;
    std::unordered_map<std::string, HostVerdict> m_verdicts;
    std::string m_key;
    std::map<std::string, std::int64_t, std::less<>> m_findings;
    std::vector<std::string_view> m_codes;
};

} // namespace cupule

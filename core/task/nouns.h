// Any noun of a store by the name that people call it: for listing, showing and finding one.

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/task/session.h"

namespace cupule {

enum class Noun { visit, tree, site, person, photo, sample, leave, regime, decision };

/// "visit" or "visits", "person" or "people" and so on, in English; nothing where there is no such noun.
std::optional<Noun> nounNamed(std::string_view word);
std::string_view nounName(Noun noun);

struct NamedNoun {
    Uid id;
    std::string name;                       ///< what findNoun() takes: "W03@2026-06-11", "26-TV-0147-H", ...
    std::string content;                    ///< canonical JSON
};

struct NounFilter {
    std::optional<CivilDate> day;           ///< visits, decisions
    std::optional<RecordState> state;       ///< visits
    int from = 0;
    int count = 1000;
};

Result<std::vector<NamedNoun>> listNouns(Session& session, Noun noun, const NounFilter& filter);
Result<NamedNoun> oneNoun(Session& session, Noun noun, const Uid& id);

/// By whole id, by the beginning or the end of one (four characters and more), or by name:
///   visit "LABEL@2026-06-11", with the observer "LABEL@2026-06-11@MH" where two were there; tree "LABEL" or "SITE/LABEL";
///   site by name; person by code or name; sample by number; photo by file name or hash; leave and regime by reference.
/// Faults "name.unknown", "name.ambiguous" (argument "candidates", names with commas between).
Result<Uid> findNoun(Session& session, Noun noun, const std::string& typed);

} // namespace cupule

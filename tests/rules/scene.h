// A visit with nothing to be said about it, for the tests of the checks to spoil, and the form of their tables.

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/rules/checks.h"
#include "tests/rules/fixtures.h"

namespace cupule::test {

/// A visit and all that is known around it, owned in one place. Invented people and places; the built-in pack.
struct Scene {
    Visit visit;
    Tree tree;
    Site site;
    std::vector<PhotoNote> photos;
    std::vector<SharedPhoto> shared;
    std::vector<OtherVisit> others;
    std::vector<Sample> samples;
    HostVerdict host;
    CheckContext context;                   ///< its pointers and lists are set by findings()

    /// A search on 11 June in which nothing was seen, with everything that makes it count.
    Scene();
    /// Sees a gall line and gives it its evidence: three photos, a host, an accepted find near by.
    Scene& withGall(const std::string& sign = "S02");
    /// Rules the tree out.
    Scene& onOtherTree();
    Scene& see(const std::string& sign);
    Observation& answerTo(const std::string& sign);
    [[nodiscard]] std::vector<Finding> findings() const;
    /// Severity of the first finding of that code; nothing where there is none.
    [[nodiscard]] std::optional<Finding> found(const std::string& code) const;
};

/// A place so far north of the scene's.
Position placeNorth(double metres);

/// What makes a code come up, and what nearly does.
struct CheckCase {
    std::string code;
    Severity severity;
    std::function<void(Scene&)> fires;
    std::function<void(Scene&)> misses;
};

std::vector<CheckCase> recordCases();
std::vector<CheckCase> placeCases();
std::vector<CheckCase> signCases();
std::vector<CheckCase> findCases();
std::vector<CheckCase> allCases();

} // namespace cupule::test

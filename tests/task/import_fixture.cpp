#include "tests/task/import_fixture.h"

#include "core/base/file.h"
#include "core/store/journal.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

ImportBench::ImportBench(const std::string& zone)
    : m_folder(temporaryFolder()), m_clock(*parseInstant("2026-06-30T09:00:00+01:00")), m_random(7)
{
    Person person;
    person.code = "MH";
    person.name = "Mary Hazel";
    const auto profile = makeProfile(m_folder + "/profile", person, {Role::volunteer, Role::office}, m_clock, m_random);
    REQUIRE(profile.has_value());
    NewStore description;
    description.name = "Tharn Vale";
    description.zone = zone;
    auto session = Session::create(m_folder + "/vale.cupule", description, *profile, m_clock, m_random);
    if (!session)
        FAIL(session.error().code << " " << session.error().technical);
    m_session = std::move(*session);
}

std::string ImportBench::file(const std::string& name, const std::string& bytes) const
{
    const std::string path = m_folder + "/" + name;
    REQUIRE(writeFile(path, bytes).has_value());
    return path;
}

ImportReport ImportBench::files(const std::vector<std::string>& paths, const ImportOptions& options)
{
    auto report = importFiles(*m_session, paths, options);
    if (!report)
        FAIL(report.error().code << " " << report.error().technical);
    return std::move(*report);
}

ImportReport ImportBench::table(const std::string& bytes, const ImportOptions& options, const std::string& name)
{
    return files({file(name, bytes)}, options);
}

std::vector<Visit> ImportBench::visits()
{
    std::vector<Visit> all;
    const auto done = m_session->store().visits().each([&](const VisitRow&, const Visit& visit) {
        all.push_back(visit);
        return true;
    });
    REQUIRE(done.has_value());
    return all;
}

std::map<std::string, int> ImportBench::trees()
{
    std::map<std::string, int> labels;
    const auto count = m_session->store().trees().count({});
    REQUIRE(count.has_value());
    const auto rows = m_session->store().trees().window({}, 0, static_cast<int>(*count));
    REQUIRE(rows.has_value());
    for (const auto& row : *rows)
        ++labels[row.tree.label];
    return labels;
}

std::vector<Tree> ImportBench::treesLabelled(const std::string& label)
{
    auto trees = m_session->store().trees().labelledAnywhere(label);
    REQUIRE(trees.has_value());
    return *trees;
}

std::int64_t ImportBench::journalLines()
{
    const auto proof = m_session->store().journal().prove();
    REQUIRE(proof.has_value());
    CHECK(proof->whole);
    return proof->lines;
}

std::vector<std::string> asideKinds(const ImportReport& report)
{
    std::vector<std::string> out;
    for (const auto& problem : report.problems)
        if (!problem.kept)
            out.push_back(problem.kind + " " + problem.column + " " + problem.value);
    return out;
}

std::string content(const std::string& path)
{
    const auto text = readFile(path);
    REQUIRE(text.has_value());
    return *text;
}

} // namespace cupule::test

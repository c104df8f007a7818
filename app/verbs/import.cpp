#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/task/import.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

nlohmann::json problemJson(const ImportProblem& problem)
{
    return {{"file", problem.file},   {"row", problem.row},
            {"line", problem.line},   {"column", problem.column},
            {"value", problem.value}, {"kind", problem.kind},
            {"cause", problem.cause}, {"suggestion", problem.suggestion}};
}

nlohmann::json reportJson(const ImportReport& report)
{
    nlohmann::json json{{"rows", report.rows},
                        {"kept", report.kept},
                        {"known_already", report.knownAlready},
                        {"set_aside", report.setAside},
                        {"new_trees", report.newTrees},
                        {"new_people", report.newPeople},
                        {"new_sites", report.newSites},
                        {"dry_run", report.dryRun},
                        {"findings", report.findings},
                        {"problems", nlohmann::json::array()},
                        {"questions", nlohmann::json::array()},
                        {"files", nlohmann::json::array()}};
    for (const auto& problem : report.problems)
        json["problems"].push_back(problemJson(problem));
    for (const auto& question : report.questions)
        json["questions"].push_back({{"file", question.file},
                                     {"kind", question.kind},
                                     {"column", question.column},
                                     {"readings", question.readings},
                                     {"option", question.option}});
    for (const auto& file : report.files)
        json["files"].push_back({{"file", file.file},
                                 {"format", file.format},
                                 {"rows", file.rows},
                                 {"kept", file.kept},
                                 {"known_already", file.knownAlready},
                                 {"set_aside", file.setAside},
                                 {"aside_file", file.asideFile},
                                 {"notes", file.notes}});
    return json;
}

class Import final : public StoreVerb {
public:
    const char* name() const override { return "import"; }
    const char* summary() const override { return "Take in tables, GPX files and photos"; }
    const char* usage() const override { return "STORE FILE... [--dry-run]"; }
    const char* prose() const override
    {
        return "Takes in tables (CSV, however it is separated and encoded), GPX files and photos; a folder "
               "stands for the photos "
               "in it. Good rows become drafts. What cannot be read is set aside: each row is named with its "
               "line, its column, "
               "what it holds and why, and is written to a file of its own that can be mended and imported "
               "again. Importing the "
               "same file twice adds nothing.\nWhere the whole file can be read in two ways (is 03/04 in "
               "March or in April?) "
               "nothing is kept: both readings are shown, with the option that decides. --dry-run does "
               "everything but keep it.";
    }
    const char* examples() const override
    {
        return "cupule import vale.cupule visits.csv --dry-run\ncupule import vale.cupule visits.csv "
               "walk.gpx photos/";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("FILE", m_files, "tables, GPX files, photos or folders of photos")->required();
        options.add_flag("--dry-run", m_options.dryRun, "show what would happen and keep nothing");
        options.add_option("--date-order", m_options.dateOrder, "dmy, mdy or ymd")
            ->check(CLI::IsMember({"dmy", "mdy", "ymd"}));
        options.add_option("--columns", m_columns,
                           "file with the names of columns, as an earlier import wrote it");
        options.add_option("--delimiter", m_options.delimiter,
                           "comma, semicolon, tab, pipe or one character");
        options.add_option("--decimal", m_options.decimal, "point or comma")
            ->check(CLI::IsMember({"point", "comma"}));
        options.add_option("--encoding", m_options.encoding, "utf-8, windows-1252, utf-16le or utf-16be");
        options.add_option("--zone", m_options.zone, "time zone of local times; else the store's");
        options.add_option("--system", m_options.system, "how bare coordinates are read");
        options.add_option("--site", m_options.site, "site of rows that name none");
        options.add_option("--observer", m_options.observer, "who, where rows name nobody; else you");
        options.add_option("--aside", m_options.asideFile, "where rows that are set aside are written");
        options.add_flag("--good-points", m_options.takeGoodPoints,
                         "of a damaged GPX file, take the points before the damage");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        m_options.columnsFile = m_columns;
        if (!run.shared().today.empty())
            m_options.today = (*session)->today();
        const auto report = importFiles(**session, m_files, m_options);
        if (!report)
            return fail(report.error());
        run.give(reportJson(*report));
        say(run, *report);
        return report->setAside > 0 || !report->questions.empty() ? refused : done;
    }

private:
    static void say(Run& run, const ImportReport& report)
    {
        const auto number = [&](std::int64_t n) { return run.words().number(static_cast<double>(n)); };
        run.say(report.dryRun ? "Dry run, nothing is kept. Rows: {rows}; would be kept: {kept}; known "
                                "already: {known}; would be "
                                "set aside: {aside}."
                              : "Rows: {rows}; kept: {kept}; known already: {known}; set aside: {aside}.",
                {{"rows", number(report.rows)},
                 {"kept", number(report.kept)},
                 {"known", number(report.knownAlready)},
                 {"aside", number(report.setAside)}});
        if (report.newTrees + report.newSites + report.newPeople > 0)
            run.say("New trees: {trees}; new sites: {sites}; new people: {people}.",
                    {{"trees", number(report.newTrees)},
                     {"sites", number(report.newSites)},
                     {"people", number(report.newPeople)}});
        for (const auto& question : report.questions) {
            run.line(question.file + ": " + plain(ui::importKindText(question.kind)));
            for (const auto& reading : question.readings)
                run.say("    {reading}", {{"reading", reading}});
            run.say("    Nothing was kept. Say which with {option}.", {{"option", question.option}});
        }
        for (const auto& problem : report.problems)
            run.say("  {file} line {line}, {column} \"{value}\": {why}",
                    {{"file", problem.file},
                     {"line", std::to_string(problem.line)},
                     {"column", problem.column},
                     {"value", problem.value},
                     {"why", plain(problem.cause.empty() ? ui::importKindText(problem.kind)
                                                         : ui::positionKindText(problem.cause))}});
        for (const auto& file : report.files)
            if (!file.asideFile.empty())
                run.say("Rows that were set aside lie in {file}. Mend them there and import that file.",
                        {{"file", file.asideFile}});
    }

    std::vector<std::string> m_files;
    std::string m_columns;
    ImportOptions m_options;
};

} // namespace

std::unique_ptr<Verb> makeImport()
{
    return std::make_unique<Import>();
}

} // namespace cupule::app

#include <algorithm>
#include <filesystem>

#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/task/import.h"
#include "ui/bridge/words.h"
#include "ui/photos/picture.h"

namespace cupule::app {

namespace {

std::string sentenceOf(const ImportProblem& problem)
{
    return plain(ui::importProblemText(problem.kind, problem.cause, problem.suggestion, problem.kept));
}

nlohmann::json problemJson(const ImportProblem& problem)
{
    return {{"file", problem.file},   {"row", problem.row},
            {"line", problem.line},   {"column", problem.column},
            {"value", problem.value}, {"kind", problem.kind},
            {"cause", problem.cause}, {"suggestion", problem.suggestion},
            {"kept", problem.kept},   {"sentence", sentenceOf(problem)}};
}

nlohmann::json reportJson(const ImportReport& report)
{
    nlohmann::json json{{"rows", report.rows},
                        {"kept", report.kept},
                        {"known_already", report.knownAlready},
                        {"set_aside", report.setAside},
                        {"likely_copies", report.likelyCopies},
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

std::string oneLine(std::string text)
{
    std::replace(text.begin(), text.end(), '\n', ' ');
    std::replace(text.begin(), text.end(), '\r', ' ');
    return text;
}

std::string counted(const Run& run, std::int64_t n)
{
    return run.words().number(static_cast<double>(n));
}

/// The file's own name, where there are several; a table's rows need none where it is the only one.
std::string nameIn(const ImportReport& report, const std::string& path)
{
    return report.files.size() > 1 ? std::filesystem::path(path).filename().string() + ": " : std::string();
}

void saySums(Run& run, const ImportReport& report)
{
    run.say(report.dryRun ? "Dry run, nothing is kept. Rows: {rows}; would be kept: {kept}; known already: {known}; "
                            "would be set aside: {aside}."
                          : "Rows: {rows}; kept: {kept}; known already: {known}; set aside: {aside}.",
            {{"rows", counted(run, report.rows)},
             {"kept", counted(run, report.kept)},
             {"known", counted(run, report.knownAlready)},
             {"aside", counted(run, report.setAside)}});
    if (report.newTrees + report.newSites + report.newPeople > 0)
        run.say("New trees: {trees}; new sites: {sites}; new people: {people}.",
                {{"trees", counted(run, report.newTrees)},
                 {"sites", counted(run, report.newSites)},
                 {"people", counted(run, report.newPeople)}});
}

/// Where photos went is counted; everything else is said of each file.
void sayNotes(Run& run, const ImportReport& report)
{
    std::int64_t placed = 0, inTray = 0;
    for (const auto& file : report.files)
        for (const auto& note : file.notes) {
            placed += note.starts_with("with-visit:") ? 1 : 0;
            inTray += note.starts_with("in-the-tray:") ? 1 : 0;
            if (!note.starts_with("with-visit:") && !note.starts_with("in-the-tray:"))
                run.say("  {file}{note}",
                        {{"file", nameIn(report, file.file)}, {"note", plain(ui::importNoteText(note))}});
        }
    if (placed + inTray > 0)
        run.say("Photos put with the visit of their place and time: {placed}; in the tray, since no visit fits: {tray}.",
                {{"placed", counted(run, placed)}, {"tray", counted(run, inTray)}});
}

void sayQuestions(Run& run, const ImportReport& report)
{
    for (const auto& question : report.questions) {
        run.say("{file}: {question}", {{"file", std::filesystem::path(question.file).filename().string()},
                                       {"question", plain(ui::importKindText(question.kind))}});
        for (const auto& reading : question.readings)
            run.say("    {reading}", {{"reading", reading}});
        run.say("    Nothing of it was kept. Answer with {option}.", {{"option", question.option}});
    }
}

/// A file that could not be read at all carries the code of the fault ("file.open").
bool isWholeFile(const ImportProblem& problem)
{
    return problem.row == 0 && !problem.kept && problem.kind.find('.') != std::string::npos;
}

/// Damage that is asked about is not said twice.
bool asked(const ImportReport& report, const ImportProblem& problem)
{
    return problem.row == 0 && std::any_of(report.questions.begin(), report.questions.end(),
                                           [&](const auto& question) { return question.file == problem.file; });
}

void sayProblems(Run& run, const ImportReport& report, bool kept, const char* title)
{
    bool titled = false;
    for (const auto& problem : report.problems) {
        if (problem.kept != kept || asked(report, problem))
            continue;
        if (!titled)
            run.say(title);
        titled = true;
        std::string where = nameIn(report, problem.file);
        if (problem.line > 0)
            where += run.words().text("line {line}, ", {{"line", std::to_string(problem.line)}});
        if (!problem.column.empty())
            where += problem.column + " ";
        if (!problem.value.empty())
            where += "\"" + oneLine(problem.value) + "\"";
        while (where.ends_with(' ') || where.ends_with(','))
            where.pop_back();
        if (where.empty())
            where = problem.file;
        run.say("  {where}: {why}", {{"where", where}, {"why", sentenceOf(problem)}});
    }
}

void sayReport(Run& run, const ImportReport& report, const std::string& store)
{
    saySums(run, report);
    sayNotes(run, report);
    sayQuestions(run, report);
    sayProblems(run, report, false, "Set aside:");
    sayProblems(run, report, true, "Kept, and worth a look:");
    for (const auto& file : report.files)
        if (!file.asideFile.empty())
            run.say("What was set aside lies in {file}. Mend it there and import that file.",
                    {{"file", file.asideFile}});
    if (!report.findings.empty() && !report.dryRun)
        run.say("\"cupule check {store}\" says what the checks ask about the rows that were kept.",
                {{"store", store}});
}

class Import final : public StoreVerb {
public:
    const char* name() const override { return "import"; }
    const char* summary() const override { return "Take in tables, GPX files and photos"; }
    const char* usage() const override
    {
        return "STORE FILE... [--dry-run] [--date-order ORDER] [--columns FILE]";
    }
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
                           "file that says what the columns are, as --save-columns writes it");
        options.add_option("--save-columns", m_options.saveColumnsFile,
                           "write the columns as they were matched into a file, to be changed and named");
        options.add_option("--delimiter", m_options.delimiter,
                           "comma, semicolon, tab, pipe or one character");
        options.add_option("--decimal", m_options.decimal, "point or comma")
            ->check(CLI::IsMember({"point", "comma"}));
        options.add_option("--encoding", m_options.encoding, "utf-8, windows-1252, utf-16le or utf-16be");
        options.add_option("--zone", m_options.zone, "time zone of local times; else the store's");
        options.add_option("--system", m_options.system, "how bare coordinates are read");
        options.add_flag("--swapped", m_options.swapped,
                         "latitude and longitude stand in each other's columns; noted in each record");
        options.add_option("--site", m_options.site, "site of rows that name none");
        options.add_option("--observer", m_options.observer, "who, where rows name nobody; else you");
        options.add_option("--aside", m_options.asideFile, "where rows that are set aside are written");
        options.add_flag("--good-points", m_options.takeGoodPoints,
                         "of a damaged GPX file, take the points that can be read");
        options.add_flag("--route-points", m_options.takeRoutePoints,
                         "of a GPX file without waypoints, take the points of its routes as trees");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        m_options.columnsFile = m_columns;
        if (!run.shared().today.empty())
            m_options.today = (*session)->today();
        m_options.look = ui::lookAtPicture;
        const auto report = importFiles(**session, m_files, m_options);
        if (!report)
            return fail(report.error());
        run.give(reportJson(*report));
        sayReport(run, *report, m_store);
        const bool unread = std::any_of(report->problems.begin(), report->problems.end(), [&](const auto& problem) {
            return isWholeFile(problem) && !asked(*report, problem);
        });
        if (unread)
            return broken;
        return report->setAside > 0 || !report->questions.empty() ? refused : done;
    }

private:
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

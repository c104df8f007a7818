#include "core/task/practice.h"

#include "app/paper.h"
#include "app/verbs/verbs.h"
#include "core/report/practice_sheet.h"
#include "core/task/nouns.h"
#include "core/task/practice_results.h"

namespace cupule::app {

namespace {

using Json = nlohmann::json;

Json json(const std::optional<Share>& share)
{
    if (!share)
        return nullptr;
    return {{"value", share->value}, {"lower", share->interval.lower}, {"upper", share->interval.upper}};
}

Json json(const std::optional<double>& value)
{
    return value ? Json(*value) : Json(nullptr);
}

Json json(const SubjectResult& result)
{
    Json out{{"kind", askedName(result.kind)},
             {"subject", result.subject},
             {"found", result.table.rightYes},
             {"false_alarms", result.table.wrongYes},
             {"missed", result.table.wrongNo},
             {"passed", result.table.rightNo},
             {"not_judged_there", result.notJudgedThere},
             {"not_judged_absent", result.notJudgedAbsent},
             {"open", result.open},
             {"open_right", result.openRight},
             {"sensitivity", json(result.judged.sensitivity)},
             {"specificity", json(result.judged.specificity)},
             {"sensitivity_strict", json(result.strict.sensitivity)},
             {"specificity_strict", json(result.strict.specificity)},
             {"yes_is_right", json(result.yesIsRight)},
             {"no_is_right", json(result.noIsRight)},
             {"ratio_of_yes", json(result.judged.ratioOfYes)},
             {"ratio_of_no", json(result.judged.ratioOfNo)},
             {"few_there", result.fewThere},
             {"few_absent", result.fewAbsent},
             {"ready", result.readiness == Readiness::ready ? "ready" : "not-yet-known"}};
    out["kappa"] = nullptr;
    if (result.withKey && result.withKey->kappa)
        out["kappa"] = {{"value", *result.withKey->kappa}, {"lower", result.withKey->interval.lower}, {"upper", result.withKey->interval.upper}};
    return out;
}

Json json(const Calibration& calibration)
{
    Json rows = Json::array();
    for (const ReliabilityRow& row : calibration.rows)
        rows.push_back({{"from", row.from}, {"to", row.to}, {"answers", row.answers}, {"stated", row.stated}, {"right", json(std::optional(row.right))}});
    return {{"answers", calibration.answers}, {"brier", calibration.brier}, {"stated", calibration.stated},
            {"right", json(std::optional(calibration.right))}, {"rows", rows}};
}

Json json(const std::vector<NextPractice>& next)
{
    Json out = Json::array();
    for (const NextPractice& each : next)
        out.push_back({{"kind", askedName(each.kind)}, {"subject", each.subject}, {"taken_for", each.takenFor}, {"wrong", each.wrong}, {"answers", each.answers}});
    return out;
}

Json json(const PracticeResults& results)
{
    Json out{{"answers", results.answers}, {"right", results.right}, {"subjects", Json::array()}, {"gall_lines", nullptr},
             {"confusions", Json::array()}, {"calibration", nullptr}, {"curve", Json::array()}};
    for (const SubjectResult& each : results.subjects)
        out["subjects"].push_back(json(each));
    if (!results.groups.empty())
        out["gall_lines"] = json(results.groups.front());
    for (const Confusion& each : results.confusions)
        out["confusions"].push_back({{"kind", askedName(each.kind)}, {"rows", each.truths}, {"right", each.right}, {"columns", each.given}, {"counts", each.counts}});
    if (results.calibration)
        out["calibration"] = json(*results.calibration);
    for (const CurvePoint& each : results.curve)
        out["curve"].push_back({{"from", each.from}, {"to", each.to}, {"right", json(std::optional(each.right))}});
    return out;
}

std::string nextWords(const std::vector<NextPractice>& next, const Pack& pack, const Words& words)
{
    std::string out;
    for (std::size_t i = 0; i < next.size() && i < 2; ++i)
        out += (i == 0 ? "" : ", ") + report::subjectWords(next[i].kind, next[i].subject, pack, words);
    return out;
}

class PracticeVerb final : public StoreVerb {
public:
    const char* name() const override { return "practice"; }
    const char* summary() const override { return "Results of practice: of one recruit, of a cohort; the sheet to print"; }
    const char* usage() const override { return "STORE [--person CODE | --cohort NAME] [--no-names] [--out FILE.html or FILE.pdf]"; }
    const char* prose() const override
    {
        return "Says how far a yes and a no can be believed, sign by sign, with 95 % intervals, what was taken for what, whether people know how "
               "sure they may be, and what to practise next. Without --person and --cohort a trainer gets everybody together, and everybody else their "
               "own results.\nSomebody is ready when the lower end of the interval reaches the programme's limit, and otherwise it is not yet known. "
               "--no-names leaves out codes and names.";
    }
    const char* examples() const override
    {
        return "cupule practice vale.cupule --cohort \"spring 2026\" --no-names --out cohort.pdf\n"
               "cupule practice vale.cupule --person MH --json";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        auto* person = options.add_option("--person", m_person, "one recruit, by code or name");
        options.add_option("--cohort", m_cohort, "one cohort, by its name")->excludes(person);
        options.add_flag("--no-names", m_noNames, "leave out codes and names");
        options.add_option("--out", m_out, "also write the sheet to this file");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const bool trainer = (*session)->needOneOf({Role::trainer, Role::office}).has_value();
        return m_person.empty() && trainer ? cohort(run, **session) : recruit(run, **session);
    }

private:
    [[nodiscard]] ResultsWish wish() const
    {
        ResultsWish wish;
        if (!m_cohort.empty())
            wish.cohort = m_cohort;
        wish.names = !m_noNames;
        return wish;
    }

    Result<int> recruit(Run& run, Session& session)
    {
        Uid person = session.me();
        if (!m_person.empty()) {
            const auto found = findNoun(session, Noun::person, m_person);
            if (!found)
                return fail(found.error());
            person = *found;
        }
        const auto results = recruitResults(session, person, wish());
        if (!results)
            return fail(results.error());
        report::PracticeSheet sheet;
        sheet.who = results->name.empty() ? results->code : results->name;
        sheet.results = results->results;
        sheet.next = results->next;
        Json out{{"code", results->code}, {"results", json(results->results)}, {"next", json(results->next)}};
        say(run, session, sheet);
        return finish(run, session, sheet, out);
    }

    Result<int> cohort(Run& run, Session& session)
    {
        auto results = cohortResults(session, wish());
        if (!results)
            return fail(results.error());
        report::PracticeSheet sheet;
        sheet.ofCohort = true;
        sheet.cohort = results->cohort;
        sheet.results = results->results;
        sheet.next = results->next;
        sheet.agreement = results->agreement;
        sheet.agreementPeople = results->agreementPeople;
        sheet.agreementQuestions = results->agreementQuestions;
        Json out{{"cohort", results->cohort}, {"results", json(results->results)}, {"next", json(results->next)}, {"recruits", Json::array()}, {"fleiss_kappa", nullptr}};
        for (const RecruitResults& each : results->recruits) {
            sheet.recruits.push_back({each.code, each.results.answers, each.results.right, each.galls, each.hosts, nextWords(each.next, session.pack(), run.words())});
            out["recruits"].push_back({{"code", each.code}, {"results", json(each.results)}, {"next", json(each.next)}});
        }
        if (results->agreement && results->agreement->kappa)
            out["fleiss_kappa"] = {{"value", *results->agreement->kappa}, {"lower", results->agreement->interval.lower}, {"upper", results->agreement->interval.upper},
                                   {"people", results->agreementPeople}, {"questions", results->agreementQuestions}};
        say(run, session, sheet);
        return finish(run, session, sheet, out);
    }

    void say(Run& run, Session& session, const report::PracticeSheet& sheet) const
    {
        const auto whole = [](std::int64_t n) { return static_cast<double>(n); };
        run.say("{n} answers, {right} of them right.", {{"n", run.words().number(whole(sheet.results.answers))}, {"right", run.words().number(whole(sheet.results.right))}});
        if (!sheet.results.groups.empty()) {
            const SubjectResult& galls = sheet.results.groups.front();
            run.say("Gall lines: {found} found, {passed} rightly passed.", {{"found", report::shareWords(galls.strict.sensitivity, run.words())}, {"passed", report::shareWords(galls.strict.specificity, run.words())}});
            if (galls.fewThere || galls.fewAbsent)
                run.say("These are few answers: a first impression and no more.");
        }
        for (const NextPractice& each : sheet.next)
            run.say("To practise: {what} ({wrong} of {n} wrong or not judged).",
                    {{"what", report::subjectWords(each.kind, each.subject, session.pack(), run.words())},
                     {"wrong", run.words().number(each.wrong * static_cast<double>(each.answers))},
                     {"n", run.words().number(static_cast<double>(each.answers))}});
    }

    Result<int> finish(Run& run, Session& session, report::PracticeSheet& sheet, Json& out)
    {
        const auto rules = practiceRules(session);
        if (!rules)
            return fail(rules.error());
        sheet.storeName = session.info().name;
        sheet.demonstration = session.info().demonstration;
        sheet.made = session.today();
        sheet.limits = rules->limits;
        sheet.prevalence = rules->prevalence;
        if (!m_out.empty()) {
            if (auto written = writePaper(m_out, report::practiceSheet(sheet, session.pack(), run.words())); !written)
                return fail(written.error());
            run.say("Wrote {file}.", {{"file", m_out}});
            out["path"] = m_out;
        }
        out["limits"] = {{"sensitivity", rules->limits.sensitivity}, {"specificity", rules->limits.specificity}};
        out["prevalence"] = rules->prevalence;
        run.give(std::move(out));
        return done;
    }

    std::string m_person, m_cohort, m_out;
    bool m_noNames = false;
};

} // namespace

std::unique_ptr<Verb> makePractice()
{
    return std::make_unique<PracticeVerb>();
}

} // namespace cupule::app

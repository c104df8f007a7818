#include <algorithm>
#include <iterator>

#include "app/verbs/verbs.h"
#include "core/task/programme.h"

namespace cupule::app {

namespace {

class ProgrammeVerb final : public StoreVerb {
public:
    const char* name() const override { return "programme"; }
    const char* summary() const override { return "What the programme sets: whom to tell, who may move a sample, hours"; }
    const char* usage() const override { return "STORE [--tell WHO] [--answers WHO] [--may-move WHO] [--hours WARN ASK REARING] [--detection CHOICE]"; }
    const char* prose() const override
    {
        return "Shows what the programme has set for a store, or sets what is named and leaves the rest. No law and no published "
               "figure says these; until the programme sets its own, they are said to be the programme's to set.\n--tell is "
               "the contact that the notice after a find names; --answers stands on labels and must be no home address; "
               "--hours count from the seal: warned of after the first, asked about after the second, of no use for rearing after "
               "the third. An empty text takes a setting back; --proposed-hours goes back to the proposal. --detection measured "
               "lets the account of the season take what was measured of each observer (lower bound) for what a look finds; --detection protocol goes "
               "back to the protocol's assumption. Who may move a sample, the hours and detection are for a trainer or the office.";
    }
    const char* examples() const override
    {
        return "cupule programme vale.cupule\n"
               "cupule programme vale.cupule --tell \"plant-health office, 01632 960 100\" --hours 24 48 72";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        m_named[0] = options.add_option("--tell", m_wanted.tell, "whom to tell of a find, and how");
        m_named[1] = options.add_option("--answers", m_wanted.answers, "who answers for samples: an office or a box number");
        m_named[2] = options.add_option("--may-move", m_wanted.mayMove, "who may move a sample");
        auto* hours = options.add_option("--hours", m_hours, "hours from the seal: warned of, asked about, of no use for rearing")
                          ->expected(3);
        m_detectionNamed = options.add_option("--detection", m_detection, "what a look is taken to find in the account: protocol or measured")
                               ->check(CLI::IsMember({"protocol", "measured"}));
        options.add_flag("--proposed-hours", m_proposed, "the hours proposed, until the programme sets its own")->excludes(hours);
    }
    Result<int> run(Run& run) override
    {
        const bool sets = m_proposed || m_detectionNamed->count() > 0 || !m_hours.empty() ||
                          std::any_of(std::begin(m_named), std::end(m_named), [](const CLI::Option* o) { return o->count() > 0; });
        const auto session = run.open(m_store, !sets);
        if (!session)
            return fail(session.error());
        auto now = programme(**session);
        if (!now)
            return fail(now.error());
        if (sets) {
            if (auto kept = setProgramme(**session, merged(*now), run.words().text("what the programme sets")); !kept)
                return fail(kept.error());
            now = programme(**session);
            if (!now)
                return fail(now.error());
        }
        give(run, *now, (*session)->pack());
        return done;
    }

private:
    [[nodiscard]] Programme merged(Programme now) const
    {
        std::string* const places[] = {&now.tell, &now.answers, &now.mayMove};
        const std::string* const typed[] = {&m_wanted.tell, &m_wanted.answers, &m_wanted.mayMove};
        for (int i = 0; i < 3; ++i)
            if (m_named[i]->count() > 0)
                *places[i] = *typed[i];
        now.detection = detectionNamed(m_detection).value_or(now.detection);
        if (m_proposed)
            now.limits.reset();
        if (m_hours.size() == 3)
            now.limits = SampleLimits{m_hours[0], m_hours[1], m_hours[2]};
        return now;
    }
    static void give(Run& run, const Programme& now, const Pack& pack)
    {
        const auto sayOrNot = [&](const char* set, const char* unset, const std::string& value) {
            run.say(value.empty() ? unset : set, {{"value", value}});
        };
        sayOrNot("Tell of a find: {value}.", "Whom to tell of a find: the programme's to set, and nobody has.", now.tell);
        sayOrNot("Answers for samples: {value}.", "Who answers for samples: the programme's to set; labels name the store.",
                 now.answers);
        sayOrNot("May move a sample: {value}.", "Who may move a sample: the programme's to set; ask the authority.", now.mayMove);
        const SampleLimits limits = limitsOf(now, pack);
        run.say(now.limits ? "Hours from the seal: {warn}, {ask}, {rearing}."
                           : "Hours from the seal: {warn}, {ask}, {rearing}: a proposal, the programme's to set.",
                {{"warn", run.words().number(limits.warnHours)},
                 {"ask", run.words().number(limits.askHours)},
                 {"rearing", run.words().number(limits.rearingHours)}});
        run.say(now.detection == DetectionChoice::measured
                    ? "In the account a look finds what was measured of its observer (lower bound); the protocol's value where nothing is."
                    : "In the account a look finds what the protocol states.");
        run.give({{"tell", now.tell},
                  {"answers", now.answers},
                  {"may_move", now.mayMove},
                  {"hours", {limits.warnHours, limits.askHours, limits.rearingHours}},
                  {"hours_proposed", !now.limits},
                  {"detection", detectionName(now.detection)}});
    }

    Programme m_wanted;
    std::vector<double> m_hours;
    std::string m_detection;
    CLI::Option* m_detectionNamed = nullptr;
    bool m_proposed = false;
    CLI::Option* m_named[3] = {};
};

} // namespace

std::unique_ptr<Verb> makeProgramme()
{
    return std::make_unique<ProgrammeVerb>();
}

} // namespace cupule::app

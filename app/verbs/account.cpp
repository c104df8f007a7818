#include "core/task/account.h"

#include "app/paper.h"
#include "app/verbs/verbs.h"

namespace cupule::app {

namespace {

class Account final : public StoreVerb {
public:
    const char* name() const override { return "account"; }
    const char* summary() const override { return "Write a one-page account of a season"; }
    const char* usage() const override { return "STORE --out FILE.html or FILE.pdf [--year YEAR] [--detection CHOICE]"; }
    const char* prose() const override
    {
        return "Writes a page that any browser shows and prints: what was looked at, what was found where "
               "and how sure, what finding "
               "nothing is worth, what waits, samples by state, and the cautions. Exact places, names and "
               "owners are left out. With a file name that ends in .pdf it is written as pages of A4.\n"
               "What a look finds of a gall that is there is an assumption, and the page says which: as the protocol states, or, with "
               "--detection measured, as measured of each observer in practice and told with their consent (lower end of the interval); who "
               "is not measured has the protocol's value, and the page counts them. Without the option it goes by what the programme sets.";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--out", m_out, "the file to write")->required();
        options.add_option("--year", m_year, "which year; else this one; 0 for all");
        options.add_option("--detection", m_detection, "what a look finds: protocol or measured; else what the programme sets")
            ->check(CLI::IsMember({"protocol", "measured"}));
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const int year = m_year < 0 ? (*session)->today().year() : m_year;
        const auto data = gatherAccount(**session, year, {}, detectionNamed(m_detection));
        if (!data)
            return fail(data.error());
        const auto page = report::account(*data, (*session)->pack(), run.words());
        if (auto written = writePaper(m_out, page); !written)
            return fail(written.error());
        run.say("Wrote {file}. Visits: {visits}; finds accepted or claimed: {finds}.",
                {{"file", m_out},
                 {"visits", run.words().number(data->visits)},
                 {"finds", run.words().number(static_cast<double>(data->finds.size()))}});
        run.give({{"path", m_out},
                  {"year", year},
                  {"visits", data->visits},
                  {"trees", data->trees},
                  {"finds", data->finds.size()},
                  {"detection", give(run, data->detection)}});
        return done;
    }

private:
    static nlohmann::json give(Run& run, const report::AccountDetection& detection)
    {
        const auto number = [&](double value) { return run.words().number(value); };
        run.say(detection.measured ? "Detection as measured of each observer (lower bound); not measured, with the protocol's value: {not} of {people}."
                                   : "Detection as the protocol states: {a}, {b} and {c} in 100 for worth A, B and C.",
                {{"not", number(detection.notMeasured)}, {"people", number(detection.people)}, {"a", number(detection.a * 100)},
                 {"b", number(detection.b * 100)}, {"c", number(detection.c * 100)}});
        if (detection.trees > 0)
            run.say("Had all {trees} trees with nothing seen carried galls, about {found} in 100 would have been found.",
                    {{"trees", number(detection.trees)}, {"found", number(detection.found * 100)}});
        nlohmann::json out{{"choice", detectionName(detection.measured ? DetectionChoice::measured : DetectionChoice::protocol)},
                           {"protocol", {detection.a, detection.b, detection.c}}, {"looks", detection.looks}, {"looks_left_out", detection.looksLeftOut},
                           {"trees", detection.trees}, {"found", detection.found}, {"observers", detection.people},
                           {"observers_not_measured", detection.notMeasured}};
        if (detection.people > detection.notMeasured)
            out["measured_lower_bounds"] = {detection.lowest, detection.highest};
        return out;
    }

    std::string m_out, m_detection;
    int m_year = -1;
};

} // namespace

std::unique_ptr<Verb> makeAccount()
{
    return std::make_unique<Account>();
}

} // namespace cupule::app

#include "core/task/account.h"

#include "app/paper.h"
#include "app/verbs/verbs.h"

namespace cupule::app {

namespace {

class Account final : public StoreVerb {
public:
    const char* name() const override { return "account"; }
    const char* summary() const override { return "Write a one-page account of a season"; }
    const char* usage() const override { return "STORE --out FILE.html or FILE.pdf [--year YEAR]"; }
    const char* prose() const override
    {
        return "Writes a page that any browser shows and prints: what was looked at, what was found where "
               "and how sure, what finding "
               "nothing is worth, what waits, samples by state, and the cautions. Exact places, names and "
               "owners are left out. With a file name that ends in .pdf it is written as pages of A4.";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--out", m_out, "the file to write")->required();
        options.add_option("--year", m_year, "which year; else this one; 0 for all");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const int year = m_year < 0 ? (*session)->today().year() : m_year;
        const auto data = gatherAccount(**session, year);
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
                  {"finds", data->finds.size()}});
        return done;
    }

private:
    std::string m_out;
    int m_year = -1;
};

} // namespace

std::unique_ptr<Verb> makeAccount()
{
    return std::make_unique<Account>();
}

} // namespace cupule::app

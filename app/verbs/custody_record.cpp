#include "core/report/custody_record.h"

#include "app/verbs/verbs.h"
#include "core/base/file.h"
#include "core/task/nouns.h"
#include "core/task/sample_papers.h"
#include "ui/print/pdf.h"

namespace cupule::app {

namespace {

class CustodyRecord final : public StoreVerb {
public:
    const char* name() const override { return "custody-record"; }
    const char* summary() const override { return "Print the custody record of a sample"; }
    const char* usage() const override { return "STORE NUMBER --out FILE.pdf"; }
    const char* prose() const override
    {
        return "Writes the paper that goes with a sample: what was taken and by whose leave, every line of its custody record, "
               "what is broken and what is still missing, room for the next changes of hands, and the cautions. Leaves stand "
               "by their reference; the exact place and the givers' names stay in the store. People stand as they were "
               "written into the lines.";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("NUMBER", m_number, "number of the sample")->required();
        options.add_option("--out", m_out, "the file to write")->required();
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::sample, m_number);
        if (!id)
            return fail(id.error());
        const auto data = gatherCustodyRecord(**session, *id);
        if (!data)
            return fail(data.error());
        const auto paper = report::custodyRecord(*data, (*session)->pack(), run.words());
        if (auto written = writeFile(m_out, ui::documentPdf(paper)); !written)
            return fail(written.error());
        run.say("Wrote {file}. Lines: {lines}; broken: {breaks}; missing: {missing}.",
                {{"file", m_out},
                 {"lines", run.words().number(static_cast<double>(data->facts.lines.size()))},
                 {"breaks", run.words().number(static_cast<double>(data->status.breaks.size()))},
                 {"missing", run.words().number(static_cast<double>(data->status.missing.size()))}});
        run.give({{"path", m_out},
                  {"number", data->facts.sample.number},
                  {"lines", data->facts.lines.size()},
                  {"breaks", data->status.breaks.size()},
                  {"missing", data->status.missing.size()}});
        return done;
    }

private:
    std::string m_number, m_out;
};

} // namespace

std::unique_ptr<Verb> makeCustodyRecord()
{
    return std::make_unique<CustodyRecord>();
}

} // namespace cupule::app

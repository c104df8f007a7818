#include "core/report/notice.h"

#include "app/paper.h"
#include "app/verbs/verbs.h"
#include "core/task/nouns.h"
#include "core/task/notice.h"

namespace cupule::app {

namespace {

class Notice final : public StoreVerb {
public:
    const char* name() const override { return "notice"; }
    const char* summary() const override { return "Write the notice of a suspected find for the plant-health authority"; }
    const char* usage() const override { return "STORE VISIT --out FILE.pdf or FILE.html [--without-names]"; }
    const char* prose() const override
    {
        return "Writes what a record of a find should hold, as far as the store has it, and says what it has not: place and how exact, "
               "signs and season, the host and by what it is known, who looked and how, pictures, samples and reports, what was "
               "decided, whom to tell. It holds the exact place, and people by name unless --without-names stands: it is for the "
               "authority alone. Nothing is sent. Once you have sent it, say so with \"cupule told\".";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("VISIT", m_visit, "which visit, as W03@2026-06-11")->required();
        options.add_option("--out", m_out, "the file to write")->required();
        options.add_flag("--without-names", m_withoutNames, "people by code alone");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::visit, m_visit);
        if (!id)
            return fail(id.error());
        const auto data = gatherNotice(**session, *id, !m_withoutNames);
        if (!data)
            return fail(data.error());
        const auto paper = report::notice(*data, (*session)->pack(), run.words());
        if (auto written = writePaper(m_out, paper); !written)
            return fail(written.error());
        run.say("Wrote {file}. Nobody has been told by it: send it, then note that with \"cupule told\".", {{"file", m_out}});
        run.give({{"path", m_out}, {"id", id->text()}, {"told", data->told.has_value()}});
        return done;
    }

private:
    std::string m_visit, m_out;
    bool m_withoutNames = false;
};

} // namespace

std::unique_ptr<Verb> makeNotice()
{
    return std::make_unique<Notice>();
}

} // namespace cupule::app

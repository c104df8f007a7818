#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/base/file.h"
#include "core/task/nouns.h"
#include "core/task/sample_papers.h"
#include "ui/print/label_paper.h"
#include "ui/print/pdf.h"

namespace cupule::app {

namespace {

class Labels final : public StoreVerb {
public:
    const char* name() const override { return "labels"; }
    const char* summary() const override { return "Print the labels of samples"; }
    const char* usage() const override { return "STORE NUMBER... --out FILE.pdf [--sheet ROWSxCOLUMNS]"; }
    const char* prose() const override
    {
        return "Writes labels to print: for each sample one for the inner bag (single frame), one for the outer bag (double "
               "frame) and one for its papers. Each carries the number with its check character, a code that a telephone or "
               "scanner reads, the tree, the square, the date, the hazard line and whom to ask. What is not known yet stays "
               "free for a pencil. The exact place and names stay in the store.\nPrint at 100 %; the line at the foot is 100 mm "
               "long then. Plain paper takes 4x2 labels. For sheets of labels give their rows and columns, and margins "
               "(left, top, right, bottom), gaps (across, down) and the first free place of a used sheet (free) where they "
               "differ.";
    }
    const char* examples() const override
    {
        return "cupule labels vale.cupule 26-TV-0147-H --out labels.pdf\n"
               "cupule labels vale.cupule 26-TV-0147-H 26-TV-0148-F --out labels.pdf --sheet \"5x2 top=6 bottom=6 down=0\"";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("NUMBER", m_numbers, "numbers of the samples")->required();
        options.add_option("--out", m_out, "the file to write")->required();
        options.add_option("--sheet", m_sheet, "rows and columns, and in mm what differs; else 4x2 on plain paper");
        options.add_option("--ask", m_ask, "whom to ask, as \"Tharn Vale office, box 12\"; no home address; else the store's name");
    }
    Result<int> run(Run& run) override
    {
        const auto setup = m_sheet.empty() ? Result<ui::SheetSetup>(ui::SheetSetup()) : readLabelSheet(m_sheet);
        if (!setup)
            return fail(setup.error());
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        std::vector<report::Label> labels;
        nlohmann::json numbers = nlohmann::json::array();
        for (const auto& typed : m_numbers) {
            const auto id = findNoun(**session, Noun::sample, typed);
            if (!id)
                return fail(id.error());
            const auto facts = gatherLabels(**session, *id);
            if (!facts)
                return fail(facts.error());
            numbers.push_back(facts->sample.number);
            for (auto& label : report::sampleLabels(*facts, m_ask, (*session)->pack(), run.words()))
                labels.push_back(std::move(label));
        }
        if (auto written = writeFile(m_out, ui::labelSheetsPdf(labels, *setup)); !written)
            return fail(written.error());
        const int sheets = ui::sheetsFor(labels.size(), *setup);
        run.say("Wrote {file}. Labels: {labels}; sheets: {sheets}. Print at 100 %.",
                {{"file", m_out},
                 {"labels", run.words().number(static_cast<double>(labels.size()))},
                 {"sheets", run.words().number(sheets)}});
        run.give({{"path", m_out}, {"numbers", numbers}, {"labels", labels.size()}, {"sheets", sheets}});
        return done;
    }

private:
    std::vector<std::string> m_numbers;
    std::string m_out, m_sheet, m_ask;
};

} // namespace

std::unique_ptr<Verb> makeLabels()
{
    return std::make_unique<Labels>();
}

} // namespace cupule::app

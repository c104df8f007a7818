#include <iterator>

#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/base/file.h"
#include "core/task/nouns.h"
#include "core/task/sample_numbers.h"
#include "core/task/sample_papers.h"
#include "ui/print/label_paper.h"
#include "ui/print/pdf.h"

namespace cupule::app {

namespace {

class Labels final : public StoreVerb {
public:
    const char* name() const override { return "labels"; }
    const char* summary() const override { return "Print the labels of samples"; }
    const char* usage() const override { return "STORE [NUMBER...] --out FILE.pdf [--blank COUNT] [--sheet ROWSxCOLUMNS]"; }
    const char* prose() const override
    {
        return "Writes labels to print: for each sample one for the inner bag (single frame), one for the outer bag (double "
               "frame) and one for its papers. Each carries the number with its check character, a code that a telephone or "
               "scanner reads, the tree, the square, the date, the hazard line and whom to ask. What is not known yet stays "
               "free for a pencil. The exact place and names stay in the store.\nPrint at 100 %; the line at the foot is 100 mm "
               "long then. Plain paper takes 4x2 labels. For sheets of labels give their rows and columns, and margins "
               "(left, top, right, bottom), gaps (across, down) and the first free place of a used sheet (free) where they "
               "differ. Without --sheet the set-up is the one last used in the window.\n--blank reserves so many numbers of your "
               "block and prints their labels with nothing but the number, to take along. Such a number is used by "
               "\"sample open --number\", is never issued again, and can be printed again by naming it.";
    }
    const char* examples() const override
    {
        return "cupule labels vale.cupule 26-TV-0147-H --out labels.pdf\n"
               "cupule labels vale.cupule 26-TV-0147-H 26-TV-0148-F --out labels.pdf --sheet \"5x2 top=6 bottom=6 down=0\"\n"
               "cupule labels vale.cupule --blank 8 --out labels.pdf";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("NUMBER", m_numbers, "numbers of samples, or reserved ones");
        options.add_option("--blank", m_blank, "how many numbers to reserve and print with nothing else");
        options.add_option("--out", m_out, "the file to write")->required();
        options.add_option("--sheet", m_sheet, "rows and columns, and in mm what differs; else as last used in the window");
        options.add_option("--ask", m_ask, "whom to ask, as \"Tharn Vale office, box 12\"; no home address; else as the programme sets it");
    }
    Result<int> run(Run& run) override
    {
        if (m_numbers.empty() == (m_blank == 0))
            return fail("labels.which", FaultKind::usage);
        const auto session = run.open(m_store, m_blank == 0);
        if (!session)
            return fail(session.error());
        const auto setup = readLabelSheet(m_sheet.empty() ? keptLabelSheet((*session)->profile()) : m_sheet);
        if (!setup)
            return fail(setup.error());
        if (m_blank != 0) {
            auto reserved = reserveNumbers(**session, m_blank);
            if (!reserved)
                return fail(reserved.error());
            m_numbers = std::move(*reserved);
        }
        std::vector<report::Label> labels;
        nlohmann::json numbers = nlohmann::json::array();
        for (const auto& typed : m_numbers) {
            auto made = labelsOf(run, **session, typed);
            if (!made)
                return fail(made.error());
            numbers.push_back(made->front().number);
            labels.insert(labels.end(), std::make_move_iterator(made->begin()), std::make_move_iterator(made->end()));
        }
        return write(run, labels, *setup, std::move(numbers));
    }

private:
    Result<std::vector<report::Label>> labelsOf(const Run& run, Session& session, const std::string& typed) const
    {
        if (const auto number = reservedNumber(session, typed)) {
            const auto facts = gatherReservedLabels(session);
            if (!facts)
                return fail(facts.error());
            return report::reservedLabels(*number, *facts, m_ask, session.pack(), run.words());
        }
        const auto id = findNoun(session, Noun::sample, typed);
        if (!id)
            return fail(id.error());
        const auto facts = gatherLabels(session, *id);
        if (!facts)
            return fail(facts.error());
        return report::sampleLabels(*facts, m_ask, session.pack(), run.words());
    }
    Result<int> write(Run& run, const std::vector<report::Label>& labels, const ui::SheetSetup& setup,
                      nlohmann::json numbers) const
    {
        if (auto written = writeFile(m_out, ui::labelSheetsPdf(labels, setup)); !written)
            return fail(written.error());
        const int sheets = ui::sheetsFor(labels.size(), setup);
        if (m_blank != 0)
            run.say("Reserved {first} to {last}.", {{"first", m_numbers.front()}, {"last", m_numbers.back()}});
        run.say("Wrote {file}. Labels: {labels}; sheets: {sheets}. Print at 100 %.",
                {{"file", m_out},
                 {"labels", run.words().number(static_cast<double>(labels.size()))},
                 {"sheets", run.words().number(sheets)}});
        run.give({{"path", m_out}, {"numbers", std::move(numbers)}, {"labels", labels.size()}, {"sheets", sheets}});
        return done;
    }

    int m_blank = 0;
    std::vector<std::string> m_numbers;
    std::string m_out, m_sheet, m_ask;
};

} // namespace

std::unique_ptr<Verb> makeLabels()
{
    return std::make_unique<Labels>();
}

} // namespace cupule::app

#include <algorithm>
#include <filesystem>

#include <QBuffer>

#include "app/verbs/verbs.h"
#include "core/base/file.h"
#include "ui/figures/sheet.h"

namespace cupule::app {

namespace {

std::string png(const QImage& image)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes.toStdString();
}

class Figures final : public Verb {
public:
    const char* name() const override { return "figures"; }
    const char* summary() const override { return "Write the drawn figures as pictures to print"; }
    const char* usage() const override { return "FOLDER [--only NAME...] [--seed NUMBER] [--seeds COUNT] [--across COUNT] [--pixels COUNT]"; }
    const char* prose() const override
    {
        return "Writes each drawn figure (leaves, shoots, winter twigs, husks, galls, look-alikes, crowns) into the folder: as SVG, "
               "without background, for a handbook; and as PNG, on white. A bar in each says its scale. contact.png shows every "
               "figure in three seeds, or as many as are asked for, with its name and what is to be seen.\nThe same seed draws the same figure, on every "
               "machine; another one draws another leaf of the same kind.";
    }
    const char* examples() const override
    {
        return "cupule figures plates\ncupule figures plates --only leaf_castanea gall_midrib --seed 7 --pixels 2400\n"
               "cupule figures plates --only bark_castanea --seeds 6 --across 1";
    }
    bool paints() const override { return true; }
    void declare(CLI::App& options) override
    {
        options.add_option("FOLDER", m_folder, "where to write; made if it is not there")->required();
        options.add_option("--only", m_only, "names of figures, as they stand below them on contact.png");
        options.add_option("--seed", m_seed, "which leaf of its kind is drawn, from 1 up");
        options.add_option("--seeds", m_sheet.seeds, "how many of each kind stand side by side on contact.png, 1 to 12; the first is --seed")
            ->check(CLI::Range(1, 12));
        options.add_option("--across", m_sheet.across, "how many kinds stand side by side on contact.png, 1 to 12")->check(CLI::Range(1, 12));
        options.add_option("--pixels", m_pixels, "longer side of the PNG files, 64 to 8000")->check(CLI::Range(64, 8000));
    }
    Result<int> run(Run& run) override
    {
        QStringList kinds = ui::figureIds();
        if (!m_only.empty()) {
            kinds.clear();
            for (const auto& only : m_only) {
                if (!ui::hasFigure(QString::fromStdString(only)))
                    return fail("name.unknown", FaultKind::usage, {{"noun", "figure"}, {"name", only}});
                kinds << QString::fromStdString(only);
            }
        }
        std::error_code refused; // what is wrong with the folder shows at the first file
        std::filesystem::create_directories(m_folder, refused);
        nlohmann::json names = nlohmann::json::array();
        for (const auto& kind : kinds) {
            const Depiction spec = ui::plate(kind, m_seed);
            const std::string path = m_folder + "/" + kind.toStdString();
            if (auto written = writeFile(path + ".svg", ui::figureSvg(spec).toStdString()); !written)
                return fail(written.error());
            if (auto written = writeFile(path + ".png", png(ui::figureImage(spec, m_pixels))); !written)
                return fail(written.error());
            names.push_back(kind.toStdString());
        }
        m_sheet.kinds = kinds;
        m_sheet.firstSeed = m_seed;
        m_sheet.across = std::min(m_sheet.across, static_cast<int>(kinds.size()));
        if (auto written = writeFile(m_folder + "/contact.png", png(ui::figureSheet(m_sheet))); !written)
            return fail(written.error());
        run.say("Wrote {count} figures as SVG and PNG into {folder}, and contact.png with all of them.",
                {{"count", run.words().number(static_cast<double>(kinds.size()))}, {"folder", m_folder}});
        run.give({{"folder", m_folder}, {"figures", std::move(names)}, {"sheet", m_folder + "/contact.png"}});
        return done;
    }

private:
    std::string m_folder;
    std::vector<std::string> m_only;
    std::uint32_t m_seed = 1;
    ui::SheetForm m_sheet;
    int m_pixels = 1200;
};

} // namespace

std::unique_ptr<Verb> makeFigures()
{
    return std::make_unique<Figures>();
}

} // namespace cupule::app

// The place Samples with each sample of the store, and the dialogs about samples, the programme and the season.

#include "core/protocol/pack_reader.h"
#include "core/task/programme.h"
#include "core/task/samples.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/sample_dialog.h"
#include "ui/samples/label_dialog.h"
#include "ui/samples/line_form.h"
#include "ui/samples/sample_dialogs.h"
#include "ui/samples/samples_view.h"
#include "ui/shell/hand_out_dialog.h"
#include "ui/shell/leafing_dialog.h"
#include "ui/shell/programme_dialog.h"

namespace cupule::test {

namespace {

constexpr int mostSamples = 5;

/// The sample at this place of the list; `correcting`: the form writes a line in place of this one.
std::unique_ptr<QWidget> sample(int at, int correcting = 0)
{
    auto window = std::make_unique<WholeWindow>(pictureLook(), pictureStore().profile);
    if (pictureStore().today.isValid())
        window->bench().setToday(ui::fromDate(pictureStore().today));
    window->openStore(pictureStore().store);
    window->goToPlace(QStringLiteral("samples"));
    const auto lines = sampleLines(*window->bench().session());
    if (lines && at < static_cast<int>(lines->size()))
        Q_EMIT window->bench().goToAsked(QStringLiteral("samples"), (*lines)[static_cast<std::size_t>(at)].id);
    if (correcting > 0)
        window->findChild<ui::LineForm*>()->correct(correcting);
    return window;
}

CivilDate today()
{
    return CivilDate::make(2026, 6, 20).value();
}

Programme programmeSet()
{
    return {"plant-health office, 01632 960 100", "Tharn Vale survey office, box 12", {}, {}};
}

std::vector<Finding> breaksSeen()
{
    Finding seal;
    seal.code = "custody.seal-differs";
    seal.severity = Severity::ask;
    seal.arguments = {{"line", "5"}, {"put", "008824"}, {"read", "008842"}};
    return {seal};
}

bool addAll()
{
    for (int i = 0; i < mostSamples; ++i)
        addPicture({QStringLiteral("samples-%1").arg(i + 1), [i] { return sample(i); }, true, 1366, true});
    addPicture({QStringLiteral("samples-correcting"), [] { return sample(4, 5); }, true, 1366, true});
    addPicture({QStringLiteral("dialog-labels"), [] { return std::make_unique<ui::LabelDialog>(QStringLiteral("4x2")); }, false, 620});
    addPicture({QStringLiteral("dialog-labels-along"),
                [] {
                    auto dialog = std::make_unique<ui::LabelDialog>(QStringLiteral("5x2 top=6 bottom=6 down=0"));
                    dialog->askHowMany(3, 100);
                    return dialog;
                },
                false, 620});
    addPicture({QStringLiteral("dialog-programme"),
                [] { return std::make_unique<ui::ProgrammeDialog>(programmeSet(), builtInPack(), true); }, false, 680});
    addPicture({QStringLiteral("dialog-programme-volunteer"),
                [] { return std::make_unique<ui::ProgrammeDialog>(Programme{}, builtInPack(), false); }, false, 680});
    addPicture({QStringLiteral("dialog-hand-out"),
                [] {
                    const OwnKey locked{std::string(64, '0'), "00000 00000 00000 00000 00000 00000", true, {}};
                    return std::make_unique<ui::HandOutDialog>(std::vector{GoingKind::day, GoingKind::decision, GoingKind::reference}, locked);
                },
                false, 640});
    addPicture({QStringLiteral("dialog-leafing"),
                [] {
                    return std::make_unique<ui::LeafingDialog>(builtInPack(), "MAR", 2026, today(), CivilDate::make(2026, 5, 8).value());
                },
                false, 600});
    addPicture({QStringLiteral("dialog-close-with-break"),
                [] { return std::make_unique<ui::CloseWithBreakDialog>(breaksSeen(), builtInPack()); }, false, 560});
    addPicture({QStringLiteral("dialog-leave"),
                [] { return std::make_unique<ui::LeaveDialog>(std::vector<Site>{}, today()); }, false, 560});
    addPicture({QStringLiteral("dialog-take-sample"),
                [] {
                    auto dialog = std::make_unique<ui::SampleDialog>(
                        builtInPack(), [](const Sample&, bool) { return Result<SampleOpening>(SampleOpening{}); });
                    dialog->propose(QStringLiteral("sweet chestnut"), 3);
                    return dialog;
                },
                false, 600});
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test

#include "tests/gui/whole_window.h"

#include "ui/daysheet/day_view.h"
#include "ui/review/review_view.h"
#include "ui/samples/samples_view.h"
#include "ui/training/training_view.h"
#include "ui/trees/trees_view.h"

namespace cupule::test {

WholeWindow::WholeWindow(ui::Look& look, const QString& profile, std::unique_ptr<ui::Prompts> prompts)
    : WindowBench(profile), MainWindow(WindowBench::bench, look, std::move(prompts))
{
    addPlace(new ui::DayView(bench(), MainWindow::prompts(), this));
    addPlace(new ui::TreesView(bench(), this));
    addPlace(new ui::SamplesView(bench(), MainWindow::prompts(), this));
    addPlace(new ui::ReviewView(bench(), MainWindow::prompts(), this));
    addPlace(new ui::TrainingView(bench(), MainWindow::prompts(), this));
}

bool WholeWindow::openEmpty(const Person& person, const std::vector<Role>& roles)
{
    NewStore store;
    store.name = "Tharn Vale";
    store.region = "MAR";
    store.zone = "Europe/London";
    store.demonstration = true;
    return bench().makeProfileFor(person, roles).has_value() && bench().create(file(QStringLiteral("empty.cupule")), store).has_value();
}

bool WholeWindow::openAs(const Person& person, const std::vector<Role>& roles, const QString& path)
{
    return bench().makeProfileFor(person, roles).has_value() && openStore(path);
}

} // namespace cupule::test

// The whole window: before a store is open, with an empty store, and each place with the store that was
// named.

#include <algorithm>

#include "core/task/day.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/dates.h"
#include "ui/widgets/checklist.h"

namespace cupule::test {

namespace {

std::unique_ptr<QWidget> filled(const QString& place)
{
    auto window = std::make_unique<WholeWindow>(pictureLook(), pictureStore().profile);
    if (pictureStore().today.isValid())
        window->bench().setToday(ui::fromDate(pictureStore().today));
    window->openStore(pictureStore().store);
    window->goToPlace(place);
    if (place == QStringLiteral("day") && pictureStore().day.isValid()) {
        const auto visits = visitsOfDay(*window->bench().session(), ui::fromDate(pictureStore().day), Uid{});
        // a find says most, otherwise the first visit
        const auto find = visits ? std::find_if(visits->begin(), visits->end(), [](const VisitLine& v) { return v.summary == "gall"; })
                                 : std::vector<VisitLine>::const_iterator{};
        if (visits && !visits->empty())
            Q_EMIT window->bench().goToAsked(place, find != visits->end() ? find->id : visits->front().id);
    }
    return window;
}

/// The list of signs of a find, with the card of the sign that was seen.
std::unique_ptr<QWidget> signs()
{
    auto window = filled(QStringLiteral("day"));
    auto* list = window->findChild<ui::ChecklistView*>();
    for (int row = 0; list != nullptr && row < list->model()->rowCount(); ++row) {
        const ui::ChecklistRow sign = list->checklist()->row(list->model()->index(row, 0));
        if (sign.answer != Answer::seen)
            continue;
        window->resize(1366, 768);
        window->show(); // a list scrolls its page only once it is shown
        list->goTo(sign.sign);
        list->setFocus();
        break;
    }
    return window;
}

std::unique_ptr<QWidget> empty(const QString& place)
{
    auto window = std::make_unique<WholeWindow>(pictureLook());
    Person person;
    person.code = "MH";
    person.name = "Maud Harrow";
    if (window->openEmpty(person, {Role::volunteer, Role::sampleHandler, Role::verifier}))
        window->goToPlace(place);
    return window;
}

bool addAll()
{
    addPicture({QStringLiteral("window-start"), [] { return std::make_unique<WholeWindow>(pictureLook()); }, true});
    addPicture({QStringLiteral("day-signs"), &signs, true, 1366, true});
    for (const char* place : {"day", "trees", "samples", "review"}) {
        const QString id = QString::fromLatin1(place);
        addPicture({id + QStringLiteral("-filled"), [id] { return filled(id); }, true, 1366, true});
        addPicture({id + QStringLiteral("-empty"), [id] { return empty(id); }, true});
    }
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test

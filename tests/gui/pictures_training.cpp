// The place Practice: the walk on the trainer's page and on the wall.

#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/training/training_view.h"
#include "ui/training/walk_page.h"

namespace cupule::test {

namespace {

/// An empty store of a trainer in June.
std::unique_ptr<WholeWindow> practice()
{
    auto window = std::make_unique<WholeWindow>(pictureLook());
    Person person;
    person.code = "PL";
    person.name = "Petra Lind";
    window->bench().setToday(*CivilDate::make(2026, 6, 13));
    if (window->openEmpty(person, {Role::trainer}))
        window->goToPlace(QStringLiteral("practice"));
    return window;
}

ui::WalkPage& walkOf(WholeWindow& window)
{
    return window.findChild<ui::TrainingView*>()->walk();
}

int stepWith(ui::WalkPage& page, const char* subject)
{
    const auto& steps = page.desk().steps();
    for (std::size_t i = 0; i < steps.size(); ++i)
        if (steps[i].lesson.subject == subject)
            return static_cast<int>(i);
    return 0;
}

std::unique_ptr<QWidget> walk()
{
    auto window = practice();
    ui::WalkPage& page = walkOf(*window);
    const int step = stepWith(page, "S02");
    page.desk().show(step);
    page.desk().setNotes(step, QStringLiteral("Hand round the dried leaf first. Ask where they would look.\nWait for three answers."));
    Q_EMIT page.desk().stepChanged();
    return window;
}

/// The wall, with the window that it needs kept beside it.
class Wall : public QWidget {
public:
    explicit Wall(const char* subject) : m_window(practice())
    {
        ui::WalkPage& page = walkOf(*m_window);
        page.desk().show(stepWith(page, subject));
        m_presenter = new ui::PresenterWindow(page.desk(), nullptr);
        m_presenter->setParent(this, Qt::Widget);
        m_window->setParent(this, Qt::Widget); // behind the wall: whoever waits for figures finds their shop
        m_window->lower();
        m_window->hide();
    }
    ~Wall() override { delete m_presenter; }

protected:
    void resizeEvent(QResizeEvent*) override { m_presenter->resize(size()); }

private:
    std::unique_ptr<WholeWindow> m_window;
    ui::PresenterWindow* m_presenter;
};

bool addAll()
{
    addPicture({QStringLiteral("practice-walk"), &walk, true});
    addPicture({QStringLiteral("practice-walk-begun"), [] { return practice(); }, true});
    for (const char* subject : {"K01", "K02", "S01", "S02", "S06", "S16", "S20", "S27", "going out"})
        addPicture({QStringLiteral("presenter-%1").arg(QLatin1String(subject)).replace(QLatin1Char(' '), QLatin1Char('-')),
                    [subject] { return std::make_unique<Wall>(subject); }, true});
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test

// The place Practice: the walk on the trainer's page and on the wall.

#include <QTest>
#include <QVBoxLayout>

#include "tests/gui/picture_book.h"
#include "tests/gui/practised.h"
#include "tests/gui/whole_window.h"
#include "core/task/skill.h"
#include "ui/training/cases_page.h"
#include "ui/training/results_page.h"
#include "ui/training/skill_dialog.h"
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
        if (pictureLook().theme().page.lightness() < 128) // the wall is light until the trainer asks for the dark one
            QTest::keyClick(m_presenter, Qt::Key_L);
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

ui::TrainingView& viewOf(WholeWindow& window)
{
    return *window.findChild<ui::TrainingView*>();
}

std::unique_ptr<QWidget> setup()
{
    auto window = practice();
    viewOf(*window).showPage(ui::TrainingView::Page::cases);
    return window;
}

/// A case with its first question answered; `told`: answered to its end.
std::unique_ptr<QWidget> aCase(bool sure, bool told)
{
    auto window = practice();
    viewOf(*window).showPage(ui::TrainingView::Page::cases);
    ui::CasesDesk& desk = viewOf(*window).cases().desk();
    PracticeWish wish;
    wish.cases = 40;
    wish.month = 6;
    wish.seed = 7;
    desk.begin(wish, {}, {});
    while (told && desk.phase() != ui::CasesDesk::Phase::feedback) {
        if (desk.phase() == ui::CasesDesk::Phase::sureness)
            desk.sure(80);
        else
            desk.give(desk.question() % 3 == 1 ? desk.item().options.back() : desk.item().right.front());
    }
    if (sure)
        desk.give(desk.item().options.front());
    return window;
}

std::unique_ptr<QWidget> results(bool filled, int recruit)
{
    auto window = practice();
    if (filled)
        practiseCourse(*window->bench().session(), "Spring course, Tharn Vale", 20);
    viewOf(*window).showPage(ui::TrainingView::Page::results);
    const auto quiet = [&] { (void)QTest::qWaitFor([&] { return !window->bench().jobs().busy(); }, 20000); };
    quiet();
    viewOf(*window).results().desk().show(recruit);
    quiet();
    return window;
}

/// What is told of a recruit, beside the trainer's page.
class Told : public QWidget {
public:
    Told() : m_window(practice())
    {
        Session& session = *m_window->bench().session();
        practise(session, "Spring course, Tharn Vale", {"AD", "Adah Merrow", 40, 0.9, 11});
        const Uid adah = cupule::recruit(session, "AD", {}).value();
        (void)tellSkill(session, adah, "PL");
        m_dialog = new ui::SkillDialog(m_window->bench(), adah, QStringLiteral("Adah Merrow"));
        m_dialog->setWindowFlags(Qt::Widget);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_dialog);
    }
    QSize sizeHint() const override { return m_dialog->size(); }

private:
    std::unique_ptr<WholeWindow> m_window;
    ui::SkillDialog* m_dialog;
};

bool addAll()
{
    addPicture({QStringLiteral("dialog-skill"), [] { return std::make_unique<Told>(); }, false, 680});
    addPicture({QStringLiteral("practice-cases-setup"), &setup, true});
    addPicture({QStringLiteral("practice-cases"), [] { return aCase(false, false); }, true});
    addPicture({QStringLiteral("practice-cases-sure"), [] { return aCase(true, false); }, true});
    addPicture({QStringLiteral("practice-cases-told"), [] { return aCase(false, true); }, true});
    addPicture({QStringLiteral("practice-results"), [] { return results(true, -1); }, true});
    addPicture({QStringLiteral("practice-results-one"), [] { return results(true, 7); }, true});
    addPicture({QStringLiteral("practice-results-empty"), [] { return results(false, -1); }, true});
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

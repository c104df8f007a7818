#include "ui/training/walk_desk.h"

#include <algorithm>
#include <memory>

#include <QFileInfo>

#include "core/training/lesson_file.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/photos/thumbnails.h"
#include "ui/training/figure_shop.h"

namespace cupule::ui {

namespace {

constexpr int photoSide = 1600, photosKept = 12;
constexpr int quietMilliseconds = 1200; // nobody types for so long: the draft is written

/// Characters that neither point to the host nor rule it out, and what is only possible and no gall, are left out at the start: a walk
/// of forty steps teaches nobody. The trainer takes them in by one key.
bool leftOut(const WalkStep& step)
{
    if (step.kind == StepKind::character)
        return std::none_of(step.states.begin(), step.states.end(),
                            [](const StateMeaning& s) { return s.rulesOut || s.diagnostic || s.ifCounted; });
    return step.kind == StepKind::sign && step.season != SeasonState::expected && step.group != SignGroup::gall && step.group != SignGroup::wrongHost;
}

} // namespace

WalkDesk::WalkDesk(Workbench& bench, QObject* parent)
    : QObject(parent), m_bench(bench), m_figures(new FigureShop(this)), m_photos(new Thumbnails(photoSide, photosKept, this))
{
    m_keeping.setSingleShot(true);
    m_keeping.setInterval(quietMilliseconds);
    connect(&m_keeping, &QTimer::timeout, this, &WalkDesk::keepDraft);
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_steps.clear();
        m_current = 0;
    });
}

const Pack& WalkDesk::pack() const
{
    return m_bench.session()->pack();
}

QString WalkDesk::name() const
{
    return text(m_name);
}

std::string WalkDesk::draft() const
{
    return m_bench.profile().folder + "/walk.lesson";
}

void WalkDesk::begin()
{
    const SeasonContext season = m_bench.session()->seasonToday();
    m_place = {season.region, m_bench.session()->today().month(), season.shiftDays};
    const auto left = openLesson(draft());
    if (left && left->protocol == pack().id && left->region == season.region) {
        m_place.month = left->month;
        arrange(*left);
    } else {
        arrange(proposed());
    }
}

void WalkDesk::setMonth(int month)
{
    m_place.month = month;
    m_name.clear();
    arrange(proposed());
    changed();
}

Lesson WalkDesk::proposed() const
{
    const std::vector<WalkStep> walk = walkOf(pack(), m_place);
    Lesson lesson = lessonOf(walk, pack(), m_place, {});
    for (std::size_t i = 0; i < walk.size(); ++i)
        lesson.steps[i].skipped = leftOut(walk[i]);
    return lesson;
}

void WalkDesk::arrange(const Lesson& lesson)
{
    m_name = lesson.name;
    m_steps = arranged(walkOf(pack(), m_place), lesson).steps;
    m_current = 0;
    if (!m_steps.empty() && m_steps.front().lesson.skipped)
        m_current = std::max(0, following(1));
    Q_EMIT listChanged();
    Q_EMIT stepChanged();
}

Lesson WalkDesk::lesson() const
{
    Lesson lesson{lessonFormat, m_place.month, m_name, pack().id, m_place.region, {}};
    for (const ArrangedStep& step : m_steps)
        lesson.steps.push_back(step.lesson);
    return lesson;
}

void WalkDesk::show(int step)
{
    if (step == m_current || step < 0 || step >= static_cast<int>(m_steps.size()))
        return;
    m_current = step;
    Q_EMIT stepChanged();
}

int WalkDesk::following(int by) const
{
    for (int at = m_current + by; at >= 0 && at < static_cast<int>(m_steps.size()); at += by)
        if (!m_steps[static_cast<std::size_t>(at)].lesson.skipped)
            return at;
    return -1;
}

bool WalkDesk::go(int by)
{
    const int to = following(by);
    if (to >= 0)
        show(to);
    return to >= 0;
}

int WalkDesk::number(int step) const
{
    int shown = 0;
    for (int i = 0; i < step; ++i)
        shown += m_steps[static_cast<std::size_t>(i)].lesson.skipped ? 0 : 1;
    return std::min(shown + 1, count());
}

int WalkDesk::count() const
{
    return static_cast<int>(std::count_if(m_steps.begin(), m_steps.end(), [](const ArrangedStep& s) { return !s.lesson.skipped; }));
}

Slide WalkDesk::slide(int step) const
{
    const ArrangedStep& arranged = m_steps[static_cast<std::size_t>(step)];
    Slide slide = slideOf(arranged, pack(), m_place);
    slide.today = toDate(m_bench.session()->today());
    for (std::size_t i = 0; i < slide.photos.size(); ++i)
        slide.photos[i].path = text(pictureOf(draft(), arranged.lesson.photos[i]));
    return slide;
}

void WalkDesk::changed()
{
    m_unsaved = true;
    m_keeping.start();
}

void WalkDesk::setSkipped(int step, bool skipped)
{
    m_steps[static_cast<std::size_t>(step)].lesson.skipped = skipped;
    changed();
    Q_EMIT listChanged();
    Q_EMIT stepChanged(); // its number among the shown ones
}

void WalkDesk::move(int step, int by)
{
    const int to = step + by;
    if (to < 0 || to >= static_cast<int>(m_steps.size()))
        return;
    std::swap(m_steps[static_cast<std::size_t>(step)], m_steps[static_cast<std::size_t>(to)]);
    m_current = to;
    changed();
    Q_EMIT listChanged();
    Q_EMIT stepChanged();
}

void WalkDesk::setNotes(int step, const QString& notes)
{
    std::string& kept = m_steps[static_cast<std::size_t>(step)].lesson.notes;
    if (kept == utf8(notes))
        return;
    kept = utf8(notes);
    changed();
}

void WalkDesk::addPhotos(int step, const QStringList& paths)
{
    const std::string beside = draft();
    auto taken = std::make_shared<std::vector<LessonPhoto>>();
    const std::string subject = m_steps[static_cast<std::size_t>(step)].lesson.subject;
    m_bench.jobs().start(tr("Taking photos into the walk"),
                         [beside, taken, paths](Session&, const Progress&) -> Status {
                             for (const QString& path : paths) {
                                 auto photo = addPicture(beside, utf8(path));
                                 if (!photo)
                                     return fail(photo.error());
                                 photo->caption = utf8(QFileInfo(path).completeBaseName());
                                 taken->push_back(*photo);
                             }
                             return {};
                         },
                         [this, taken, subject](const Status& status) {
                             if (!status)
                                 m_bench.complain(status.error());
                             for (ArrangedStep& to : m_steps) // wherever it has been moved meanwhile
                                 if (to.lesson.subject == subject)
                                     for (const LessonPhoto& photo : *taken)
                                         if (to.lesson.photos.size() < mostStepPhotos)
                                             to.lesson.photos.push_back(photo);
                             changed();
                             Q_EMIT photosChanged();
                             Q_EMIT stepChanged();
                         });
}

void WalkDesk::setCaption(int step, int photo, const QString& caption)
{
    m_steps[static_cast<std::size_t>(step)].lesson.photos[static_cast<std::size_t>(photo)].caption = utf8(caption);
    changed();
    Q_EMIT stepChanged();
}

void WalkDesk::removePhoto(int step, int photo)
{
    auto& photos = m_steps[static_cast<std::size_t>(step)].lesson.photos;
    photos.erase(photos.begin() + photo);
    changed();
    Q_EMIT photosChanged();
    Q_EMIT stepChanged();
}

bool WalkDesk::open(const QString& path)
{
    const auto opened = openLesson(utf8(path));
    if (!opened) {
        m_bench.complain(opened.error());
        return false;
    }
    if (opened->protocol != pack().id || pack().region(opened->region) == nullptr) {
        m_bench.complain(Fault{"lesson.form", FaultKind::data, {{"path", "/protocol"}, {"why", "value"}}, {}, {}});
        return false;
    }
    m_place = {opened->region, opened->month, m_place.shiftDays};
    arrange(*opened);
    m_bench.jobs().start(tr("Opening a lesson"),
                         [lesson = *opened, from = utf8(path), to = draft()](Session&, const Progress&) { return saveLesson(to, lesson, from); },
                         [this](const Status& status) {
                             if (!status)
                                 m_bench.complain(status.error());
                             Q_EMIT photosChanged();
                             Q_EMIT stepChanged();
                         });
    return true;
}

void WalkDesk::save(const QString& path)
{
    m_name = utf8(QFileInfo(path).completeBaseName());
    changed();
    m_bench.jobs().start(tr("Saving the lesson"),
                         [lesson = lesson(), to = utf8(path), from = draft()](Session&, const Progress&) { return saveLesson(to, lesson, from); },
                         [this, path](const Status& status) {
                             if (!status)
                                 return m_bench.complain(status.error());
                             m_bench.say(tr("The lesson is saved: %1. Its photos lie in the folder beside it.").arg(path));
                             Q_EMIT listChanged();
                         });
}

void WalkDesk::keepDraft()
{
    m_keeping.stop();
    if (!m_unsaved || m_bench.session() == nullptr || m_steps.empty())
        return;
    m_unsaved = false;
    if (const Status kept = saveLesson(draft(), lesson(), draft()); !kept)
        m_bench.complain(kept.error());
}

} // namespace cupule::ui

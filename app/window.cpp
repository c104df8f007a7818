#include "app/window.h"

#include <deque>
#include <functional>

#include <QApplication>
#include <QEvent>
#include <QTimer>

#include "app/paper.h"
#include "app/text.h"
#include "app/words.h"
#include "core/base/file.h"
#include "core/report/practice_sheet.h"
#include "core/task/account.h"
#include "core/task/notice.h"
#include "core/task/sample_papers.h"
#include "ui/bridge/plurals.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/daysheet/day_view.h"
#include "ui/print/pdf.h"
#include "ui/review/review_view.h"
#include "ui/samples/samples_view.h"
#include "ui/shell/main_window.h"
#include "ui/theme/theme.h"
#include "ui/training/results_page.h"
#include "ui/training/training_view.h"
#include "ui/trees/trees_view.h"

namespace cupule::app {

namespace {

Status writeAccount(Session& session, const QString& path)
{
    const auto data = gatherAccount(session, 0);
    if (!data)
        return tl::unexpected<Fault>(data.error());
    return writePaper(ui::utf8(path), report::account(*data, session.pack(), BridgeWords()));
}

Status writeLabels(Session& session, const Uid& sample, const QString& sheet, const QString& path)
{
    const auto setup = readLabelSheet(ui::utf8(sheet));
    if (!setup)
        return tl::unexpected<Fault>(setup.error());
    const auto facts = gatherLabels(session, sample);
    if (!facts)
        return tl::unexpected<Fault>(facts.error());
    const auto labels = report::sampleLabels(*facts, {}, session.pack(), BridgeWords());
    return writeFile(ui::utf8(path), ui::labelSheetsPdf(labels, *setup));
}

Status writeReservedLabels(Session& session, const std::vector<std::string>& numbers, const QString& sheet, const QString& path)
{
    const auto setup = readLabelSheet(ui::utf8(sheet));
    if (!setup)
        return tl::unexpected<Fault>(setup.error());
    const auto facts = gatherReservedLabels(session);
    if (!facts)
        return tl::unexpected<Fault>(facts.error());
    std::vector<report::Label> labels;
    for (const std::string& number : numbers)
        for (auto& label : report::reservedLabels(number, *facts, {}, session.pack(), BridgeWords()))
            labels.push_back(std::move(label));
    return writeFile(ui::utf8(path), ui::labelSheetsPdf(labels, *setup));
}

Status writeCustodyRecord(Session& session, const Uid& sample, const QString& path)
{
    const auto data = gatherCustodyRecord(session, sample);
    if (!data)
        return tl::unexpected<Fault>(data.error());
    return writeFile(ui::utf8(path), ui::documentPdf(report::custodyRecord(*data, session.pack(), BridgeWords())));
}

Status writeNotice(Session& session, const Uid& visit, const QString& path)
{
    const auto data = gatherNotice(session, visit, true);
    if (!data)
        return tl::unexpected<Fault>(data.error());
    return writeFile(ui::utf8(path), ui::documentPdf(report::notice(*data, session.pack(), BridgeWords())));
}

Status writePracticeSheet(const CohortResults& cohort, int recruit, const PracticeResults& shown, const PracticeRules& rules, Session& session, bool names,
                          const QString& path)
{
    const auto who = [&](const RecruitResults& one) { return !names ? std::string() : one.name.empty() ? one.code : one.name; };
    report::PracticeSheet sheet;
    sheet.storeName = session.info().name;
    sheet.demonstration = session.info().demonstration;
    sheet.made = session.today();
    sheet.cohort = cohort.cohort;
    sheet.limits = rules.limits;
    sheet.prevalence = rules.prevalence;
    sheet.results = shown;
    if (recruit >= 0) {
        const RecruitResults& one = cohort.recruits[static_cast<std::size_t>(recruit)];
        sheet.who = who(one);
        sheet.next = one.next;
    } else {
        sheet.ofCohort = true;
        sheet.next = cohort.next;
        sheet.agreement = cohort.agreement;
        sheet.agreementPeople = cohort.agreementPeople;
        sheet.agreementQuestions = cohort.agreementQuestions;
        for (const RecruitResults& one : cohort.recruits)
            sheet.recruits.push_back({who(one), one.results.answers, one.results.right, one.galls, one.hosts,
                                      one.next.empty() ? std::string() : ui::utf8(ui::topicText({one.next.front().kind, one.next.front().subject}, session.pack()))});
    }
    return writePaper(ui::utf8(path), report::practiceSheet(sheet, session.pack(), BridgeWords()));
}

void restoreLook(ui::Look& look, ui::Settings& settings)
{
    const QString mode = settings.value(ui::Setting::lookMode).toString();
    look.setMode(mode == QStringLiteral("light")  ? ui::Look::Mode::light
                 : mode == QStringLiteral("dark") ? ui::Look::Mode::dark
                                                  : ui::Look::Mode::followSystem);
    look.setTextPercent(settings.value(ui::Setting::textPercent).toInt());
    look.apply();
}

/// Calls `then` once, when the window has been painted for the first time.
class AfterFirstPaint final : public QObject {
public:
    AfterFirstPaint(QWidget& window, std::function<void()> then) : QObject(&window), m_then(std::move(then))
    {
        window.installEventFilter(this);
    }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Paint) {
            watched->removeEventFilter(this);
            // what is painted now is flushed before the next turn of the event loop
            QTimer::singleShot(0, this, m_then);
        }
        return false;
    }

private:
    std::function<void()> m_then;
};

/// One step after the other, each in a turn of the event loop of its own, so that keys and painting come between them.
void inTurns(QObject* on, std::deque<std::function<void()>> steps)
{
    if (steps.empty())
        return;
    QTimer::singleShot(0, on, [on, steps = std::move(steps)]() mutable {
        steps.front()();
        steps.pop_front();
        inTurns(on, std::move(steps));
    });
}

} // namespace

int runWindow(int argc, char** argv, const std::string& store, const std::string& profile,
              const std::string& today)
{
    QApplication app(argc, argv);
    QApplication::setApplicationName(QStringLiteral("cupule"));
    ui::Workbench bench(ui::text(profileFolder(profile)));
    if (const auto date = CivilDate::parse(today))
        bench.setToday(*date);
    ui::EnglishPlurals plurals;
    QApplication::installTranslator(&plurals);
    ui::Look look(app);
    restoreLook(look, bench.settings());
    ui::MainWindow window(bench, look);
    window.setAccountWriter(&writeAccount);
    // The places, which show nothing without a store, and the store come after the first paint, so that the window is there
    // at once whatever the store holds.
    AfterFirstPaint later(window, [&] {
        inTurns(&window, {[&] { window.addPlace(new ui::DayView(bench, window.prompts(), &window)); },
                          [&] { window.addPlace(new ui::TreesView(bench, &window)); },
                          [&] {
                              auto* samples = new ui::SamplesView(bench, window.prompts(), &window);
                              samples->setPapers({&writeLabels, &writeReservedLabels, &writeCustodyRecord});
                              window.addPlace(samples);
                          },
                          [&] {
                              auto* review = new ui::ReviewView(bench, window.prompts(), &window);
                              review->setNoticeWriter(&writeNotice);
                              window.addPlace(review);
                          },
                          [&] {
                              auto* practice = new ui::TrainingView(bench, window.prompts(), &window);
                              practice->results().setSheetWriter(&writePracticeSheet);
                              window.addPlace(practice);
                          },
                          [&] {
                              if (!store.empty())
                                  window.openNamed(ui::text(store));
                          }});
    });
    window.show();
    return QApplication::exec();
}

} // namespace cupule::app

// The place Samples by keys alone: custody from the cut to a closed sample, a broken link, the papers.

#include "tests/gui/at_desk.h"

#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>

#include "core/task/programme.h"
#include "core/task/sample_numbers.h"
#include "ui/bridge/label_sheet.h"
#include "ui/bridge/text.h"
#include "ui/samples/sample_list.h"
#include "ui/samples/samples_view.h"
#include "ui/theme/theme.h"
#include "ui/widgets/chain_view.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// No window manager gives a dialog the keys here.
void takeFocus(QDialog& dialog)
{
    dialog.activateWindow();
    REQUIRE(QTest::qWaitFor([&] { return dialog.isAncestorOf(QApplication::focusWidget()); }));
}

void typeIn(const char* words)
{
    for (const char* c = words; *c != 0; ++c)
        QTest::keyClick(QApplication::focusWidget(), *c);
}

/// Somebody at the place Samples of a store with one open sample; the chain has the focus.
struct AtSamples {
    FindStore store;
    Desk desk{person("IC", "Ines Calloway"), {Role::sampleHandler, Role::volunteer}, store.path};

    AtSamples()
    {
        desk.key(Qt::Key_3, Qt::ControlModifier);
        CHECK(desk.window.currentPlace()->id() == QStringLiteral("samples"));
        toChain();
    }
    void toChain()
    {
        for (int pane = 0; pane < 6 && desk.focusName() != QStringLiteral("chain"); ++pane)
            desk.key(Qt::Key_F6);
        REQUIRE(desk.focusName() == QStringLiteral("chain"));
    }
    SamplePage page() { return samplePage(desk.session(), store.sample).value(); }
    SampleStatus status() { return page().status; }
    /// What is typed into one field after the other, Tab between them; an empty text leaves a field as it is.
    void line(std::initializer_list<const char*> fields)
    {
        const std::size_t before = page().lines.size();
        bool first = true;
        for (const char* words : fields) {
            if (!first)
                desk.key(Qt::Key_Tab);
            first = false;
            desk.type(words);
        }
        desk.key(Qt::Key_Return, Qt::ControlModifier);
        REQUIRE(page().lines.size() == before + 1);
    }
    /// From the cut to the hand-over, in the order in which the form asks for them.
    void sealedAndHandedOver()
    {
        desk.key(Qt::Key_Return); // the first link that hangs open
        CHECK(desk.focusName() == QStringLiteral("out-date"));
        line({"11.6", "1124", "MH", "T-03", "3"});
        line({"11.6", "1126", "MH", "B-1041"});
        line({"11.6", "1129", "MH", "B-1042", "008813"});
        line({"11.6", "1131", "MH", "y", "c", "c", "n", "c"});
        CHECK(status().state == SampleState::sealed);
        line({"11.6", "1705", "11.6", "1705", "MH", "IC", "Pellow hall", "008813", "w", "", "", "", "", "from the paper sheet"});
        CHECK(status().state == SampleState::moving);
    }
    /// The laboratory's line that is asked for next, with the seal as it was read.
    void received(const char* seal)
    {
        goToLaboratory();
        line({"", "", "12.6", "0910", "IC", "laboratory", "", seal, "w", "3", "sealed, dry", "by car", "", "", "their letter"});
    }
    void goToLaboratory()
    {
        toChain();
        desk.key(Qt::Key_End);
        desk.key(Qt::Key_Left);
        desk.key(Qt::Key_Left);
        desk.key(Qt::Key_Return);
    }
    void examinedAndDisposed()
    {
        line({"15.6", "1500", "TL-118", "f", "", "three galls only", "cut open", "B. Orme"});
        line({"16.6", "1100", "", "laboratory", "d", "autoclave", "PH-7", "B. Orme"});
    }
    [[nodiscard]] QString words(const char* label)
    {
        auto* found = desk.window.findChild<QLabel*>(QString::fromLatin1(label));
        REQUIRE(found != nullptr);
        return found->text();
    }
};

} // namespace

TEST_CASE("custody is written by keys alone, from the cut to a closed sample", "[gui][samples]")
{
    AtSamples at;
    at.sealedAndHandedOver();
    at.received("008813");
    CHECK(at.status().state == SampleState::received);
    at.examinedAndDisposed();
    const SampleStatus before = at.status();
    for (const Finding& finding : before.missing)
        UNSCOPED_INFO(finding.code);
    for (const Finding& finding : before.breaks)
        UNSCOPED_INFO(finding.code);
    REQUIRE(before.canCloseWhole);
    at.desk.key(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(at.status().state == SampleState::closed);
    CHECK(at.words("lineHead") == QStringLiteral("Closed"));
    const std::size_t lines = at.page().lines.size();
    at.desk.key(Qt::Key_Return, Qt::ControlModifier); // nothing more can be kept
    CHECK(at.page().lines.size() == lines);
}

TEST_CASE("a link that hangs open says what closes it, and its form asks for that", "[gui][samples]")
{
    AtSamples at;
    at.desk.key(Qt::Key_Return);
    CHECK(at.words("lineHead") == QStringLiteral("The link “cut” is open"));
    CHECK(at.words("lineHint").startsWith(QStringLiteral("Missing: when and by whom it was cut")));
    auto* chain = at.desk.window.findChild<ui::ChainView*>(QStringLiteral("chain"));
    CHECK(chain->accessibleDescription().contains(QStringLiteral("open: when and by whom it was cut")));
}

TEST_CASE("a seal that differs breaks its link, and the sample closes only with that break", "[gui][samples]")
{
    AtSamples at;
    at.sealedAndHandedOver();
    at.received("008842");
    REQUIRE(at.status().breaks.size() == 1);
    CHECK(at.status().breaks[0].code == "custody.seal-differs");
    at.examinedAndDisposed();
    CHECK_FALSE(at.status().canCloseWhole);
    // the link is drawn broken and says why; its form begins with the line that broke it, but for the seal
    at.goToLaboratory();
    CHECK(at.words("lineHead") == QStringLiteral("The link “laboratory” is broken"));
    CHECK(at.words("lineHint").contains(QStringLiteral("008842")));
    for (const char* name : {"line-seal", "line-to"}) {
        auto* field = at.desk.window.findChild<QLineEdit*>(QString::fromLatin1(name));
        CHECK(field->text() == (QLatin1String(name) == QLatin1String("line-to") ? QStringLiteral("laboratory") : QString()));
    }
    at.desk.inDialog([](QDialog& dialog) {
        takeFocus(dialog);
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("breakReason"));
        typeIn("two figures were exchanged on the label");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("breakSecond"));
        typeIn("RA");
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    at.desk.key(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    const SamplePage page = at.page();
    CHECK(page.status.state == SampleState::closedWithBreak);
    CHECK(page.lines.back().secondPerson == "RA");
    CHECK(page.lines.back().withBreak);
}

TEST_CASE("a slip of the pen is mended by a line in its place that says why", "[gui][samples]")
{
    AtSamples at;
    at.sealedAndHandedOver();
    at.received("008842");
    REQUIRE(at.status().breaks.size() == 1);
    at.goToLaboratory();
    // times, people and the rest stand there; only the seal is read again, and the reason given
    for (int field = 0; field < 7; ++field)
        at.desk.key(Qt::Key_Tab);
    CHECK(at.desk.focusName() == QStringLiteral("line-seal"));
    at.desk.type("008813");
    while (at.desk.focusName() != QStringLiteral("line-remark"))
        at.desk.key(Qt::Key_Tab);
    at.desk.type("misread, the bag is here");
    at.desk.key(Qt::Key_Return, Qt::ControlModifier);
    const SamplePage page = at.page();
    CHECK(page.status.breaks.empty());
    REQUIRE(page.lines.back().corrects.has_value());
    CHECK(page.lines.back().seal == "008813");
    CHECK(page.lines.back().to == "laboratory");
    CHECK(page.lines.back().pieces == 3);
}

TEST_CASE("the form says who may move a sample, and at its disposal what the authority asks at the place", "[gui][samples]")
{
    FindStore store;
    Desk desk(person("HV", "Hester Vane"), {Role::office, Role::sampleHandler}, store.path);
    Regime regime;
    regime.issuer = "the office of the Marches";
    regime.dryGalls = "keep";
    regime.notify = "the duty officer";
    regime.from = CivilDate::make(2026, 6, 1).value();
    REQUIRE(addRegime(desk.session(), regime));
    desk.key(Qt::Key_3, Qt::ControlModifier);
    const auto hint = [&](const char* link) {
        auto* chain = desk.window.findChild<ui::ChainView*>(QStringLiteral("chain"));
        chain->setFocus(Qt::TabFocusReason);
        desk.key(Qt::Key_End);
        for (int step = 0; step < 12 && !chain->accessibleDescription().contains(QString::fromLatin1(link)); ++step)
            desk.key(Qt::Key_Left);
        desk.key(Qt::Key_Return);
        return desk.window.findChild<QLabel*>(QStringLiteral("lineHint"))->text();
    };
    CHECK(hint("hands").contains(QStringLiteral("nobody has: ask the authority first")));
    CHECK(hint("disposal").contains(
        QStringLiteral("In force here, from the office of the Marches: dry galls are kept. Tell: the duty officer.")));
    Programme wanted;
    wanted.mayMove = "Tobias Wren";
    REQUIRE(setProgramme(desk.session(), wanted, "programme"));
    desk.window.bench().tellChanged();
    CHECK(hint("hands").contains(QStringLiteral("Who may move it: Tobias Wren.")));
}

TEST_CASE("what was not bagged twice ends void, by keys", "[gui][samples]")
{
    AtSamples at;
    at.desk.key(Qt::Key_Return);
    at.line({"11.6", "1124", "MH", "T-03", "3"});
    at.line({"11.6", "1126", "MH", "B-1041"});
    at.toChain();
    // no outer bag: straight to what was done before leaving
    at.desk.key(Qt::Key_Return);
    at.desk.key(Qt::Key_Tab, Qt::ShiftModifier);
    CHECK(at.desk.focusName() == QStringLiteral("lineKind"));
    at.desk.type("c"); // "confirmed before leaving"
    at.desk.key(Qt::Key_Tab);
    at.line({"11.6", "1140", "MH", "n", "c", "c", "n", "c"});
    CHECK(at.status().mustBeVoid);
    at.line({"11.6", "1800", "no outer bag left"});
    CHECK(at.status().state == SampleState::voided);
    at.line({"11.6", "1805", "", "Pellow hall", "d", "burnt", "TV-51", "H. Vane"});
    CHECK(at.status().missing.empty());
}

namespace {

/// Writers that note what they were asked for.
struct Papers {
    QStringList asked;
    void giveTo(Desk& desk)
    {
        auto* view = desk.window.findChild<ui::SamplesView*>();
        REQUIRE(view != nullptr);
        const auto note = [this](const QString& what, const QString& path) {
            asked << what;
            QFile file(path);
            return file.open(QIODevice::WriteOnly) ? Status() : Status(fail("file.write", FaultKind::io));
        };
        view->setPapers({[note](Session& session, const Uid& sample, const QString& sheet, const QString& path) {
                             return note(QStringLiteral("labels ") + ui::text(samplePage(session, sample).value().sample.number) +
                                             QLatin1Char(' ') + sheet,
                                         path);
                         },
                         [note](Session&, const std::vector<std::string>& numbers, const QString& sheet, const QString& path) {
                             QStringList all;
                             for (const std::string& number : numbers)
                                 all << ui::text(number);
                             return note(QStringLiteral("reserved ") + all.join(QLatin1Char(',')) + QLatin1Char(' ') + sheet, path);
                         },
                         [note](Session& session, const Uid& sample, const QString& path) {
                             return note(QStringLiteral("record ") + ui::text(samplePage(session, sample).value().sample.number), path);
                         }});
    }
};

} // namespace

TEST_CASE("Ctrl+P and Ctrl+Shift+P write the papers of the sample, and the sheet is kept", "[gui][samples]")
{
    AtSamples at;
    Papers papers;
    papers.giveTo(at.desk);
    const QString number = ui::text(at.page().sample.number);
    at.desk.answers->filesToWrite = {at.store.folder.filePath(QStringLiteral("labels.pdf")),
                                     at.store.folder.filePath(QStringLiteral("record.pdf"))};
    at.desk.inDialog([](QDialog& dialog) {
        takeFocus(dialog);
        auto* rows = dialog.findChild<QWidget*>(QStringLiteral("labelRows"));
        REQUIRE(rows != nullptr);
        CHECK(rows->hasFocus());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
        typeIn("5");
        CHECK(dialog.findChild<QLabel*>(QStringLiteral("labelSays"))->text().contains(QStringLiteral("one needs 84 × 57 mm")));
        CHECK_FALSE(dialog.findChild<QAbstractButton*>(QStringLiteral("labelYes"))->isEnabled());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
        typeIn("3");
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    at.desk.key(Qt::Key_P, Qt::ControlModifier);
    at.desk.takeKeysBack();
    at.desk.key(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    REQUIRE(papers.asked.size() == 2);
    CHECK(papers.asked[0].startsWith(QStringLiteral("labels %1 3x2 ").arg(number)));
    CHECK(papers.asked[1] == QStringLiteral("record ") + number);
    CHECK(QFile::exists(at.store.folder.filePath(QStringLiteral("labels.pdf"))));
    CHECK(QFile::exists(at.store.folder.filePath(QStringLiteral("record.pdf"))));
    const auto kept = ui::readSheet(at.desk.window.bench().settings().value(ui::Setting::labelSheet).toString());
    REQUIRE(kept);
    CHECK(kept->rows == 3);
    CHECK(kept->free == 1);
}

TEST_CASE("labels to take along reserve numbers, which wait, are printed again, and are found by their label", "[gui][samples]")
{
    FindStore store;
    Desk desk(store.folder.filePath(QStringLiteral("maud")), store.path); // whose block the store knows
    desk.key(Qt::Key_3, Qt::ControlModifier);
    Papers papers;
    papers.giveTo(desk);
    const QString path = store.folder.filePath(QStringLiteral("along.pdf"));
    desk.answers->filesToWrite = {path, path};
    desk.inDialog([](QDialog& dialog) {
        takeFocus(dialog);
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("labelCount"));
        typeIn("3");
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    desk.key(Qt::Key_P, Qt::ControlModifier | Qt::AltModifier);
    desk.takeKeysBack();
    const auto waiting = reservedNumbers(desk.session()).value();
    REQUIRE(waiting.size() == 3);
    desk.inDialog([](QDialog& dialog) {
        takeFocus(dialog);
        auto* again = dialog.findChild<QAbstractButton*>(QStringLiteral("labelAgain"));
        REQUIRE(again != nullptr);
        CHECK(again->text().contains(QStringLiteral("the 3 that wait")));
        QTest::keyClick(again, Qt::Key_Space);
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    desk.key(Qt::Key_P, Qt::ControlModifier | Qt::AltModifier);
    desk.takeKeysBack();
    CHECK(reservedNumbers(desk.session()).value() == waiting); // none was added
    REQUIRE(papers.asked.size() == 2);
    CHECK(papers.asked[0].startsWith(QStringLiteral("reserved ") + ui::text(waiting[0])));
    CHECK(papers.asked[1] == papers.asked[0]);
    QSignalSpy said(&desk.window.bench(), &ui::Workbench::said);
    desk.answers->lines = {ui::text(waiting[1])};
    desk.key(Qt::Key_B, Qt::ControlModifier);
    REQUIRE(said.count() == 1);
    CHECK(said[0][0].toString().contains(QStringLiteral("has no sample yet")));
}

TEST_CASE("who works with samples sees the programme's hours, and that they are only proposed until it sets its own", "[gui][samples]")
{
    AtSamples at;
    at.sealedAndHandedOver();
    auto* clock = at.desk.window.findChild<QWidget*>(QStringLiteral("clockStrip"));
    REQUIRE(clock != nullptr);
    CHECK(clock->accessibleDescription() ==
          QStringLiteral("warned of after 24 hours, asked about after 72, of no use for rearing after 96"));
    CHECK(clock->toolTip().endsWith(QStringLiteral("a proposal, the programme's to set")));
}

TEST_CASE("the state of a sample is never cut short: what has no room beside it goes on a line of its own", "[gui][samples]")
{
    ui::SampleListModel model;
    SampleLine closed;
    closed.number = "26-TV-0001-F";
    closed.treeLabel = "T-03";
    closed.state = SampleState::closed;
    SampleLine sealed = closed;
    sealed.number = "26-TV-0002-D";
    sealed.state = SampleState::sealed;
    sealed.missing = 3;
    model.setLines({sealed, closed});
    ui::SampleList list(nullptr);
    list.setModel(&model);
    list.setItemDelegate(new ui::SampleDelegate(model, &list));
    const auto heights = [&](int width) {
        test::settle(list, {width, 400});
        const QRect first = list.visualRect(model.index(0)), second = list.visualRect(model.index(1));
        CHECK(second.top() > first.bottom());
        return std::pair{first.height(), second.height()};
    };
    const int number = QFontMetrics(ui::roleFont(ui::TextRole::idsStrong, list.font())).horizontalAdvance(QStringLiteral("26-TV-0001-F"));
    const int state = QFontMetrics(ui::roleFont(ui::TextRole::caption, list.font())).horizontalAdvance(ui::sampleWords(sealed));
    const auto [wide, wideToo] = heights(number + state + 200);
    CHECK(wide == wideToo);
    const auto [tall, low] = heights(std::max(number, state) + 60 + list.fontMetrics().height());
    CHECK(tall > wide);
    CHECK(low == wide);
    CHECK(heights(number + state + 200).first == wide); // and back
}

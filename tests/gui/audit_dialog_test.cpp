// A batch from its making to its acceptance, by keys: the maker, the auditor who leaves and comes back, the maker again.

#include "tests/gui/batch_store.h"

#include <QLabel>
#include <QListWidget>

#include "ui/review/audit_dialog.h"

using namespace cupule;
using cupule::test::BatchStore;
using cupule::test::Desk;

namespace {

constexpr int patience = 20000; // ms; never waited for in full

/// Somebody with the dialog before them.
struct AtBatches {
    explicit AtBatches(Desk& who) : desk(who), dialog(who.window.bench(), &who.window)
    {
        dialog.show();
        dialog.activateWindow();
        REQUIRE(QTest::qWaitForWindowActive(&dialog));
        wait();
    }
    void wait()
    {
        REQUIRE(QTest::qWaitFor([&] { return !desk.window.bench().jobs().busy(); }, patience));
        QCoreApplication::processEvents();
    }
    /// Pressed as the keyboard does it; it must be there to be pressed.
    void press(const char* name)
    {
        auto* button = dialog.findChild<QAbstractButton*>(QString::fromLatin1(name));
        REQUIRE(button != nullptr);
        REQUIRE(button->isVisible());
        REQUIRE(button->isEnabled());
        button->setFocus(Qt::TabFocusReason);
        QTest::keyClick(button, Qt::Key_Space);
        wait();
    }
    bool offers(const char* name) { return dialog.findChild<QAbstractButton*>(QString::fromLatin1(name))->isVisible(); }
    QString says(const char* name) { return dialog.findChild<QLabel*>(QString::fromLatin1(name))->text(); }
    void key(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        REQUIRE(dialog.focusWidget() != nullptr);
        QTest::keyClick(dialog.focusWidget(), static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
    }
    Desk& desk;
    ui::AuditDialog dialog;
};

} // namespace

TEST_CASE("a batch is drawn, looked at blindly with a break, accepted and taken back, all by keys", "[gui][audit]")
{
    BatchStore store;
    {
        Desk ruth(store.profile("RA"), store.path);
        AtBatches at(ruth);
        CHECK(at.dialog.findChild<QListWidget*>(QStringLiteral("auditList"))->count() == 0);
        at.press("auditNew");
        CHECK(at.says("auditSize").contains(QStringLiteral("12 records must be looked at")));
        at.dialog.findChild<QWidget*>(QStringLiteral("auditTolerable"))->setFocus(Qt::TabFocusReason);
        at.key(Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(at.dialog.focusWidget(), QStringLiteral("20"));
        CHECK(at.says("auditSize").contains(QStringLiteral("If 2 or more were wrong")));
        at.press("auditMake");
        CHECK(at.says("auditClaim").contains(QStringLiteral("Looked at so far: 0 of")));
        CHECK_FALSE(at.offers("auditLook"));   // it is Jonah's
        CHECK_FALSE(at.offers("auditFinish")); // nobody has looked yet
    }
    const auto asked = auditLines(*store.as("JK")).value().front();
    CHECK(asked.toAnswer > 9);
    {
        Desk jonah(store.profile("JK"), store.path);
        const QString wrong = QString::fromStdString(visitPage(jonah.session(), store.rejected).value().tree->label) + QLatin1Char(':');
        // what was rejected before is rejected again, wherever chance has put it; what was drawn is accepted
        const auto answerShown = [&](AtBatches& at) {
            const bool known = at.says("auditTitle").startsWith(wrong);
            at.key(Qt::Key_Return, Qt::ControlModifier);
            at.key(known ? Qt::Key_3 : Qt::Key_1);
            if (known) {
                at.key(Qt::Key_1);
                at.key(Qt::Key_Return, Qt::ControlModifier);
            }
        };
        {
            AtBatches at(jonah);
            at.press("auditLook");
            CHECK(at.says("auditPlace").startsWith(QStringLiteral("1 of %1.").arg(asked.toAnswer)));
            at.key(Qt::Key_Return);    // alone it answers nothing
            at.key(Qt::Key_1);         // nor does a digit before the answer is opened
            CHECK(auditLines(*store.as("JK")).value().front().answered == 0);
            at.key(Qt::Key_Return, Qt::ControlModifier);
            at.key(Qt::Key_Escape);
            CHECK(at.dialog.isVisible());
            for (int i = 0; i < 3; ++i)
                answerShown(at);
            CHECK(at.says("auditPlace").startsWith(QStringLiteral("4 of")));
            at.key(Qt::Key_Backspace, Qt::ControlModifier | Qt::ShiftModifier);
            CHECK(at.says("auditPlace").startsWith(QStringLiteral("3 of")));
            at.key(Qt::Key_Escape);
            at.key(Qt::Key_Escape);
            CHECK_FALSE(at.dialog.isVisible());
        }
        AtBatches at(jonah);
        at.press("auditLook");
        CHECK(at.says("auditPlace").startsWith(QStringLiteral("3 of")));
        auto* title = at.dialog.findChild<QLabel*>(QStringLiteral("auditTitle"));
        for (int i = 0; i < asked.toAnswer && title->isVisible(); ++i)
            answerShown(at);
        CHECK_FALSE(title->isVisible());
        CHECK(at.says("auditMore").contains(QStringLiteral("Ruth Abara closes the batch.")));
        CHECK_FALSE(at.offers("auditFinish"));
    }
    Desk ruth(store.profile("RA"), store.path);
    AtBatches at(ruth);
    int turns = 0; // of the event loop while the batch is accepted beside the window
    QTimer ticking;
    QObject::connect(&ticking, &QTimer::timeout, [&] { turns += ruth.window.bench().jobs().busy() ? 1 : 0; });
    ticking.start(0);
    at.press("auditFinish");
    CHECK(turns > 0);
    CHECK(at.says("auditClaim").contains(QStringLiteral("was disagreed with")));
    CHECK(at.says("auditMore").contains(QStringLiteral("Known records that had been rejected, and Jonah Kerr would not accept either: 1 of 1")));
    CHECK(countQueue(ruth.session()).value() == 0);
    for (const Uid& record : store.records)
        CHECK(visitPage(ruth.session(), record).value().state == RecordState::accepted);
    at.press("auditUndo");
    CHECK(countQueue(ruth.session()).value() == 12);
    at.press("auditGiveUp");
    CHECK(at.says("auditClaim").contains(QStringLiteral("given up")));
}

TEST_CASE("a disagreement is named, and the dialog says that all go back", "[gui][audit]")
{
    BatchStore store(8);
    const Uid audit = store.batch();
    const auto jonah = store.as("JK");
    for (auto next = nextToAudit(*jonah, audit).value(); next; next = nextToAudit(*jonah, audit).value())
        REQUIRE(answerAudit(*jonah, audit, {next->page.visit.id, Outcome::reject, {"other-kind-of-tree"}, {}}));
    Desk ruth(store.profile("RA"), store.path);
    AtBatches at(ruth);
    at.press("auditFinish");
    CHECK(at.says("auditClaim").contains(QStringLiteral("All 8 records go back and are decided one by one.")));
    CHECK(at.says("auditMore").contains(QStringLiteral("would be rejected")));
    CHECK_FALSE(at.offers("auditUndo"));
}

TEST_CASE("Ctrl+Shift+B in Review opens the batches", "[gui][audit]")
{
    BatchStore store(3);
    Desk ruth(store.profile("RA"), store.path);
    ruth.window.goToPlace(QStringLiteral("review"));
    bool seen = false;
    ruth.inDialog([&](QDialog& dialog) {
        seen = dialog.objectName() == QStringLiteral("auditDialog");
        dialog.reject();
    });
    ruth.window.findChild<QWidget*>(QStringLiteral("queue"))->setFocus();
    ruth.key(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(seen);
}

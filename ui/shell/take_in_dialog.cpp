#include "ui/shell/take_in_dialog.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QProgressBar>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_arrival.h"
#include "ui/bridge/words_review.h"
#include "ui/shell/take_in_page.h"
#include "ui/shell/vouch_form.h"
#include "ui/shell/workbench.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

using Phase = TakeInDesk::Phase;

namespace {

/// The file by its name alone: the title says which one it is, and a path says more about this machine than about the file.
Fault namedShort(Fault fault, const QString& file)
{
    std::erase_if(fault.arguments, [](const Argument& argument) { return argument.name == "file"; });
    fault.arguments.push_back({"file", utf8(file)});
    fault.place = {};
    return fault;
}

} // namespace

TakeInDialog::TakeInDialog(Workbench& bench, const QString& path, QWidget* parent) : QDialog(parent), m_bench(bench), m_desk(bench, path)
{
    setObjectName(QStringLiteral("takeInDialog"));
    build();
    resize(onAnyScreen({scaled(880, font()), scaled(660, font())}));
    connect(&m_desk, &TakeInDesk::changed, this, &TakeInDialog::refresh);
    connect(&m_bench.jobs(), &Jobs::progressed, this, [this](qint64 done, qint64 whole) {
        m_bar->setRange(0, whole > 0 ? 1000 : 0);
        m_bar->setValue(whole > 0 ? static_cast<int>(done * 1000 / whole) : 0);
    });
    m_desk.look();
}

void TakeInDialog::build()
{
    auto* column = new QVBoxLayout(this);
    m_message = new MessageStrip(this);
    m_message->setObjectName(QStringLiteral("takeInMessage"));
    m_message->setStays(true);
    column->addWidget(m_message);
    m_area = makeReadingArea("takeInPage", tr("The file that arrived"), this);
    auto* page = new QWidget(m_area);
    auto* rows = new QVBoxLayout(page);
    rows->setSpacing(scaled(14, font()));
    buildFacts();
    rows->addWidget(m_facts);
    m_form = new VouchForm(page);
    m_form->setObjectName(QStringLiteral("vouchForm"));
    rows->addWidget(m_form);
    m_brought = new RoleLabel(TextRole::body, page);
    m_brought->setObjectName(QStringLiteral("takeInBrought"));
    m_brought->setTextFormat(Qt::RichText);
    m_brought->setWordWrap(true);
    rows->addWidget(m_brought);
    rows->addStretch(1);
    m_area->setWidget(page);
    column->addWidget(m_area, 1);
    column->addStretch(0);                 // for a file of which nothing can be shown
    m_bar = new QProgressBar(this);
    column->addWidget(m_bar);
    m_state = new RoleLabel(TextRole::strong, this);
    m_state->setObjectName(QStringLiteral("takeInState"));
    m_state->setWordWrap(true);
    column->addWidget(m_state);
    buildButtons();
    connect(m_form, &VouchForm::vouchAsked, this, &TakeInDialog::vouch);
}

void TakeInDialog::buildFacts()
{
    m_facts = new QWidget(this);
    auto* grid = new QGridLayout(m_facts);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setColumnStretch(1, 1);
    const auto add = [&](QLabel*& label, const QString& words, TextRole role, const char* name) {
        label = new RoleLabel(role, m_facts);
        label->setObjectName(QString::fromLatin1(name));
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        const int row = grid->rowCount();
        grid->addWidget(new RoleLabel(TextRole::body, words, m_facts, Tone::second), row, 0, Qt::AlignTop);
        grid->addWidget(label, row, 1);
    };
    add(m_from, tr("From"), TextRole::strong, "takeInFrom");
    add(m_written, tr("Written"), TextRole::body, "takeInWritten");
    add(m_holds, tr("Holds"), TextRole::body, "takeInHolds");
    add(m_leftOut, tr("Left out"), TextRole::body, "takeInLeftOut");
    add(m_key, tr("Key"), TextRole::idsStrong, "takeInKey");
    add(m_standing, QString(), TextRole::body, "takeInStanding");
}

void TakeInDialog::buildButtons()
{
    m_away = new KeyButton(tr("Cancel"), this);
    m_away->setObjectName(QStringLiteral("takeInAway"));
    m_away->setCap(tr("Esc", "the key"));
    m_away->setAutoDefault(false);
    m_conflicts = new KeyButton(tr("Versions that do not agree…"), this);
    m_conflicts->setObjectName(QStringLiteral("takeInConflicts"));
    m_conflicts->setAutoDefault(false);
    m_take = new KeyButton(tr("Take in"), this);
    m_take->setObjectName(QStringLiteral("takeInYes"));
    m_take->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    m_take->setMain(true);
    m_take->setAutoDefault(false);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(m_away);
    row->addWidget(m_conflicts);
    row->addWidget(m_take);
    static_cast<QVBoxLayout*>(layout())->addLayout(row);
    connect(m_away, &QPushButton::clicked, this, &TakeInDialog::reject);
    connect(m_take, &QPushButton::clicked, &m_desk, &TakeInDesk::takeIn);
    connect(m_conflicts, &QPushButton::clicked, this, [this] {
        m_wantsConflicts = true;
        accept();
    });
}

/// What only reads is left at once. What takes in is stopped first, and says what became of it.
void TakeInDialog::reject()
{
    m_desk.cancel();
    if (m_desk.phase() != Phase::taking)
        return QDialog::reject();
    m_state->setText(tr("Stopping…"));
}

void TakeInDialog::vouch()
{
    m_desk.vouch(m_form->vouching());
    refresh();
}

void TakeInDialog::refresh()
{
    const bool hidden = m_desk.fault() && m_desk.fault()->code == "session.hidden";
    setWindowTitle(hidden ? tr("Taking in a signed file") : tr("Taking in %1").arg(m_desk.fileName()));
    refreshFacts();
    refreshMessage();
    refreshForm();
    refreshBrought();
    refreshButtons();
    if (m_area->isHidden())
        resize(width(), layout()->hasHeightForWidth() ? layout()->totalHeightForWidth(width()) : layout()->totalSizeHint().height());
}

void TakeInDialog::refreshFacts()
{
    m_area->setVisible(m_desk.arrival() != nullptr || m_desk.isRunning());
    m_facts->setVisible(m_desk.arrival() != nullptr);
    if (m_desk.arrival() == nullptr)
        return;
    const Arrival& arrival = *m_desk.arrival();
    const Manifest& manifest = arrival.file.manifest();
    const QString code = text(manifest.authorCode);
    m_from->setText(m_desk.page().name.empty() ? tr("%1, by a store called “%2”").arg(code, text(manifest.store.name))
                                               : tr("%1 (%2), by a store called “%3”").arg(text(m_desk.page().name), code, text(manifest.store.name)));
    m_written->setText(tr("%1, as %2, number %3 with this key").arg(momentText(manifest.made), bundleKindText(manifest.kind)).arg(manifest.number));
    m_holds->setText(tr("%1, %2, %3").arg(tr("%n visits", nullptr, static_cast<int>(manifest.counts.visits)),
                                          tr("%n records", nullptr, static_cast<int>(manifest.counts.records)),
                                          tr("%n pictures", nullptr, static_cast<int>(manifest.counts.media))));
    m_leftOut->setText(leftOutText(manifest.leftOut));
    m_key->setText(text(arrival.fingerprint));
    m_key->setAccessibleName(tr("Key %1").arg(text(arrival.fingerprint)));
    m_standing->setText(keyStandingText(std::string(standingName(arrival.standing))));
}

QString TakeInDialog::strangeText() const
{
    const QString code = text(m_desk.arrival()->file.manifest().authorCode);
    QStringList words;
    if (!m_desk.page().trusted.empty()) {
        QStringList digits;
        for (const std::string& known : m_desk.page().trusted)
            digits << text(known);
        words << tr("The key that is vouched for here is %1. A new laptop has a new key; so has somebody who writes in %2’s name.")
                     .arg(digits.join(QStringLiteral("; ")), code);
    }
    if (m_desk.page().codeIsAnothers)
        words << tr("Somebody else here goes by the code %1: ask that one whether the file is theirs.").arg(code);
    words << tr("Ring %1 up, on a number that you have from elsewhere and not from this file. They open Tools, “Your key, to be read out”. "
                "Type what you hear: nothing is taken in before the digits are the same.")
                 .arg(code);
    if (m_desk.page().noVouching)
        words << tr("In this store the office vouches for keys: hand the file on to somebody of the office.");
    return words.join(QLatin1Char(' '));
}

void TakeInDialog::refreshMessage()
{
    using Kind = MessageStrip::Kind;
    const auto& fault = m_desk.vouchFault() ? m_desk.vouchFault() : m_desk.fault();
    if (m_desk.phase() == Phase::known) {
        m_message->show(Kind::note, tr("This very file is known here already."), tr("It was taken in, or written, by this store before. There is nothing to do."));
    } else if (m_desk.phase() == Phase::strange && !m_desk.vouchFault()) {
        const bool changed = m_desk.fault()->code != "key.unknown";
        m_message->show(changed ? Kind::error : Kind::question,
                        changed ? tr("Take care: this is not the key that is known as %1’s.").arg(text(m_desk.arrival()->file.manifest().authorCode))
                                : tr("Nobody here has vouched for this key yet."),
                        strangeText());
    } else if (fault) {
        m_message->showFault(namedShort(*fault, m_desk.fileName()));
    } else if (m_desk.arrival() != nullptr && !m_desk.page().copied.empty()) {
        const CopiedLaptop& copied = m_desk.page().copied.front();
        m_message->show(Kind::error, tr("A laptop was copied with its profile."),
                        tr("Line %1 of the sender’s journal is another one here%2. Both are kept. Each copy needs a profile of its own: ring the sender up.")
                            .arg(copied.line)
                            .arg(copied.here.empty() ? QString() : tr(", written by %1").arg(text(copied.here))));
    } else {
        m_message->clear();
    }
}

void TakeInDialog::refreshForm()
{
    const bool shown = m_desk.phase() == Phase::strange && !m_desk.page().noVouching;
    const bool first = shown && m_form->isHidden();
    m_form->setVisible(shown);
    if (!first)
        return;
    const Arrival& arrival = *m_desk.arrival();
    const std::string& kind = arrival.file.manifest().kind;
    m_form->ask(arrival.fingerprint, arrival.standing, kind == "decision" || kind == "reference");
}

void TakeInDialog::refreshBrought()
{
    const bool kept = m_desk.phase() == Phase::done;
    const bool shown = kept || m_desk.phase() == Phase::ready || m_desk.phase() == Phase::taking;
    m_brought->setVisible(shown);
    if (shown && m_desk.phase() != Phase::taking)
        m_brought->setText(cameInHtml(m_desk.taken(), m_desk.cameIn(), m_desk.pack(), kept));
}

void TakeInDialog::refreshButtons()
{
    const Phase phase = m_desk.phase();
    m_bar->setVisible(m_desk.isRunning());
    if (m_desk.isRunning())
        m_bar->setRange(0, 0);
    m_state->setText(phase == Phase::looking ? tr("Reading and trying out. Nothing is kept yet…")
                     : phase == Phase::taking ? tr("Taking in: all of it, or nothing…")
                     : phase == Phase::ready  ? tr("Nothing is kept yet. What was taken in cannot be given back, only corrected.")
                     : phase == Phase::done   ? tr("Taken in. The journal names the file and who took it in.")
                                              : QString());
    m_state->setVisible(!m_state->text().isEmpty());
    m_away->setText(m_desk.isRunning() ? tr("Stop") : phase == Phase::ready || phase == Phase::strange ? tr("Take nothing in") : tr("Close"));
    m_take->setVisible(phase == Phase::looking || phase == Phase::ready || phase == Phase::taking);
    m_take->setEnabled(phase == Phase::ready);
    m_conflicts->setVisible(phase == Phase::done && m_desk.cameIn().conflicts > 0);
    if (phase == Phase::ready)
        m_area->setFocus(Qt::OtherFocusReason);
    else if (!m_form->isHidden())
        m_form->setFocus(Qt::OtherFocusReason);
    else if (!m_desk.isRunning())
        m_away->setFocus(Qt::OtherFocusReason);
}

QString TakeInDialog::broughtSentence() const
{
    if (m_desk.phase() != Phase::done)
        return {};
    return tr("From %1: %2").arg(text(m_desk.arrival()->file.manifest().authorCode), broughtText(m_desk.taken(), m_desk.cameIn()));
}

} // namespace cupule::ui

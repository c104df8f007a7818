#include "ui/samples/line_form.h"

#include <algorithm>

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "core/record/names.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/theme.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

using Kind = CustodyKind;

unsigned bit(CustodyKind kind)
{
    return 1U << static_cast<unsigned>(kind);
}

QString kindHint(CustodyKind kind)
{
    switch (kind) {
    case Kind::innerBag: return LineForm::tr("Wrap in dry paper, press out the air, seal, label.");
    case Kind::outerBag: return LineForm::tr("A second bag over the first, sealed and labelled before leaving the tree.");
    case Kind::onSite:
        return LineForm::tr("Only what was done at the tree, before leaving it. Without both bags closed there, no sample can close.");
    case Kind::handOver:
        return LineForm::tr("Two people. Read the seal number off the bag and type it; it is compared, never shown.");
    case Kind::receipt: return LineForm::tr("What the laboratory saw when it came in. Read the seal number off the bag.");
    case Kind::result: return LineForm::tr("The laboratory's report. “Not found” is about the material, never about the tree.");
    case Kind::disposal: return LineForm::tr("Only on written instruction of the authority.");
    case Kind::voided:
        return LineForm::tr("For what can never close: say why. It is disposed of and that is written down all the same.");
    default: return {};
    }
}

/// What the programme or the authority says about this kind of line at this place.
QString saidFor(CustodyKind kind, const SamplePage& page)
{
    if (kind == Kind::handOver)
        return page.mayMove.empty() ? LineForm::tr("Who may move it is the programme's to set, and nobody has: ask the authority first.")
                                    : LineForm::tr("Who may move it: %1.").arg(text(page.mayMove));
    QStringList lines;
    for (const Regime& regime : kind == Kind::disposal ? page.regimes : std::vector<Regime>{}) {
        const QString asked = regime.dryGalls == "keep"      ? LineForm::tr("dry galls are kept")
                              : regime.dryGalls == "destroy" ? LineForm::tr("dry galls are destroyed")
                                                             : LineForm::tr("ask about dry galls");
        lines << LineForm::tr("In force here, from %1: %2.").arg(text(regime.issuer), asked);
        if (!regime.notify.empty())
            lines << LineForm::tr("Tell: %1.").arg(text(regime.notify));
    }
    return lines.join(QLatin1Char(' '));
}

/// How the place of the person is called for a kind.
QString fromWords(CustodyKind kind)
{
    switch (kind) {
    case Kind::cut: return LineForm::tr("cut by");
    case Kind::innerBag:
    case Kind::outerBag: return LineForm::tr("closed by");
    case Kind::onSite: return LineForm::tr("confirmed by");
    default: return LineForm::tr("from");
    }
}

/// Everything known that does not hold at a link, one sentence a line.
QString findingsAt(const std::vector<Finding>& findings, const ChainLink& link, const Pack& pack)
{
    QStringList lines;
    for (const Finding& finding : findings) {
        const bool elsewhere = std::any_of(finding.arguments.begin(), finding.arguments.end(), [&](const auto& argument) {
            return argument.name == "line" && argument.value != std::to_string(link.line);
        });
        if (!elsewhere && std::find(link.broken.begin(), link.broken.end(), finding.code) != link.broken.end())
            lines << findingText(finding, &pack);
    }
    return lines.join(QLatin1Char(' '));
}

} // namespace

LineForm::LineForm(SamplesDesk& desk, QWidget* parent) : QFrame(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("lineForm"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 20, 14);
    column->setSpacing(8);
    m_head = new RoleLabel(TextRole::heading, tr("A new line"), this);
    m_head->setObjectName(QStringLiteral("lineHead"));
    m_head->setWordWrap(true);
    m_kind = new QComboBox(this);
    m_kind->setObjectName(QStringLiteral("lineKind"));
    m_kind->setAccessibleName(tr("What happened"));
    for (const Kind kind : {Kind::cut, Kind::innerBag, Kind::outerBag, Kind::onSite, Kind::handOver, Kind::receipt,
                            Kind::result, Kind::disposal, Kind::voided})
        m_kind->addItem(sentenceStart(custodyKindWord(kind)), static_cast<int>(kind));
    m_hint = new QLabel(this);
    m_hint->setObjectName(QStringLiteral("lineHint"));
    m_hint->setWordWrap(true);
    m_form = new QFormLayout;
    m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    m_form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    column->addWidget(m_head);
    column->addWidget(m_kind);
    column->addWidget(m_hint);
    column->addLayout(m_form);
    build();
    buildEnds();
    connect(m_kind, &QComboBox::activated, this, [this] {
        clearFields();
        setKind(kind());
    });
    setKind(Kind::cut);
}

void LineForm::buildEnds()
{
    auto* column = static_cast<QVBoxLayout*>(layout());
    m_keep = new KeyButton(tr("Keep this line"), this);
    m_keep->setObjectName(QStringLiteral("keepLine"));
    m_keep->setMain(true);
    m_keep->setCap(QStringLiteral("Ctrl+Enter"));
    m_new = new KeyButton(tr("A new line instead"), this);
    m_new->setObjectName(QStringLiteral("newLine"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_keep);
    buttons->addWidget(m_new);
    buttons->addStretch(1);
    column->addLayout(buttons);
    m_foot = new QLabel(tr("Lines are never edited, only followed. A line entered later says so by itself."), this);
    m_foot->setWordWrap(true);
    m_foot->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(m_foot);
    column->addStretch(1);
    connect(m_keep, &QPushButton::clicked, this, &LineForm::keep);
    connect(m_new, &QPushButton::clicked, this, [this] {
        startAnew();
        focusFirst();
    });
}

void LineForm::addField(const QString& name, const QString& words, QWidget* widget, std::initializer_list<CustodyKind> kinds)
{
    widget->setObjectName(QStringLiteral("line-") + name);
    auto* label = new QLabel(words, this);
    label->setBuddy(widget);
    m_form->addRow(label, widget);
    unsigned bits = 0;
    for (const CustodyKind kind : kinds)
        bits |= bit(kind);
    m_fields.append({name, widget, label, bits});
}

QLineEdit* LineForm::addLine(const QString& name, const QString& words, std::initializer_list<CustodyKind> kinds)
{
    auto* field = new QLineEdit(this);
    addField(name, words, field, kinds);
    return field;
}

QWidget* LineForm::addMoment(const QString& name, const QString& words, std::initializer_list<CustodyKind> kinds)
{
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    auto* date = new DateEdit(box);
    date->setObjectName(name + QStringLiteral("-date"));
    auto* time = new TimeEdit(box);
    time->setObjectName(name + QStringLiteral("-time"));
    row->addWidget(date, 2);
    row->addWidget(time, 1);
    box->setFocusProxy(date);
    addField(name, words, box, kinds);
    return box;
}

QComboBox* LineForm::addChoice(const QString& name, const QString& words, const QList<std::pair<QString, QString>>& choices,
                               std::initializer_list<CustodyKind> kinds)
{
    auto* box = new QComboBox(this);
    box->addItem(QStringLiteral("–"), QString());
    for (const auto& [id, label] : choices)
        box->addItem(label, id);
    addField(name, words, box, kinds);
    return box;
}

void LineForm::build()
{
    addMoment(QStringLiteral("out"), tr("when"),
              {Kind::cut, Kind::innerBag, Kind::outerBag, Kind::onSite, Kind::handOver, Kind::receipt, Kind::result,
               Kind::disposal, Kind::voided});
    addMoment(QStringLiteral("in"), tr("came in"), {Kind::handOver, Kind::receipt});
    addLine(QStringLiteral("from"), tr("from"),
            {Kind::cut, Kind::innerBag, Kind::outerBag, Kind::onSite, Kind::handOver, Kind::receipt});
    addLine(QStringLiteral("to"), tr("to"), {Kind::handOver, Kind::receipt, Kind::disposal});
    addLine(QStringLiteral("place"), tr("where"), {Kind::cut, Kind::handOver, Kind::receipt, Kind::disposal});
    addLine(QStringLiteral("bag"), tr("number on the bag"), {Kind::innerBag, Kind::outerBag});
    addLine(QStringLiteral("seal"), tr("seal number"), {Kind::outerBag, Kind::handOver, Kind::receipt})
        ->setPlaceholderText(tr("read it off the bag"));
    addChoice(QStringLiteral("sealWhole"), tr("the seal is"), {{QStringLiteral("yes"), tr("whole")}, {QStringLiteral("no"), tr("broken")}},
              {Kind::handOver, Kind::receipt});
    addLine(QStringLiteral("pieces"), tr("pieces"), {Kind::cut, Kind::receipt});
    addLine(QStringLiteral("condition"), tr("condition"), {Kind::handOver, Kind::receipt});
    addLine(QStringLiteral("travel"), tr("how it travels"), {Kind::handOver, Kind::receipt});
    addLine(QStringLiteral("celsius"), tr("temperature, °C"), {Kind::handOver, Kind::receipt});
    addChoice(QStringLiteral("confirmed"), tr("both bags closed at the tree"),
              {{QStringLiteral("yes"), tr("yes, before leaving it")}, {QStringLiteral("no"), tr("no")}}, {Kind::onSite});
    const QList<std::pair<QString, QString>> done{{QStringLiteral("done"), tr("clean")}};
    const QList<std::pair<QString, QString>> doneOrNone{{QStringLiteral("done"), tr("clean")},
                                                        {QStringLiteral("none-used"), tr("none used")}};
    addChoice(QStringLiteral("clothes"), tr("clothes"), done, {Kind::onSite});
    addChoice(QStringLiteral("boots"), tr("boots"), done, {Kind::onSite});
    addChoice(QStringLiteral("vehicle"), tr("vehicle"), doneOrNone, {Kind::onSite});
    addChoice(QStringLiteral("tools"), tr("tools"), doneOrNone, {Kind::onSite});
    addLine(QStringLiteral("reportNumber"), tr("number of the report"), {Kind::result});
    addChoice(QStringLiteral("finding"), tr("in the material"),
              {{QStringLiteral("found"), tr("found")},
               {QStringLiteral("not found"), tr("not found")},
               {QStringLiteral("not examined"), tr("not examined")}},
              {Kind::result});
    addLine(QStringLiteral("host"), tr("host, as the laboratory sees it"), {Kind::result});
    addLine(QStringLiteral("limits"), tr("what it does not say"), {Kind::result});
    addChoice(QStringLiteral("disposal"), tr("what became of it"),
              {{QStringLiteral("destroyed"), tr("destroyed")},
               {QStringLiteral("voucher"), tr("kept as a voucher")},
               {QStringLiteral("returned"), tr("returned")}},
              {Kind::disposal});
    addLine(QStringLiteral("method"), tr("how"), {Kind::result, Kind::disposal});
    addLine(QStringLiteral("order"), tr("number of the instruction"), {Kind::disposal});
    addLine(QStringLiteral("signedBy"), tr("signed or witnessed by"), {Kind::result, Kind::disposal});
    addLine(QStringLiteral("reason"), tr("why it is void"), {Kind::voided});
    const auto every = {Kind::cut,     Kind::innerBag, Kind::outerBag, Kind::onSite, Kind::handOver,
                        Kind::receipt, Kind::result,   Kind::disposal, Kind::voided};
    m_corrects = addChoice(QStringLiteral("corrects"), tr("in place of line"), {}, every);
    addLine(QStringLiteral("remark"), tr("remark"), every)->setPlaceholderText(tr("why it is written later, or corrected"));
}

CustodyKind LineForm::kind() const
{
    return static_cast<CustodyKind>(m_kind->currentData().toInt());
}

void LineForm::setKind(CustodyKind kind)
{
    m_kind->setCurrentIndex(std::max(0, m_kind->findData(static_cast<int>(kind))));
    const bool shownAtAll = !closed() || correcting() > 0;
    m_kind->setVisible(shownAtAll);
    for (const Field& field : m_fields) {
        const bool shown = shownAtAll && (field.kinds & bit(kind)) != 0;
        field.widget->setVisible(shown);
        field.label->setVisible(shown);
        if (field.name == QStringLiteral("out"))
            field.label->setText(kind == Kind::handOver || kind == Kind::receipt ? tr("went out") : tr("when"));
        if (field.name == QStringLiteral("from"))
            field.label->setText(fromWords(kind));
        if (field.name == QStringLiteral("to"))
            field.label->setText(kind == Kind::disposal ? tr("returned to") : tr("to"));
    }
    m_keep->setVisible(shownAtAll);
    m_foot->setVisible(shownAtAll);
    m_new->setVisible(correcting() > 0);
    refreshHead();
}

bool LineForm::closed() const
{
    return m_desk.page() && (m_desk.page()->status.state == SampleState::closed ||
                             m_desk.page()->status.state == SampleState::closedWithBreak);
}

int LineForm::correcting() const
{
    return m_corrects->currentData().toString().toInt();
}

/// What this line would settle: the link that hangs open for want of it, or the one that is broken by the line it replaces.
void LineForm::refreshHead()
{
    QString head = tr("A new line"), hint = kindHint(kind());
    if (m_desk.page() && correcting() > 0) {
        head = tr("In place of line %1").arg(correcting());
        QStringList why;
        for (const ChainLink& link : m_desk.page()->status.chain)
            if (link.state == LinkState::broken && link.line == correcting()) {
                head = tr("The link “%1” is broken").arg(linkWord(link.kind));
                why << findingsAt(m_desk.page()->status.breaks, link, m_desk.pack());
            }
        why << tr("If line %1 was a slip of the pen, write it again here and say why. If it is true the break stays, and the "
                  "sample can close only with it.")
                   .arg(correcting());
        hint = why.join(QLatin1Char(' '));
    } else if (closed()) {
        head = tr("Closed");
        hint = tr("No line can follow, but for one in place of another: choose it in the list of lines and press Enter.");
    } else if (m_desk.page()) {
        for (const ChainLink& link : m_desk.page()->status.chain) {
            if (link.state != LinkState::open || m_desk.kindOf(link) != kind())
                continue;
            head = tr("The link “%1” is open").arg(linkWord(link.kind));
            QStringList missing;
            for (const std::string& code : link.lacking)
                missing << custodyText(code);
            if (!missing.isEmpty())
                hint = tr("Missing: %1.").arg(missing.join(QStringLiteral(", "))) + QLatin1Char(' ') + hint;
            break;
        }
    }
    if (m_desk.page() && correcting() == 0 && !closed())
        hint = QStringList{hint, saidFor(kind(), *m_desk.page())}.join(QLatin1Char(' ')).trimmed();
    m_closesLink = m_desk.page() && !closed() && head != tr("A new line");
    update();
    m_head->setText(head);
    m_hint->setText(hint);
    m_hint->setVisible(!hint.isEmpty());
}

/// The panel has the colour of the link that it closes.
void LineForm::paintEvent(QPaintEvent* event)
{
    if (m_closesLink)
        QPainter(this).fillRect(rect(), themeOf(*this).stopSoft);
    QFrame::paintEvent(event);
}

void LineForm::refresh()
{
    const bool filled = m_desk.page().has_value();
    setEnabled(filled);
    refreshCorrects();
    const QString sample = filled ? text(m_desk.page()->sample.id.text()) : QString();
    if (sample != m_sample) {
        m_sample = sample;
        startAnew();
    } else {
        setKind(kind());
    }
    if (filled)
        for (auto* date : findChildren<DateEdit*>())
            date->setToday(toDate(m_desk.today()));
}

void LineForm::startAnew()
{
    clearFields();
    setKind(m_desk.wantedKind());
}

void LineForm::correct(int number)
{
    if (!m_desk.page())
        return;
    for (const CustodyLine& line : m_desk.page()->lines) {
        if (line.number != number || m_kind->findData(static_cast<int>(line.kind)) < 0)
            continue;
        clearFields();
        m_corrects->setCurrentIndex(std::max(0, m_corrects->findData(QString::number(number))));
        setKind(line.kind);
        fillFrom(line);
        focusFirst();
        return;
    }
}

void LineForm::setValue(const QString& name, const std::string& value)
{
    for (const Field& field : m_fields) {
        if (field.name != name)
            continue;
        if (auto* line = qobject_cast<QLineEdit*>(field.widget))
            line->setText(text(value));
        else if (auto* box = qobject_cast<QComboBox*>(field.widget))
            box->setCurrentIndex(std::max(0, box->findData(text(value))));
    }
}

void LineForm::setMoment(const QString& name, const std::optional<Instant>& at)
{
    for (const Field& field : m_fields) {
        if (field.name != name || !at)
            continue;
        const auto [date, time] = m_desk.wallClock(*at);
        field.widget->findChild<DateEdit*>()->setDate(date);
        field.widget->findChild<TimeEdit*>()->setTime(time);
    }
}

/// All but the seal: its number is read off the bag again.
void LineForm::fillFrom(const CustodyLine& line)
{
    const auto yesNo = [](const std::optional<bool>& said) {
        return said ? std::string(*said ? "yes" : "no") : std::string();
    };
    const auto confirmed = [](Confirmed value) { return value == Confirmed::open ? std::string() : std::string(name(value)); };
    setMoment(QStringLiteral("out"), line.out);
    setMoment(QStringLiteral("in"), line.in);
    const std::pair<const char*, std::string> values[] = {
        {"from", line.from}, {"to", line.to}, {"place", line.place}, {"bag", line.bag},
        {"sealWhole", yesNo(line.sealWhole)}, {"pieces", line.pieces ? std::to_string(*line.pieces) : std::string()},
        {"condition", line.condition}, {"travel", line.travel},
        {"celsius", line.celsius ? cupule::numberText(*line.celsius) : std::string()}, {"confirmed", yesNo(line.confirmed)},
        {"clothes", confirmed(line.hygiene.clothes)}, {"boots", confirmed(line.hygiene.boots)},
        {"vehicle", confirmed(line.hygiene.vehicle)}, {"tools", confirmed(line.hygiene.tools)},
        {"reportNumber", line.reportNumber}, {"finding", line.finding}, {"host", line.host}, {"limits", line.limits},
        {"disposal", line.disposal}, {"method", line.method}, {"order", line.order}, {"signedBy", line.signedBy},
        {"reason", line.reason}};
    for (const auto& [name, value] : values)
        setValue(QString::fromLatin1(name), value);
}

void LineForm::refreshCorrects()
{
    const QVariant chosen = m_corrects->currentData();
    m_corrects->clear();
    m_corrects->addItem(QStringLiteral("–"), QString());
    if (!m_desk.page())
        return;
    for (const CustodyLine& line : m_desk.page()->lines)
        m_corrects->addItem(tr("%1: %2").arg(line.number).arg(custodyKindWord(line.kind)), QString::number(line.number));
    m_corrects->setCurrentIndex(std::max(0, m_corrects->findData(chosen)));
}

void LineForm::clearFields()
{
    for (const Field& field : m_fields) {
        if (auto* line = qobject_cast<QLineEdit*>(field.widget))
            line->clear();
        else if (auto* box = qobject_cast<QComboBox*>(field.widget))
            box->setCurrentIndex(0);
        else if (auto* time = field.widget->findChild<TimeEdit*>()) {
            time->setTime(QTime());
            field.widget->findChild<DateEdit*>()->setDate(QDate());
        }
    }
}

void LineForm::focusFirst()
{
    for (const Field& field : m_fields) {
        if (field.widget->isVisibleTo(this)) {
            field.widget->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
}

std::string LineForm::value(const QString& name) const
{
    for (const Field& field : m_fields) {
        if (field.name != name || (field.kinds & bit(kind())) == 0)
            continue;
        if (auto* line = qobject_cast<QLineEdit*>(field.widget))
            return utf8(line->text().trimmed());
        if (auto* box = qobject_cast<QComboBox*>(field.widget))
            return utf8(box->currentData().toString());
    }
    return {};
}

std::optional<Instant> LineForm::momentOf(const QString& name)
{
    for (const Field& field : m_fields)
        if (field.name == name && (field.kinds & bit(kind())) != 0)
            return m_desk.moment(field.widget->findChild<DateEdit*>()->date(), field.widget->findChild<TimeEdit*>()->time());
    return std::nullopt;
}

CustodyLine LineForm::lineTyped()
{
    const auto yesNo = [&](const QString& name) -> std::optional<bool> {
        const std::string chosen = value(name);
        return chosen.empty() ? std::nullopt : std::optional<bool>(chosen == "yes");
    };
    const auto confirmed = [&](const QString& name) {
        return fromName<Confirmed>(value(name)).value_or(Confirmed::open);
    };
    CustodyLine line;
    line.kind = kind();
    line.out = momentOf(QStringLiteral("out"));
    line.in = momentOf(QStringLiteral("in"));
    line.from = value(QStringLiteral("from"));
    line.to = value(QStringLiteral("to"));
    line.place = value(QStringLiteral("place"));
    line.bag = value(QStringLiteral("bag"));
    line.seal = value(QStringLiteral("seal"));
    line.sealWhole = yesNo(QStringLiteral("sealWhole"));
    line.pieces = parseWhole(value(QStringLiteral("pieces")));
    line.condition = value(QStringLiteral("condition"));
    line.travel = value(QStringLiteral("travel"));
    line.celsius = parseNumber(value(QStringLiteral("celsius")));
    line.confirmed = yesNo(QStringLiteral("confirmed"));
    line.hygiene.clothes = confirmed(QStringLiteral("clothes"));
    line.hygiene.boots = confirmed(QStringLiteral("boots"));
    line.hygiene.vehicle = confirmed(QStringLiteral("vehicle"));
    line.hygiene.tools = confirmed(QStringLiteral("tools"));
    line.reportNumber = value(QStringLiteral("reportNumber"));
    line.finding = value(QStringLiteral("finding"));
    line.host = value(QStringLiteral("host"));
    line.limits = value(QStringLiteral("limits"));
    line.disposal = value(QStringLiteral("disposal"));
    line.method = value(QStringLiteral("method"));
    line.order = value(QStringLiteral("order"));
    line.signedBy = value(QStringLiteral("signedBy"));
    line.reason = value(QStringLiteral("reason"));
    line.remark = value(QStringLiteral("remark"));
    line.corrects = parseWhole(value(QStringLiteral("corrects")));
    return line;
}

void LineForm::keep()
{
    if (closed() && correcting() == 0)
        return;
    if (m_desk.addLine(lineTyped())) {
        startAnew();
        focusFirst();
    }
}

} // namespace cupule::ui

#include "ui/review/narrow_dialog.h"

#include <algorithm>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_review.h"
#include "ui/review/review_desk.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QStringList parts()
{
    QStringList parts{QString()};
    for (const std::string& code : queueCodes())
        parts << text(code);
    return parts << QStringLiteral("corrections") << QStringLiteral("accepted") << QStringLiteral("rejected") << QStringLiteral("returned");
}

void choose(QComboBox& box, const QString& data)
{
    box.setCurrentIndex(std::max(0, box.findData(data)));
}

QString idText(const Uid& id)
{
    return id.isNull() ? QString() : text(id.text());
}

Uid idOf(const QComboBox& box)
{
    const auto id = Uid::parse(utf8(box.currentData().toString()));
    return id ? *id : Uid{};
}

} // namespace

QString personText(const Person& person)
{
    return person.name.empty() || person.name == person.code ? text(person.code) : text(person.code) + QLatin1Char(' ') + text(person.name);
}

NarrowDialog::NarrowDialog(ReviewDesk& desk, QWidget* parent) : QDialog(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("narrowDialog"));
    setWindowTitle(tr("Which records?"));
    new WordFit(this, 520);
    auto* form = new QFormLayout(this);
    form->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    m_words = new QLineEdit(this);
    m_words->setObjectName(QStringLiteral("narrowWords"));
    m_words->setPlaceholderText(tr("words of tree, site, observer or note"));
    form->addRow(tr("&Words"), m_words);
    m_which = choice("narrowWhich", tr("Wh&ich"), *form);
    m_sign = choice("narrowSign", tr("Si&gn claimed"), *form);
    m_site = choice("narrowSite", tr("&Site"), *form);
    m_observer = choice("narrowObserver", tr("&Observer"), *form);
    m_square = new QLineEdit(this);
    m_square->setObjectName(QStringLiteral("narrowSquare"));
    m_square->setPlaceholderText(tr("a square of the grid, such as SO54"));
    form->addRow(tr("S&quare"), m_square);
    m_from = new DateEdit(this);
    m_from->setObjectName(QStringLiteral("narrowFrom"));
    m_to = new DateEdit(this);
    m_to->setObjectName(QStringLiteral("narrowTo"));
    for (DateEdit* day : {m_from, m_to})
        day->setToday(toDate(desk.today()));
    form->addRow(tr("&From"), m_from);
    form->addRow(tr("&To"), m_to);
    fillChoices();
    buildKept(*form);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* yes = box->addButton(tr("Show these"), QDialogButtonBox::AcceptRole);
    yes->setObjectName(QStringLiteral("narrowYes"));
    yes->setDefault(true);
    auto* all = box->addButton(tr("Show all that wait"), QDialogButtonBox::ResetRole);
    all->setObjectName(QStringLiteral("narrowAll"));
    connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(all, &QPushButton::clicked, this, [this] {
        show({});
        accept();
    });
    form->addRow(box);
    show(desk.wanted());
    m_words->setFocus();
}

QComboBox* NarrowDialog::choice(const char* name, const QString& words, QFormLayout& form)
{
    auto* box = new QComboBox(this);
    box->setObjectName(QString::fromLatin1(name));
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon); // a long name must not push the dialog out
    box->setMinimumContentsLength(20);
    form.addRow(words, box);
    return box;
}

void NarrowDialog::fillChoices()
{
    for (const QString& part : parts())
        m_which->addItem(queuePartText(utf8(part)), part);
    m_sign->addItem(tr("any"), QString());
    for (const Sign& sign : m_desk.pack().signs)
        if (sign.onChecklist)
            m_sign->addItem(text(sign.name), text(sign.id));
    m_site->addItem(tr("any"), QString());
    for (const Site& site : m_desk.sites())
        if (!site.name.empty())
            m_site->addItem(text(site.name), idText(site.id));
    m_observer->addItem(tr("anybody"), QString());
    for (const Person& person : m_desk.people())
        m_observer->addItem(personText(person), idText(person.id));
}

void NarrowDialog::buildKept(QFormLayout& form)
{
    auto* row = new QHBoxLayout;
    m_name = new QLineEdit(this);
    m_name->setObjectName(QStringLiteral("narrowName"));
    m_name->setPlaceholderText(tr("a name for this choice"));
    m_name->setAccessibleName(tr("Name for this choice"));
    auto* keepIt = new QPushButton(tr("&Keep it"), this);
    keepIt->setObjectName(QStringLiteral("narrowKeep"));
    keepIt->setAutoDefault(false);
    row->addWidget(m_name, 1);
    row->addWidget(keepIt);
    form.addRow(tr("Keep &as"), row);
    static_cast<QLabel*>(form.labelForField(row))->setBuddy(m_name);
    auto* second = new QHBoxLayout;
    m_kept = new QComboBox(this);
    m_kept->setObjectName(QStringLiteral("narrowKept"));
    m_kept->setAccessibleName(tr("Kept choices"));
    m_kept->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    auto* drop = new QPushButton(tr("&Let it go"), this);
    drop->setObjectName(QStringLiteral("narrowForget"));
    drop->setAutoDefault(false);
    second->addWidget(m_kept, 1);
    second->addWidget(drop);
    form.addRow(tr("&Choices kept"), second);
    static_cast<QLabel*>(form.labelForField(second))->setBuddy(m_kept);
    connect(keepIt, &QPushButton::clicked, this, &NarrowDialog::keep);
    connect(drop, &QPushButton::clicked, this, &NarrowDialog::forget);
    connect(m_kept, &QComboBox::activated, this, [this](int chosen) {
        const auto kept = m_desk.kept();
        if (chosen > 0 && chosen <= static_cast<int>(kept.size()))
            show(kept[static_cast<std::size_t>(chosen - 1)].wanted);
    });
    fillKept();
}

void NarrowDialog::fillKept()
{
    m_kept->clear();
    const auto kept = m_desk.kept();
    m_kept->addItem(kept.empty() ? tr("none yet") : tr("choose one"));
    for (const NamedWanted& one : kept)
        m_kept->addItem(text(one.name));
}

void NarrowDialog::show(const QueueWanted& wanted)
{
    m_words->setText(text(wanted.words));
    choose(*m_which, text(wanted.which));
    choose(*m_sign, text(wanted.sign));
    choose(*m_site, idText(wanted.site));
    choose(*m_observer, idText(wanted.observer));
    m_square->setText(text(wanted.square));
    m_from->setDate(wanted.from ? toDate(*wanted.from) : QDate());
    m_to->setDate(wanted.to ? toDate(*wanted.to) : QDate());
}

QueueWanted NarrowDialog::wanted() const
{
    QueueWanted wanted;
    wanted.words = utf8(m_words->text().trimmed());
    wanted.which = utf8(m_which->currentData().toString());
    wanted.sign = utf8(m_sign->currentData().toString());
    wanted.site = idOf(*m_site);
    wanted.observer = idOf(*m_observer);
    wanted.square = utf8(m_square->text().trimmed());
    if (m_from->date().isValid())
        wanted.from = fromDate(m_from->date());
    if (m_to->date().isValid())
        wanted.to = fromDate(m_to->date());
    return wanted;
}

void NarrowDialog::keep()
{
    if (m_desk.keep(m_name->text(), wanted()))
        fillKept();
    m_kept->setCurrentIndex(std::max(0, m_kept->findText(m_name->text().trimmed())));
}

void NarrowDialog::forget()
{
    if (m_kept->currentIndex() > 0)
        m_desk.forget(m_kept->currentText());
    fillKept();
}

QString wantedText(const QueueWanted& wanted, ReviewDesk& desk)
{
    QStringList words;
    if (!wanted.which.empty())
        words << queuePartText(wanted.which);
    if (const Sign* sign = desk.pack().sign(wanted.sign))
        words << text(sign->shortName.empty() ? sign->name : sign->shortName);
    for (const Site& site : desk.sites())
        if (site.id == wanted.site)
            words << text(site.name);
    for (const Person& person : desk.people())
        if (person.id == wanted.observer)
            words << text(person.code);
    if (!wanted.square.empty())
        words << text(wanted.square);
    if (wanted.from)
        words << NarrowDialog::tr("from %1").arg(plainDate(*wanted.from, 0));
    if (wanted.to)
        words << NarrowDialog::tr("to %1").arg(plainDate(*wanted.to, 0));
    if (!wanted.words.empty())
        words << QStringLiteral("“%1”").arg(text(wanted.words));
    return words.join(QStringLiteral(", "));
}

} // namespace cupule::ui

#include "ui/training/skill_dialog.h"

#include <algorithm>

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/task/skill.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/theme/theme.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QString signName(const std::string& sign, const Pack& pack)
{
    if (sign == gallLinesTogether)
        return SkillDialog::tr("Gall lines together");
    return sign == hostOrNot ? askedKindText(AskedKind::host) : subjectText(AskedKind::sign, sign, pack);
}

} // namespace

SkillDialog::SkillDialog(Workbench& bench, const Uid& person, const QString& name, QWidget* parent)
    : QDialog(parent), m_bench(bench), m_person(person), m_name(name), m_own(bench.session()->me() == person)
{
    setObjectName(QStringLiteral("skillDialog"));
    setWindowTitle(m_own ? tr("What is told of your detection") : tr("What is told of the detection of %1").arg(name));
    auto* column = new QVBoxLayout(this);
    auto* why = new RoleLabel(TextRole::body,
                              tr("Practice has measured how often each sign is found, and how often no is said rightly. With consent these numbers go along in the "
                                 "files that are handed in, with the days and the version of the protocol, and stand beside the records as information. Nothing is "
                                 "decided by them. Sessions and answers stay here. It can be taken back at any time: the next file says so."),
                              this, Tone::second);
    m_told = new RoleLabel(TextRole::heading, this);
    m_told->setObjectName(QStringLiteral("skillTold"));
    QScrollArea* area = makeReadingArea("skillPage", tr("What was measured"), this);
    m_signs = new QLabel(area);
    m_signs->setObjectName(QStringLiteral("skillSigns"));
    m_signs->setTextFormat(Qt::RichText);
    m_signs->setAlignment(Qt::AlignTop);
    m_signs->setMargin(scaled(8, font()));
    area->setWidget(m_signs);
    m_agreed = new QCheckBox(m_own ? tr("I &agree that these numbers are told") : tr("%1 &agreed before me today that these are told").arg(name), this);
    m_agreed->setObjectName(QStringLiteral("skillAgreed"));
    for (QLabel* label : {static_cast<QLabel*>(why), m_told, m_signs})
        label->setWordWrap(true);
    for (QWidget* part : std::initializer_list<QWidget*>{why, m_told})
        column->addWidget(part);
    column->addWidget(area, 1);
    column->addWidget(m_agreed);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
    m_tell = box->addButton(tr("&Tell these numbers"), QDialogButtonBox::ActionRole);
    m_tell->setObjectName(QStringLiteral("skillTell"));
    m_back = box->addButton(tr("Take it &back"), QDialogButtonBox::ActionRole);
    m_back->setObjectName(QStringLiteral("skillBack"));
    for (QPushButton* button : {m_tell, m_back})
        button->setAutoDefault(false); // nobody consents by Enter
    column->addWidget(box);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_tell, &QPushButton::clicked, this, &SkillDialog::tell);
    connect(m_back, &QPushButton::clicked, this, &SkillDialog::takeBack);
    connect(m_agreed, &QCheckBox::toggled, this, [this](bool agreed) { m_tell->setEnabled(agreed && m_measured); });
    resize(onAnyScreen({scaled(640, font()), scaled(560, font())}));
    refresh();
}

void SkillDialog::refresh()
{
    m_signs->setText(measuredHtml());
    bool holds = false;
    m_told->setText(toldWords(holds));
    m_agreed->setChecked(false);
    m_agreed->setEnabled(m_measured);
    m_tell->setEnabled(false);
    m_back->setEnabled(holds);
}

QString SkillDialog::measuredHtml()
{
    const auto measured = measuredSkill(*m_bench.session(), m_person);
    m_measured = measured.has_value();
    if (!measured)
        return tr("Nothing has been measured yet. Practise on cases first.");
    QString html = QStringLiteral("<p>%1</p>").arg(tr("Answers of %1 to %2, version %3 of the protocol:")
                                                       .arg(plainDate(measured->from, 0), plainDate(measured->to, 0), text(measured->protocolVersion)).toHtmlEscaped());
    for (const ToldSign& sign : measured->signs)
        html += QStringLiteral("<p><b>%1</b><br>%2.</p>").arg(signName(sign.counted.sign, m_bench.session()->pack()).toHtmlEscaped(), sentenceStart(skillText(sign)).toHtmlEscaped());
    const bool few = std::any_of(measured->signs.begin(), measured->signs.end(), [](const ToldSign& sign) { return sign.few; });
    return few ? html + QStringLiteral("<p>%1</p>").arg(tr("Fewer than %1 answers a side are few: read the range, not the number.").arg(fewAnswers)) : html;
}

QString SkillDialog::toldWords(bool& holds)
{
    const auto told = toldSkill(*m_bench.session(), m_person);
    if (!told) {
        m_bench.complain(told.error());
        return {};
    }
    holds = told->has_value();
    if (!holds)
        return tr("Nothing is told.");
    const ToldSkill& now = **told;
    return now.consentTo == "self" ? tr("Told: what was measured until %1, agreed to on %2.").arg(plainDate(now.to, 0), plainDate(now.consented, 0))
                                   : tr("Told: what was measured until %1, agreed to on %2 before %3.").arg(plainDate(now.to, 0), plainDate(now.consented, 0), text(now.consentTo));
}

void SkillDialog::tell()
{
    Session& session = *m_bench.session();
    if (const Status told = tellSkill(session, m_person, m_own ? std::string() : session.profile().person.code); !told)
        return m_bench.complain(told.error());
    m_bench.say(tr("It goes along with the next file that is handed in."));
    refresh();
}

void SkillDialog::takeBack()
{
    if (const auto taken = withdrawSkill(*m_bench.session(), m_person); !taken)
        return m_bench.complain(taken.error());
    m_bench.say(tr("It is taken back. The next file that is handed in says so to whoever had it."));
    refresh();
}

} // namespace cupule::ui

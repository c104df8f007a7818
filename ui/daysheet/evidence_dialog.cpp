#include "ui/daysheet/evidence_dialog.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QListWidget>
#include <QVBoxLayout>

#include "core/task/day.h"
#include "core/task/photos.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/photo_words.h"
#include "ui/shell/workbench.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

/// What was seen at the visit first, then the crown and the shoot, then what the photo is marked with besides.
std::vector<std::string> choices(Session& session, const PhotoNote& photo)
{
    std::vector<std::string> ids;
    const auto add = [&](const std::string& id) {
        if (std::find(ids.begin(), ids.end(), id) == ids.end())
            ids.push_back(id);
    };
    if (const auto page = visitPage(session, photo.visit)) {
        for (const Observation& observation : page->visit.observations)
            if (observation.answer == Answer::seen)
                add(observation.sign);
        for (const CharacterSeen& character : page->visit.characters)
            if (!character.notJudged)
                add(character.character);
    }
    for (const std::string& id : plainEvidence())
        add(id);
    for (const std::string& id : photo.evidenceFor)
        add(id);
    return ids;
}

} // namespace

EvidenceDialog::EvidenceDialog(Workbench& bench, const PhotoNote& photo, const Pack& pack, QWidget* parent)
    : QDialog(parent), m_list(new QListWidget(this))
{
    setObjectName(QStringLiteral("evidenceDialog"));
    setWindowTitle(tr("What does %1 show?").arg(photoName(photo)));
    resize(onAnyScreen({scaled(460, font()), scaled(420, font())}));
    m_list->setObjectName(QStringLiteral("evidenceList"));
    m_list->setAccessibleName(windowTitle());
    m_list->setSpacing(scaled(4, font()));
    for (const std::string& id : choices(*bench.session(), photo)) {
        auto* item = new QListWidgetItem(evidenceName(id, pack), m_list);
        item->setData(Qt::UserRole, text(id));
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        const bool shown = std::find(photo.evidenceFor.begin(), photo.evidenceFor.end(), id) != photo.evidenceFor.end();
        item->setCheckState(shown ? Qt::Checked : Qt::Unchecked);
    }
    m_list->setCurrentRow(0);
    auto* note = new RoleLabel(TextRole::caption,
                               tr("Space ticks. Mark only what somebody else can see on the photo: a gall needs a photo that shows it, and "
                                  "the verifier one character of the tree."),
                               this, Tone::second);
    note->setWordWrap(true);
    auto* done = new KeyButton(tr("That is what it shows"), this);
    done->setMain(true);
    done->setCap(tr("Enter"));
    done->setDefault(true);
    auto* away = new KeyButton(tr("Leave it"), this);
    away->setCap(tr("Esc"));
    away->setAutoDefault(false);
    setTabOrder(away, done);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(away);
    row->addWidget(done);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_list, 1);
    column->addWidget(note);
    column->addLayout(row);
    connect(done, &QPushButton::clicked, this, &QDialog::accept);
    connect(away, &QPushButton::clicked, this, &QDialog::reject);
    m_list->setFocus(Qt::OtherFocusReason);
}

std::vector<std::string> EvidenceDialog::evidence() const
{
    std::vector<std::string> ids;
    for (int i = 0; i < m_list->count(); ++i)
        if (m_list->item(i)->checkState() == Qt::Checked)
            ids.push_back(utf8(m_list->item(i)->data(Qt::UserRole).toString()));
    return ids;
}

} // namespace cupule::ui

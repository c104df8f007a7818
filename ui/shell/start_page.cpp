#include "ui/shell/start_page.h"

#include <QFileInfo>
#include <QVBoxLayout>

#include "ui/shell/workbench.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/key_button.h"

namespace cupule::ui {

StartPage::StartPage(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench)
{
    setObjectName(QStringLiteral("startPage"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(32, 32, 32, 32);
    refresh();
}

void StartPage::refresh()
{
    delete m_state;
    m_state = new EmptyState(this);
    m_state->setTitle(tr("No store is open"),
                      tr("A store is one file: trees, visits, photos and samples of a programme, and a folder of pictures beside it. "
                         "It needs no network."));
    const QString last = m_bench.settings().value(Setting::lastStore).toString();
    if (!last.isEmpty() && QFileInfo::exists(last) && m_bench.hasProfile()) {
        auto* again = m_state->addWay(QStringLiteral("shoot_castanea"), QFileInfo(last).completeBaseName(),
                                      tr("The store you worked in last."), tr("Go on here"), {});
        connect(again, &QPushButton::clicked, this, [this, last] { Q_EMIT pathAsked(last); });
    }
    auto* open = m_state->addWay(QStringLiteral("husk_castanea"), tr("Open a store"),
                                 tr("One that lies on this computer or was brought on a stick."), tr("Open…"), {});
    auto* fresh = m_state->addWay(QStringLiteral("twig_castanea"), tr("Start a new store"),
                                  tr("For a laptop in the field, or for the regional office. You say who you are once."),
                                  tr("New store…"), {});
    connect(open, &QPushButton::clicked, this, &StartPage::openAsked);
    connect(fresh, &QPushButton::clicked, this, &StartPage::newAsked);
    m_state->setFoot(tr("A record is a volunteer's observation, not an official finding. The plant-health authority decides."));
    layout()->addWidget(m_state);
}

} // namespace cupule::ui

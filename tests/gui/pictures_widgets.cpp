// The common widgets filled as they will be met.

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/protocol/pack_reader.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/sample_widgets.h"
#include "ui/bridge/text.h"
#include "ui/widgets/chain_view.h"
#include "ui/widgets/checklist.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/place_rail.h"
#include "ui/widgets/position_edit.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/season_ribbon.h"
#include "ui/widgets/worth_tile.h"

namespace cupule::test {

namespace {

using namespace cupule::ui;

std::unique_ptr<SeasonRibbon> ribbon(SeasonRibbon::Folding folding, std::optional<QDate> looked)
{
    auto made = std::make_unique<SeasonRibbon>();
    made->setPack(&builtInPack());
    made->setSeason(text(builtInPack().regions.front().id), 6);
    made->setToday({2026, 6, 11});
    made->setFolding(folding);
    if (looked)
        made->lookAt(*looked);
    return made;
}

std::unique_ptr<QWidget> ribbons()
{
    auto page = std::make_unique<QWidget>();
    auto* column = new QVBoxLayout(page.get());
    column->addWidget(ribbon(SeasonRibbon::Folding::never, {}).release());
    column->addWidget(ribbon(SeasonRibbon::Folding::never, QDate(2026, 4, 12)).release());
    column->addWidget(ribbon(SeasonRibbon::Folding::always, {}).release());
    return page;
}

std::unique_ptr<QWidget> checklist()
{
    auto page = std::make_unique<QWidget>();
    setGround(*page, "page");
    auto* column = new QVBoxLayout(page.get());
    column->setContentsMargins(0, 0, 0, 0);
    auto* view = new ChecklistView;
    auto* model = new ChecklistModel(view);
    model->setRows(sampleChecklist());
    view->setModel(model);
    column->addWidget(view);
    view->setCurrentIndex(model->index(1));
    return page;
}

std::unique_ptr<QWidget> findings()
{
    auto list = std::make_unique<FindingList>();
    list->setFindings(sampleFindings(), &builtInPack());
    list->setMinimumHeight(520);
    return list;
}

std::unique_ptr<QWidget> chain()
{
    auto area = std::make_unique<QScrollArea>();
    auto* view = new ChainView;
    std::vector<ChainLink> links = sampleChain();
    view->setChain(links);
    view->setCurrent(6);
    auto* broken = new ChainView;
    links[5].state = LinkState::broken;
    links[5].lacking = {"custody.seal-differs"};
    broken->setChain(links);
    auto* both = new QWidget;
    setGround(*both, "page");
    auto* column = new QVBoxLayout(both);
    column->addWidget(view);
    column->addWidget(broken);
    area->setWidget(both);
    area->setWidgetResizable(true);
    area->setMinimumHeight(both->sizeHint().height() + 20);
    return area;
}

std::unique_ptr<QWidget> choices()
{
    auto page = std::make_unique<QWidget>();
    setGround(*page, "page");
    auto* column = new QVBoxLayout(page.get());
    const auto row = [column](const QString& question, const std::vector<ChoiceRow::Choice>& list,
                              ChoiceCard::Shape shape, const QString& chosen) {
        column->addWidget(new RoleLabel(TextRole::strong, question));
        auto* cards = new ChoiceRow;
        cards->setChoices(list, shape);
        cards->setChosen(chosen);
        column->addWidget(cards);
    };
    const auto choice = [](const char* id, const char* figure, const char* title, const char* detail) {
        return ChoiceRow::Choice{QString::fromUtf8(id), QString::fromUtf8(figure), QString::fromUtf8(title),
                                 QString::fromUtf8(detail)};
    };
    row(QStringLiteral("Leaf arrangement"),
        {choice("alternate", "shoot_castanea", "alternate", "one at a time"),
         choice("opposite", "shoot_aesculus", "opposite", "in pairs"),
         choice("nj", "", "can’t be judged", "")},
        ChoiceCard::Shape::beside, QStringLiteral("alternate"));
    row(QStringLiteral("Leaf type"),
        {choice("simple", "leaf_castanea", "simple", "one blade"),
         choice("palmate", "leaf_aesculus", "compound palmate", "like a hand"),
         choice("pinnate", "leaf_juglans", "compound pinnate", "like a feather"),
         choice("nj", "", "can’t be judged", "")},
        ChoiceCard::Shape::beside, {});
    row(QStringLiteral("Look next at the leaf margin"),
        {choice("coarse", "leaf_castanea", "Coarse teeth",
                "each side vein ends in a fine point beyond the edge"),
         choice("lobes", "leaf_quercus_robur", "Lobes", "rounded or pointed, deeply cut"),
         choice("double", "leaf_carpinus", "Fine double teeth", "small teeth on larger ones"),
         choice("none", "leaf_fagus", "No teeth", "smooth or wavy, silky hairs at the edge"),
         choice("plain", "leaf_quercus_castaneifolia", "Plain teeth", "triangles with a minute point")},
        ChoiceCard::Shape::below, {});
    return page;
}

std::unique_ptr<QWidget> empty()
{
    auto page = std::make_unique<QWidget>();
    setGround(*page, "page");
    auto* row = new QHBoxLayout(page.get());
    auto* state = new EmptyState;
    state->setTitle(QStringLiteral("Nothing entered for 11 June yet"),
                    QStringLiteral("Three ways to begin. You can mix them: what matches is put together."));
    state->addWay(QStringLiteral("gall_midrib"), QStringLiteral("Start a visit"),
                  QStringLiteral("Stand at a tree, or type up your field form. Site, people and date carry "
                                 "over to the next tree."),
                  QStringLiteral("Start a visit"), QKeySequence(Qt::CTRL | Qt::Key_N));
    state->addWay(QStringLiteral("mark:place-practice"), QStringLiteral("Bring in the day’s photos"),
                  QStringLiteral("Choose the folder, or drop it anywhere on this window. Each photo is "
                                 "matched to a visit by time and place; you say yes first."),
                  QStringLiteral("Choose photos…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O));
    state->addWay(QStringLiteral("mark:place-outputs"), QStringLiteral("Open what others sent"),
                  QStringLiteral(
                      "A track, a table or a day file from another laptop. Nothing already here is changed."),
                  QStringLiteral("Open a file…"), QKeySequence(Qt::CTRL | Qt::Key_O));
    state->setFoot(QStringLiteral("Looking for another day? <a href=\"day\">Choose a date</a>"));
    row->addWidget(state);
    row->addStretch(1);
    return page;
}

PositionWords samplePosition(const QString& typed)
{
    PositionWords words;
    words.how = PositionWords::How::understood;
    words.understood = QStringLiteral("British grid, a 10 m square: 51.2203 N, 0.3191 W");
    words.uncertainty = QStringLiteral("± 7 m");
    if (typed.contains(u'O'))
        words.problem = QStringLiteral("A letter stands among the digits.");
    words.proposal = words.problem.isEmpty() ? QString() : QStringLiteral("TQ 3172 4836");
    return words;
}

std::unique_ptr<QWidget> small()
{
    auto page = std::make_unique<QWidget>();
    setGround(*page, "page");
    auto* row = new QHBoxLayout(page.get());
    auto* rail = new PlaceRail;
    const char* places[][2] = {{"day", "Day"},        {"trees", "Trees"},       {"samples", "Samples"},
                               {"review", "Review"},  {"practice", "Practice"}, {"map", "Map"},
                               {"outputs", "Outputs"}};
    for (const auto& place : places)
        rail->addPlace(QString::fromLatin1(place[0]), QString::fromLatin1(place[1]),
                       QStringLiteral("place-") + QString::fromLatin1(place[0]));
    rail->setCurrent(QStringLiteral("day"));
    rail->setNote(QStringLiteral("review"), QStringLiteral("12"));
    row->addWidget(rail);
    auto* column = new QVBoxLayout;
    row->addLayout(column, 1);
    for (const MessageStrip::Kind kind : {MessageStrip::Kind::error, MessageStrip::Kind::question,
                                          MessageStrip::Kind::note, MessageStrip::Kind::done}) {
        auto* strip = new MessageStrip;
        strip->show(
            kind, QStringLiteral("The disk is full."),
            QStringLiteral(
                "Everything up to the last saved change is kept. Make room on the disk and try again."),
            kind == MessageStrip::Kind::error ? QStringLiteral("Try again") : QString());
        column->addWidget(strip);
    }
    auto* buttons = new QHBoxLayout;
    auto* main = new KeyButton(QStringLiteral("Start a visit"));
    main->setKey(QKeySequence(Qt::CTRL | Qt::Key_N));
    main->setMain(true);
    auto* plain = new KeyButton(QStringLiteral("Hand in the day…"));
    plain->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    auto* off = new KeyButton(QStringLiteral("Undo"));
    off->setEnabled(false);
    for (QWidget* button : std::initializer_list<QWidget*>{main, plain, off})
        buttons->addWidget(button);
    for (const char letter : {'A', 'B', 'C', '0'}) {
        auto* tile = new WorthTile;
        tile->setWorth(letter, {});
        buttons->addWidget(tile);
    }
    buttons->addStretch(1);
    column->addLayout(buttons);
    auto* fields = new QHBoxLayout;
    auto* date = new DateEdit;
    date->setDate({2026, 6, 11});
    auto* time = new TimeEdit;
    time->setTime({11, 20});
    fields->addWidget(date);
    fields->addWidget(time);
    fields->addStretch(1);
    column->addLayout(fields);
    for (const char* typed : {"TQ 3172 4836", "TQ 3172 48O6"}) {
        auto* position = new PositionEdit;
        position->setReader(samplePosition);
        position->setText(QString::fromLatin1(typed));
        column->addWidget(position);
    }
    column->addStretch(1);
    return page;
}

const bool added = addPicture({QStringLiteral("ribbon"), ribbons, false, 1366}) &&
                   addPicture({QStringLiteral("ribbon-narrow"), ribbons, false, 900}) &&
                   addPicture({QStringLiteral("checklist"), checklist, false, 714}) &&
                   addPicture({QStringLiteral("checklist-narrow"), checklist, false, 480}) &&
                   addPicture({QStringLiteral("findings"), findings, false, 292}) &&
                   addPicture({QStringLiteral("chain"), chain, false, 1024}) &&
                   addPicture({QStringLiteral("choices"), choices, false, 760}) &&
                   addPicture({QStringLiteral("empty"), empty, false, 940}) &&
                   addPicture({QStringLiteral("small-widgets"), small, false, 1000});

} // namespace

} // namespace cupule::test

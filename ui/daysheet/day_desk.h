// A day and the visit that is open: what is shown, what may be done, and the doing. No widget here; a test drives it alone.
//
// Every edit is saved at once through core/task and becomes one undo step. After an edit the page is computed anew, so that
// checks, verdict and worth are always those of what is stored.

#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QObject>

#include "core/task/day.h"
#include "core/task/place_offers.h"
#include "core/task/samples.h"
#include "ui/map/map_scene.h"
#include "ui/shell/workbench.h"
#include "ui/widgets/position_edit.h"

namespace cupule::ui {

class DayDesk : public QObject {
    Q_OBJECT
public:
    explicit DayDesk(Workbench& bench, QObject* parent = nullptr);

    /// Reads day and page again; called when the place is shown and when the store changed.
    void refresh();
    [[nodiscard]] CivilDate day() const { return m_day; }
    void setDay(CivilDate day);
    /// To the next earlier or later day that holds visits; beyond the last one, to today.
    void stepDay(int step);
    [[nodiscard]] const std::vector<VisitLine>& lines() const { return m_lines; }
    [[nodiscard]] const std::optional<VisitPage>& page() const { return m_page; }
    [[nodiscard]] const Pack& pack() const;
    [[nodiscard]] bool mayEdit() const { return m_page && m_page->mayEdit; }

    /// How many of one's own came back from a verifier and wait for an answer.
    [[nodiscard]] int cameBack() const { return static_cast<int>(m_cameBack.size()); }
    /// Opens the next of them, after the last the first.
    void showCameBack();
    /// Opens a visit, leaving the one before; a visit of another day changes the day.
    void show(const Uid& visit);
    void stepVisit(int step);
    /// A new draft after the open visit: site, people and date go over, effort and hygiene never.
    void startVisit();
    /// The open draft is left for now.
    void leave();
    void strikeOut(const QString& reason);

    void edit(const QString& what, const std::function<void(Visit&)>& change);
    void editTree(const QString& what, const std::function<void(Tree&)>& change);
    void answer(const QString& sign, Answer answer);
    void measure(const QString& sign, double value);
    /// A size measured on a photo, with the lines that it comes from.
    void takeMeasure(const PhotoNote& photo, const PhotoMeasure& measure);
    /// Empty where the picture is not there.
    [[nodiscard]] QString photoPath(const Uid& photo);
    /// How many were counted, or about how many (class of the pack); both empty = not counted.
    void count(const QString& sign, std::optional<int> counted, const QString& countClass);
    void answerNothingSeen();
    /// An empty state takes the answer back; "?" says that it could not be judged.
    void character(const QString& id, const QString& state);
    void characterValue(const QString& id, std::optional<double> value);
    void characterOnGround(const QString& id, bool onGround, std::optional<bool> otherTreeNear);
    [[nodiscard]] const CharacterSeen* seen(const QString& character) const;

    [[nodiscard]] std::vector<TreeHit> findTrees(const QString& typed);
    void chooseTree(const Uid& tree);
    void makeTree(const QString& label);
    void chooseSite(const QString& name);
    [[nodiscard]] std::vector<Site> sites();
    /// Companions by code, separated by commas. The first code nobody has goes to personUnknown(); the rest waits for it.
    void setCompanions(const QString& codes);
    /// Puts down somebody new and takes the companions that were typed.
    void addPerson(const QString& code, const QString& name);
    /// Whom a find is told, as the programme has set it; empty = nobody has.
    [[nodiscard]] QString whomToTell();
    /// The kind of tree that the host key has come to; empty while more than one is left.
    [[nodiscard]] QString believedHost() const;
    /// Printed labels that have no sample yet.
    [[nodiscard]] int waitingLabels();
    /// A sample of the tree of this visit.
    Result<SampleOpening> openSample(const Sample& wanted, bool alreadyTaken);

    [[nodiscard]] PositionWords readPosition(const QString& typed);
    /// What cannot be read is kept as typed, and the visit has no position until it can.
    void setPosition(const QString& typed);
    [[nodiscard]] QString positionTyped() const;
    /// One that is known already; a tree without a position gets it too.
    void takePosition(const Position& position);
    /// The tree, a photo: what the position may be taken from. A fault is told and gives none.
    [[nodiscard]] std::vector<PlaceOffer> placeOffers();
    [[nodiscard]] std::vector<PlaceOffer> pointOffers(const QString& path);
    /// The tree of the visit and what lies around it.
    [[nodiscard]] MapScene mapScene();

    [[nodiscard]] std::optional<HandInPage> handInPage();
    std::optional<HandInPage> handIn();

Q_SIGNALS:
    void dayChanged();
    void pageChanged();
    /// The first gall line of a visit was answered "seen": tell whom, how, leave it on the tree.
    void standingNoticeDue();
    void personUnknown(const QString& code);

private:
    /// With photos of the visit that change together with it.
    void editWith(const QString& what, const std::vector<PhotoNote>& photos, const std::function<void(Visit&)>& change);
    void setMeasure(const std::string& sign, std::optional<double> value, std::optional<double> uncertainty,
                    const std::vector<PhotoNote>& photos = {});
    void loadLines();
    void loadPage(const Uid& visit);
    template <class T>
    [[nodiscard]] bool good(const Result<T>& result);

    Workbench& m_bench;
    CivilDate m_day;
    std::vector<VisitLine> m_lines, m_cameBack;
    std::optional<VisitPage> m_page;
    bool m_saving = false;
    QString m_companionsTyped;
};

/// Of one unit of the sign's measure; 0 where it is no length.
double millimetresOf(const Sign& sign);

} // namespace cupule::ui

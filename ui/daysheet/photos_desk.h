// The photos of a day: those in the tray with what is proposed for them, likely copies, and those that lie with the day's visits.
// What is shown, what may be done, and the doing. No widget here.
//
//  - Nothing is put with a visit, and no two photos become one, unless a person says so. Each such step can be undone.
//  - Long work (taking in, looking at pictures) runs as a job.

#pragma once

#include <map>
#include <optional>
#include <vector>

#include <QHash>
#include <QObject>
#include <QStringList>

#include "core/task/import.h"
#include "core/task/photo_copies.h"
#include "core/task/photo_proposals.h"
#include "ui/daysheet/day_desk.h"

namespace cupule::ui {

struct PhotoRow {
    enum class Kind { proposed, loose, otherDay, placed, aside };
    Kind kind = Kind::loose;
    PhotoNote photo;
    std::vector<PhotoMatch> matches;       ///< proposed: best first
    std::optional<LikelyCopy> copy;        ///< in the tray: what it looks like
    QString original;                      ///< aside: name of the photo that it is a copy of
};

class PhotosDesk : public QObject {
    Q_OBJECT
public:
    PhotosDesk(DayDesk& day, Workbench& bench, QObject* parent = nullptr);

    /// While shown it follows the day and the store.
    void setShown(bool shown);
    [[nodiscard]] CivilDate day() const { return m_day.day(); }
    /// In the order shown: proposed, without a visit, of other days, with a visit, put aside as copies.
    [[nodiscard]] const std::vector<PhotoRow>& rows() const { return m_rows; }
    [[nodiscard]] int count(PhotoRow::Kind kind) const;
    [[nodiscard]] int copies() const { return static_cast<int>(m_copies.size()); }
    /// A visit of the day as the list shows it; null where it is of another day.
    [[nodiscard]] const VisitLine* visit(const Uid& id) const;
    /// Ids of what the photo shows, as was said; else of what was seen at the visit that it lies with or is proposed to.
    [[nodiscard]] std::vector<std::string> mayShow(const PhotoRow& row);
    /// Empty where the picture is not there.
    [[nodiscard]] QString path(const Uid& photo);
    [[nodiscard]] const Pack& pack() const { return m_day.pack(); }

    [[nodiscard]] const std::optional<ClockOffset>& fromGps() const { return m_ground.fromGps; }
    [[nodiscard]] const std::optional<ClockOffset>& fromVisits() const { return m_ground.fromVisits; }
    /// In use: as set, else as estimated; nothing: the camera's clock is taken as it is.
    [[nodiscard]] std::optional<double> secondsAhead() const { return m_inUse; }
    [[nodiscard]] bool isSetByHand() const { return m_typed.contains(day()); }
    /// Nothing: as estimated again. Proposals follow at once.
    void setSecondsAhead(std::optional<double> seconds);

    /// With the `match`-th of the proposed visits.
    void take(const PhotoRow& row, std::size_t match);
    /// The best proposal of each photo that no likely copy is known of.
    void takeAll();
    [[nodiscard]] int takenAtOnce() const;
    void refuse(const PhotoRow& row);
    void putWith(const PhotoRow& row, const Uid& visit);
    void backToTray(const PhotoRow& row);
    void setShows(const PhotoRow& row, const std::vector<std::string>& evidence);
    void sayCopy(const LikelyCopy& copy);
    void sayTwoPictures(const LikelyCopy& copy);
    void goToDayOf(const PhotoRow& row);

    /// Files and folders; told() says how it went.
    void takeIn(const QStringList& paths);
    /// Looks at pictures nobody has looked at yet, and for likely copies.
    void lookForCopies();
    [[nodiscard]] bool isBusy() const { return m_busy; }

Q_SIGNALS:
    void changed();
    void busyChanged();
    void told(const QString& words);

private:
    /// Reads tray, visits and photos of the day again.
    void refresh();
    void propose();
    void after(const Status& status, const QString& said);
    [[nodiscard]] QString takenInWords(const ImportReport& report) const;
    void run(const QString& title, const std::function<Status(Session&, const Progress&)>& work,
             const std::function<void(const Status&)>& finished);

    DayDesk& m_day;
    Workbench& m_bench;
    PhotoGround m_ground;
    std::vector<PhotoNote> m_placed, m_aside;
    std::vector<LikelyCopy> m_copies;
    std::vector<PhotoRow> m_rows;
    QHash<QString, QString> m_paths;
    std::map<CivilDate, double> m_typed; ///< the clock as set by hand; another day has perhaps another camera
    std::optional<double> m_inUse;
    bool m_busy = false, m_shown = false;
};

} // namespace cupule::ui

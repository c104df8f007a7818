// State and verbs of the walk: which month, which steps in which order, the trainer's notes and photos, the step that is shown. Kept in
// the profile folder while it is worked on, saved as a lesson file on demand.

#pragma once

#include <QObject>
#include <QTimer>

#include "core/training/lesson.h"
#include "ui/shell/workbench.h"
#include "ui/training/slide.h"

namespace cupule::ui {

class FigureShop;
class Thumbnails;

class WalkDesk : public QObject {
    Q_OBJECT
public:
    explicit WalkDesk(Workbench& bench, QObject* parent = nullptr);

    /// The walk that was left last, or one for the month of today.
    void begin();
    [[nodiscard]] bool hasBegun() const { return !m_steps.empty(); }
    /// A new walk for a month: order, notes and photos of the one before are left.
    void setMonth(int month);
    [[nodiscard]] const WalkPlace& place() const { return m_place; }
    [[nodiscard]] const std::vector<ArrangedStep>& steps() const { return m_steps; }
    [[nodiscard]] const Pack& pack() const;
    [[nodiscard]] QString name() const;

    [[nodiscard]] int current() const { return m_current; }
    void show(int step);
    /// To the next step that is shown, `by` +1 or -1; false at the end.
    bool go(int by);
    /// The step after the current one, -1 at the end.
    [[nodiscard]] int following(int by) const;
    /// Its number among the steps that are shown, from 1, and how many there are. A skipped step has the number of the next one.
    [[nodiscard]] int number(int step) const;
    [[nodiscard]] int count() const;
    [[nodiscard]] Slide slide(int step) const;

    void setSkipped(int step, bool skipped);
    /// By one place, `by` +1 or -1.
    void move(int step, int by);
    void setNotes(int step, const QString& notes);
    void addPhotos(int step, const QStringList& paths);
    void setCaption(int step, int photo, const QString& caption);
    void removePhoto(int step, int photo);
    bool open(const QString& path);
    void save(const QString& path);
    /// Writes what has changed since the last time; called by itself after a moment, and before the window closes.
    void keepDraft();

    [[nodiscard]] FigureShop& figures() { return *m_figures; }
    [[nodiscard]] Thumbnails& photos() { return *m_photos; }

Q_SIGNALS:
    void listChanged();  ///< steps, their order, what is skipped
    void stepChanged();  ///< another step is shown, or the shown one looks otherwise
    void photosChanged();

private:
    void arrange(const Lesson& lesson);
    [[nodiscard]] Lesson lesson() const;
    [[nodiscard]] Lesson proposed() const;
    [[nodiscard]] std::string draft() const;
    void changed();

    Workbench& m_bench;
    WalkPlace m_place;
    std::vector<ArrangedStep> m_steps;
    std::string m_name;
    int m_current = 0;
    bool m_unsaved = false;
    QTimer m_keeping;
    FigureShop* m_figures;
    Thumbnails* m_photos;
};

} // namespace cupule::ui

// State and verbs of a practice session: begun or gone on with, one case at a time, one question at a time, how sure, what was right.
// Every answered case is kept at once.

#pragma once

#include <QElapsedTimer>
#include <QObject>

#include "core/task/photo_cases.h"
#include "core/task/practice.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class CasesDesk : public QObject {
    Q_OBJECT
public:
    enum class Phase { setup, asking, sureness, feedback, done };

    explicit CasesDesk(Workbench& bench, QObject* parent = nullptr);

    void refresh();
    [[nodiscard]] const std::vector<PracticeLine>& lines() const { return m_lines; }
    [[nodiscard]] const std::vector<std::string>& cohorts() const { return m_cohorts; }
    /// May begin a session for somebody else.
    [[nodiscard]] bool forOthers() const;
    /// `code` of somebody else, made known where needed; empty = oneself.
    bool begin(PracticeWish wish, const QString& code, const QString& name);
    bool resume(const Uid& practice);
    /// Back to the setup; what is answered is kept.
    void stop();

    [[nodiscard]] Phase phase() const { return m_phase; }
    [[nodiscard]] const PracticeRound& round() const { return *m_round; }
    /// Null where the case is a photo.
    [[nodiscard]] const PracticeCase* drawn() const { return m_case ? &*m_case : nullptr; }
    /// Null where the case is drawn.
    [[nodiscard]] const PhotoRound* photo() const { return m_photo ? &*m_photo : nullptr; }
    /// The first picture of a photo case; empty where it is not there.
    [[nodiscard]] QString picture() const;
    [[nodiscard]] int number() const { return m_number; }
    [[nodiscard]] const std::vector<AskedItem>& asked() const { return m_photo ? m_photo->asked : m_case->asked; }
    /// The question that is asked, or is being answered.
    [[nodiscard]] int question() const { return static_cast<int>(m_answers.size()); }
    [[nodiscard]] const AskedItem& item() const { return asked()[m_answers.size()]; }
    [[nodiscard]] const std::vector<AnsweredItem>& answers() const { return m_answers; }
    /// Steps of an order chosen so far.
    [[nodiscard]] const std::vector<std::string>& order() const { return m_order; }
    /// The answer that waits for its sureness; empty for an order.
    [[nodiscard]] const std::string& given() const { return m_given; }
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }

    /// An option of the question, or the next step of an order.
    void give(const std::string& option);
    /// Percent.
    void sure(int percent);
    /// Takes back the last step of an order, or the answer that waits for its sureness.
    void back();
    /// After feedback.
    void next();

Q_SIGNALS:
    void listChanged();
    void changed();   ///< phase, case, question or answers

private:
    void take(Result<PracticeRound> round);
    void showCase();
    void answered(std::optional<int> percent);
    void finishCase();

    Workbench& m_bench;
    std::vector<PracticeLine> m_lines;
    std::vector<std::string> m_cohorts;
    std::optional<PracticeRound> m_round;
    std::optional<PracticeCase> m_case;
    std::optional<PhotoRound> m_photo;
    int m_number = 0;
    std::vector<AnsweredItem> m_answers;
    std::vector<std::string> m_order;
    std::string m_given;
    Phase m_phase = Phase::setup;
    QElapsedTimer m_clock;
};

} // namespace cupule::ui

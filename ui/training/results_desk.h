// What practice has shown: of a cohort and of each recruit, counted beside the window.

#pragma once

#include <memory>

#include <QObject>

#include "core/task/practice.h"
#include "core/task/practice_results.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

/// Whose yes and no are looked at: the gall lines together, the host, or one sign.
struct ResultSubject {
    AskedKind kind = AskedKind::sign;
    std::string subject; ///< empty with kind sign: the gall lines together
    bool operator==(const ResultSubject&) const = default;
};

class ResultsDesk : public QObject {
    Q_OBJECT
public:
    explicit ResultsDesk(Workbench& bench, QObject* parent = nullptr);

    /// Counts anew; changed() tells when it is done.
    void refresh();
    void setCohort(const std::optional<std::string>& cohort);
    void setNames(bool shown);
    void setSubject(const ResultSubject& subject);
    /// -1: all together.
    void show(int recruit);

    /// Null before the first count, and where nobody has answered yet.
    [[nodiscard]] const CohortResults* cohort() const { return m_cohort.get(); }
    [[nodiscard]] bool isCounting() const { return m_counting; }
    [[nodiscard]] const std::vector<std::string>& cohorts() const { return m_cohorts; }
    [[nodiscard]] const std::optional<std::string>& wanted() const { return m_wish.cohort; }
    [[nodiscard]] bool names() const { return m_names; }
    [[nodiscard]] const ResultSubject& subject() const { return m_subject; }
    /// What somebody was asked about, the gall lines first.
    [[nodiscard]] std::vector<ResultSubject> subjects() const;
    [[nodiscard]] int shown() const { return m_shown; }
    /// Of the recruit that is shown, or of all; null while it is counted.
    [[nodiscard]] const PracticeResults* results() const;
    [[nodiscard]] const std::vector<NextPractice>& next() const;
    /// Whose results are shown: the recruit, oneself where nobody else's may be seen; null = of several people, or nobody is named.
    [[nodiscard]] Uid shownPerson() const;
    /// Name of a recruit as it may be shown; -1: "all 12".
    [[nodiscard]] QString nameOf(int recruit) const;
    /// Of one recruit (-1: of all) on the subject; null where nobody asked.
    [[nodiscard]] const SubjectResult* resultOf(int recruit) const;
    [[nodiscard]] const PracticeRules& rules() const { return m_rules; }
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }

Q_SIGNALS:
    void listChanged();   ///< recruits, names, subject
    void shownChanged();  ///< whose confusions, calibration and curve are shown

private:
    void countShown();

    Workbench& m_bench;
    ResultsWish m_wish;
    ResultSubject m_subject;
    PracticeRules m_rules;
    std::vector<std::string> m_cohorts;
    std::shared_ptr<const CohortResults> m_cohort;
    std::shared_ptr<const RecruitResults> m_recruit; ///< of m_shown
    int m_shown = -1;
    bool m_names = true;
    bool m_counting = false;
    int m_asked = 0;
};

} // namespace cupule::ui

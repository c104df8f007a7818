// Findings in plain words, worst first, each with the way to its field. Enter or a click asks for the field.

#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QListView>

#include "core/protocol/pack.h"
#include "core/rules/finding.h"

namespace cupule::ui {

class FindingModel : public QAbstractListModel {
    Q_OBJECT
public:
    enum Roles { severityRole = Qt::UserRole + 1, fieldRole, linkRole, codeRole, sourceRole };

    explicit FindingModel(QObject* parent = nullptr);
    /// `pack` names signs in the sentences; it must outlive the call only.
    void setFindings(std::vector<Finding> findings, const Pack* pack);
    [[nodiscard]] const std::vector<Finding>& findings() const { return m_findings; }
    [[nodiscard]] int count(Severity severity) const;
    /// "1 stop, 2 questions", "nothing open".
    [[nodiscard]] QString counts() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<Finding> m_findings;
    std::vector<QString> m_sentences, m_links;
};

class FindingList : public QListView {
    Q_OBJECT
public:
    explicit FindingList(QWidget* parent = nullptr);
    void setFindings(std::vector<Finding> findings, const Pack* pack);
    [[nodiscard]] FindingModel& findings() const { return *m_model; }
    /// The next finding after the one asked for last, round and round; asks for its field. For F8.
    void next();

Q_SIGNALS:
    void fieldAsked(const QString& path);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void ask(const QModelIndex& index);
    FindingModel* m_model;
    int m_asked = -1;   ///< row of the finding asked for last
};

} // namespace cupule::ui

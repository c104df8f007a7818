// The auditor's round: one record after the other, with nothing that says whether it was drawn or is known.

#pragma once

#include <QWidget>

#include "core/task/audit.h"

class QLabel;

namespace cupule::ui {

class AuditAnswerBar;
class AuditDesk;
class AuditPhotos;

class AuditRoundPage : public QWidget {
    Q_OBJECT
public:
    explicit AuditRoundPage(AuditDesk& desk, QWidget* parent = nullptr);
    void begin(const Uid& audit);
    /// Ctrl+Enter, and Esc: false where nothing is open that it could close.
    void advance();
    bool retreat();

Q_SIGNALS:
    /// Everything is answered, or the round was left.
    void ended();

private:
    void next();
    void showRecord(const BlindRecord& record);
    void keep(Outcome outcome, const std::vector<std::string>& reasons, const QString& remark);

    AuditDesk& m_desk;
    Uid m_audit, m_visit;
    QLabel* m_place;
    QLabel* m_title;
    QLabel* m_facts;
    AuditPhotos* m_photos;
    AuditAnswerBar* m_bar;
};

} // namespace cupule::ui

// Cases from trainers' own photos: what is asked of each, one's own key, and where two people agree. Until somebody has given a key the
// others' keys are not shown.

#pragma once

#include <QDialog>

#include "core/task/photo_cases.h"
#include "ui/shell/prompts.h"
#include "ui/shell/workbench.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QListWidget;
class QPushButton;
class QScrollArea;

namespace cupule::ui {

class CaseStage;

class PhotoCasesDialog : public QDialog {
    Q_OBJECT
public:
    PhotoCasesDialog(Workbench& bench, Prompts& prompts, QWidget* parent);
    /// One case of each photo; asked are the host and the signs of the month.
    void addPhotos(const QStringList& paths);

private:
    QWidget* buildKey();
    void refresh();
    void refreshCase();
    void keepKey();
    [[nodiscard]] QString stateOf(const PhotoCaseLine& line) const;
    [[nodiscard]] std::vector<PhotoQuestion> questions() const;

    Workbench& m_bench;
    Prompts& m_prompts;
    std::vector<PhotoCaseLine> m_lines;
    QListWidget* m_list;
    CaseStage* m_stage;
    QScrollArea* m_questions;
    std::vector<QComboBox*> m_fields; ///< one for each question of the shown case
    QLabel* m_state;
    QPushButton* m_keep;
    QLabel* m_makers;
};

} // namespace cupule::ui

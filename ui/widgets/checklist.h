// The checklist of a visit: signs in a fixed order, answered by key, the measurement opening below the
// current row where a sign was seen.
//
//  - Keys in the list: 1 seen, 2 not seen, 3 could not be judged (each moves on, except 1 on a sign that is
//    measured), 0 or Backspace takes the answer back, Up/Down move, Enter opens the measurement, M asks for
//    measuring on a photo. In the measurement: Enter takes it and moves on, Esc leaves it. Single letters do
//    nothing while a field is typed in.
//  - The model holds rows as the place of work gives them; it changes nothing in the store. The view tells
//    what was answered; the owner saves and calls setRows() or changeRow().

#pragma once

#include <optional>
#include <vector>

#include <QAbstractListModel>
#include <QListView>

#include "core/protocol/pack.h"
#include "core/record/visit.h"
#include "core/rules/season.h"

namespace cupule::ui {

struct ChecklistRow {
    enum class Kind { sign, heading, fold };
    Kind kind = Kind::sign;
    QString sign;   ///< pack id, "S02"; key of the fold for headings and folds
    QString words;  ///< name of the sign, heading, or the folded rows in words
    QString aside;  ///< right side of a heading or a fold: "Show them, each with its reason"
    QString reason; ///< why it is (not) in season; shown under the name where folded rows are open
    SeasonState season = SeasonState::expected;
    Answer answer = Answer::open;
    bool noneOnTree = false; ///< not seen because the organ is absent
    bool struck = false;     ///< seen on a tree ruled out later: counts for nothing
    bool readOnly = false;
    QString measureName, unit; ///< empty where nothing is measured
    bool wholeNumber = false;  ///< counts
    std::optional<double> measure, measureError;
    double usualMin = 0, usualMax = 0, hardMin = 0, hardMax = 0;
    QString measuredOn; ///< "from photo 3 of 4"
    bool operator==(const ChecklistRow&) const = default;
};

/// The sign part of a row; the words come from the pack.
ChecklistRow checklistRow(const Sign& sign, const SignSeason& season, const Observation& observation,
                          bool struck);

class ChecklistModel : public QAbstractListModel {
    Q_OBJECT
public:
    enum Roles { kindRole = Qt::UserRole + 1, signRole, answerRole, seasonRole, measureRole };

    explicit ChecklistModel(QObject* parent = nullptr);
    void setRows(std::vector<ChecklistRow> rows);
    /// Nothing happens where the sign is not in the list.
    void changeRow(const ChecklistRow& row);
    [[nodiscard]] const ChecklistRow& row(const QModelIndex& index) const;
    [[nodiscard]] const std::vector<ChecklistRow>& rows() const { return m_rows; }
    [[nodiscard]] QModelIndex indexOf(const QString& sign) const;
    [[nodiscard]] int answered() const;
    [[nodiscard]] int signs() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    std::vector<ChecklistRow> m_rows;
};

class ChecklistDelegate;
class MeasureEditor;

class ChecklistView : public QListView {
    Q_OBJECT
public:
    explicit ChecklistView(QWidget* parent = nullptr);
    void setModel(QAbstractItemModel* model) override; ///< a ChecklistModel
    [[nodiscard]] ChecklistModel* checklist() const;
    void goTo(const QString& sign);
    /// Opens the measurement of the current row, where there is one.
    void openMeasure();
    /// Height of all rows. The list never scrolls itself: it stands in a page that scrolls as a whole, and
    /// keeps the current row in sight there.
    [[nodiscard]] int wholeHeight() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void answered(const QString& sign, cupule::Answer answer);
    /// NaN takes the measurement back.
    void measured(const QString& sign, double value);
    void photoMeasureAsked(const QString& sign);
    void foldToggled(const QString& key);
    void currentSignChanged(const QString& sign);
    void wholeHeightChanged();

protected:
    void focusInEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void updateGeometries() override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void dataChanged(const QModelIndex& topLeft, const QModelIndex& bottomRight,
                     const QList<int>& roles) override;

private:
    void answer(const QModelIndex& index, Answer answer);
    void turn(const QModelIndex& index, int step);
    void moveOn(int fromRow, int step);
    void placeEditor();
    void relayout();
    void showInPage(const QModelIndex& index);

    ChecklistDelegate* m_delegate;
    MeasureEditor* m_editor;
    int m_wholeHeight = 0;
};

} // namespace cupule::ui

// The list of the photos of a day: a small picture, its name and time, and where it may belong. Letters and digits are left to
// whoever stands around it.

#pragma once

#include <QAbstractListModel>
#include <QListView>

#include "ui/daysheet/photos_desk.h"
#include "ui/photos/thumbnails.h"

namespace cupule::ui {

class PhotoListModel : public QAbstractListModel {
    Q_OBJECT
public:
    enum Roles { headingRole = Qt::UserRole + 1 };
    explicit PhotoListModel(PhotosDesk& desk, QObject* parent = nullptr);
    /// After the desk changed.
    void refresh();
    /// Null for a heading.
    [[nodiscard]] const PhotoRow* row(const QModelIndex& index) const;
    /// The photo; where it is gone, what stands at its place now.
    [[nodiscard]] QModelIndex indexOf(const Uid& photo, int otherwise) const;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    struct Line {
        QString heading;
        std::size_t row = 0;               ///< of the desk
    };
    PhotosDesk& m_desk;
    std::vector<Line> m_lines;
};

class PhotoList : public QListView {
    Q_OBJECT
public:
    explicit PhotoList(PhotosDesk& desk, QWidget* parent = nullptr);
    /// Keeps the current photo, or its place.
    void refresh();
    [[nodiscard]] const PhotoRow* current() const { return m_model->row(currentIndex()); }
    [[nodiscard]] const PhotoListModel& photos() const { return *m_model; }
    [[nodiscard]] Thumbnails& thumbnails() { return m_thumbnails; }
    [[nodiscard]] PhotosDesk& desk() { return m_desk; }

Q_SIGNALS:
    void currentMoved();

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    PhotosDesk& m_desk;
    PhotoListModel* m_model;
    Thumbnails m_thumbnails{160, 600, this};
    Uid m_current;
    int m_at = 0;
    bool m_refreshing = false;
};

} // namespace cupule::ui

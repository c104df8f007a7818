#include "ui/daysheet/photo_list.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include "ui/bridge/text.h"
#include "ui/daysheet/photo_words.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

class PhotoDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const QFontMetrics metrics(option.font);
        if (!index.data(PhotoListModel::headingRole).toString().isEmpty())
            return {200, metrics.height() + 14};
        return {240, metrics.height() * 3 + 18};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        auto* list = const_cast<PhotoList*>(qobject_cast<const PhotoList*>(option.widget));
        const Theme& theme = themeOf(*list);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setRenderHint(QPainter::SmoothPixmapTransform);
        const QString heading = index.data(PhotoListModel::headingRole).toString();
        if (!heading.isEmpty()) {
            painter->setPen(theme.ink2);
            painter->setFont(roleFont(TextRole::caption, option.font));
            painter->drawText(option.rect.adjusted(14, 0, -8, 0), Qt::AlignVCenter, heading);
        } else if (const PhotoRow* row = list->photos().row(index)) {
            paintRow(*painter, option, *row, *list, theme);
        }
        painter->setPen(theme.hair);
        painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
        painter->restore();
    }

private:
    static void paintRow(QPainter& painter, const QStyleOptionViewItem& option, const PhotoRow& row, PhotoList& list, const Theme& theme)
    {
        const QRect area = option.rect;
        if ((option.state & QStyle::State_Selected) != 0) {
            painter.fillRect(area, theme.page);
            painter.fillRect(QRect(area.left(), area.top(), 3, area.height()), theme.nut);
            if ((option.state & QStyle::State_HasFocus) != 0) {
                painter.setPen(QPen(theme.focus, 2));
                painter.drawRect(area.adjusted(1, 1, -2, -2));
            }
        }
        const QFontMetrics metrics(option.font);
        const int side = area.height() - 14;
        const QRect frame(area.left() + 14, area.top() + 7, side * 4 / 3, side);
        paintSmall(painter, frame, row, list, theme);
        const QRect words(frame.right() + 12, area.top() + 9, area.right() - frame.right() - 22, metrics.height());
        painter.setFont(roleFont(TextRole::strong, option.font));
        painter.setPen(theme.ink);
        painter.drawText(words, Qt::AlignLeft,
                         painter.fontMetrics().elidedText(photoName(row.photo), Qt::ElideMiddle, words.width()));
        painter.setFont(roleFont(TextRole::caption, option.font));
        painter.setPen(theme.ink2);
        const QString second = takenText(row.photo, list.desk().day());
        painter.drawText(words.translated(0, metrics.height() + 1), Qt::AlignLeft,
                         painter.fontMetrics().elidedText(second, Qt::ElideRight, words.width()));
        painter.setPen(row.kind == PhotoRow::Kind::proposed || row.copy ? theme.ink : theme.ink2);
        painter.drawText(words.translated(0, 2 * metrics.height() + 1), Qt::AlignLeft,
                         painter.fontMetrics().elidedText(rowText(row, list.desk()), Qt::ElideRight, words.width()));
    }

    static void paintSmall(QPainter& painter, const QRect& frame, const PhotoRow& row, PhotoList& list, const Theme& theme)
    {
        painter.fillRect(frame, theme.panel);
        const QString path = list.desk().path(row.photo.id);
        const QImage small = list.thumbnails().of(path);
        if (!small.isNull()) {
            const QSize size = small.size().scaled(frame.size(), Qt::KeepAspectRatio);
            QRect inside(QPoint(), size);
            inside.moveCenter(frame.center());
            painter.drawImage(inside, small);
        } else if (path.isEmpty() || list.thumbnails().failed(path)) {
            painter.setPen(theme.ink2);
            painter.setFont(roleFont(TextRole::caption, list));
            painter.drawText(frame, Qt::AlignCenter | Qt::TextWordWrap, PhotoList::tr("cannot be shown"));
        }
        painter.setPen(theme.edge);
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(frame);
    }
};

QString headingOf(PhotoRow::Kind kind)
{
    switch (kind) {
    case PhotoRow::Kind::proposed: return PhotoList::tr("in the tray, a visit is proposed");
    case PhotoRow::Kind::loose: return PhotoList::tr("in the tray, no visit fits");
    case PhotoRow::Kind::otherDay: return PhotoList::tr("in the tray, undated or of another day");
    case PhotoRow::Kind::placed: return PhotoList::tr("with visits of this day");
    case PhotoRow::Kind::aside: return PhotoList::tr("put aside as copies");
    }
    return {};
}

} // namespace

PhotoListModel::PhotoListModel(PhotosDesk& desk, QObject* parent) : QAbstractListModel(parent), m_desk(desk) {}

void PhotoListModel::refresh()
{
    beginResetModel();
    m_lines.clear();
    const auto& rows = m_desk.rows();
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i == 0 || rows[i].kind != rows[i - 1].kind)
            m_lines.push_back({headingOf(rows[i].kind), i});
        m_lines.push_back({QString(), i});
    }
    endResetModel();
}

const PhotoRow* PhotoListModel::row(const QModelIndex& index) const
{
    if (!index.isValid() || index.row() >= rowCount())
        return nullptr;
    const Line& line = m_lines[static_cast<std::size_t>(index.row())];
    return line.heading.isEmpty() && line.row < m_desk.rows().size() ? &m_desk.rows()[line.row] : nullptr;
}

QModelIndex PhotoListModel::indexOf(const Uid& photo, int otherwise) const
{
    for (int i = 0; i < rowCount(); ++i)
        if (const PhotoRow* candidate = row(index(i)); candidate != nullptr && candidate->photo.id == photo)
            return index(i);
    for (int i = std::min(otherwise, rowCount() - 1); i >= 0; --i)
        if (row(index(i)) != nullptr)
            return index(i);
    return rowCount() > 1 ? index(1) : QModelIndex();
}

int PhotoListModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

QVariant PhotoListModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    const Line& line = m_lines[static_cast<std::size_t>(index.row())];
    if (role == headingRole)
        return line.heading;
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)
        return {};
    const PhotoRow* photo = row(index);
    if (photo == nullptr)
        return line.heading;
    return QStringList{photoName(photo->photo), takenText(photo->photo, m_desk.day()), rowText(*photo, m_desk)}.join(
        QStringLiteral(", "));
}

Qt::ItemFlags PhotoListModel::flags(const QModelIndex& index) const
{
    return row(index) != nullptr ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
}

PhotoList::PhotoList(PhotosDesk& desk, QWidget* parent) : QListView(parent), m_desk(desk), m_model(new PhotoListModel(desk, this))
{
    setObjectName(QStringLiteral("photoList"));
    setModel(m_model);
    setItemDelegate(new PhotoDelegate(this));
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setAccessibleName(tr("Photos of the day"));
    connect(&m_thumbnails, &Thumbnails::ready, viewport(), qOverload<>(&QWidget::update));
}

void PhotoList::refresh()
{
    m_refreshing = true;
    m_model->refresh();
    setCurrentIndex(m_model->indexOf(m_current, m_at));
    m_refreshing = false;
    if (const PhotoRow* row = current())
        m_current = row->photo.id;
    m_at = currentIndex().row();
    Q_EMIT currentMoved();
}

void PhotoList::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    QListView::currentChanged(current, previous);
    const PhotoRow* row = m_model->row(current);
    if (m_refreshing || row == nullptr)
        return;
    m_current = row->photo.id;
    m_at = current.row();
    Q_EMIT currentMoved();
}

void PhotoList::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Home:
    case Qt::Key_End: {   // the first line is a heading, at which the list itself would stop
        const int last = m_model->rowCount() - 1;
        setCurrentIndex(event->key() == Qt::Key_End ? m_model->index(last) : m_model->index(std::min(1, last)));
        return;
    }
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown: QListView::keyPressEvent(event); return;
    default: event->ignore();
    }
}

void PhotoList::changeEvent(QEvent* event)
{
    QListView::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        scheduleDelayedItemsLayout();
}

} // namespace cupule::ui

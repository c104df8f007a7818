// The places of work down the left side: a drawn mark and a word. Up/Down move, Enter or Space goes there.

#pragma once

#include <vector>

#include <QFrame>

namespace cupule::ui {

class PlaceButton;

class PlaceRail : public QFrame {
    Q_OBJECT
public:
    explicit PlaceRail(QWidget* parent = nullptr);
    /// `mark` is a mark's name ("place-day"). Gives the index.
    int addPlace(const QString& id, const QString& word, const QString& mark);
    void setShown(const QString& id, bool shown);
    /// A small number at the right ("6 wait"); empty for none.
    void setNote(const QString& id, const QString& note);
    void setCurrent(const QString& id);
    [[nodiscard]] QString current() const { return m_current; }
    /// Marks alone; only by the user's wish.
    void setFolded(bool folded);

Q_SIGNALS:
    void placeChosen(const QString& id);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    std::vector<PlaceButton*> m_places;
    QString m_current;
};

} // namespace cupule::ui

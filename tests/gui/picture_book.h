// Screens and widgets that can be rendered to PNG files to be looked at. Each file with pictures adds its
// own.

#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <QDate>
#include <QSize>
#include <QString>
#include <QWidget>

#include "ui/theme/theme.h"

class QDialog;

namespace cupule::ui {
class Workbench;
}

namespace cupule::test {

struct Picture {
    QString name;
    std::function<std::unique_ptr<QWidget>()> make;
    /// A whole window is rendered at the three sizes of a screen; a part at its own width and the height it
    /// asks for.
    bool wholeWindow = false;
    int width = 1366;
    bool needsStore = false;
};

/// The store that filled places are shown with: a copy, so that looking changes nothing.
struct PictureStore {
    QString store, profile; ///< empty: only what needs no store is rendered
    QDate today, day; ///< `day`: the one that Day shows
};
const PictureStore& pictureStore();
ui::Look& pictureLook();

/// A dialog fills the page instead of standing before it.
void showWithin(QWidget& page, QDialog& dialog);
void waitForJobs(ui::Workbench& bench);

/// For a static of each picture file. Always true.
bool addPicture(Picture picture);
const std::vector<Picture>& pictures();

} // namespace cupule::test

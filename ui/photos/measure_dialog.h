// Photos of a visit, large, and a length measured on one of them.
//
//  - Knows no store: photos come as paths, and what was measured is asked for after it was accepted.
//  - Keys besides those of the canvas (photo_canvas.h): , and . other photo, L the known length, K a coin or card, C colour of a
//    patch, D the drawn figure on or off, E lines measured earlier on or off, F full screen, N measure another, Enter takes, Esc leaves.

#pragma once

#include <optional>
#include <vector>

#include <QDialog>

#include "core/protocol/pack.h"
#include "core/record/photo.h"
#include "core/rules/photo_measure.h"
#include "ui/photos/picture.h"

class QLabel;

namespace cupule::ui {

class KeyButton;
class MeasurePanel;
class PhotoCanvas;

struct PhotoToMeasure {
    QString path, name;
    std::vector<PhotoMeasure> measures = {};   ///< taken on it earlier: drawn again
};

struct MeasureRequest {
    std::string sign;              ///< whose measure is asked for; empty: photos are only looked at
    QString tree;                  ///< label, for the head
    QString figure;                ///< kind of the drawn figure beside the photo (ui/figures); empty: none
    int firstPhoto = 0;
    double knownMillimetres = 0;   ///< typed in already, as the last time; 0: none
    double knownUncertainty = 0.1; ///< standard, millimetres: reading a ruler (judgement)
};

struct MeasureResult {
    int photo = 0;                 ///< index
    PhotoScale scale;              ///< pixels of the stored picture
    PixelLine line;
    PhotoLength length;
    /// As it is kept on the photo's note.
    [[nodiscard]] PhotoMeasure note(const std::string& sign) const;
};

class MeasureDialog : public QDialog {
    Q_OBJECT
public:
    MeasureDialog(std::vector<PhotoToMeasure> photos, const MeasureRequest& request, const Pack& pack, QWidget* parent = nullptr);
    /// After accept().
    [[nodiscard]] const std::optional<MeasureResult>& taken() const { return m_taken; }
    [[nodiscard]] PhotoCanvas* canvas() const { return m_canvas; }
    [[nodiscard]] MeasurePanel* panel() const { return m_panel; }
    [[nodiscard]] int photo() const { return m_at; }
    /// A photo has been decoded, or could not be.
    [[nodiscard]] bool isSettled() const { return !m_waiting; }

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* makeSide();
    void turnTo(int photo);
    void shown(int photo, const Picture& picture);
    void refresh();
    void refreshFoot();
    void take();
    void pickColour();
    bool letterKey(int key);
    [[nodiscard]] bool measures() const { return !m_request.sign.empty(); }
    [[nodiscard]] std::optional<MeasureResult> measured(QString& fault) const;

    std::vector<PhotoToMeasure> m_photos;
    MeasureRequest m_request;
    const Pack& m_pack;
    int m_at = 0;
    bool m_waiting = false;
    PhotoCanvas* m_canvas;
    MeasurePanel* m_panel;
    QWidget* m_figure;
    QLabel* m_foot;
    KeyButton* m_take;
    KeyButton* m_another;
    PictureReader m_reader;
    std::optional<MeasureResult> m_taken;
};

} // namespace cupule::ui

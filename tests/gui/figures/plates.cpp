// Figures to be looked at: plates OUT.png CELL SEEDS ACROSS [dark] [met] NAME...   A name ends in * for all that begin so. A name of
// several words is a description: "shoot castanea-sativa summer gall=midrib,pink,12,1,0,1,0 seed=1".

#include <QGuiApplication>
#include <QPainter>
#include <QTextStream>

#include "ui/figures/sheet.h"

namespace {

/// Descriptions in several seeds, row by row; nothing where one cannot be read or drawn.
QImage described(const QStringList& texts, const cupule::ui::SheetForm& form)
{
    const int group = form.seeds * form.cell.width(), rows = (static_cast<int>(texts.size()) + form.across - 1) / form.across;
    QImage sheet(form.across * group, rows * form.cell.height(), QImage::Format_RGB32);
    sheet.fill(form.ground);
    QPainter painter(&sheet);
    for (int i = 0; i < texts.size(); ++i) {
        auto depiction = cupule::depictionFromText(texts[i].toStdString());
        if (!depiction || cupule::ui::figureFor(*depiction).isEmpty())
            return {};
        for (int k = 0; k < form.seeds; ++k, ++depiction->seed)
            cupule::ui::paintFigure(painter, QRectF(QPoint(i % form.across * group + k * form.cell.width(), i / form.across * form.cell.height()), form.cell),
                                    form.asMet > 0 ? cupule::asMet(*depiction, form.asMet) : *depiction);
    }
    return sheet;
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication program(argc, argv);
    QStringList words = QGuiApplication::arguments().mid(1);
    if (words.size() < 5) {
        QTextStream(stderr) << "plates OUT.png CELL SEEDS ACROSS [dark] [met] NAME...\n";
        return 2;
    }
    const QString out = words.takeFirst();
    cupule::ui::SheetForm sheet;
    const int cell = words.takeFirst().toInt();
    sheet.cell = {cell, cell};
    sheet.seeds = words.takeFirst().toInt();
    sheet.across = words.takeFirst().toInt();
    if (words.removeAll(QStringLiteral("dark")) > 0) {
        sheet.ground = QColor(0x1D, 0x1F, 0x1C);
        sheet.ink = QColor(0xE6, 0xE4, 0xDC);
    }
    if (words.removeAll(QStringLiteral("met")) > 0)
        sheet.asMet = 1;
    if (words.first().contains(u' ')) {
        const QImage image = described(words, sheet);
        return !image.isNull() && image.save(out) ? 0 : 3;
    }
    for (const QString& id : cupule::ui::figureIds())
        for (const QString& word : words)
            if (id == word || (word.endsWith(u'*') && id.startsWith(word.chopped(1))))
                sheet.kinds << id;
    return cupule::ui::figureSheet(sheet).save(out) ? 0 : 3;
}

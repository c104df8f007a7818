// Figures to be looked at: plates OUT.png CELL SEEDS ACROSS [dark] [met] NAME...   A name ends in * for all that begin so.

#include <QGuiApplication>
#include <QTextStream>

#include "ui/figures/sheet.h"

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
    for (const QString& id : cupule::ui::figureIds())
        for (const QString& word : words)
            if (id == word || (word.endsWith(u'*') && id.startsWith(word.chopped(1))))
                sheet.kinds << id;
    return cupule::ui::figureSheet(sheet).save(out) ? 0 : 3;
}

// The floor of a start: a main window with six menus, a toolbar, a table of 40 by 8 and a label. Nothing else.

#include <QApplication>
#include <QLabel>
#include <QMainWindow>
#include <QMenuBar>
#include <QTableWidget>
#include <QToolBar>
#include <QVBoxLayout>

int main(int argc, char** argv)
{
    QApplication app(argc, argv);
    QMainWindow window;
    for (int menu = 0; menu < 6; ++menu) {
        auto* entries = window.menuBar()->addMenu(QStringLiteral("Menu %1").arg(menu));
        for (int entry = 0; entry < 8; ++entry)
            entries->addAction(QStringLiteral("Entry %1").arg(entry));
    }
    auto* tools = window.addToolBar(QStringLiteral("Tools"));
    for (int tool = 0; tool < 6; ++tool)
        tools->addAction(QStringLiteral("Tool %1").arg(tool));
    auto* table = new QTableWidget(40, 8);
    for (int row = 0; row < 40; ++row)
        for (int column = 0; column < 8; ++column)
            table->setItem(row, column, new QTableWidgetItem(QStringLiteral("%1/%2").arg(row).arg(column)));
    auto* middle = new QWidget;
    auto* layout = new QVBoxLayout(middle);
    layout->addWidget(new QLabel(QStringLiteral("A label")));
    layout->addWidget(table);
    window.setCentralWidget(middle);
    window.resize(1200, 780);
    window.show();
    return QApplication::exec();
}

#include "ui/shell/prompts.h"

#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>

namespace cupule::ui {

QString Prompts::fileToOpen(QWidget* parent, const QString& title, const QString& folder, const QString& filter)
{
    return QFileDialog::getOpenFileName(parent, title, folder, filter);
}

QStringList Prompts::filesToOpen(QWidget* parent, const QString& title, const QString& folder, const QString& filter)
{
    return QFileDialog::getOpenFileNames(parent, title, folder, filter);
}

QString Prompts::folder(QWidget* parent, const QString& title, const QString& folder)
{
    return QFileDialog::getExistingDirectory(parent, title, folder);
}

QString Prompts::fileToWrite(QWidget* parent, const QString& title, const QString& proposal, const QString& filter)
{
    return QFileDialog::getSaveFileName(parent, title, proposal, filter);
}

bool Prompts::confirm(QWidget* parent, const QString& question, const QString& more, const QString& yes)
{
    QMessageBox box(QMessageBox::NoIcon, QString(), question, QMessageBox::Cancel, parent);
    box.setInformativeText(more);
    const QPushButton* button = box.addButton(yes, QMessageBox::AcceptRole);
    box.setDefaultButton(QMessageBox::Cancel);
    QWidget::setTabOrder(box.buttons().last(), box.button(QMessageBox::Cancel)); // as they stand
    box.exec();
    return box.clickedButton() == button;
}

QString Prompts::line(QWidget* parent, const QString& title, const QString& question, const QString& proposal)
{
    bool taken = false;
    const QString text = QInputDialog::getText(parent, title, question, QLineEdit::Normal, proposal, &taken);
    return taken ? text.trimmed() : QString();
}

} // namespace cupule::ui

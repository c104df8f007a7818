// Questions to the user come through this seam, so that a test can give the next answer.

#pragma once

#include <QString>
#include <QStringList>

class QWidget;

namespace cupule::ui {

class Prompts {
public:
    virtual ~Prompts() = default;
    /// Empty where the user thought better of it.
    virtual QString fileToOpen(QWidget* parent, const QString& title, const QString& folder, const QString& filter);
    virtual QStringList filesToOpen(QWidget* parent, const QString& title, const QString& folder, const QString& filter);
    virtual QString folder(QWidget* parent, const QString& title, const QString& folder);
    virtual QString fileToWrite(QWidget* parent, const QString& title, const QString& proposal, const QString& filter);
    /// A plain question; `yes` names what will be done.
    virtual bool confirm(QWidget* parent, const QString& question, const QString& more, const QString& yes);
    /// One line of text; empty where there was none.
    virtual QString line(QWidget* parent, const QString& title, const QString& question, const QString& proposal);
};

} // namespace cupule::ui

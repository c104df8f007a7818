// The whole window as the program assembles it, with a profile and a store of its own in a temporary folder.

#pragma once

#include <memory>

#include <QTemporaryDir>

#include "ui/shell/main_window.h"

namespace cupule::test {

/// Made before the window and outliving it.
struct WindowBench {
    explicit WindowBench(const QString& profile) : bench(profile.isEmpty() ? folder.filePath(QStringLiteral("profile")) : profile) {}
    QTemporaryDir folder;
    ui::Workbench bench;
};

class WholeWindow : private WindowBench, public ui::MainWindow {
public:
    /// `profile`: folder of a profile; empty for one inside the window's own folder.
    WholeWindow(ui::Look& look, const QString& profile = {}, std::unique_ptr<ui::Prompts> prompts = std::make_unique<ui::Prompts>());

    [[nodiscard]] ui::Workbench& bench() { return WindowBench::bench; }
    [[nodiscard]] QString file(const QString& name) const { return folder.filePath(name); }
    /// A new demonstration store and whoever works on it; false where one of them could not be made.
    bool openEmpty(const Person& person, const std::vector<Role>& roles);
    /// A store that is there, as somebody new on this device.
    bool openAs(const Person& person, const std::vector<Role>& roles, const QString& path);
};

} // namespace cupule::test

// The account of the season as a web page, with the window's words.

#pragma once

#include <QString>

#include "core/task/session.h"

namespace cupule::ui {

Status writeAccountPage(Session& session, const QString& path);

} // namespace cupule::ui

// What a signed file brings, as a page of a label: conflicts field by field, what changes, what is decided, what is new.

#pragma once

#include <QString>

#include "core/task/arrival_page.h"

namespace cupule::ui {

/// `kept`: it was taken in; else it was only tried out.
QString cameInHtml(const TakenIn& taken, const CameInPage& page, const Pack& pack, bool kept);

} // namespace cupule::ui

// The text of a note about a bundle, as its row keeps it. Inside the store room only.

#pragma once

#include <string_view>

#include "core/store/bundles.h"

namespace cupule {

/// Throws "record.json" where the text is none.
BundleNote bundleNoteFrom(std::string_view content);

} // namespace cupule

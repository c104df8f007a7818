// What the files of words.h share among themselves.

#pragma once

#include <string>

#include <QString>

#include "core/protocol/pack.h"
#include "core/rules/finding.h"

namespace cupule::ui {

/// The sentence of a custody finding; empty where the finding is of another family.
QString custodySentence(const Finding& finding, const Pack* pack);
/// The field of a custody line or of a sample: "outer-bag/seal". Empty where the path is of another family.
QString custodyFieldWords(const std::string& path);

} // namespace cupule::ui

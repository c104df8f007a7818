// Sentences with named places: "This position is {metres} from the tree's." Part of words.h.
//
//  - A place takes the argument of that name; how it is written follows from what it is: lengths, durations,
//    dates and times by their names or form, sign and character ids by the pack, stable words by known().
//  - A place without an argument leaves nothing behind.

#pragma once

#include <span>
#include <string_view>

#include <QString>

#include "core/base/result.h"
#include "core/protocol/pack.h"

namespace cupule::ui {

struct Sentence {
    const char* code;
    const char* text; ///< English, marked with QT_TRANSLATE_NOOP
};

/// The English of a code, or null.
const char* sentenceOf(std::span<const Sentence> table, std::string_view code);
QString filled(const QString& sentence, const Arguments& arguments, const Pack* pack);
/// Both in one: empty where the table lacks the code.
QString sentence(std::span<const Sentence> table, const char* context, const std::string& code,
                 const Arguments& arguments = {}, const Pack* pack = nullptr);

/// Names of ids of the pack; the id itself where the pack does not know it.
QString signName(const std::string& id, const Pack* pack);
QString characterName(const std::string& id, const Pack* pack);

} // namespace cupule::ui

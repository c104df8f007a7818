// The help of the program and of each verb, as prose at 80 columns.

#pragma once

#include <ostream>
#include <string>

#include "app/verb.h"

namespace cupule::app {

void writeHelp(std::ostream& out);
/// One verb, or all verbs whose first word it is. False where there is none.
bool writeHelp(std::ostream& out, const std::string& verb);
/// The nearest names to a misspelt one, best first, at most three.
std::vector<std::string> nearVerbs(const std::string& word);
/// Breaks at blanks so that no line is longer than 80 columns; `indent` blanks before each.
std::string wrapped(std::string_view text, int indent);

} // namespace cupule::app

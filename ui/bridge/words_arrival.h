// What is said of a signed file that arrived: its key, what it holds, what it brings. Qt Core only.

#pragma once

#include <map>
#include <string>
#include <vector>

#include <QString>

#include "core/task/arrival_page.h"

namespace cupule::ui {

/// How the key stands here, by its name (core/task/keys.h).
QString keyStandingText(const std::string& standing);
/// Manifest::leftOut: "photos at full size, and names and contacts"; "nothing".
QString leftOutText(const std::vector<std::string>& leftOut);
/// "4 visits, 3 trees and 2 photos"; empty where nothing is counted.
QString countedNouns(const std::map<std::string, int>& counts);
/// "visit W03, 11 June 2026"; without a name "photo".
QString namedNoun(const std::string& noun, const std::string& name, const std::optional<CivilDate>& date);
/// Why a part of a file does not hold, or what its signer may not say, by the codes of core's faults ("why", "what"); the code itself
/// where there are no words for it.
QString bundleWhyText(const std::string& why);
/// What a file brings in one or two sentences, of what is to come or of what has come: "4 visits and 3 trees are new; 12 records known already."
QString broughtText(const TakenIn& taken, const CameInPage& page);
/// What needs somebody's eye after taking it in, each a sentence: clashing numbers, drafts kept apart, what waits for another file.
QStringList afterwardsTexts(const TakenIn& taken);

} // namespace cupule::ui

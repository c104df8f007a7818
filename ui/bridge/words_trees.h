// What happened to a tree, and what merging two entries of one tree would mean, in words for the window and the command line.
// Qt Core only.

#pragma once

#include <QString>
#include <QStringList>

#include "core/task/trees_merge.h"

namespace cupule::ui {

/// "stands", "felled", "not found".
QString fateWord(const std::string& fate);
/// "felled, seen on 3 May 2026 (MH)"; empty where it stands.
QString fateText(const std::string& fate, std::optional<CivilDate> day, const std::string& who = {});
/// What one line of a tree's time line says, without its day.
QString eventText(const TreeEvent& event, const TreePage& page);
/// "alternate leaves", "16 teeth counted on one side".
QString characterSeenText(const CharacterSeen& seen, const Pack& pack);
/// What a character says for or against a chestnut.
QString evidenceText(const CharacterFrom& from);

struct MergeWords {
    QStringList asks;               ///< what speaks against it; may be empty
    QStringList does;               ///< what it does
};
MergeWords mergeWords(const MergeMeaning& meaning, const Pack& pack);

} // namespace cupule::ui

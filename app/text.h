// Sentences that several verbs say.

#pragma once

#include <string>

#include "app/run.h"
#include "core/task/day.h"
#include "core/task/samples.h"
#include "ui/bridge/label_sheet.h"

namespace cupule::app {

/// "W03 at Weir Wood, 11 June 2026, MH: gall; handed in".
std::string visitSentence(const VisitLine& line, const Words& words);
/// One indented line a finding, with what its severity asks for.
void sayFindings(Run& run, const std::vector<Finding>& findings, const Pack& pack);
/// Whether the tree is a host, and which character to look at next where that is open.
void sayHost(Run& run, const HostVerdict& host, const Pack& pack);
void saySample(Run& run, const SamplePage& page, const Pack& pack);

/// What to do after a find, and whom to tell.
void sayNotice(Run& run, Session& session);

/// Moments as people type them: RFC 3339, or "2026-06-11 09:14" where the store's zone holds. Faults of both, and
/// "time.never", "time.twice" where the clocks were changed (kind usage).
Result<Instant> readMoment(const std::string& typed, const Session& session);
/// Fault "date.form" of kind usage, naming the option.
Result<CivilDate> readDay(const std::string& typed, const char* option);
/// As ui::readSheet has it. Fault "labels.sheet".
Result<ui::SheetSetup> readLabelSheet(const std::string& typed);
/// The set-up that the window last used on this device.
std::string keptLabelSheet(const Profile& profile);

} // namespace cupule::app

// Rounds, medians and the table of the benchmark. A row is one piece of work beside its peer or floor, measured in the same
// run, interleaved; a target that is missed is said to be missed.

#pragma once

#include <functional>
#include <string>
#include <vector>

namespace bench {

struct Spread {
    double median = 0, least = 0, most = 0;
};
Spread spreadOf(std::vector<double> values);

struct Line {
    std::string id, work, peer;
    std::string unit;                      ///< of ours and theirs: "s", "MiB", "us", "ms", "MB/s", "flushes"
    Spread ours, theirs;
    Spread ratio;                          ///< ours / theirs, round by round
    double target = 0;
    bool atLeast = false;                  ///< the ratio has to reach the target instead of staying below it
    bool absolute = false;                 ///< the target is for `ours` itself, not for the ratio
    std::string note;
    [[nodiscard]] bool met() const;
};

struct LeftOut {
    std::string id, why;
};

/// Collected over all groups.
struct Table {
    std::vector<Line> lines;
    std::vector<LeftOut> leftOut;
    void print() const;
    [[nodiscard]] std::string json(int rounds, long rows) const;
};

class Region;

struct Settings {
    long rows = 1'000'000;
    int rounds = 5;
    std::string folder;                    ///< for everything that is written
    std::string self;                      ///< this program, to run parts of itself
    std::string program;                   ///< the built cupule
    std::string bareWindow;                ///< the floor of a start
    std::string window;                    ///< the part that works with the whole window
};

/// Seconds that `work` takes.
double seconds(const std::function<void()>& work);

/// Ours and theirs in turn, `rounds` times; each function gives its own measure.
void interleave(int rounds, const std::function<double()>& ours, const std::function<double()>& theirs, Line& line);

// ---------------------------------------------------------------- other programs

struct Run {
    double seconds = 0;
    double peakMiB = 0;
    int code = -1;                         ///< exit code; -1 = could not be started
};
/// Waits for it; its output goes nowhere, or to `output`. `environment` is added to ours as "NAME=value".
Run run(const std::vector<std::string>& words, const std::string& input = {}, const std::string& output = {});
bool installed(const std::string& program);

// ---------------------------------------------------------------- groups

void measureImport(const Settings& settings, Table& table);     ///< T1, T2, T3
void measurePositions(const Settings& settings, Table& table);  ///< T4
void measureHashing(const Settings& settings, Table& table);    ///< T9, T9b
void measureStart(const Settings& settings, Table& table);      ///< T11
void measureSaving(const Settings& settings, Table& table);     ///< T12
void measureRegister(const Settings& settings, Table& table);   ///< R1 to R4
void measureQueue(const Settings& settings, Table& table);      ///< Q1 to Q6
void measureWindow(const Settings& settings, Table& table);     ///< W1 to W13
void measureReviewWindow(const Settings& settings, Table& table); ///< W14 to W18, Q5
void measureMerge(const Settings& settings, Table& table);      ///< H1, H2, A1, T13
void measurePractice(const Settings& settings, Table& table);  ///< P1 to P6, W19
/// Of a place of the window in a process of its own, on a store that lies there.
void measureWindowPart(const Settings& settings, const std::string& part, const Region& store, const std::string& ids, const std::string& note, Table& table);
void measureNearest(const Settings& settings, Table& table);    ///< T6

/// The parts that run in a process of their own, so that memory and start-up are theirs alone. Gives an exit code.
int runPart(const std::string& part, const std::vector<std::string>& words);
/// Hands out all of a copy of a store; only opens it where `idle`.
int handOutPart(const std::string& store, const std::string& profile, bool idle);
/// Says how many seconds reading a file took, and taking it in.
int takeInPart(const std::string& store, const std::string& profile, const std::string& bundle);
/// The same of bare rows.
int floorPart(const std::string& store, const std::string& coming);
/// visits.csv of that many rows below the folder, made once; empty where the generator is missing.
std::string records(const Settings& settings, long rows);

} // namespace bench

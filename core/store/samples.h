// Samples and their custody lines. Lines are only ever added.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/sample.h"
#include "core/store/store.h"

namespace cupule {

class Samples {
public:
    explicit Samples(StoreCore& core) : m_core(core) {}
    /// Fault "store.constraint" (sample_number_unique).
    Status save(Change& change, const Sample& sample);
    Result<std::optional<Sample>> find(const Uid& id);
    Result<std::optional<Sample>> byNumber(const std::string& number);       ///< with or without dashes, any case
    Result<std::vector<Uid>> allByNumber(const std::string& number);         ///< by id: two stores may have given out the same one
    Result<std::vector<Sample>> ofVisit(const Uid& visit);
    Result<std::vector<Sample>> ofTree(const Uid& tree);
    Result<std::vector<Sample>> all();                                       ///< by number
    /// Numbers of one year and block that exist, as running numbers; the next one is the caller's to choose.
    Result<int> highestRunning(int year, const std::string& block);

    /// Gives the line its number (last + 1) and returns it.
    Result<CustodyLine> addLine(Change& change, const CustodyLine& line);
    Result<std::vector<CustodyLine>> lines(const Uid& sample);               ///< in order
    /// Seal numbers, and bag numbers, on other samples.
    Result<std::vector<std::string>> sealsElsewhere(const Uid& sample);
    Result<std::vector<std::string>> bagsElsewhere(const Uid& sample);
    /// Other samples with this number, which two stores gave out; in order of their ids.
    Result<std::vector<Sample>> sameNumber(const Sample& sample);

private:
    StoreCore& m_core;
};

} // namespace cupule

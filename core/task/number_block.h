// The block of sample numbers of this device while a change is open. Inside the task room only.

#pragma once

#include <optional>
#include <string>

#include "core/task/session.h"

namespace cupule {

/// Opened inside a change; what it issues is kept with the change and remembered by the device with remember().
class NumberBlock {
public:
    /// Makes the block this incarnation's where it is nobody's. Faults "sample.no-block", "sample.block-elsewhere".
    static Result<NumberBlock> open(Session& session, Change& change, int year);

    /// The next number that has a check character which is issued. Fault "sample.block-used-up".
    Result<std::string> next();
    /// A number as it stands on a printed label, written in full. Faults "sample-number.form", "sample-number.check",
    /// "sample.number-used", "sample.number-not-reserved".
    static Result<std::string> reserved(Session& session, const std::string& typed);
    /// After the commit: how far the block is used. What cannot be written now is written with the next number.
    void remember() const;

private:
    NumberBlock(Session& session, std::string block, int year) : m_session(&session), m_block(std::move(block)), m_year(year) {}

    Session* m_session;
    std::string m_block;
    int m_year; ///< two digits
    Uid m_incarnation;
    int m_highest = 0;
};

} // namespace cupule

// The words of ui/bridge, handed to core's reports and to the verbs.

#pragma once

#include <string>

#include <QString>

#include "core/report/words.h"

namespace cupule::app {

std::string plain(const QString& text);

class BridgeWords final : public Words {
public:
    [[nodiscard]] std::string text(const char* english, const Arguments& arguments = {}) const override;
    [[nodiscard]] std::string finding(const Finding& finding, const Pack& pack) const override;
    [[nodiscard]] std::string fault(const Fault& fault) const override;
    [[nodiscard]] std::string state(RecordState state) const override;
    [[nodiscard]] std::string state(SampleState state) const override;
    [[nodiscard]] std::string outcome(Outcome outcome) const override;
    [[nodiscard]] std::string host(HostAnswer answer) const override;
    [[nodiscard]] std::string custody(CustodyKind kind) const override;
    [[nodiscard]] std::string date(CivilDate date) const override;
    [[nodiscard]] std::string number(double value, int decimals = 0) const override;
};

} // namespace cupule::app

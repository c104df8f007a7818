#include "core/training/agreement.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace cupule {

namespace {

/// Below this, what chance leaves to be explained is an error of rounding.
constexpr double nothingLeft = 1e-12;

std::optional<double> beyondChance(double observed, double chance)
{
    if (1 - chance < nothingLeft)
        return std::nullopt;
    return (observed - chance) / (1 - chance);
}

bool isTable(const AnswerTable& table, std::size_t columns)
{
    return columns > 0 && std::ranges::all_of(table, [&](const auto& row) {
        return row.size() == columns && std::ranges::all_of(row, [](std::int64_t count) { return count >= 0; });
    });
}

/// Gwet's chance: what is left when everybody who does not know guesses among all answers.
double chanceOfGuessing(std::span<const double> shares)
{
    double sum = 0;
    for (const double share : shares)
        sum += share * (1 - share);
    return sum / static_cast<double>(shares.size() - 1);
}

struct Shares {
    std::vector<std::vector<double>> cells;
    std::vector<double> rows, columns;
};

Shares sharesOf(const AnswerTable& table, double total)
{
    const std::size_t size = table.size();
    Shares shares{{size, std::vector<double>(size)}, std::vector<double>(size), std::vector<double>(size)};
    for (std::size_t i = 0; i < size; ++i) {
        for (std::size_t j = 0; j < size; ++j) {
            const double share = static_cast<double>(table[i][j]) / total;
            shares.cells[i][j] = share;
            shares.rows[i] += share;
            shares.columns[j] += share;
        }
    }
    return shares;
}

/// Fleiss, Cohen and Everitt 1969, formula 13: the variance of kappa whatever it is.
double varianceOfKappa(const Shares& shares, double observed, double chance, double total)
{
    const double left = 1 - chance;
    const double missed = 1 - observed;
    double sum = 0;
    for (std::size_t i = 0; i < shares.rows.size(); ++i) {
        const double own = shares.rows[i] + shares.columns[i];
        sum += shares.cells[i][i] * std::pow(left - own * missed, 2);
        for (std::size_t j = 0; j < shares.rows.size(); ++j)
            if (i != j)
                sum += missed * missed * shares.cells[i][j] * std::pow(shares.columns[i] + shares.rows[j], 2);
    }
    sum -= std::pow(observed * chance - 2 * chance + observed, 2);
    return std::max(0.0, sum) / (total * std::pow(left, 4));
}

/// The same paper, formula 14: its variance if it were 0.
double varianceByChance(const Shares& shares, double chance, double total)
{
    double sum = 0;
    for (std::size_t i = 0; i < shares.rows.size(); ++i)
        sum += shares.rows[i] * shares.columns[i] * (shares.rows[i] + shares.columns[i]);
    return std::max(0.0, chance + chance * chance - sum) / (total * std::pow(1 - chance, 2));
}

} // namespace

std::optional<PairAgreement> agreementOfTwo(const AnswerTable& table)
{
    if (table.size() < 2 || !isTable(table, table.size()))
        return std::nullopt;
    PairAgreement result;
    std::int64_t alike = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
        result.things += std::accumulate(table[i].begin(), table[i].end(), std::int64_t{0});
        alike += table[i][i];
    }
    if (result.things == 0)
        return std::nullopt;
    const auto total = static_cast<double>(result.things);
    const Shares shares = sharesOf(table, total);
    std::vector<double> both(table.size());
    for (std::size_t i = 0; i < table.size(); ++i) {
        result.chance += shares.rows[i] * shares.columns[i];
        both[i] = (shares.rows[i] + shares.columns[i]) / 2;
    }
    result.observed = static_cast<double>(alike) / total;
    result.observedInterval = wilson(alike, result.things);
    result.ac1 = beyondChance(result.observed, chanceOfGuessing(both));
    result.kappa = beyondChance(result.observed, result.chance);
    if (!result.kappa)
        return result;
    result.error = std::sqrt(varianceOfKappa(shares, result.observed, result.chance, total));
    result.errorByChance = std::sqrt(varianceByChance(shares, result.chance, total));
    result.interval = {std::max(-1.0, *result.kappa - deviate95 * result.error),
                       std::min(1.0, *result.kappa + deviate95 * result.error)};
    return result;
}

namespace {

/// Fleiss, Nee and Landis 1979.
double errorOfFleiss(std::span<const double> shares, double things, double people)
{
    double spread = 0;
    double skew = 0;
    for (const double share : shares) {
        spread += share * (1 - share);
        skew += share * (1 - share) * (1 - 2 * share);
    }
    return std::sqrt(2 * std::max(0.0, spread * spread - skew)) / (spread * std::sqrt(things * people * (people - 1)));
}

/// Gwet 2021: each thing's own part in kappa, spread about kappa.
double errorOfMany(const AnswerTable& counts, const GroupAgreement& group, double people)
{
    const auto things = static_cast<double>(counts.size());
    if (counts.size() < 2)
        return 0;
    const double left = 1 - group.chance;
    double spread = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        double chance = 0;
        for (std::size_t j = 0; j < group.shares.size(); ++j)
            chance += group.shares[j] * static_cast<double>(counts[i][j]) / people;
        const double own = (group.perThing[i] - group.chance) / left - 2 * (1 - *group.kappa) * (chance - group.chance) / left;
        spread += (own - *group.kappa) * (own - *group.kappa);
    }
    return std::sqrt(spread / (things * (things - 1)));
}

std::optional<double> kappaOfAnswer(const AnswerTable& counts, std::size_t answer, double share, double people)
{
    double apart = 0;
    for (const auto& row : counts)
        apart += static_cast<double>(row[answer]) * (people - static_cast<double>(row[answer]));
    const double byChance = static_cast<double>(counts.size()) * people * (people - 1) * share * (1 - share);
    if (byChance < nothingLeft)
        return std::nullopt;
    return 1 - apart / byChance;
}

} // namespace

std::optional<GroupAgreement> agreementOfMany(const AnswerTable& counts)
{
    const std::size_t answers = counts.empty() ? 0 : counts.front().size();
    if (answers < 2 || !isTable(counts, answers))
        return std::nullopt;
    const std::int64_t everybody = std::accumulate(counts.front().begin(), counts.front().end(), std::int64_t{0});
    if (everybody < 2)
        return std::nullopt;
    GroupAgreement result;
    result.things = static_cast<std::int64_t>(counts.size());
    const auto things = static_cast<double>(result.things);
    const auto people = static_cast<double>(everybody);
    result.shares.assign(answers, 0);
    for (const auto& row : counts) {
        if (std::accumulate(row.begin(), row.end(), std::int64_t{0}) != everybody)
            return std::nullopt;
        double pairs = 0;
        for (std::size_t j = 0; j < answers; ++j) {
            const auto count = static_cast<double>(row[j]);
            pairs += count * (count - 1);
            result.shares[j] += count / (things * people);
        }
        result.perThing.push_back(pairs / (people * (people - 1)));
        result.observed += result.perThing.back() / things;
    }
    for (std::size_t j = 0; j < answers; ++j) {
        result.chance += result.shares[j] * result.shares[j];
        result.perAnswer.push_back(kappaOfAnswer(counts, j, result.shares[j], people));
    }
    result.ac1 = beyondChance(result.observed, chanceOfGuessing(result.shares));
    result.kappa = beyondChance(result.observed, result.chance);
    if (!result.kappa)
        return result;
    result.errorByChance = errorOfFleiss(result.shares, things, people);
    result.error = errorOfMany(counts, result, people);
    result.interval = {std::max(-1.0, *result.kappa - deviate95 * result.error), std::min(1.0, *result.kappa + deviate95 * result.error)};
    return result;
}

AnswerTable tableOfPairs(std::span<const std::pair<std::string, std::string>> pairs)
{
    std::map<std::string, std::size_t> places;
    for (const auto& [one, other] : pairs) {
        places.try_emplace(one);
        places.try_emplace(other);
    }
    std::size_t next = 0;
    for (auto& [answer, place] : places)
        place = next++;
    AnswerTable table(places.size(), std::vector<std::int64_t>(places.size()));
    for (const auto& [one, other] : pairs)
        ++table[places[one]][places[other]];
    return table;
}

} // namespace cupule

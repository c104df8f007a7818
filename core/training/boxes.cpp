#include "core/training/boxes.h"

#include <algorithm>
#include <iterator>

#include "core/training/dice.h"

namespace cupule {

namespace {

constexpr int casesForAStep = 3;
constexpr int highestStep = 5;

template <class T>
void shuffle(std::vector<T>& list, Dice dice)
{
    for (std::size_t i = list.size(); i > 1; --i)
        std::swap(list[i - 1], list[static_cast<std::size_t>(dice.whole(0, static_cast<int>(i) - 1))]);
}

void meet(std::vector<Box>& boxes, const Topic& topic, bool right, int number)
{
    const auto box = std::ranges::find(boxes, topic, &Box::topic);
    if (box == boxes.end())
        return;
    box->box = right ? std::min(boxCount, box->box + 1) : 1;
    box->lastCase = number;
    (right ? box->right : box->wrong) += 1;
}

/// How far past its time: 1 = just due.
double overdue(const Box& box, int number)
{
    return box.lastCase == 0 ? 1 : static_cast<double>(number - box.lastCase) / dueAfterCases[box.box - 1];
}

} // namespace

Topic topicOf(const AnsweredItem& item)
{
    switch (item.kind) {
    case AskedKind::host:
    case AskedKind::sign:
    case AskedKind::look: return {item.kind, item.subject};
    case AskedKind::character:
    case AskedKind::record:
    case AskedKind::conclude:
    case AskedKind::order: break;
    }
    return {item.kind, {}};
}

std::vector<Box> boxesAfter(std::span<const Topic> topics, std::span<const GivenCase> given)
{
    std::vector<Box> boxes;
    for (const Topic& topic : topics)
        boxes.push_back({topic, 1, 0, 0, 0});
    for (const GivenCase& each : given)
        for (const AnsweredItem& item : each.items) {
            meet(boxes, topicOf(item), item.right(), each.number);
            const bool takenForAnother = item.kind == AskedKind::look && !item.right() && item.given != saidNotJudged;
            if (takenForAnother)
                meet(boxes, {AskedKind::look, item.given}, false, each.number);
        }
    return boxes;
}

std::vector<Topic> dueOrder(std::span<const Box> boxes, int nextNumber, std::uint64_t seed)
{
    std::vector<Box> order(boxes.begin(), boxes.end());
    shuffle(order, Dice(seed).part("due", nextNumber));
    std::ranges::stable_sort(order, std::greater{}, [&](const Box& box) { return overdue(box, nextNumber); });
    std::vector<Topic> topics;
    std::ranges::transform(order, std::back_inserter(topics), &Box::topic);
    return topics;
}

std::vector<Topic> seriesOrder(std::span<const Topic> topics, int nextNumber, std::uint64_t seed)
{
    if (topics.empty())
        return {};
    const int count = static_cast<int>(topics.size());
    std::vector<Topic> round(topics.begin(), topics.end());
    shuffle(round, Dice(seed).part("round", (nextNumber - 1) / count));
    std::ranges::rotate(round, round.begin() + (nextNumber - 1) % count);
    return round;
}

int stepAfter(std::span<const GivenCase> given, int first)
{
    int step = first;
    int inARow = 0;
    for (const GivenCase& each : given) {
        const bool allRight = std::ranges::all_of(each.items, &AnsweredItem::right);
        inARow = allRight ? inARow + 1 : 0;
        if (!allRight)
            step = std::max(1, step - 1);
        if (inARow == casesForAStep) {
            step = std::min(highestStep, step + 1);
            inARow = 0;
        }
    }
    return step;
}

std::vector<Topic> topicsToPractise(std::span<const NextPractice> next)
{
    std::vector<Topic> topics;
    const auto add = [&](const Topic& topic) {
        if (std::ranges::find(topics, topic) == topics.end())
            topics.push_back(topic);
    };
    for (const NextPractice& each : next) {
        const bool nothing = each.kind == AskedKind::look && each.subject == "none"; // it was nothing: what it was taken for is practised
        if (each.kind == AskedKind::character)
            add({AskedKind::host, {}});
        else if (nothing)
            add({AskedKind::look, each.takenFor});
        else if (each.kind == AskedKind::host || each.kind == AskedKind::sign || each.kind == AskedKind::look)
            add({each.kind, each.subject});
        else
            add({each.kind, {}});
        if (each.kind == AskedKind::look && !each.takenFor.empty() && each.takenFor != "none")
            add({AskedKind::look, each.takenFor});
    }
    return topics;
}

} // namespace cupule

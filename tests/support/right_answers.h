// A recruit who knows everything.

#pragma once

#include <vector>

#include "core/training/answer.h"

namespace cupule::test {

/// The answer of the key to each question, `sure` percent sure.
inline std::vector<AnsweredItem> rightAnswers(const std::vector<AskedItem>& asked, int sure)
{
    std::vector<AnsweredItem> answers;
    for (const AskedItem& item : asked)
        answers.push_back(item.kind == AskedKind::order ? answerToOrder(item, item.right, sure) : answerTo(item, item.right.front(), sure));
    return answers;
}

} // namespace cupule::test

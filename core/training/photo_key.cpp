#include "core/training/photo_key.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace cupule {

namespace {

/// Everything that can be answered, "not-judged" last.
std::vector<std::string> optionsOf(const PhotoQuestion& question)
{
    std::vector<std::string> options = question.options;
    const auto kind = askedNamed(question.kind);
    if (kind && isYesNo(*kind))
        options = {std::string(saidYes), std::string(saidNo)};
    options.emplace_back(saidNotJudged);
    return options;
}

const PhotoTruth* truthOf(const PhotoKey& key, const PhotoQuestion& question)
{
    const auto found = std::ranges::find_if(key.truths, [&](const PhotoTruth& truth) { return truth.kind == question.kind && truth.subject == question.subject; });
    return found == key.truths.end() ? nullptr : &*found;
}

/// The last key of each person.
std::vector<PhotoKey> lastKeys(std::span<const PhotoKey> keys, const Uid& photoCase)
{
    std::vector<PhotoKey> last;
    for (const PhotoKey& key : keys) {
        if (key.photoCase != photoCase)
            continue;
        const auto before = std::ranges::find(last, key.by, &PhotoKey::by);
        if (before == last.end())
            last.push_back(key);
        else
            *before = key;
    }
    return last;
}

void sortQuestion(KeyedPhotoCase& keyed, const PhotoQuestion& question)
{
    std::set<std::string> truths;
    int people = 0;
    for (const PhotoKey& key : keyed.keys)
        if (const PhotoTruth* truth = truthOf(key, question)) {
            truths.insert(truth->truth);
            ++people;
        }
    if (people < 2)
        keyed.open.push_back(question);
    else if (truths.size() > 1)
        keyed.apart.push_back(question);
    else
        keyed.agreed.push_back({*askedNamed(question.kind), question.subject, optionsOf(question), {*truths.begin()}, {}});
}

} // namespace

std::vector<KeyedPhotoCase> keyedCases(std::span<const PhotoCase> cases, std::span<const PhotoKey> keys)
{
    std::vector<KeyedPhotoCase> keyed;
    for (const PhotoCase& each : cases) {
        KeyedPhotoCase one{each, lastKeys(keys, each.id), {}, {}, {}};
        for (const PhotoQuestion& question : each.questions)
            if (askedNamed(question.kind))
                sortQuestion(one, question);
        keyed.push_back(std::move(one));
    }
    return keyed;
}

std::vector<KeyAgreement> keyAgreements(std::span<const KeyedPhotoCase> cases)
{
    std::map<std::tuple<Uid, Uid, AskedKind>, std::vector<std::pair<std::string, std::string>>> pairs;
    for (const KeyedPhotoCase& keyed : cases)
        for (const PhotoQuestion& question : keyed.photoCase.questions)
            for (const PhotoKey& one : keyed.keys)
                for (const PhotoKey& other : keyed.keys) {
                    const PhotoTruth* a = truthOf(one, question);
                    const PhotoTruth* b = truthOf(other, question);
                    const auto kind = askedNamed(question.kind);
                    if (kind && one.by < other.by && a != nullptr && b != nullptr)
                        pairs[{one.by, other.by, *kind}].emplace_back(a->truth, b->truth);
                }
    std::vector<KeyAgreement> result;
    for (const auto& [key, answers] : pairs) {
        const auto& [one, other, kind] = key;
        result.push_back({one, other, kind, static_cast<std::int64_t>(answers.size()), agreementOfTwo(tableOfPairs(answers))});
    }
    return result;
}

std::string photoCaseFault(const PhotoCase& photoCase)
{
    const auto isDigest = [](const std::string& text) { return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos; };
    if (photoCase.pictures.empty() || !std::ranges::all_of(photoCase.pictures, isDigest))
        return "pictures";
    std::set<std::pair<std::string, std::string>> asked;
    for (const PhotoQuestion& question : photoCase.questions) {
        const auto kind = askedNamed(question.kind);
        if (!kind || *kind == AskedKind::order || !asked.emplace(question.kind, question.subject).second)
            return "questions";
        if (!isYesNo(*kind) && std::set<std::string>(question.options.begin(), question.options.end()).size() < 2)
            return "options";
    }
    return photoCase.questions.empty() ? "questions" : "";
}

std::string photoKeyFault(const PhotoKey& key, const PhotoCase& photoCase)
{
    for (const PhotoTruth& truth : key.truths) {
        const auto question = std::ranges::find_if(photoCase.questions, [&](const PhotoQuestion& each) { return each.kind == truth.kind && each.subject == truth.subject; });
        if (question == photoCase.questions.end())
            return "questions";
        const auto options = optionsOf(*question);
        if (std::ranges::find(options, truth.truth) == options.end())
            return "truth";
    }
    return key.truths.empty() ? "questions" : "";
}

} // namespace cupule

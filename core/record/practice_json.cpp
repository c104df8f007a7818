#include "core/record/json_text.h"
#include "core/record/practice.h"
#include "core/record/practice_fields.h"

namespace cupule {

#define CUPULE_PRACTICE_NOUN(Noun) \
    std::string toJson(const Noun& value) { return json::textOf(value); } \
    template <> \
    Result<Noun> fromJson(std::string_view text) { return json::readJson<Noun>(text); }

CUPULE_PRACTICE_NOUN(PracticeSession)
CUPULE_PRACTICE_NOUN(PracticePerson)
CUPULE_PRACTICE_NOUN(PracticeAnswer)
CUPULE_PRACTICE_NOUN(PhotoCase)
CUPULE_PRACTICE_NOUN(PhotoKey)
CUPULE_PRACTICE_NOUN(SkillNote)
CUPULE_PRACTICE_NOUN(Skill)
#undef CUPULE_PRACTICE_NOUN

} // namespace cupule

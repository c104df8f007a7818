// The descriptions of what practice leaves behind, as json_fields.h has those of the other nouns. Stays inside core/record.

#pragma once

#include "core/record/json_writer.h"
#include "core/record/practice.h"

namespace cupule::json {

template <class V, Like<PracticeTopic> T>
void describe(V& v, T& x)
{
    v.required("kind", x.kind);
    v("subject", x.subject);
}

template <class V, Like<PracticePlan> T>
void describe(V& v, T& x)
{
    v("cases", x.cases);
    v("feedbackAtEnd", x.feedbackAtEnd);
    v("kinds", x.kinds);
    v("month", x.month);
    v.required("protocol", x.protocol);
    v("protocolVersion", x.protocolVersion);
    v.required("region", x.region);
    v.required("seed", x.seed);
    v("series", x.series);
    v("step", x.step);
    v("topics", x.topics);
    v("year", x.year);
}

template <class V, Like<PracticeSession> T>
void describe(V& v, T& x)
{
    v.required("begun", x.begun);
    v("cohort", x.cohort);
    v.required("id", x.id);
    v.required("plan", x.plan);
}

template <class V, Like<PracticePerson> T>
void describe(V& v, T& x)
{
    v.required("id", x.id);
    v.required("person", x.person);
}

template <class V, Like<PracticeItem> T>
void describe(V& v, T& x)
{
    v.required("given", x.given);
    v.required("kind", x.kind);
    v("subject", x.subject);
    v("sure", x.sure);
    v.required("truth", x.truth);
}

template <class V, Like<PracticeAnswer> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v.required("caseId", x.caseId);
    v.required("items", x.items);
    v.required("number", x.number);
    v("seconds", x.seconds);
    v.required("session", x.session);
    v("step", x.step, 1);
    v("topicKind", x.topicKind);
    v("topicSubject", x.topicSubject);
}

template <class V, Like<PhotoQuestion> T>
void describe(V& v, T& x)
{
    v.required("kind", x.kind);
    v("options", x.options);
    v("subject", x.subject);
}

template <class V, Like<PhotoCase> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v("by", x.by);
    v("date", x.date);
    v.required("id", x.id);
    v("note", x.note);
    v.required("pictures", x.pictures);
    v.required("questions", x.questions);
    v("region", x.region);
}

template <class V, Like<PhotoTruth> T>
void describe(V& v, T& x)
{
    v.required("kind", x.kind);
    v("subject", x.subject);
    v.required("truth", x.truth);
}

template <class V, Like<PhotoKey> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v.required("by", x.by);
    v.required("id", x.id);
    v.required("photoCase", x.photoCase);
    v.required("truths", x.truths);
}

template <class V, Like<SkillNote> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v("by", x.by);
    v.required("id", x.id);
    v("withdraws", x.withdraws);
}

template <class V, Like<SignSkill> T>
void describe(V& v, T& x)
{
    v("absent", x.absent);
    v("found", x.found);
    v("passed", x.passed);
    v.required("sign", x.sign);
    v("there", x.there);
}

template <class V, Like<Skill> T>
void describe(V& v, T& x)
{
    v("consentTo", x.consentTo);
    v.required("consented", x.consented);
    v.required("from", x.from);
    v.required("id", x.id);
    v.required("person", x.person);
    v.required("protocol", x.protocol);
    v("protocolVersion", x.protocolVersion);
    v.required("signs", x.signs);
    v.required("to", x.to);
}

} // namespace cupule::json

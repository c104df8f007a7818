#include "core/exchange/bundle/manifest.h"

#include <array>

#include <nlohmann/json.hpp>

#include "core/record/json.h"
#include "core/record/json_fields.h"
#include "core/record/json_text.h"
#include "core/record/practice.h"

namespace cupule {

namespace json {

template <class V, Like<BundlePart> T>
void describe(V& v, T& x)
{
    v.required("bytes", x.bytes);
    v.required("name", x.name);
    v.required("sha256", x.sha256);
}

template <class V, Like<BundleChain> T>
void describe(V& v, T& x)
{
    v.required("begun", x.begun);
    v("branch", x.branch);
    v.required("device", x.device);
    v.required("hash", x.hash);
    v.required("incarnation", x.incarnation);
    v.required("lines", x.lines);
    v.required("to", x.to);
    v.required("why", x.why);
}

template <class V, Like<BundleCounts> T>
void describe(V& v, T& x)
{
    v.required("lines", x.lines);
    v.required("media", x.media);
    v.required("personal", x.personal);
    v.required("records", x.records);
    v.required("visits", x.visits);
}

template <class V, Like<BundleStore> T>
void describe(V& v, T& x)
{
    v.required("id", x.id);
    v.required("kind", x.kind);
    v.required("name", x.name);
    v.required("region", x.region);
    v.required("zone", x.zone);
}

template <class V, Like<Manifest> T>
void describe(V& v, T& x)
{
    v("acknowledges", x.acknowledges);
    v.required("authorCode", x.authorCode);
    v.required("authorPerson", x.authorPerson);
    v.required("bundle", x.bundle);
    v.required("chains", x.chains);
    v.required("counts", x.counts);
    v.required("demonstration", x.demonstration);
    v("follows", x.follows);
    v.required("format", x.format);
    v.required("key", x.key);
    v.required("kind", x.kind);
    v("leftOut", x.leftOut);
    v.required("made", x.made);
    v.required("number", x.number);
    v.required("parts", x.parts);
    v("personal", x.personal);
    v.required("program", x.program);
    v.required("store", x.store);
}

template <class V, Like<BundleLine> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v("author", x.author);
    v("before", x.before);
    v("branch", x.branch);
    v("commitment", x.commitment);
    v("digest", x.digest);
    v("entity", x.entity);
    v.required("hash", x.hash);
    v.required("incarnation", x.incarnation);
    v.required("kind", x.kind);
    v.required("noun", x.noun);
    v.required("number", x.number);
}

template <class V, Like<BundleRecord> T>
void describe(V& v, T& x)
{
    v("branch", x.branch);
    v("commitment", x.commitment);
    v.required("content", x.content);
    v.required("entity", x.entity);
    v("id", x.id);
    v.required("incarnation", x.incarnation);
    v("noun", x.noun);
    v.required("number", x.number);
    v("parents", x.parents);
    v.required("type", x.type);
}

template <class V, Like<BundlePersonal> T>
void describe(V& v, T& x)
{
    v.required("commitment", x.commitment);
    v.required("entity", x.entity);
    v.required("noun", x.noun);
    v.required("payload", x.payload);
    v.required("salt", x.salt);
}

} // namespace json

namespace {

constexpr std::array<std::string_view, 4> kindNames{"day", "correction", "decision", "reference"};

tl::unexpected<Fault> badContent(const char* why)
{
    return fail(Fault{"record.json", FaultKind::data, {{"path", "/content"}, {"why", why}}, {{}, 0, 0, -1, "/content"}, {}});
}

template <class Noun>
Status sameNoun(const BundleRecord& record)
{
    const auto noun = fromJson<Noun>(record.content);
    if (!noun)
        return fail(noun.error());
    if (noun->id != record.entity || toJson(*noun) != record.content)
        return badContent("value");
    return {};
}

Status checkRevision(const BundleRecord& record)
{
    if (record.id.isNull() || record.entity.isNull())
        return badContent("missing");
    if (record.noun == "person")
        return sameNoun<Person>(record);
    if (record.noun == "site")
        return sameNoun<Site>(record);
    if (record.noun == "tree")
        return sameNoun<Tree>(record);
    if (record.noun == "visit")
        return sameNoun<Visit>(record);
    if (record.noun == "photo")
        return sameNoun<PhotoNote>(record);
    if (record.noun == "sample")
        return sameNoun<Sample>(record);
    if (record.noun == "leave")
        return sameNoun<Leave>(record);
    if (record.noun == "regime")
        return sameNoun<Regime>(record);
    return badContent("value");
}

} // namespace

std::string_view bundleKindName(BundleKind kind)
{
    return kindNames[static_cast<std::size_t>(kind)];
}

std::string toJson(const Manifest& value) { return json::textOf(value); }
std::string toJson(const BundleLine& value) { return json::textOf(value); }
std::string toJson(const BundleRecord& value) { return json::textOf(value); }
std::string toJson(const BundlePersonal& value) { return json::textOf(value); }

Result<Manifest> readManifest(std::string_view text)
{
    const auto any = nlohmann::json::parse(text, nullptr, false);
    const auto format = any.is_object() ? any.find("format") : any.end();
    if (format != any.end() && format->is_number_integer() && format->get<std::int64_t>() > bundleFormatSkill)
        return fail("bundle.newer", FaultKind::refused, {{"format", format->dump()}, {"known", std::to_string(bundleFormatSkill)}});
    auto manifest = json::readJson<Manifest>(text);
    const auto wrong = [](const std::string& path, const std::string& why) {
        return fail(Fault{"bundle.manifest", FaultKind::refused, {{"path", path}, {"why", why}}, {{}, 0, 0, -1, path}, {}});
    };
    if (!manifest)
        return wrong(manifest.error().argument("path"), manifest.error().argument("why"));
    if (manifest->format < bundleFormat)
        return wrong("/format", "value");
    if (manifest->number < 1)
        return wrong("/number", "value");
    if (!publicKeyFrom(manifest->key))
        return wrong("/key", "value");
    if (manifest->bundle.isNull() || manifest->store.id.isNull() || manifest->authorPerson.isNull())
        return wrong("", "missing");
    bool known = false;
    for (const std::string_view name : kindNames)
        known = known || name == manifest->kind;
    if (!known)
        return wrong("/kind", "value");
    return manifest;
}

Result<BundleLine> readBundleLine(std::string_view text) { return json::readJson<BundleLine>(text); }
Result<BundleRecord> readBundleRecord(std::string_view text) { return json::readJson<BundleRecord>(text); }
Result<BundlePersonal> readBundlePersonal(std::string_view text) { return json::readJson<BundlePersonal>(text); }

Status checkContent(const BundleRecord& record)
{
    if (record.type == "revision")
        return checkRevision(record);
    if (record.type == "decision")
        return sameNoun<Decision>(record);
    if (record.type == "custody")
        return sameNoun<CustodyLine>(record);
    if (record.type == "key-note")
        return sameNoun<KeyNote>(record);
    if (record.type == "skill")
        return sameNoun<SkillNote>(record);
    if (record.type == "told") {
        const auto told = fromJson<Told>(record.content);
        if (!told)
            return fail(told.error());
        return told->visit == record.entity ? Status() : badContent("value");
    }
    // Written by the store alone; their digest is what counts, and they are read again when they are applied.
    if (record.type == "event" || record.type == "erasure")
        return nlohmann::json::accept(record.content) ? Status() : badContent("syntax");
    return badContent("value");
}

} // namespace cupule

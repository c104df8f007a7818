// What each noun is made of, once for writing and reading. Members stand in alphabetical order, as RFC 8785 sorts them;
// a test holds them to it. `required` members are always written; all others only where they differ from their default.
// Names of members never change once released. Stays inside core/record.

#pragma once

#include "core/record/audit.h"
#include "core/record/decision.h"
#include "core/record/json_writer.h"
#include "core/record/key.h"
#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"
#include "core/record/visit.h"

namespace cupule::json {

template <class V, Like<Position> T>
void describe(V& v, T& x)
{
    v("easting", x.easting);
    v.required("latitude", x.latitude);
    v.required("longitude", x.longitude);
    v("northing", x.northing);
    v("obtained", x.obtained);
    v("operation", x.operation);
    v("operationAccuracyMetres", x.operationAccuracyMetres, -1.0);
    v("squareMetres", x.squareMetres);
    v("system", x.system);
    v("typed", x.typed);
    v("uncertaintyMetres", x.uncertaintyMetres);
    v("warning", x.warning);
}

template <class V, Like<LatLon> T>
void describe(V& v, T& x)
{
    v.required("latitude", x.latitude);
    v.required("longitude", x.longitude);
}

template <class V, Like<Person> T>
void describe(V& v, T& x)
{
    v("aliases", x.aliases);
    v("code", x.code);
    v("contact", x.contact);
    v.required("id", x.id);
    v("name", x.name);
    v("notFor", x.notFor);
}

template <class V, Like<Site> T>
void describe(V& v, T& x)
{
    v("boundary", x.boundary);
    v("heightMetres", x.heightMetres);
    v.required("id", x.id);
    v("name", x.name);
    v("note", x.note);
    v("region", x.region);
}

template <class V, Like<Tree> T>
void describe(V& v, T& x)
{
    v("fate", x.fate);
    v("fateBy", x.fateBy);
    v("fateDate", x.fateDate);
    v("girthCentimetres", x.girthCentimetres);
    v.required("id", x.id);
    v("label", x.label);
    v("mergedInto", x.mergedInto);
    v("note", x.note);
    v("position", x.position);
    v("site", x.site);
}

template <class V, Like<CharacterSeen> T>
void describe(V& v, T& x)
{
    v.required("character", x.character);
    v("notJudged", x.notJudged);
    v("onGround", x.onGround);
    v("otherTreeNear", x.otherTreeNear);
    v("photo", x.photo);
    v("state", x.state);
    v("value", x.value);
}

template <class V, Like<Observation> T>
void describe(V& v, T& x)
{
    v("answer", x.answer);
    v("count", x.count);
    v("countClass", x.countClass);
    v("measure", x.measure);
    v("measureError", x.measureError);
    v("noneOnTree", x.noneOnTree);
    v("note", x.note);
    v.required("sign", x.sign);
}

template <class V, Like<Effort> T>
void describe(V& v, T& x)
{
    v("binoculars", x.binoculars);
    v("crownPercent", x.crownPercent);
    v("heightMetres", x.heightMetres);
    v("innerCrown", x.innerCrown);
    v("leaves", x.leaves);
    v("light", x.light);
    v("minutes", x.minutes);
    v("trees", x.trees);
}

template <class V, Like<Hygiene> T>
void describe(V& v, T& x)
{
    v("boots", x.boots);
    v("clothes", x.clothes);
    v("leftSite", x.leftSite);
    v("tools", x.tools);
    v("vehicle", x.vehicle);
}

template <class V, Like<Remark> T>
void describe(V& v, T& x)
{
    v("heading", x.heading);
    v("text", x.text);
}

template <class V, Like<Visit> T>
void describe(V& v, T& x)
{
    v("characters", x.characters);
    v("companions", x.companions);
    v.required("date", x.date);
    v("effort", x.effort);
    v("gallCount", x.gallCount);
    v("gallSizeMm", x.gallSizeMm);
    v("hygiene", x.hygiene);
    v.required("id", x.id);
    v("leafingFrom", x.leafingFrom);
    v("leafingShiftDays", x.leafingShiftDays);
    v("note", x.note);
    v("observations", x.observations);
    v("observer", x.observer);
    v("position", x.position);
    v("remarks", x.remarks);
    v("time", x.time);
    v("trainer", x.trainer);
    v("tree", x.tree);
    v("whenTyped", x.whenTyped);
}

template <class V, Like<PhotoMeasure> T>
void describe(V& v, T& x)
{
    v("fromX", x.fromX);
    v("fromY", x.fromY);
    v("millimetres", x.millimetres);
    v("scaleFromX", x.scaleFromX);
    v("scaleFromY", x.scaleFromY);
    v("scaleMillimetres", x.scaleMillimetres);
    v("scaleToX", x.scaleToX);
    v("scaleToY", x.scaleToY);
    v("sign", x.sign);
    v("toX", x.toX);
    v("toY", x.toY);
    v("uncertaintyMillimetres", x.uncertaintyMillimetres);
}

template <class V, Like<PhotoNote> T>
void describe(V& v, T& x)
{
    v("bytes", x.bytes);
    v("caption", x.caption);
    v("clockAheadSeconds", x.clockAheadSeconds);
    v("copyOf", x.copyOf);
    v("evidenceFor", x.evidenceFor);
    v("format", x.format);
    v("heightPixels", x.heightPixels);
    v.required("id", x.id);
    v("measures", x.measures);
    v("notWith", x.notWith);
    v("offsetWorkedOut", x.offsetWorkedOut);
    v("orientation", x.orientation, 1);
    v("originalName", x.originalName);
    v("position", x.position);
    v("positionStatus", x.positionStatus);
    v("sha256", x.sha256);
    v("taken", x.taken);
    v("takenDate", x.takenDate);
    v("takenTime", x.takenTime);
    v("visit", x.visit);
    v("widthPixels", x.widthPixels);
}

template <class V, Like<Sample> T>
void describe(V& v, T& x)
{
    v("collector", x.collector);
    v("condition", x.condition);
    v("hostAsBelieved", x.hostAsBelieved);
    v.required("id", x.id);
    v("leaveAuthority", x.leaveAuthority);
    v("leaveOwner", x.leaveOwner);
    v("note", x.note);
    v.required("number", x.number);
    v("pieces", x.pieces);
    v("plantPart", x.plantPart);
    v("reason", x.reason);
    v("visit", x.visit);
}

template <class V, Like<CustodyLine> T>
void describe(V& v, T& x)
{
    v("bag", x.bag);
    v("celsius", x.celsius);
    v("condition", x.condition);
    v("confirmed", x.confirmed);
    v("corrects", x.corrects);
    v("disposal", x.disposal);
    v("finding", x.finding);
    v("from", x.from);
    v("host", x.host);
    v("hygiene", x.hygiene);
    v.required("id", x.id);
    v("in", x.in);
    v.required("kind", x.kind);
    v("limits", x.limits);
    v("method", x.method);
    v.required("number", x.number);
    v("order", x.order);
    v("out", x.out);
    v("pieces", x.pieces);
    v("place", x.place);
    v("reason", x.reason);
    v("remark", x.remark);
    v("reportNumber", x.reportNumber);
    v.required("sample", x.sample);
    v("seal", x.seal);
    v("sealWhole", x.sealWhole);
    v("secondPerson", x.secondPerson);
    v("signedBy", x.signedBy);
    v("to", x.to);
    v("travel", x.travel);
    v("withBreak", x.withBreak);
    v.required("written", x.written);
}

template <class V, Like<Leave> T>
void describe(V& v, T& x)
{
    v.required("from", x.from);
    v.required("giver", x.giver);
    v("giverName", x.giverName);
    v.required("id", x.id);
    v("reference", x.reference);
    v("scopes", x.scopes);
    v("site", x.site);
    v("to", x.to);
    v("withdrawn", x.withdrawn);
}

template <class V, Like<Regime> T>
void describe(V& v, T& x)
{
    v("dryGalls", x.dryGalls);
    v.required("from", x.from);
    v.required("id", x.id);
    v("issuer", x.issuer);
    v("notify", x.notify);
    v("reference", x.reference);
    v("site", x.site);
    v("to", x.to);
}

template <class V, Like<Decision> T>
void describe(V& v, T& x)
{
    v("after", x.after);
    v.required("at", x.at);
    v("batch", x.batch);
    v("beside", x.beside);
    v.required("by", x.by);
    v.required("id", x.id);
    v("laboratory", x.laboratory);
    v("newGround", x.newGround);
    v.required("outcome", x.outcome);
    v("reasons", x.reasons);
    v("remark", x.remark);
    v("reportNumber", x.reportNumber);
    v("revision", x.revision);
    v.required("visit", x.visit);
}

template <class V, Like<AuditRecord> T>
void describe(V& v, T& x)
{
    v.required("revision", x.revision);
    v.required("visit", x.visit);
}

template <class V, Like<AuditKnown> T>
void describe(V& v, T& x)
{
    v.required("outcome", x.outcome);
    v.required("revision", x.revision);
    v.required("visit", x.visit);
}

template <class V, Like<AuditBatch> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v.required("auditor", x.auditor);
    v.required("by", x.by);
    v.required("confidence", x.confidence);
    v.required("id", x.id);
    v("known", x.known);
    v.required("records", x.records);
    v.required("seed", x.seed);
    v.required("tolerable", x.tolerable);
}

template <class V, Like<AuditLeft> T>
void describe(V& v, T& x)
{
    v.required("visit", x.visit);
    v.required("why", x.why);
}

template <class V, Like<AuditStep> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v.required("audit", x.audit);
    v.required("by", x.by);
    v.required("event", x.event);
    v.required("id", x.id);
    v("left", x.left);
    v("outcome", x.outcome);
    v("reasons", x.reasons);
    v("remark", x.remark);
    v("visit", x.visit);
}

template <class V, Like<Told> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v("by", x.by);
    v("reference", x.reference);
    v("to", x.to);
    v.required("visit", x.visit);
}

template <class V, Like<KeyNote> T>
void describe(V& v, T& x)
{
    v.required("at", x.at);
    v("by", x.by);
    v.required("id", x.id);
    v.required("key", x.key);
    v.required("person", x.person);
    v("remark", x.remark);
    v("roles", x.roles);
    v.required("step", x.step);
    v("upTo", x.upTo);
}

template <class V, Like<KeyFollows> T>
void describe(V& v, T& x)
{
    v.required("newer", x.newer);
    v.required("older", x.older);
    v.required("signature", x.signature);
}

} // namespace cupule::json

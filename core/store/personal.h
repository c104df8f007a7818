// Personal data lies apart: the noun's content is kept without it, its payload with a random salt in the table `personal`,
// and the journal holds only the commitment SHA-256(salt, payload). Inside the store room only.

#pragma once

#include <optional>
#include <string>

#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/store/store_core.h"

namespace cupule {

Person withoutPersonal(const Person& person);
Leave withoutPersonal(const Leave& leave);
/// The personal part as JSON; empty where there is none.
std::string personalPart(const Person& person);
std::string personalPart(const Leave& leave);
void addPersonal(Person& person, const std::string& payload);
void addPersonal(Leave& leave, const std::string& payload);

Digest commitmentTo(const Digest& salt, std::string_view payload);
/// Keeps a payload under a new salt.
Digest keepPersonal(StoreCore& core, std::string_view noun, const Uid& entity, const std::string& payload);
/// Empty where nothing is named or it was erased.
std::string personalPayload(StoreCore& core, const std::optional<Digest>& commitment);
/// Empties every payload and salt of the entity, takes it out of the undo log, and records that.
void erasePersonal(StoreCore& core, std::string_view noun, const Uid& entity, const std::string& order);
/// An erasure whose line stands already, here or in a chain that came in: empties what it names.
void putErasure(StoreCore& core, const Uid& entity, const std::string& content, const LineMark& line);

} // namespace cupule

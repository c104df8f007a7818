#include "core/store/connection.h"

#include <cassert>
#include <cstring>

#include <sqlite3.h>

namespace cupule {

namespace {

constexpr int stepsBetweenLooks = 20'000;

/// "UNIQUE constraint failed: person.code" and "CHECK constraint failed: visit_worth_known" to the constraint's name.
std::string constraintName(int code, const std::string& message)
{
    const auto colon = message.rfind(": ");
    std::string name = colon == std::string::npos ? message : message.substr(colon + 2);
    if (code != SQLITE_CONSTRAINT_UNIQUE && code != SQLITE_CONSTRAINT_PRIMARYKEY && code != SQLITE_CONSTRAINT_NOTNULL)
        return name;
    for (char& c : name)
        if (c == '.')
            c = '_';
    name = name.substr(0, name.find(','));
    if (code == SQLITE_CONSTRAINT_NOTNULL)
        return name + "_given";
    if (name.ends_with("_key"))
        name.resize(name.size() - 4);
    return name + "_unique";
}

int lookForStop(void* progress)
{
    return static_cast<const Progress*>(progress)->cancelled() ? 1 : 0;
}

/// Counting what it holds costs the library a lock for every piece of memory. It refuses once it is at work, and whoever began it before
/// keeps what they set.
void leaveMemoryUncounted()
{
    static const int said = sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
    static_cast<void>(said);
}

struct Said {
    const char* code;
    FaultKind kind;
    const char* can;
};

Said meaning(int code)
{
    switch (code & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED: return {"store.in-use", FaultKind::io, "try-again"};
    case SQLITE_FULL: return {"store.full", FaultKind::io, "free-space"};
    case SQLITE_READONLY: return {"store.read-only", FaultKind::refused, "copy-elsewhere"};
    case SQLITE_CORRUPT: return {"store.damaged", FaultKind::data, "restore-backup"};
    case SQLITE_NOTADB: return {"store.damaged", FaultKind::data, "restore-backup"};
    case SQLITE_INTERRUPT: return {"job.cancelled", FaultKind::refused, ""};
    case SQLITE_CONSTRAINT: return {"store.constraint", FaultKind::refused, ""};
    case SQLITE_NOMEM: return {"store.memory", FaultKind::io, "try-again"};
    default: return {"store.io", FaultKind::io, "try-again"};
    }
}

} // namespace

void throwFault(std::string code, FaultKind kind, Arguments arguments, std::string technical)
{
    throw StoreError{Fault{std::move(code), kind, std::move(arguments), {}, std::move(technical)}};
}

void Statement::Finalize::operator()(sqlite3_stmt* statement) const
{
    sqlite3_finalize(statement);
}

Statement::Statement(sqlite3* db, std::string_view sql, bool kept)
{
    sqlite3_stmt* statement = nullptr;
    const char* tail = nullptr;
    const int code = sqlite3_prepare_v3(db, sql.data(), static_cast<int>(sql.size()), kept ? SQLITE_PREPARE_PERSISTENT : 0,
                                        &statement, &tail);
    m_statement.reset(statement);
    if (code != SQLITE_OK)
        throwFault(meaning(code).code, meaning(code).kind, {{"can", meaning(code).can}}, sqlite3_errmsg(db));
}

void Connection::Close::operator()(sqlite3* db) const
{
    sqlite3_close_v2(db);
}

void Connection::failed(int code, std::string_view during) const
{
    const int extended = m_db ? sqlite3_extended_errcode(m_db.get()) : code;
    const std::string message = m_db ? sqlite3_errmsg(m_db.get()) : sqlite3_errstr(code);
    const Said said = meaning(code);
    Arguments arguments{{"file", m_path}};
    if (*said.can != '\0')
        arguments.push_back({"can", said.can});
    if ((code & 0xFF) == SQLITE_CONSTRAINT)
        arguments.push_back({"constraint", constraintName(extended, message)});
    throwFault(said.code, said.kind, std::move(arguments),
               std::string(during) + ": " + message + " (" + std::to_string(extended) + ")");
}

void Connection::open(const std::string& path, Mode mode, int waitMilliseconds)
{
    leaveMemoryUncounted();
    m_path = path;
    int flags = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_URI;
    flags |= mode == Mode::create ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE
             : mode == Mode::write ? SQLITE_OPEN_READWRITE
                                   : SQLITE_OPEN_READONLY;
    std::string name = "file:";
    for (const char c : path) {
        if (c == '%' || c == '?' || c == '#') {
            char escaped[4];
            std::snprintf(escaped, sizeof escaped, "%%%02X", static_cast<unsigned>(static_cast<unsigned char>(c)));
            name += escaped;
        } else {
            name += c;
        }
    }
    if (mode == Mode::readUnchanging)
        name += "?immutable=1";
    sqlite3* db = nullptr;
    const int code = sqlite3_open_v2(name.c_str(), &db, flags, nullptr);
    m_db.reset(db);
    if (code != SQLITE_OK)
        failed(code, "open");
    sqlite3_busy_timeout(db, waitMilliseconds);
    sqlite3_db_config(db, SQLITE_DBCONFIG_DQS_DML, 0, nullptr);
    sqlite3_db_config(db, SQLITE_DBCONFIG_DQS_DDL, 0, nullptr);
    sqlite3_db_config(db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_db_config(db, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_FKEY, 1, nullptr);
    run("PRAGMA cell_size_check = ON; PRAGMA secure_delete = ON; PRAGMA synchronous = FULL; PRAGMA recursive_triggers = ON");
}

void Connection::close()
{
    m_kept.clear();
    m_few.clear();
    sqlite3* db = m_db.release();
    const int code = db == nullptr ? SQLITE_OK : sqlite3_close(db);
    if (code != SQLITE_OK) {
        m_db.reset(db);
        failed(code, "close");
    }
}

void Connection::run(std::string_view sql)
{
    const char* at = sql.data();
    const char* const end = at + sql.size();
    while (at < end) {
        sqlite3_stmt* raw = nullptr;
        const char* tail = nullptr;
        int code = sqlite3_prepare_v2(m_db.get(), at, static_cast<int>(end - at), &raw, &tail);
        const std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> statement(raw, &sqlite3_finalize);
        if (code != SQLITE_OK)
            failed(code, "prepare");
        at = tail;
        if (!statement)
            continue;   // a comment or blanks
        do
            code = sqlite3_step(statement.get());
        while (code == SQLITE_ROW);
        if (code != SQLITE_DONE)
            failed(code, "step");
    }
}

std::int64_t Connection::number(std::string_view sql)
{
    Query query(*this, std::string(sql));
    return query.step() ? query.integer(0) : 0;
}

std::string Connection::text(std::string_view sql)
{
    Query query(*this, std::string(sql));
    return query.step() ? query.text(0) : std::string();
}

std::int64_t Connection::lastRowId() const
{
    return sqlite3_last_insert_rowid(m_db.get());
}

std::int64_t Connection::changes() const
{
    return sqlite3_changes64(m_db.get());
}

bool Connection::inTransaction() const
{
    return m_db && sqlite3_get_autocommit(m_db.get()) == 0;
}

void Connection::watch(const Progress* progress)
{
    sqlite3_progress_handler(m_db.get(), progress == nullptr ? 0 : stepsBetweenLooks, progress == nullptr ? nullptr : &lookForStop,
                             const_cast<Progress*>(progress));
}

Query::Query(Connection& connection, const std::string& sql) : Query(connection, sql.c_str(), nullptr) {}

Query::Query(Connection& connection, const char* sql, Connection::Kept* kept) : m_connection(connection)
{
    if (kept != nullptr) {
        if (kept->statement.get() == nullptr)
            kept->statement = Statement(connection.m_db.get(), sql, true);
        if (!kept->busy) {
            kept->busy = true;
            m_kept = kept;
            m_statement = kept->statement.get();
            return;
        }
    }
    m_own = Statement(connection.m_db.get(), sql, false);
    m_statement = m_own.get();
}

Query::~Query()
{
    if (m_kept == nullptr)
        return;
    sqlite3_reset(m_statement);
    sqlite3_clear_bindings(m_statement);
    m_kept->busy = false;
}

/// The library looks through all names each time. A kept statement is mostly bound in the same order as the last time.
int Query::place(const char* name)
{
    if (m_kept != nullptr && m_bound < m_kept->places.size() && m_kept->places[m_bound].first == name)
        return m_kept->places[m_bound++].second;
    const int place = sqlite3_bind_parameter_index(m_statement, name);
    assert(place > 0);
    if (m_kept != nullptr && m_bound == m_kept->places.size()) {
        m_kept->places.emplace_back(name, place);   // its own copy: where the schema changes, the library makes the statement anew
        ++m_bound;
    }
    return place;
}

void Query::check(int code) const
{
    if (code != SQLITE_OK)
        m_connection.failed(code, sqlite3_sql(m_statement));
}

Query& Query::bind(const char* name, std::int64_t value)
{
    check(sqlite3_bind_int64(m_statement, place(name), value));
    return *this;
}

Query& Query::bind(const char* name, double value)
{
    check(sqlite3_bind_double(m_statement, place(name), value));
    return *this;
}

Query& Query::bind(const char* name, std::string_view value)
{
    check(sqlite3_bind_text64(m_statement, place(name), value.data() == nullptr ? "" : value.data(), value.size(), SQLITE_TRANSIENT,
                              SQLITE_UTF8));
    return *this;
}

Query& Query::bind(const char* name, const Uid& value)
{
    if (value.isNull())
        return bind(name, std::nullopt);
    check(sqlite3_bind_blob(m_statement, place(name), value.bytes.data(), static_cast<int>(value.bytes.size()), SQLITE_TRANSIENT));
    return *this;
}

Query& Query::bind(const char* name, const Digest& value)
{
    check(sqlite3_bind_blob(m_statement, place(name), value.data(), static_cast<int>(value.size()), SQLITE_TRANSIENT));
    return *this;
}

Query& Query::bind(const char* name, std::nullopt_t)
{
    check(sqlite3_bind_null(m_statement, place(name)));
    return *this;
}

bool Query::step()
{
    const int code = sqlite3_step(m_statement);
    if (code == SQLITE_ROW)
        return true;
    if (code != SQLITE_DONE)
        m_connection.failed(code, sqlite3_sql(m_statement));
    return false;
}

void Query::run()
{
    while (step()) {
    }
}

bool Query::isNull(int column) const
{
    return sqlite3_column_type(m_statement, column) == SQLITE_NULL;
}

std::int64_t Query::integer(int column) const
{
    return sqlite3_column_int64(m_statement, column);
}

double Query::real(int column) const
{
    return sqlite3_column_double(m_statement, column);
}

std::string_view Query::view(int column) const
{
    const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(m_statement, column));
    return text == nullptr ? std::string_view() : std::string_view(text, static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column)));
}

std::string Query::text(int column) const
{
    return std::string(view(column));
}

Uid Query::uid(int column) const
{
    Uid id;
    const void* blob = sqlite3_column_blob(m_statement, column);
    if (blob != nullptr && sqlite3_column_bytes(m_statement, column) == static_cast<int>(id.bytes.size()))
        std::memcpy(id.bytes.data(), blob, id.bytes.size());
    return id;
}

Digest Query::digest(int column) const
{
    Digest digest{};
    const void* blob = sqlite3_column_blob(m_statement, column);
    if (blob != nullptr && sqlite3_column_bytes(m_statement, column) == static_cast<int>(digest.size()))
        std::memcpy(digest.data(), blob, digest.size());
    return digest;
}

std::optional<Digest> Query::maybeDigest(int column) const
{
    if (isNull(column))
        return std::nullopt;
    return digest(column);
}

Instant Query::instant(int utcColumn, int offsetColumn) const
{
    return {integer(utcColumn), maybe<int>(offsetColumn)};
}

} // namespace cupule

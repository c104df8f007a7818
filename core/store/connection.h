// One SQLite connection and its statements. Inside the store room only: the functions here throw StoreError, which the
// room's headers turn into a Fault (guarded below). SQL stands as literals in the .cpp that runs it.

#pragma once

#include <cstdint>
#include <exception>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/base/civil.h"
#include "core/base/hash.h"
#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/base/uid.h"

struct sqlite3;
struct sqlite3_stmt;

namespace cupule {

/// Unwinds inside core/store; never leaves it.
struct StoreError {
    Fault fault;
};

[[noreturn]] void throwFault(std::string code, FaultKind kind, Arguments arguments = {}, std::string technical = {});

/// Runs `work` and turns what it throws into a Fault.
template <class Work>
auto guarded(Work&& work) -> Result<std::invoke_result_t<Work>>
{
    try {
        if constexpr (std::is_void_v<std::invoke_result_t<Work>>) {
            work();
            return {};
        } else {
            return work();
        }
    } catch (const StoreError& error) {
        return fail(error.fault);
    } catch (const std::exception& error) {
        return fail(Fault{"store.io", FaultKind::io, {}, {}, error.what()});
    }
}

/// The value, or its fault thrown.
template <class T>
T taken(Result<T> result)
{
    if (!result)
        throw StoreError{std::move(result.error())};
    if constexpr (!std::is_void_v<T>)
        return std::move(*result);
}

class Statement {
public:
    Statement() = default;
    Statement(sqlite3* db, std::string_view sql, bool kept);
    [[nodiscard]] sqlite3_stmt* get() const { return m_statement.get(); }

private:
    struct Finalize {
        void operator()(sqlite3_stmt* statement) const;
    };
    std::unique_ptr<sqlite3_stmt, Finalize> m_statement;
};

class Connection {
public:
    enum class Mode { create, write, read, readUnchanging };   ///< the last: on ground that cannot change (no log)

    Connection() = default;
    /// Opens and sets up safety: foreign keys, strict quoting, nothing trusted, full flushes.
    void open(const std::string& path, Mode mode, int waitMilliseconds);
    /// Finalizes all statements and closes. Throws where SQLite would not close.
    void close();
    [[nodiscard]] bool isOpen() const { return m_db != nullptr; }

    /// Statements without parameters and results, several at once through the prepare tail.
    void run(std::string_view sql);
    [[nodiscard]] std::int64_t number(std::string_view sql);   ///< first column of the first row; 0 where none
    [[nodiscard]] std::string text(std::string_view sql);
    [[nodiscard]] std::int64_t lastRowId() const;
    [[nodiscard]] std::int64_t changes() const;
    [[nodiscard]] bool inTransaction() const;
    [[nodiscard]] sqlite3* handle() const { return m_db.get(); }
    /// While set, long statements stop with "job.cancelled" once it is asked for.
    void watch(const Progress* progress);

    /// Throws what SQLite last said here.
    [[noreturn]] void failed(int code, std::string_view during) const;

private:
    friend class Query;
    struct Kept {
        Statement statement;
        bool busy = false;
        std::vector<std::pair<std::string, int>> places;   // of parameters, in the order in which they were first bound
    };
    struct Close {
        void operator()(sqlite3* db) const;
    };
    std::unique_ptr<sqlite3, Close> m_db;
    std::unordered_map<const char*, Kept> m_kept;   // by address of the literal: the same place in the code, the same statement
    std::unordered_map<std::string, Kept> m_few;
    std::string m_path;
};

/// A text made at run time of which there are only a few: the statement is kept as that of a literal is.
struct FewTexts {
    const std::string& sql;
};

/// One use of a statement: bind, step through rows, reset at the end of its life. `sql` must be a literal; texts made at
/// run time take the second constructor, which prepares anew each time.
class Query {
public:
    template <std::size_t N>
    Query(Connection& connection, const char (&sql)[N]) : Query(connection, sql, &connection.m_kept[sql]) {}
    Query(Connection& connection, const std::string& sql);
    Query(Connection& connection, FewTexts text) : Query(connection, text.sql.c_str(), &connection.m_few[text.sql]) {}
    Query(const Query&) = delete;
    Query& operator=(const Query&) = delete;
    ~Query();

    Query& bind(const char* name, std::int64_t value);
    Query& bind(const char* name, int value) { return bind(name, static_cast<std::int64_t>(value)); }
    Query& bind(const char* name, bool value) { return bind(name, static_cast<std::int64_t>(value)); }
    Query& bind(const char* name, double value);
    Query& bind(const char* name, std::string_view value);
    Query& bind(const char* name, const char* value) { return bind(name, std::string_view(value)); }
    Query& bind(const char* name, const std::string& value) { return bind(name, std::string_view(value)); }
    Query& bindUnlessEmpty(const char* name, std::string_view value)   ///< empty = NULL
    {
        return value.empty() ? bind(name, std::nullopt) : bind(name, value);
    }
    Query& bind(const char* name, const Uid& value);            ///< null id = NULL
    Query& bind(const char* name, const Digest& value);
    Query& bind(const char* name, CivilDate value) { return bind(name, static_cast<std::int64_t>(value.days)); }
    Query& bind(const char* name, LocalTime value) { return bind(name, static_cast<std::int64_t>(value.secondOfDay)); }
    Query& bind(const char* name, std::nullopt_t);
    template <class T>
    Query& bind(const char* name, const std::optional<T>& value)
    {
        return value ? bind(name, *value) : bind(name, std::nullopt);
    }

    /// True while there is a row.
    bool step();
    /// Steps to the end; for statements without rows.
    void run();

    [[nodiscard]] bool isNull(int column) const;
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] int whole(int column) const { return static_cast<int>(integer(column)); }
    [[nodiscard]] bool flag(int column) const { return integer(column) != 0; }
    [[nodiscard]] double real(int column) const;
    [[nodiscard]] std::string text(int column) const;
    /// Valid until the next step.
    [[nodiscard]] std::string_view view(int column) const;
    [[nodiscard]] Uid uid(int column) const;                    ///< NULL = null id
    [[nodiscard]] Digest digest(int column) const;
    [[nodiscard]] std::optional<Digest> maybeDigest(int column) const;
    [[nodiscard]] CivilDate date(int column) const { return {static_cast<std::int32_t>(integer(column))}; }
    [[nodiscard]] Instant instant(int utcColumn, int offsetColumn) const;
    template <class T>
    [[nodiscard]] std::optional<T> maybe(int column) const
    {
        if (isNull(column))
            return std::nullopt;
        if constexpr (std::is_same_v<T, double>)
            return real(column);
        else if constexpr (std::is_same_v<T, CivilDate>)
            return date(column);
        else if constexpr (std::is_same_v<T, LocalTime>)
            return LocalTime{static_cast<std::int32_t>(integer(column))};
        else
            return static_cast<T>(integer(column));
    }

private:
    Query(Connection& connection, const char* sql, Connection::Kept* kept);
    int place(const char* name);
    void check(int code) const;

    Connection& m_connection;
    sqlite3_stmt* m_statement = nullptr;
    Connection::Kept* m_kept = nullptr;   // in use
    std::size_t m_bound = 0;              // of its places
    Statement m_own;
};

} // namespace cupule

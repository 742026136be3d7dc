#include "app/records/mend.hpp"

#include <bit>
#include <charconv>
#include <cstdint>
#include <optional>
#include <sstream>

#include "app/records/backups.hpp"
#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"
#include "app/records/without_triggers.hpp"

namespace hardover {

using namespace records_detail;

namespace {

using Row = std::vector<std::string>;

std::vector<std::string> names_in(const std::string& columns) {
    std::vector<std::string> names;
    std::istringstream in(columns);
    for (std::string name; std::getline(in >> std::ws, name, ',');) names.push_back(name);
    return names;
}

struct Damaged {
    const Summed* of = nullptr;
    Row row;
    std::uint32_t checksum = 0;  // as the file has it
    std::string named;
};

Result<std::vector<Damaged>> read_damaged(const Database& database) {
    std::vector<Damaged> all;
    for (const Summed& of : summed_tables()) {
        const auto columns = static_cast<int>(names_in(of.columns).size());
        Statement select(database, std::string("SELECT ") + of.columns + ", checksum, " + of.named +
                                       " FROM " + of.table + " NOT INDEXED WHERE NOT (" +
                                       is_as_written(of.table) + ")");
        int code = select.step();
        for (; code == SQLITE_ROW; code = select.step()) {
            Damaged one{
                &of, {}, static_cast<std::uint32_t>(select.number(columns)), select.text(columns + 1)};
            for (int column = 0; column < columns; ++column) one.row.push_back(select.text(column));
            all.push_back(std::move(one));
        }
        if (code != SQLITE_DONE) return database.error(code);
    }
    return all;
}

// The row with one bit of a text turned back, when it has the checksum then.
bool turn_in_text(Row& row, std::string& text, std::uint32_t checksum) {
    for (char& letter : text) {
        const char before = letter;
        for (int bit = 0; bit < 8; ++bit) {
            letter = static_cast<char>(before ^ (1 << bit));
            if (checksum_of(row) == checksum) return true;
        }
        letter = before;
    }
    return false;
}

// The same for a number, which is not stored as it is read.
bool turn_in_number(Row& row, std::string& text, std::uint32_t checksum) {
    std::int64_t number = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (failed != std::errc() || end != text.data() + text.size()) return false;
    const std::string before = text;
    for (int bit = 0; bit < 48; ++bit) {
        text = std::to_string(number ^ (std::int64_t{1} << bit));
        if (checksum_of(row) == checksum) return true;
    }
    text = before;
    return false;
}

// The row as it was written, if no more than one bit of it or of its checksum turned. CRC-32 tells any two
// texts apart that differ by so little.
std::optional<Row> with_a_bit_back(const Damaged& damaged) {
    constexpr std::size_t most_letters = 16'000;  // more would take minutes
    if (std::popcount(checksum_of(damaged.row) ^ damaged.checksum) <= 1) return damaged.row;
    std::size_t letters = 0;
    for (const std::string& text : damaged.row) letters += text.size();
    if (letters > most_letters) return std::nullopt;
    Row row = damaged.row;
    for (std::string& text : row) {
        if (turn_in_text(row, text, damaged.checksum) || turn_in_number(row, text, damaged.checksum)) {
            return row;
        }
    }
    return std::nullopt;
}

std::string same_key(const Summed& of) {
    std::string where;
    int place = 0;
    for (const std::string& name : names_in(of.key)) {
        where += (place == 0 ? "" : " AND ") + name + " = ?" + std::to_string(place + 1);
        ++place;
    }
    return where;
}

Row key_of(const Summed& of, const Row& row) {
    const auto columns = names_in(of.columns);
    Row key;
    for (const std::string& name : names_in(of.key)) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (columns[i] == name) key.push_back(row[i]);
        }
    }
    return key;
}

// The row of the same key, when it is the one that was damaged: it has the checksum this one should have, or
// says the same.
Result<std::optional<Row>> row_in(const Database& backup, const Damaged& damaged) {
    const Summed& of = *damaged.of;
    Statement select(backup, std::string("SELECT ") + of.columns + " FROM " + of.table + " WHERE " +
                                 same_key(of) + " AND " + is_as_written(of.table));
    for (const std::string& part : key_of(of, damaged.row)) select.bind(part);
    const int code = select.step();
    if (code == SQLITE_DONE) return std::optional<Row>();
    if (code != SQLITE_ROW) return backup.error(code);
    Row row;
    for (std::size_t i = 0; i < damaged.row.size(); ++i) row.push_back(select.text(static_cast<int>(i)));
    const bool it = row == damaged.row || checksum_of(row) == damaged.checksum;
    return it ? std::optional<Row>(row) : std::nullopt;
}

Result<void> put(const Database& database, const Damaged& damaged, const Row& row) {
    const Summed& of = *damaged.of;
    Statement drop(database, std::string("DELETE FROM ") + of.table + " WHERE " + same_key(of));
    for (const std::string& part : key_of(of, damaged.row)) drop.bind(part);
    if (const int code = drop.step(); code != SQLITE_DONE) return database.error(code);
    Statement insert(database, insertion(of.table));
    for (const std::string& text : row) insert.bind(text);
    if (const int code = insert.step(); code != SQLITE_DONE) return database.error(code);
    return {};
}

// Jobs and learners whose last events are gone have as many as they have.
Result<void> count_anew(const Database& database) {
    const std::string jobs = "(SELECT coalesce(max(sequence), 0) FROM events WHERE job = number)";
    const std::string learners =
        "(SELECT coalesce(max(sequence), 0) FROM study_events WHERE learner = number)";
    const auto end = [](const std::string& table, const std::string& last) {
        return last + ") WHERE " + is_as_written(table) + " AND last_event <> " + last;
    };
    const std::string of_jobs =
        "UPDATE jobs SET last_event = " + jobs +
        ", checksum = checksum_of(number, opened_at, changed_at, boat, state, complaint, " +
        end("jobs", jobs);
    const std::string of_learners = "UPDATE learners SET last_event = " + learners +
                                    ", checksum = checksum_of(number, name, added_at, " +
                                    end("learners", learners);
    if (auto done = database.run(of_jobs.c_str()); !done.ok()) return done;
    return database.run(of_learners.c_str());
}

using DatabaseOf = const Database& (*)(const Store&);

class Mender {
  public:
    Mender(const Database& database, const MendWish& wish, DatabaseOf database_of)
        : database_(database), wish_(wish), database_of_(database_of) {}

    Result<Mended> run() {
        auto damaged = read_damaged(database_);
        if (!damaged.ok()) return damaged.error();
        if (auto done = each(damaged.value(), [this](const Damaged& one) { return by_bit(one); });
            !done.ok()) {
            return done.error();
        }
        for (const std::string& file : wish_.backups) {
            if (damaged.value().empty()) break;
            const auto copy = BorrowedCopy::of(file);
            if (!copy.ok()) continue;
            const Database& backup = database_of_(copy.value().store());
            const auto from = [&](const Damaged& one) { return by_backup(one, backup, file); };
            if (auto done = each(damaged.value(), from); !done.ok()) return done.error();
        }
        const auto rest = [this](const Damaged& one) { return by_itself(one); };
        if (auto done = each(damaged.value(), rest); !done.ok()) return done.error();
        for (const Damaged& one : damaged.value()) mended_.left.push_back(one.named);
        if (wish_.as_it_reads) {
            if (auto counted = count_anew(database_); !counted.ok()) return counted.error();
        }
        if (auto done = database_.run("REINDEX"); !done.ok()) return done.error();
        return std::move(mended_);
    }

  private:
    // Tries a way on all that are still damaged, and takes out those it mended.
    template <typename Way>
    Result<void> each(std::vector<Damaged>& damaged, const Way& way) {
        std::vector<Damaged> left;
        for (Damaged& one : damaged) {
            const Result<bool> mended = way(one);
            if (!mended.ok()) return mended.error();
            if (!mended.value()) left.push_back(std::move(one));
        }
        damaged = std::move(left);
        return {};
    }

    Result<bool> by_bit(const Damaged& one) {
        const auto row = with_a_bit_back(one);
        if (!row) return false;
        if (auto done = put(database_, one, *row); !done.ok()) return done.error();
        mended_.by_bit.push_back(one.named);
        return true;
    }

    Result<bool> by_backup(const Damaged& one, const Database& backup, const std::string& file) {
        const auto row = row_in(backup, one);
        if (!row.ok()) return row.error();
        if (!row.value()) return false;
        if (auto done = put(database_, one, *row.value()); !done.ok()) return done.error();
        mended_.by_backup.push_back(one.named + ", from " + file);
        return true;
    }

    Result<bool> by_itself(const Damaged& one) {
        const bool follows_from_events = std::string(one.of->table) == "jobs";
        if (!wish_.as_it_reads || follows_from_events) return false;
        if (auto done = put(database_, one, one.row); !done.ok()) return done.error();
        mended_.as_they_read.push_back(one.named);
        return true;
    }

    const Database& database_;
    const MendWish& wish_;
    DatabaseOf database_of_;
    Mended mended_;
};

// What mend() does with the triggers out of the way, in one transaction.
Result<Mended> mend_rows(Mender mender, const Database& database) {
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun.error();
    WithoutTriggers without;
    if (auto begun = without.begin(database); !begun.ok()) return begun.error();
    auto mended = mender.run();
    if (!mended.ok()) return mended;
    if (auto ended = without.end(database); !ended.ok()) return ended.error();
    if (auto committed = transaction.commit(); !committed.ok()) return committed.error();
    return mended;
}

}  // namespace

Result<Mended> Store::mend(const MendWish& wish) {
    const Database& database = connection_->database;
    const auto database_of = [](const Store& store) -> const Database& {
        return store.connection_->database;
    };
    // A line of the list may go for a moment while its events stand.
    if (auto set = database.run("PRAGMA foreign_keys = OFF"); !set.ok()) return set.error();
    auto mended = mend_rows(Mender(database, wish, database_of), database);
    if (auto set = database.run("PRAGMA foreign_keys = ON"); !set.ok()) return set.error();
    return mended;
}

Result<void> Store::list_anew(JobNumber job, const JobSummary& summary) {
    const Database& database = connection_->database;
    const auto kept = read_events(database, "events", "job", job);
    if (!kept.ok()) return kept.error();
    if (kept.value().empty()) return no_such_job(path(), job);
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    if (auto listed = update_job(database, job, summary, kept.value().back()); !listed.ok()) return listed;
    return transaction.commit();
}

}  // namespace hardover

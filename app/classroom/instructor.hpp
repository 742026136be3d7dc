// The class on the instructor's PC: its keys behind a passphrase, its roster and its sets. Knows no screen
// and no clock.
#pragma once

#include <string>
#include <vector>

#include "app/classroom/roster.hpp"
#include "app/classroom/seal.hpp"
#include "app/classroom/set.hpp"
#include "app/records/class_store.hpp"

namespace hardover::classroom {

// What the passphrase opens. Wiped when it goes.
struct ClassKeys {
    Bytes public_key;
    Secret secret_key;  // signs sets and countersigns hand-ins
    Secret of_seeds;    // the seeds and start codes of graded sets come from it
};

inline constexpr std::size_t shortest_passphrase = 12;  // letters

// Makes a class with fresh keys behind the passphrase. Errors bad_input: no name or taken, a passphrase of
// fewer letters than that; those of seal.
Result<StoredClass> make_class(ClassStore& store, const std::string& name, const std::string& passphrase,
                               const std::string& at, std::optional<Cost> cost = std::nullopt);
// By name; "" is the only class there is. Error not_found: none, or several and no name.
Result<StoredClass> find_class(const ClassStore& store, const std::string& name);
// Error bad_input: one message, whatever is wrong.
Result<ClassKeys> open_class(const StoredClass& of, const std::string& passphrase);
Result<void> change_passphrase(ClassStore& store, const StoredClass& of, const std::string& old_one,
                               const std::string& new_one, std::optional<Cost> cost = std::nullopt);

// Words for a sheet of paper that open the class when the passphrase is lost; they stay good when it is
// changed.
struct Recovery {
    std::string words;
    std::string sealed;  // the class's secrets behind them
};
// Errors: as open_class.
Result<Recovery> draw_recovery(const StoredClass& of, const std::string& passphrase,
                               std::optional<Cost> cost = std::nullopt);
// From now on these words open the class, and no earlier ones.
Result<void> keep_recovery(ClassStore& store, const StoredClass& of, const Recovery& recovery);
// A new passphrase by these words. Errors not_found: none were ever kept; bad_input: one message, whatever is
// wrong.
Result<void> recover_class(ClassStore& store, const StoredClass& of, const std::string& words,
                           const std::string& new_one, std::optional<Cost> cost = std::nullopt);

Result<Roster> roster_of(const ClassStore& store, const StoredClass& of);
Result<void> keep_roster(ClassStore& store, const StoredClass& of, const Roster& roster);

struct SetWish {
    std::string id;  // "": the next of S1, S2 ...
    std::string title;
    bool graded = false;
    std::vector<Task> tasks;            // the seeds of graded sets are drawn, whatever stands there
    std::vector<std::string> seats{};   // codes; empty: the whole roster
    UnitSystem units = UnitSystem::us;  // in which figures are asked
};
// Seeds for tasks that should not be chosen by hand: short enough to be told.
std::uint64_t random_seed();

struct MadeSet {
    ClassSet set;
    std::string file_name;  // "S1.hardover-set"
    std::string file;
    std::string start_code;  // graded: to be given out in the room
};
// Makes and keeps a set. Errors: those of look_over; a seat is not on the roster; the id is taken.
Result<MadeSet> make_set(ClassStore& store, const StoredClass& of, const ClassKeys& keys, const SetWish& wish,
                         const std::string& knowledge, const std::string& at,
                         std::optional<Cost> cost = std::nullopt);

// The sets of a class in the order they were made; those that are graded without their seeds.
Result<std::vector<ClassSet>> sets_of(const ClassStore& store, const StoredClass& of);
Result<ClassSet> find_set(const ClassStore& store, const StoredClass& of, const std::string& id);
// The file of a set once more, as it was made.
Result<std::string> file_of_set(const ClassStore& store, const StoredClass& of, const std::string& id);
// The start code of a graded set, and its seeds put back.
std::string start_code_of(const ClassSet& set, const ClassKeys& keys);
void put_seeds(ClassSet& set, const ClassKeys& keys);

}  // namespace hardover::classroom

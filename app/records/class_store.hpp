// What the records file keeps of classes: roster, sets and what was handed in on the instructor's PC,
// attempts at sets on a student's PC. Stores plain values: knows nothing of what a record says, of keys or of
// marking.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/records/store.hpp"

namespace hardover {

using ClassNumber = std::int64_t;

struct StoredClass {
    ClassNumber number = 0;
    std::string name;
    std::string made_at;
    std::string public_key;  // in hex
    std::string sealed;      // the instructor's secrets, in a box as text
};

struct StoredSeat {
    std::string code;
    std::string name;
    std::string group;
};

struct StoredSet {
    std::string sitting;
    std::string id;
    std::string made_at;
    std::string file;  // as it is given out
};

struct StoredClassRecord {
    std::string id;
    std::string sitting;
    std::string attempt;
    int sequence = 0;
    std::string line;
};

// What came in one file: which records in which order, and who signed.
struct StoredHandIn {
    std::string attempt;
    std::string last;  // of the chain, in hex
    std::string key;   // of the PC it was made on, in hex
    std::string sitting;
    std::string seat;
    std::vector<std::string> records;  // ids
    std::string signature;
    std::string countersignature;
    std::string collected_at;
};

// An attempt on a student's PC.
struct StoredAttempt {
    std::string attempt;
    std::string sitting;
    std::string seat;
    std::string began_at;
    std::string file;          // the set, as it came
    int records = 0;           // written so far
    int handed_in = 0;         // of them, in the last hand-in
    std::string handed_in_at;  // "": never
    std::string purged_at;     // "": its records are here
};

struct StoredKey {
    std::string public_key;
    std::string secret_key;
};

// The part of an open Store that is about classes; the Store must outlive it. Every write is one transaction,
// on disk before the call returns.
class ClassStore {
  public:
    explicit ClassStore(Store& store) : store_(&store) {}

    // The instructor's.

    // Error bad_input: there is a class of that name (upper and lower case count as the same).
    Result<ClassNumber> add_class(const StoredClass& added);
    Result<std::vector<StoredClass>> classes() const;  // by name
    // Puts another box in the place of the class's secrets.
    Result<void> change_sealed(ClassNumber number, const std::string& sealed);
    Result<std::vector<StoredSeat>> seats(ClassNumber number) const;  // by code
    // The whole roster in the place of what was there. What is taken out is overwritten on the disk.
    Result<void> keep_seats(ClassNumber number, const std::vector<StoredSeat>& seats);
    // Error bad_input: the class has a set of that id.
    Result<void> add_set(ClassNumber number, const StoredSet& set);
    // Takes a set, its records and hand-ins, and all marks off this PC, overwritten on the disk. A hand-in of
    // it that comes in again is of no known set then.
    Result<void> forget_set(const std::string& sitting);
    Result<std::vector<StoredSet>> sets(ClassNumber number) const;  // in the order they were made
    // Adds what is new of a hand-in and its records; what is there stays as it is. Gives how many records
    // were new; nothing is written when there is nothing new.
    struct Added {
        int records = 0;
        bool hand_in = false;
    };
    Result<Added> collect(const StoredHandIn& hand_in, const std::vector<StoredClassRecord>& records);
    // By sitting, attempt, sequence and id.
    Result<std::vector<StoredClassRecord>> records(ClassNumber number) const;
    // Of one attempt, by sequence and id.
    Result<std::vector<StoredClassRecord>> records_of(const std::string& sitting,
                                                      const std::string& attempt) const;
    // By sitting, seat and attempt, the earlier collected first.
    Result<std::vector<StoredHandIn>> hand_ins(ClassNumber number) const;
    // Marks worked out before, by what they are of; they may be thrown away at any time.
    Result<std::optional<std::string>> marks(const std::string& of) const;
    Result<void> keep_marks(const std::vector<std::pair<std::string, std::string>>& marks);

    // A student's.

    // The key of this PC; none before keep_own_key, which keeps the first.
    Result<std::optional<StoredKey>> own_key() const;
    Result<StoredKey> keep_own_key(const StoredKey& key);
    // Begins an attempt with its first record. Error bad_input: the seat has begun this set on this PC.
    Result<void> begin_attempt(const StoredAttempt& attempt, const std::string& first_line);
    Result<std::vector<StoredAttempt>> attempts() const;  // the last begun first
    // Appends a record as number `sequence`, which must be the next. Error storage: another program wrote
    // meanwhile, or the attempt is purged. Nothing is written then.
    Result<void> append(const std::string& attempt, int sequence, const std::string& line);
    Result<std::vector<std::string>> attempt_lines(const std::string& attempt) const;
    // Keeps that the first `count` records were handed in.
    Result<void> keep_handed_in(const std::string& attempt, int count, const std::string& at);
    // Takes the records of an attempt off this PC; that it was made stays known. Error bad_input: not all of
    // it was handed in.
    Result<void> purge(const std::string& attempt, const std::string& at);

  private:
    Store* store_;
};

}  // namespace hardover

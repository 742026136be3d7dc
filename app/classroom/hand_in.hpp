// A hand-in: the records of one attempt as one small file, chained and signed by the PC they were made on.
// Written on a student's PC, looked over on the instructor's. Knows no roster.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/classroom/record.hpp"
#include "app/classroom/seal.hpp"
#include "app/records/class_store.hpp"

namespace hardover::classroom {

inline constexpr const char* hand_in_domain = "hardover.hand_in.v1";

struct HandIn {
    AttemptOf of;
    std::vector<Record> records;
    Bytes key;   // public, of the PC
    Bytes last;  // of the chain
    Bytes signature;
};

// The file: a line that says whose it is, a line for each record, a line with the signature over the last
// link of the chain and the count. At least one record.
std::string hand_in_file(const std::vector<Record>& records, const KeyPair& key);

// Looks a file over and takes it only whole. Errors, each naming file and record, and what to do: it is no
// hand-in, of a newer form, cut short, a record changed, left out, added or moved, the signature does not
// fit. Records of a kind or version not known here are taken as they are.
Result<HandIn> read_hand_in(const std::string& text, const std::string& name);

// The file of an attempt on this PC. `write` puts it where it is wanted; only then is it kept that it was
// handed in. Errors: not_found (also when it was purged); those of `write` and of the store.
struct HandedIn {
    std::string file_name;  // "S1_A07.hardover-hand-in"
    std::string text;
    std::size_t records = 0;
};
using WriteHandIn = std::function<Result<void>(const HandedIn&)>;
Result<HandedIn> hand_in(ClassStore& store, const std::string& attempt, const WriteHandIn& write,
                         const std::string& at);

}  // namespace hardover::classroom

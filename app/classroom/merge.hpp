// Hand-ins brought together on the instructor's PC: each file looked over, what is new kept and
// countersigned. The union of records by their ids, so that the same file twice, or files in any order, come
// to the same.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/classroom/hand_in.hpp"
#include "app/classroom/instructor.hpp"
#include "app/jobs/watched.hpp"

namespace hardover::classroom {

// Goes before what the instructor's program signs on collection: the last link of the chain, the count, and
// the key of the PC the hand-in was made on.
inline constexpr const char* collected_domain = "hardover.collected.v1";

struct NamedText {
    std::string name;
    std::string text;
};

struct MergedFile {
    std::string file;
    std::optional<Error> refused;
    std::string set;
    std::string seat;
    int records = 0;
    int fresh = 0;                   // of them, not known before
    bool seen_before = false;        // this very hand-in
    bool other_pc = false;           // the seat handed in from another PC before
    bool disputed = false;           // the attempt has two different records for one place
    int unknown = 0;                 // records of a kind or version not known here, kept as they are
    std::optional<int> days_late{};  // the last record came so many days after the last due day
};

struct MergeReport {
    std::vector<MergedFile> files;
    std::size_t left = 0;              // files not looked at, since it was told to stop
    std::vector<std::string> missing;  // "S1: A03, A11": seats without a hand-in of a set
};

// Each file is taken whole or not at all, in a transaction of its own. Error: those of the store only; what
// is wrong with a file stands in the report. Told to stop, it does so between two files.
Result<MergeReport> merge_hand_ins(ClassStore& store, const StoredClass& of, const ClassKeys& keys,
                                   const std::vector<NamedText>& files, const std::string& at,
                                   const Watched& watched = {});

// One file in words.
std::string merge_text(const MergedFile& file);
// The report in words, a sentence a file.
std::vector<std::string> merge_text(const MergeReport& report);

// Whether everything collected still is as it was countersigned: every record, chain and signature. A
// sentence for each thing that is not; none: all is well. Told to stop, it gives what it found so far.
Result<std::vector<std::string>> check_collected(const ClassStore& store, const StoredClass& of,
                                                 const Watched& watched = {});

// What the signatures protect against, and what they do not.
struct Protection {
    std::vector<std::string> does;
    std::vector<std::string> does_not;
};
const Protection& protection();

}  // namespace hardover::classroom

// From the merged records of a class to its results: every answer marked again by this program, every boat
// worked through once more. Knows no screen and no clock.
#pragma once

#include <string>
#include <vector>

#include "app/classroom/instructor.hpp"
#include "app/classroom/results.hpp"
#include "app/jobs/watched.hpp"
#include "app/study/portrait.hpp"

namespace hardover::classroom {

struct MarkedClass {
    ClassResults results;
    // What could not be marked, and why, a sentence each: other knowledge, a graded set without the
    // passphrase, an answer that does not fit its item.
    std::vector<std::string> notes;
};

// `keys` open graded sets; nullptr: those are left out, with a note. Marks of boats are kept in the store, so
// that the next time is quick. `threads` 0: as many as the machine has; `watched` is called from all of them.
// Told to stop, it gives what it has so far, which is nothing to be shown. Errors: those of the store.
Result<MarkedClass> class_results(ClassStore& store, const StoredClass& of, const study::Portraits& portraits,
                                  const ClassKeys* keys, int threads = 0, const Watched& watched = {});

}  // namespace hardover::classroom

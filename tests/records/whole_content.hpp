// All that can be read of the made-up records of the tests, item by item, so that what damage changed can be
// told.
#pragma once

#include <map>
#include <string>

#include "app/records/store.hpp"

namespace hardover_tests {

// Jobs, learners, settings, counts, a class with a set and what was handed in, attempts of a student.
// `events` each of a job and a learner.
void make_full_records(const std::string& path, int jobs, int events);

// Every item by its name, as text; "refused: ..." where it cannot be read.
using Content = std::map<std::string, std::string>;
Content content_of(hardover::Store& store);

enum class Difference { none, named, silent };

// Named: everything that is not as in `sound` is refused, or what is left out of a search is told by check().
Difference difference(const Content& sound, const Content& found, const hardover::Store& store);

}  // namespace hardover_tests

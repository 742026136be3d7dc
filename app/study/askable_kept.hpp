// What a quiz can ask, kept in a file, so that it is found out once for a knowledge and a program and not at
// every look at a learner. May not know records: the file can be thrown away at any time.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/study/items.hpp"

namespace hardover::study {

// As askable_stems(), from `file` where that was written by this very program (the hash of its bytes) for
// this knowledge (the hash of its files, and the odds in use) and this seed; else found out, and written.
// A file that is damaged, is not there or cannot be written costs time and changes nothing.
std::vector<Stem> askable_kept(const Portraits& portraits, std::uint64_t seed, const std::string& file);

}  // namespace hardover::study

// An invented class that took three sets over an invented term: roster, sets and hand-ins as real files, made
// and merged by the same functions as those of a real class. Knows no folder and no clock.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/classroom/merge.hpp"
#include "app/study/portrait.hpp"

namespace hardover::classroom {

inline constexpr int demo_seats = 20;
// In the open, since the class is invented.
inline constexpr const char* demo_passphrase = "invented class without secrets";

struct DemoClass {
    StoredClass of;
    std::string roster_csv;
    std::vector<NamedText> sets;      // files, by the names they are given out under
    std::vector<NamedText> hand_ins;  // files, seat after seat; two are missing
};
// Makes class, roster and sets in the store; the hand-ins are not merged yet. The same seed gives the same
// answers. Errors: those of the store and of make_set.
Result<DemoClass> make_demo(ClassStore& store, const study::Portraits& portraits, std::uint64_t seed);

}  // namespace hardover::classroom

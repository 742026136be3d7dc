// An invented class that took three sets over an invented term: roster, sets and hand-ins as real files, made
// and merged by the same functions as those of a real class. Knows no folder and no clock.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/classroom/class_results.hpp"
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
// answers. `watched` is called from several threads; told to stop, it leaves hand-ins out. Errors: those of
// the store and of make_set.
Result<DemoClass> make_demo(ClassStore& store, const study::Portraits& portraits, std::uint64_t seed,
                            const Watched& watched = {});

// The class's hand-ins merged into the store and marked, as a real class's are. Errors: those of the store.
Result<MarkedClass> demo_results(ClassStore& store, const DemoClass& demo, const study::Portraits& portraits,
                                 int threads = 0, const Watched& watched = {});

}  // namespace hardover::classroom

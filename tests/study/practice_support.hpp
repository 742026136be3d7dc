// Practice boats of the shipped knowledge, for tests.
#pragma once

#include "app/study/practice_players.hpp"
#include "shipped.hpp"
#include "support.hpp"

namespace hardover_tests {

inline const hardover::PreparedKnowledge& prepared() {
    static const hardover::PreparedKnowledge all(shipped());
    return all;
}

inline std::shared_ptr<const hardover::study::PracticeBoat> practice_boat(std::uint64_t seed, int level) {
    const auto boat = hardover::study::make_practice_boat(prepared(), seed, level);
    REQUIRE_OK(boat);
    return boat.value();
}

inline hardover::study::practice::Session session_on(
    const std::shared_ptr<const hardover::study::PracticeBoat>& boat,
    hardover::study::practice::Guidance guidance = hardover::study::practice::Guidance::unaided) {
    hardover::study::practice::Begun begun;
    begun.seed = boat->seed;
    begun.level = boat->level;
    begun.guidance = guidance;
    begun.knowledge = shipped().fingerprint;
    return {prepared(), boat, begun};
}

}  // namespace hardover_tests

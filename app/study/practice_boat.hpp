// A practice boat: rig, history, customer's words and hidden faults, made from a seed and a level. Answers
// come from the numeric boat where it computes them and from the knowledge's odds where it does not; the same
// question has the same answer. Knows no learner and no marks.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "app/jobs/simulated_boat.hpp"
#include "app/rig/boat.hpp"
#include "app/rig/faults.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover::study {

struct PracticeLevel {
    int level = 1;
    std::string name;  // "Everyday fault, plain rig"
    std::string what;  // what such a boat may have, in a sentence or two
};

inline constexpr int least_level = 1;
inline constexpr int most_level = 5;
// From the easiest up. What is everyday and what is rare goes by the odds of the causes that a rig can have:
// the first half of all comebacks, and the last tenth.
const std::vector<PracticeLevel>& practice_levels();

// One finding as the boat answers it.
struct BoatAnswer {
    Index finding = none;
    Answer answer;
};

class PracticeBoat : public SimulatedBoat {
  public:
    std::uint64_t seed = 0;
    int level = 1;
    Index complaint = none;
    std::string words;  // the customer's own
    rig::Boat rig;

    // What looking, feeling or measuring gives. A finding that a worksheet gives is answered by its open
    // measurements; where the numeric boat lacks one of them, by the reading itself.
    std::vector<BoatAnswer> answers(Index finding, const std::vector<bool>& gone) const;

    int reading(Index finding, const std::vector<bool>& gone) const override;

    // The faults that are left, as the numeric boat has them.
    rig::Faults faults_left(const std::vector<bool>& gone) const;

  private:
    friend class BoatMaker;
    using Gauged = std::map<Index, Answer>;

    Answer answer(Index finding, const std::vector<bool>& gone) const;
    const Answer* gauged(Index finding, const std::vector<bool>& gone) const;
    void measure(Index measured, const std::vector<bool>& gone, std::vector<BoatAnswer>& given) const;
    bool goes_by_odds(Index result, const std::vector<bool>& gone) const;
    const Finding& finding_at(Index finding) const;

    const Knowledge* knowledge_ = nullptr;
    DrawnBoat by_odds_;                           // what the numeric boat does not compute
    std::map<std::vector<bool>, Gauged> gauges_;  // by the faults that are gone
    std::vector<int> misread_;                    // per finding: what is read instead; -1: read rightly
    std::vector<rig::Faults> on_the_rig_;         // per subset of faults, in binary
};

// Error unsupported: no boat of this level came out in a fair number of tries (a knowledge base with few
// causes); bad_input: no such level.
Result<std::shared_ptr<const PracticeBoat>> make_practice_boat(const PreparedKnowledge& prepared,
                                                               std::uint64_t seed, int level);

}  // namespace hardover::study

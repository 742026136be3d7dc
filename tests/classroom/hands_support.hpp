// A boat in the class's hands, on the shipped knowledge, for tests.
#pragma once

#include "app/classroom/hands_page.hpp"
#include "app/study/practice_begin.hpp"
#include "shipped.hpp"

namespace hardover_tests {

inline const hardover::PreparedKnowledge& prepared_shipped() {
    static const hardover::PreparedKnowledge prepared(shipped());
    return prepared;
}

inline hardover::study::practice::Begun class_begun(std::uint64_t seed, int level) {
    return {seed, level, hardover::study::practice::Guidance::unaided, shipped().fingerprint, 20000};
}

inline hardover::classroom::ShowOfHands class_boat(std::uint64_t seed = 7, int level = 2) {
    auto session = hardover::study::practice::session_of(prepared_shipped(), class_begun(seed, level), {});
    REQUIRE_OK(session);
    return hardover::classroom::ShowOfHands(std::move(session.value()));
}

// What is agreed on is done, with its cautions read out.
inline std::vector<hardover::classroom::ClassEvent> events_to_do(
    const hardover::classroom::ShowOfHands& boat) {
    using namespace hardover::study::practice;
    std::vector<hardover::classroom::ClassEvent> events;
    for (const CautionQuestion& question : caution_questions(boat.session(), *boat.agreed())) {
        Precautions said{question.work, {}, false};
        for (const hardover::CautionText& caution : question.cautions) said.named.push_back(caution.id);
        events.emplace_back(PracticeEvent(said));
    }
    events.emplace_back(*boat.agreed());
    return events;
}

}  // namespace hardover_tests

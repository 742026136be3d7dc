#include "app/study/practice_begin.hpp"

#include <fmt/format.h>

namespace hardover::study::practice {

namespace {

const char* guidance_words(Guidance guidance) {
    switch (guidance) {
        case Guidance::worked:
            return "worked through with you";
        case Guidance::half:
            return "the expert leads until one cause stands out";
        case Guidance::nudged:
            return "with a nudge before every step";
        case Guidance::unaided:
            break;
    }
    return "on your own, help when you ask for it";
}

}  // namespace

Result<Session> session_of(const PreparedKnowledge& prepared, const Begun& begun,
                           const std::vector<PracticeEvent>& events) {
    if (begun.knowledge != prepared.knowledge().fingerprint) {
        return Error{Error::Kind::unsupported,
                     "this boat was made with other knowledge than today's and would answer differently", "",
                     "begin a new boat, or use the knowledge of that day"};
    }
    const auto boat = make_practice_boat(prepared, begun.seed, begun.level);
    if (!boat) return boat.error();
    return replay(prepared, boat.value(), begun, events);
}

Result<BoatInHand> begin_boat(const PreparedKnowledge& prepared, const BoatWish& wish, Record* record,
                              const std::string& at) {
    const Plan plan = plan_next(record != nullptr ? &record->boats() : nullptr, wish.level);
    Begun begun;
    begun.seed = wish.seed;
    begun.level = plan.level;
    begun.guidance = wish.guidance.value_or(plan.guidance);
    begun.knowledge = prepared.knowledge().fingerprint;
    begun.day = wish.day;
    Result<Session> session = session_of(prepared, begun, {});
    if (!session) return session.error();
    int number = 0;
    if (record != nullptr) {
        const Result<int> begun_as = record->begin(begun, at);
        if (!begun_as) return begun_as.error();
        number = begun_as.value();
    }
    return BoatInHand{std::move(session).value(), number};
}

StartPage make_start_page(const Record* record) {
    StartPage page;
    for (const PracticeLevel& level : practice_levels()) {
        page.levels.push_back({level.level, fmt::format("{}. {}", level.level, level.name), level.what});
    }
    const Plan plan = plan_next(record != nullptr ? &record->boats() : nullptr, std::nullopt);
    page.next = fmt::format("Level {}, {}.", plan.level, guidance_words(plan.guidance));
    page.why = plan.why;
    const RecordedBoat* open = record != nullptr ? record->unfinished() : nullptr;
    if (open != nullptr) {
        page.unfinished = fmt::format("Practice boat {}, level {}", open->begun.seed, open->begun.level);
    }
    return page;
}

}  // namespace hardover::study::practice

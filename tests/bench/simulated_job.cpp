#include "bench/simulated_job.hpp"

#include <algorithm>

namespace hardover_bench {

using namespace hardover;

namespace {

constexpr int most_steps = 300;

// All that a technician who does what comes next looks at.
constexpr Detail ranking_and_next_step{false, false, false};

bool is_fault(const Knowledge& knowledge, const Boat& boat, const std::string& cause) {
    return std::any_of(boat.faults.begin(), boat.faults.end(), [&](Index fault) {
        return knowledge.causes[static_cast<std::size_t>(fault)].id == cause;
    });
}

void hand_over(const Knowledge& knowledge, const Knowledge& reasoner, const Boat& boat, const Assessment& now,
               JobDone& done) {
    const auto right = [&](std::size_t place) {
        return place < now.ranking.size() &&
               is_fault(knowledge, boat,
                        reasoner.causes[static_cast<std::size_t>(now.ranking[place].cause)].id);
    };
    done.handed_over = now.next.kind;
    done.proved = now.ranking.front().proved;
    done.first_right = right(0);
    done.in_first_three = right(0) || right(1) || right(2);
    done.first_probability = now.ranking.front().probability;
    for (std::size_t n = 0; n < std::min<std::size_t>(3, now.ranking.size()); ++n) {
        const std::string& id = reasoner.causes[static_cast<std::size_t>(now.ranking[n].cause)].id;
        const auto known = std::find_if(knowledge.causes.begin(), knowledge.causes.end(),
                                        [&](const Cause& cause) { return cause.id == id; });
        done.first_three.push_back(static_cast<Index>(known - knowledge.causes.begin()));
    }
    done.not_listed_on_top = says_not_listed(now);
}

}  // namespace

JobDone do_job(const PreparedKnowledge& prepared, const PreparedKnowledge& reasoner, const Boat& boat) {
    const Knowledge& knowledge = prepared.knowledge();
    JobDone done;
    Technician technician(knowledge, boat);
    bool handed_over = false;
    for (int n = 0; n < most_steps && !done.cured && !done.help_called; ++n) {
        const Assessment now = assess(reasoner, technician.facts(), ranking_and_next_step);
        const NextStep::Kind kind = now.next.kind;
        const bool asks =
            kind == NextStep::Kind::ask || kind == NextStep::Kind::check || kind == NextStep::Kind::prove;
        if (!asks && !handed_over) {
            handed_over = true;
            hand_over(knowledge, reasoner.knowledge(), boat, now, done);
            done.questions = technician.questions();
        }
        if (!asks && !done.not_listed_said && says_not_listed(now)) {
            done.not_listed_said = true;
            done.wrong_before_said = done.wrong_remedies;
        }
        if (asks) {
            technician.answer(now.next);
        } else if (kind == NextStep::Kind::remedy) {
            if (!technician.apply(now.next.index, now.next.minutes)) ++done.wrong_remedies;
        } else {
            done.cured = kind == NextStep::Kind::done;
            done.help_called = !done.cured;
        }
    }
    if (done.help_called) technician.call_for_help();
    done.minutes = technician.minutes();
    done.minutes_of_know_all = minutes_of_know_all(knowledge, boat);
    return done;
}

std::vector<Facts> moments_of_job(const PreparedKnowledge& prepared, const Boat& boat) {
    const Knowledge& knowledge = prepared.knowledge();
    std::vector<Facts> moments{boat.told};
    Technician technician(knowledge, boat);
    for (int n = 0; n < most_steps; ++n) {
        const NextStep next = assess(prepared, technician.facts(), ranking_and_next_step).next;
        if (next.kind == NextStep::Kind::stop_asking || next.kind == NextStep::Kind::done) break;
        if (next.kind == NextStep::Kind::remedy) {
            technician.apply(next.index, next.minutes);
        } else {
            technician.answer(next);
        }
        moments.push_back(technician.facts());
    }
    return moments;
}

}  // namespace hardover_bench

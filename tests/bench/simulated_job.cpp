#include "bench/simulated_job.hpp"

#include <algorithm>
#include <set>

#include "rules/reasoning/effort.hpp"

namespace hardover_bench {

using namespace hardover;

namespace {

constexpr int most_steps = 300;

// All that a technician who does what comes next looks at.
constexpr Detail ranking_and_next_step{false, false};

// The technician: keeps what has been told, and the minutes.
class Technician {
  public:
    Technician(const Knowledge& knowledge, const Boat& boat)
        : knowledge_(knowledge), boat_(boat), facts_(boat.told), gone_(boat.faults.size(), false) {}

    const Facts& facts() const { return facts_; }
    double minutes() const { return minutes_; }
    int questions() const { return questions_; }

    void answer(const NextStep& step) {
        std::vector<Index> wanted = step.findings;
        if (wanted.empty() && step.kind == NextStep::Kind::ask) wanted.push_back(step.index);
        for (Index finding : wanted) answer(finding);
    }

    // The plain measurements of a worksheet are answered by the reading its result gives.
    void answer(Index finding) {
        const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
        if (facts_.answers.contains(finding)) return;
        spend(f);
        ++questions_;
        if (!f.readings.empty()) {
            facts_.answers[finding] = Answer{boat_.reading(finding, gone_)};
            return;
        }
        facts_.answers[finding] = Answer{CannotTell{}};
        for (std::size_t other = 0; other < knowledge_.findings.size(); ++other) {
            const auto result = static_cast<Index>(other);
            if (boat_.makes_sense[other] && worked_out_from(knowledge_.findings[other], finding)) {
                facts_.answers[result] = Answer{boat_.reading(result, gone_)};
            }
        }
    }

    // True when it was the remedy of a fault that was still there.
    bool apply(Index remedy, double minutes) {
        minutes_ += minutes;
        bool helped = false;
        bool left = boat_.unlisted;
        for (std::size_t n = 0; n < gone_.size(); ++n) {
            const Cause& cause = knowledge_.causes[static_cast<std::size_t>(boat_.faults[n])];
            if (!gone_[n] && cause.remedy == remedy) gone_[n] = helped = true;
            left = left || !gone_[n];
        }
        facts_.tried[remedy] = !left ? Outcome::cured : helped ? Outcome::better : Outcome::not_cured;
        return helped;
    }

    void call_for_help() { minutes_ += knowledge_.settings.call_for_help; }

  private:
    bool worked_out_from(const Finding& result, Index measured) const {
        if (!result.from || result.readings.empty()) return false;
        const Worksheet& sheet = knowledge_.worksheets[static_cast<std::size_t>(result.from->worksheet)];
        return std::any_of(sheet.inputs.begin(), sheet.inputs.end(),
                           [&](const WorksheetInput& input) { return input.finding == measured; });
    }

    void spend(const Finding& finding) {
        minutes_ += std::max(least_minutes, finding.minutes);
        if (finding.check == none || !set_up_.insert(finding.check).second) return;
        minutes_ += knowledge_.checks[static_cast<std::size_t>(finding.check)].minutes;
    }

    const Knowledge& knowledge_;
    const Boat& boat_;
    Facts facts_;
    std::vector<bool> gone_;
    std::set<Index> set_up_;
    double minutes_ = 0;
    int questions_ = 0;
};

// Straight to each fault: its proof, when that takes less than the remedy, and the remedy.
double minutes_of_know_all(const PreparedKnowledge& prepared, const Boat& boat) {
    const Knowledge& knowledge = prepared.knowledge();
    Situation situation(prepared, boat.told);
    const Fired fired = fire(knowledge, situation);
    const DiagnosisCase diagnosis(knowledge, boat.told, fired, situation);
    const Effort effort(knowledge, boat.told, situation, diagnosis);
    std::set<Index> remedies;
    double minutes = boat.unlisted ? knowledge.settings.call_for_help : 0;
    for (Index fault : boat.faults) {
        const Index remedy = knowledge.causes[static_cast<std::size_t>(fault)].remedy;
        if (!remedies.insert(remedy).second) continue;
        const double putting_right = effort.of_remedy(remedy);
        const std::optional<ProofEffort> proof = effort.of_proof(fault);
        minutes += putting_right + (proof && proof->minutes < putting_right ? proof->minutes : 0);
    }
    return minutes;
}

bool is_fault(const Knowledge& knowledge, const Boat& boat, const std::string& cause) {
    return std::any_of(boat.faults.begin(), boat.faults.end(), [&](Index fault) {
        return knowledge.causes[static_cast<std::size_t>(fault)].id == cause;
    });
}

bool says_not_listed(const Assessment& now) {
    return now.next.kind == NextStep::Kind::stop_asking || now.not_listed > now.ranking.front().probability;
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
    done.not_listed_on_top =
        now.next.kind == NextStep::Kind::stop_asking || now.not_listed > now.ranking.front().probability;
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
    done.minutes_of_know_all = minutes_of_know_all(prepared, boat);
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

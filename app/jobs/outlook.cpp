// Rankings as they would be, for drawing.
#include "app/jobs/outlook.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/jobs/explain.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reasoning/leading.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

constexpr std::size_t usual_causes = 3;
constexpr std::size_t most_causes = 5;  // where the answers lead to so many
constexpr double least_shown = 0.02;    // a cause less likely than this that no answer puts first is left out
constexpr std::size_t most_turns = 4;

// How the causes would stand after one more event.
Leading after(const PreparedKnowledge& prepared, const Job& job, const Event& event) {
    auto events = job.events;
    StoredEvent stored = to_stored(event);
    stored.sequence = events.empty() ? 1 : events.back().sequence + 1;
    events.push_back(std::move(stored));
    return leading(prepared, replay_facts(prepared.knowledge(), job.number, std::move(events)).facts);
}

struct Outcomes {
    std::vector<int> readings;
    std::vector<Leading> then;
    std::vector<double> chances;
};

Outcomes outcomes_of(const PreparedKnowledge& prepared, const Job& job, Index finding) {
    const Finding& entry = prepared.knowledge().findings[finding];
    Outcomes outcomes;
    for (std::size_t r = 0; r < entry.readings.size(); ++r) {
        Leading then = after(prepared, job, Answered{entry.id, entry.readings[r].id});
        if (then.first == none) continue;
        outcomes.readings.push_back(static_cast<int>(r));
        outcomes.then.push_back(std::move(then));
    }
    double sum = 0;
    for (const Leading& then : outcomes.then) {
        outcomes.chances.push_back(std::exp(then.log_evidence - outcomes.then.front().log_evidence));
        sum += outcomes.chances.back();
    }
    for (double& chance : outcomes.chances) chance /= sum;
    return outcomes;
}

// Each answer's first cause, the likeliest answer's before the others, filled up with the first ones now.
std::vector<Index> causes_to_show(const Leading& now, const Outcomes& outcomes) {
    std::vector<std::size_t> answers(outcomes.then.size());
    std::iota(answers.begin(), answers.end(), std::size_t{0});
    std::stable_sort(answers.begin(), answers.end(), [&outcomes](std::size_t a, std::size_t b) {
        return outcomes.chances[a] > outcomes.chances[b];
    });
    std::vector<Index> ranked(now.all.size());
    std::iota(ranked.begin(), ranked.end(), Index{0});
    const auto likelier = [&now](Index a, Index b) {
        return now.all[static_cast<std::size_t>(a)] > now.all[static_cast<std::size_t>(b)];
    };
    std::stable_sort(ranked.begin(), ranked.end(), likelier);
    std::vector<Index> causes;
    const auto add = [&causes](Index cause, std::size_t most) {
        if (causes.size() >= most) return;
        if (std::find(causes.begin(), causes.end(), cause) == causes.end()) causes.push_back(cause);
    };
    for (const std::size_t answer : answers) add(outcomes.then[answer].first, most_causes);
    for (const Index cause : ranked) {
        if (now.all[static_cast<std::size_t>(cause)] >= least_shown) add(cause, usual_causes);
    }
    std::stable_sort(causes.begin(), causes.end(), likelier);
    return causes;
}

}  // namespace

QuestionOutlook question_outlook(const PreparedKnowledge& prepared, const Job& job, Index finding) {
    QuestionOutlook outlook;
    if (finding == none) return outlook;
    const Knowledge& knowledge = prepared.knowledge();
    outlook.name = knowledge.findings[finding].name;
    const Leading now = leading(prepared, job.facts);
    if (now.first == none) return outlook;
    const Outcomes outcomes = outcomes_of(prepared, job, finding);
    const std::vector<Index> causes = causes_to_show(now, outcomes);
    for (std::size_t i = 0; i < outcomes.then.size(); ++i) {
        AnswerOutlook answer;
        answer.answer =
            knowledge.findings[finding].readings[static_cast<std::size_t>(outcomes.readings[i])].text;
        answer.chance = outcomes.chances[i];
        answer.chance_text = percent_text(answer.chance);
        for (const Index cause : causes) {
            const auto at = static_cast<std::size_t>(cause);
            const double before = now.all[at], then = outcomes.then[i].all[at];
            answer.causes.push_back({cause_name(knowledge, cause), before, then, percent_text(before),
                                     percent_text(then), outcomes.then[i].first == cause});
        }
        outlook.answers.push_back(std::move(answer));
    }
    return outlook;
}

TurningSketch turning_sketch(const Knowledge& knowledge, const Turning& turning) {
    TurningSketch sketch;
    if (turning.first == none) {
        sketch.nothing = turning_texts(knowledge, turning);
        return sketch;
    }
    sketch.first = cause_name(knowledge, turning.first);
    sketch.probability = turning.probability;
    sketch.probability_text = percent_text(turning.probability);
    const auto add = [&](const std::vector<Turn>& turns, bool of_given) {
        for (std::size_t i = 0; i < std::min(turns.size(), most_turns); ++i) {
            const Turn& turn = turns[i];
            sketch.turns.push_back({turn_condition(knowledge, turn, of_given), of_given, turn.chance,
                                    of_given ? "" : percent_text(turn.chance),
                                    cause_name(knowledge, turn.first), turn.first_probability,
                                    percent_text(turn.first_probability)});
        }
    };
    add(turning.by_answering, false);
    add(turning.if_wrong, true);
    if (turning.by_answering.empty()) sketch.nothing.push_back(no_open_turn);
    if (turning.if_wrong.empty()) sketch.nothing.push_back(no_wrong_turn);
    return sketch;
}

}  // namespace hardover

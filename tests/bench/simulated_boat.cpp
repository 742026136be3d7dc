// Boats drawn from the knowledge, and the knowledge with something taken away.
#include <algorithm>
#include <cmath>

#include "bench/simulated_job.hpp"
#include "rules/reasoning/diagnosis_case.hpp"

namespace hardover_bench {

using namespace hardover;
using hardover_tests::Chance;

namespace {

constexpr int most_tries = 200000;

RigValue random_value(const RigField& field, Chance& chance) {
    if (!field.choices.empty()) {
        return field
            .choices[static_cast<std::size_t>(chance.upto(static_cast<int>(field.choices.size()) - 1))]
            .id;
    }
    if (!field.least || !field.most) return std::get<Quantity>(field.assumed);
    Quantity value = *field.least;
    if (value.dimension.is_number()) {
        value.value += chance.upto(static_cast<int>(field.most->value - field.least->value));
    } else {
        value.value = std::sqrt(field.least->value * field.most->value);
    }
    return value;
}

Facts random_rig(const Knowledge& knowledge, Chance& chance) {
    Facts facts;
    std::vector<double> shares;
    for (const History& history : knowledge.histories) shares.push_back(history.share);
    facts.history = draw_index(shares, [&] { return chance.between(0, 1); });
    for (std::size_t f = 0; f < knowledge.rig_fields.size(); ++f) {
        facts.rig[static_cast<Index>(f)] = random_value(knowledge.rig_fields[f], chance);
    }
    // The yard puts the boat where a check needs her, as it has the helper and the gauges that checks need.
    facts.rig.erase(find(knowledge.rig_fields, "lies"));
    return facts;
}

void draw_faults(const FaultCase& given, Index must_have, Chance& chance, Boat& boat) {
    boat.faults.clear();
    for (std::size_t i = 0; i < given.prior.size(); ++i) {
        const bool present = chance.between(0, 1) < given.prior[i];
        if (present || static_cast<Index>(i) == must_have) boat.faults.push_back(static_cast<Index>(i));
    }
    boat.unlisted = chance.between(0, 1) < given.unlisted_prior;
}

// Keeps a history and rig as often as the cause turns up in them.
bool accepted(const Knowledge& knowledge, const FaultCase& given, Index cause, Chance& chance) {
    const Cause& c = knowledge.causes[static_cast<std::size_t>(cause)];
    const double most = *std::max_element(c.odds.begin(), c.odds.end()) / 1000;
    return chance.between(0, most) < given.prior[static_cast<std::size_t>(cause)];
}

bool shows(const Complaint& complaint, const Boat& boat) {
    const std::vector<bool> none_gone(boat.faults.size(), false);
    return std::all_of(complaint.says.begin(), complaint.says.end(), [&](const auto& says) {
        return boat.makes_sense[static_cast<std::size_t>(says.first)] &&
               boat.reading(says.first, none_gone) == says.second;
    });
}

bool shown_by_a_fault(const Complaint& complaint, const Boat& boat) {
    for (std::size_t s = 0; s < boat.shown_by.size(); ++s) {
        if (s == boat.faults.size()) continue;  // stray
        for (const auto& [finding, reading] : complaint.says) {
            if (boat.shown_by[s][static_cast<std::size_t>(finding)] <= reading) return true;
        }
    }
    return false;
}

}  // namespace

std::optional<Boat> draw_boat(const PreparedKnowledge& prepared, Chance& chance, Index must_have) {
    const Knowledge& knowledge = prepared.knowledge();
    for (int tries = 0; tries < most_tries;) {
        Boat boat;
        boat.told = random_rig(knowledge, chance);
        Situation situation(prepared, boat.told);
        const Fired fired = fire(knowledge, situation);
        const DiagnosisCase diagnosis(knowledge, boat.told, fired, situation);
        const FaultCase given = diagnosis.with_all();
        for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
            boat.makes_sense.push_back(diagnosis.makes_sense(static_cast<Index>(f)));
        }
        if (must_have != none && !accepted(knowledge, given, must_have, chance)) {
            ++tries;
            continue;
        }
        for (; tries < most_tries; ++tries) {
            draw_faults(given, must_have, chance, boat);
            if (boat.faults.empty() && !boat.unlisted) continue;
            const Index complaint = chance.upto(static_cast<int>(knowledge.complaints.size()) - 1);
            boat.draw_readings(*prepared.network({complaint}), [&] { return chance.between(0, 1); });
            const Complaint& told = knowledge.complaints[static_cast<std::size_t>(complaint)];
            if (!shows(told, boat)) continue;
            boat.told.complaints = {complaint};
            boat.complaint_from_a_fault = shown_by_a_fault(told, boat);
            return boat;
        }
    }
    return std::nullopt;
}

Knowledge without_cause(Knowledge knowledge, Index cause) {
    knowledge.causes.erase(knowledge.causes.begin() + cause);
    for (Cause& other : knowledge.causes) {
        std::erase(other.comes_from, cause);
        for (Index& origin : other.comes_from) origin -= origin > cause ? 1 : 0;
    }
    for (Rule& rule : knowledge.rules) {
        std::erase_if(rule.then, [&](const Action& action) {
            const bool about = action.kind == Action::Kind::favour || action.kind == Action::Kind::rule_out;
            return about && action.target == cause;
        });
        for (Action& action : rule.then) {
            const bool about = action.kind == Action::Kind::favour || action.kind == Action::Kind::rule_out;
            if (about && action.target > cause) --action.target;
        }
    }
    return knowledge;
}

Knowledge without_favours(Knowledge knowledge) {
    for (Rule& rule : knowledge.rules) {
        std::erase_if(rule.then, [](const Action& action) {
            return action.kind == Action::Kind::favour || action.kind == Action::Kind::rule_out;
        });
    }
    return knowledge;
}

}  // namespace hardover_bench

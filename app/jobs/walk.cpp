#include "app/jobs/walk.hpp"

#include <algorithm>
#include <memory>
#include <random>
#include <set>

#include "app/jobs/walk_setting.hpp"
#include "rules/reasoning/check_cautions.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

constexpr int most_steps = 300;
constexpr std::size_t most_leading = 3;
constexpr int most_draws = 20000;

// Each finding shows the reading that is most likely with the faults that are left; what the customer has
// told stays as it was told while a fault is left that can show it, and so does what is asked about it.
struct TypicalBoat : SimulatedBoat {
    FaultNetwork network;
    std::vector<std::pair<Index, int>> told_readings;
    std::vector<Index> details;  // of the complaint

    int reading(Index finding, const std::vector<bool>& gone) const override {
        std::vector<double> chances = chances_of(network, faults, gone, finding);
        const bool is_detail = std::find(details.begin(), details.end(), finding) != details.end();
        if (is_detail && still_complained_of(gone)) chances.pop_back();
        for (const auto& [told_finding, reading] : told_readings) {
            if (told_finding == finding && still_shown(finding, reading, gone)) return reading;
        }
        return static_cast<int>(std::max_element(chances.begin(), chances.end()) - chances.begin());
    }

  private:
    bool still_complained_of(const std::vector<bool>& gone) const {
        return std::all_of(told_readings.begin(), told_readings.end(),
                           [&](const auto& told) { return still_shown(told.first, told.second, gone); });
    }

    // By a fault that is left; or, when no fault shows it, by stray chance.
    bool still_shown(Index finding, int reading, const std::vector<bool>& gone) const {
        bool by_any = false;
        for (std::size_t n = 0; n < faults.size(); ++n) {
            for (const FaultLink& link : network.causes[static_cast<std::size_t>(faults[n])]) {
                if (link.finding != finding || link.how_often[static_cast<std::size_t>(reading)] <= 0)
                    continue;
                if (!gone[n]) return true;
                by_any = true;
            }
        }
        return !by_any;
    }
};

bool shows_all(const SimulatedBoat& boat, const Complaint& complaint) {
    const std::vector<bool> none_gone(boat.faults.size(), false);
    return std::all_of(complaint.says.begin(), complaint.says.end(),
                       [&](const auto& says) { return boat.reading(says.first, none_gone) == says.second; });
}

// What the customer and the data plate tell, and the chance of it.
struct Intake {
    Facts told;
    FaultNetwork network;
    std::vector<bool> makes_sense;
    std::vector<ComplaintChance> complaints;
    ComplaintChance chosen;
};

Result<ComplaintChance> choose_complaint(const Knowledge& knowledge, const std::string& wished,
                                         const std::vector<ComplaintChance>& complaints) {
    if (complaints.empty()) {
        return Error{Error::Kind::bad_input, "no complaint makes sense on this rig", "", "give another rig"};
    }
    if (wished.empty()) return complaints.front();
    std::vector<std::string> ids;
    for (const ComplaintChance& chance : complaints) {
        ids.push_back(knowledge.complaints[static_cast<std::size_t>(chance.complaint)].id);
        if (ids.back() == wished) return chance;
    }
    const bool known = find(knowledge.complaints, wished) != none;
    return Error{Error::Kind::not_found,
                 known ? "the complaint '" + wished + "' makes no sense on this rig"
                       : "there is no complaint '" + wished + "'",
                 "", known ? "give another rig" : did_you_mean(wished, ids)};
}

Result<Intake> take_in(const Knowledge& knowledge, const WalkWish& wish, const std::vector<Index>& faults) {
    Intake intake;
    const Result<Facts> told = setting_for(knowledge, wish, faults);
    if (!told) return told.error();
    intake.told = told.value();
    Situation situation(knowledge, intake.told);
    const Fired fired = fire(knowledge, situation);
    const DiagnosisCase diagnosis(knowledge, intake.told, fired, situation);
    intake.network = diagnosis.network();
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        intake.makes_sense.push_back(diagnosis.makes_sense(static_cast<Index>(f)));
    }
    intake.complaints = complaints_of(knowledge, intake.network, faults, intake.makes_sense);
    const Result<ComplaintChance> chosen = choose_complaint(knowledge, wish.complaint, intake.complaints);
    if (!chosen) return chosen.error();
    intake.chosen = chosen.value();
    intake.told.complaints = {intake.chosen.complaint};
    return intake;
}

template <typename B>
std::unique_ptr<B> boat_in(const Intake& intake, const std::vector<Index>& faults) {
    auto boat = std::make_unique<B>();
    boat->told = intake.told;
    boat->faults = faults;
    boat->makes_sense = intake.makes_sense;
    return boat;
}

Result<std::unique_ptr<SimulatedBoat>> boat_for(const Knowledge& knowledge, const WalkWish& wish,
                                                const Intake& intake, const std::vector<Index>& faults) {
    const Complaint& complaint = knowledge.complaints[static_cast<std::size_t>(intake.chosen.complaint)];
    if (!wish.seed) {
        auto boat = boat_in<TypicalBoat>(intake, faults);
        boat->network = intake.network;
        boat->told_readings = complaint.says;
        boat->details = details_of(knowledge, intake.chosen.complaint);
        return std::unique_ptr<SimulatedBoat>(std::move(boat));
    }
    std::mt19937 engine(*wish.seed);
    const auto uniform = [&] { return static_cast<double>(engine()) / 4294967296.0; };
    auto boat = boat_in<DrawnBoat>(intake, faults);
    for (int n = 0; n < most_draws; ++n) {
        boat->draw_readings(intake.network, uniform);
        if (!shows_all(*boat, complaint)) continue;
        boat->agree_with(knowledge, intake.network, intake.chosen.complaint, uniform);
        return std::unique_ptr<SimulatedBoat>(std::move(boat));
    }
    return Error{Error::Kind::bad_input,
                 "no boat with these faults was drawn that brings '" + complaint.id + "'", "",
                 "give another complaint, or no seed"};
}

// Carries on from one assessment to the next and notes what is new.
class Path {
  public:
    explicit Path(const PreparedKnowledge& prepared)
        : prepared_(prepared), knowledge_(prepared.knowledge()) {}

    void note(const Assessment& now, WalkStep& step) {
        for (const RankedCause& ranked : now.ranking) {
            if (step.leading.size() == most_leading || ranked.probability <= 0) break;
            step.leading.push_back({ranked.cause, ranked.probability, ranked.proved});
        }
        step.not_listed = now.not_listed;
        for (const FiredRule& fired : now.fired) {
            if (rules_.insert(fired.rule).second) step.rules.push_back(fired.rule);
        }
        for (const Index stop : now.stops) {
            if (stops_.insert(stop).second) step.stops.push_back(stop);
        }
    }

    std::vector<Index> cautions_of(const NextStep& step, const Facts& facts) const {
        switch (step.kind) {
            case NextStep::Kind::check:
            case NextStep::Kind::prove:
                return cautions_of_check(prepared_, facts, step.index);
            case NextStep::Kind::remedy:
                return knowledge_.remedies[static_cast<std::size_t>(step.index)].cautions;
            default:
                return {};
        }
    }

  private:
    const PreparedKnowledge& prepared_;
    const Knowledge& knowledge_;
    std::set<Index> rules_;
    std::set<Index> stops_;
};

// Does the step; true when it was a remedy before whose fault was proved, or no remedy at all.
bool take_step(Technician& technician, const Assessment& now, WalkStep& step, Walk& walk) {
    if (step.step.kind != NextStep::Kind::remedy) {
        step.answers = technician.answer(step.step);
        return true;
    }
    step.was_present = technician.apply(step.step.index, step.step.minutes);
    step.outcome = technician.facts().tried.at(step.step.index);
    if (!step.was_present) ++walk.wrong_remedies;
    return !step.was_present || now.ranking.front().proved;
}

void walk_on(const Knowledge& knowledge, const SimulatedBoat& boat, Walk& walk) {
    Technician technician(knowledge, boat);
    const PreparedKnowledge prepared(knowledge);
    Path path(prepared);
    const Detail no_more{false, false};
    Assessment now = assess(prepared, technician.facts(), no_more);
    path.note(now, walk.start);
    walk.proved_first = true;
    while (static_cast<int>(walk.steps.size()) < most_steps) {
        if (now.next.kind == NextStep::Kind::done || now.next.kind == NextStep::Kind::stop_asking) {
            walk.end = now.next.kind == NextStep::Kind::done ? Walk::End::cured : Walk::End::help_called;
            break;
        }
        WalkStep step;
        step.step = now.next;
        step.cautions = path.cautions_of(step.step, technician.facts());
        walk.proved_first = take_step(technician, now, step, walk) && walk.proved_first;
        step.minutes = technician.minutes();
        now = assess(prepared, technician.facts(), no_more);
        path.note(now, step);
        walk.steps.push_back(std::move(step));
    }
    if (walk.end == Walk::End::help_called) technician.call_for_help();
    walk.proved_first = walk.proved_first && walk.end == Walk::End::cured;
    walk.questions = technician.questions();
    walk.minutes = technician.minutes();
    walk.minutes_of_know_all = minutes_of_know_all(knowledge, boat);
}

}  // namespace

Result<Walk> walk_job(const Knowledge& knowledge, const WalkWish& wish) {
    const Result<std::vector<Index>> faults = faults_named(knowledge, wish.causes);
    if (!faults) return faults.error();
    const Result<Intake> intake = take_in(knowledge, wish, faults.value());
    if (!intake) return intake.error();
    const auto boat = boat_for(knowledge, wish, intake.value(), faults.value());
    if (!boat) return boat.error();
    Walk walk;
    walk.told = intake.value().told;
    walk.faults = faults.value();
    walk.complaints = intake.value().complaints;
    walk.complaint_chance = intake.value().chosen.chance;
    walk_on(knowledge, *boat.value(), walk);
    return walk;
}

}  // namespace hardover

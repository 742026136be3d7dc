#include "app/jobs/simulated_boat.hpp"

#include <algorithm>
#include <numeric>
#include <optional>

#include "app/jobs/replay.hpp"
#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/repairs.hpp"

namespace hardover {

namespace {

// "Always" leaves 0.03 for the sound reading; the few readings of a detail are rounded besides.
constexpr double as_good_as_never = 0.1;

bool makes_sense_with(const Finding& finding, const std::string& complaint) {
    return finding.possible_when.condition([&](const std::string& name) -> Value {
        if (name == "complaint") return Choice{{complaint}};
        return Unknown{};
    }) != Truth::no;
}

bool always_shown(const Knowledge& knowledge, Index finding) {
    bool shown = false;
    for (const Cause& cause : knowledge.causes) {
        for (const Shows& shows : cause.shows) {
            if (shows.finding != finding) continue;
            if (shows.how_often.back() > as_good_as_never) return false;
            shown = true;
        }
    }
    return shown;
}

}  // namespace

std::vector<Index> details_of(const Knowledge& knowledge, Index complaint) {
    const std::string& id = knowledge.complaints[static_cast<std::size_t>(complaint)].id;
    std::vector<Index> details;
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        const Finding& finding = knowledge.findings[f];
        const bool asks_more = makes_sense_with(finding, id) && !makes_sense_with(finding, "");
        if (asks_more && !finding.readings.empty() && always_shown(knowledge, static_cast<Index>(f)))
            details.push_back(static_cast<Index>(f));
    }
    return details;
}

int draw_index(const std::vector<double>& shares, const std::function<double()>& uniform) {
    double left = uniform();
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
        left -= shares[k];
        if (left < 0) return static_cast<int>(k);
    }
    return static_cast<int>(shares.size()) - 1;
}

void DrawnBoat::draw_readings(const FaultNetwork& network, const std::function<double()>& uniform) {
    shown_by.clear();
    std::vector<int> sound;
    for (const FaultNetwork::Finding& finding : network.findings) {
        sound.push_back(static_cast<int>(finding.stray.size()) - 1);
    }
    for (Index fault : faults) {
        std::vector<int>& shown = shown_by.emplace_back(sound);
        for (const FaultLink& link : network.causes[static_cast<std::size_t>(fault)]) {
            shown[static_cast<std::size_t>(link.finding)] = draw_index(link.how_often, uniform);
        }
    }
    std::vector<int>& stray = shown_by.emplace_back(sound);
    for (std::size_t f = 0; f < sound.size(); ++f) stray[f] = draw_index(network.findings[f].stray, uniform);
    if (!unlisted) return;
    std::vector<int>& other = shown_by.emplace_back(sound);
    for (std::size_t f = 0; f < sound.size(); ++f)
        other[f] = draw_index(network.findings[f].unlisted, uniform);
}

std::size_t DrawnBoat::shown_from(const FaultNetwork& network, const Complaint& complaint) const {
    std::size_t can_show = faults.size();
    for (std::size_t n = 0; n < faults.size(); ++n) {
        for (const auto& [finding, reading] : complaint.says) {
            if (shown_by[n][static_cast<std::size_t>(finding)] == reading) return n;
            for (const FaultLink& link : network.causes[static_cast<std::size_t>(faults[n])]) {
                const bool can =
                    link.finding == finding && link.how_often[static_cast<std::size_t>(reading)] > 0;
                if (can) can_show = std::min(can_show, n);
            }
        }
    }
    return can_show;
}

void DrawnBoat::agree_with(const Knowledge& knowledge, const FaultNetwork& network, Index complaint,
                           const std::function<double()>& uniform) {
    const std::size_t from = shown_from(network, knowledge.complaints[static_cast<std::size_t>(complaint)]);
    const std::vector<bool> none_gone(faults.size(), false);
    for (const Index detail : details_of(knowledge, complaint)) {
        std::vector<double> shares = network.findings[static_cast<std::size_t>(detail)].stray;
        const int sound = static_cast<int>(shares.size()) - 1;
        if (reading(detail, none_gone) != sound) continue;
        if (from < faults.size()) {
            for (const FaultLink& link : network.causes[static_cast<std::size_t>(faults[from])])
                if (link.finding == detail) shares = link.how_often;
        }
        shares.pop_back();
        const double bad = std::accumulate(shares.begin(), shares.end(), 0.0);
        if (bad <= 0) continue;
        for (double& share : shares) share /= bad;
        shown_by[from][static_cast<std::size_t>(detail)] = draw_index(shares, uniform);
    }
}

int DrawnBoat::reading(Index finding, const std::vector<bool>& gone) const {
    int worst = shown_by[faults.size()][static_cast<std::size_t>(finding)];
    for (std::size_t s = 0; s < shown_by.size(); ++s) {
        if (s < faults.size() && gone[s]) continue;
        worst = std::min(worst, shown_by[s][static_cast<std::size_t>(finding)]);
    }
    return worst;
}

bool worked_out_from(const Knowledge& knowledge, const Finding& result, Index measured) {
    if (!result.from || result.readings.empty()) return false;
    const Worksheet& sheet = knowledge.worksheets[static_cast<std::size_t>(result.from->worksheet)];
    return std::any_of(sheet.inputs.begin(), sheet.inputs.end(),
                       [&](const WorksheetInput& input) { return input.finding == measured; });
}

Technician::Technician(const Knowledge& knowledge, const SimulatedBoat& boat)
    : knowledge_(knowledge), boat_(boat), facts_(boat.told), gone_(boat.faults.size(), false) {}

std::vector<GivenAnswer> Technician::answer(const NextStep& step) {
    std::vector<Index> wanted = step.findings;
    if (wanted.empty() && step.kind == NextStep::Kind::ask) wanted.push_back(step.index);
    std::vector<GivenAnswer> given;
    for (Index finding : wanted) answer(finding, given);
    return given;
}

void Technician::answer(Index finding, std::vector<GivenAnswer>& given) {
    const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
    if (answered_now(facts_, finding)) return;
    spend(f);
    ++questions_;
    if (!f.readings.empty()) {
        given.push_back({finding, boat_.reading(finding, gone_)});
        jobs_detail::keep_answer(facts_, finding, Answer{given.back().reading}, present_stage(facts_));
        return;
    }
    given.push_back({finding, -1});
    jobs_detail::keep_answer(facts_, finding, Answer{CannotTell{}}, present_stage(facts_));
    for (std::size_t other = 0; other < knowledge_.findings.size(); ++other) {
        const auto result = static_cast<Index>(other);
        if (!boat_.makes_sense[other] || !worked_out_from(knowledge_, knowledge_.findings[other], finding))
            continue;
        const int reading = boat_.reading(result, gone_);
        if (!answered_now(facts_, result)) given.push_back({result, reading});
        jobs_detail::keep_answer(facts_, result, Answer{reading}, present_stage(facts_));
    }
}

bool Technician::apply(Index remedy, double minutes) {
    minutes_ += minutes;
    bool helped = false;
    bool left = boat_.unlisted;
    for (std::size_t n = 0; n < gone_.size(); ++n) {
        if (!gone_[n] && puts_right(knowledge_, remedy, boat_.faults[n])) gone_[n] = helped = true;
        left = left || !gone_[n];
    }
    facts_.tried_as[remedy] = present_stage(facts_) + 1;
    facts_.tried[remedy] = !left ? Outcome::cured : helped ? Outcome::better : Outcome::not_cured;
    return helped;
}

void Technician::spend(const Finding& finding) {
    minutes_ += std::max(least_minutes, finding.minutes);
    if (finding.check == none || !set_up_.insert(finding.check).second) return;
    minutes_ += knowledge_.checks[static_cast<std::size_t>(finding.check)].minutes;
}

double minutes_of_know_all(const Knowledge& knowledge, const SimulatedBoat& boat) {
    Situation situation(knowledge, boat.told);
    const Fired fired = fire(knowledge, situation);
    const DiagnosisCase diagnosis(knowledge, boat.told, fired, situation);
    const Effort effort(knowledge, boat.told, fired, situation, diagnosis);
    std::set<Index> remedies;
    double minutes = boat.unlisted ? knowledge.settings.call_for_help : 0;
    const std::vector<bool> needed = to_be_cured(knowledge, {boat.faults.begin(), boat.faults.end()});
    for (std::size_t n = 0; n < boat.faults.size(); ++n) {
        if (!needed[n]) continue;
        const Index fault = boat.faults[n];
        const Index remedy = knowledge.causes[static_cast<std::size_t>(fault)].remedy;
        if (!remedies.insert(remedy).second) continue;
        const double putting_right = effort.of_remedy(remedy);
        const std::optional<ProofEffort> proof = effort.of_proof(fault);
        minutes += putting_right + (proof && proof->minutes < putting_right ? proof->minutes : 0);
    }
    return minutes;
}

bool says_not_listed(const Assessment& now) {
    return now.next.kind == NextStep::Kind::stop_asking || now.not_listed > now.ranking.front().probability;
}

}  // namespace hardover

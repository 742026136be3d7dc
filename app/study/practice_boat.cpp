#include "app/study/practice_boat.hpp"

#include <algorithm>

#include "app/jobs/rig_boat.hpp"

namespace hardover::study {

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

std::size_t subset_of(const std::vector<bool>& gone) {
    std::size_t subset = 0;
    for (std::size_t n = 0; n < gone.size(); ++n) subset |= gone[n] ? 0 : std::size_t{1} << n;
    return subset;
}

}  // namespace

const std::vector<PracticeLevel>& practice_levels() {
    static const std::vector<PracticeLevel> levels{
        {1, "Everyday fault, plain rig",
         "One fault of the everyday kind. One drive, one helm, no autopilot. Nothing shows that the fault "
         "does not explain."},
        {2, "Everyday fault, any rig",
         "One fault of the everyday kind, on any rig. Nothing shows that the fault does not explain."},
        {3, "Any fault, any rig",
         "One fault, as often as such faults come in. Now and then a boat shows an old sign that has nothing "
         "to do with it."},
        {4, "A rare fault, or two",
         "One fault that few people have met, or two everyday ones at once. Old signs now and then, and now "
         "and then something is read wrongly."},
        {5, "Several faults, complicated rig",
         "Two or three faults at once, or a rare one, on a rig with two drives, two helms or an autopilot. "
         "Old signs, and readings that are wrong more often."},
    };
    return levels;
}

const Finding& PracticeBoat::finding_at(Index finding) const {
    return at(knowledge_->findings, finding);
}

const Answer* PracticeBoat::gauged(Index finding, const std::vector<bool>& gone) const {
    const Gauged& gauges = gauges_.at(gone);
    const auto found = gauges.find(finding);
    return found == gauges.end() ? nullptr : &found->second;
}

Answer PracticeBoat::answer(Index finding, const std::vector<bool>& gone) const {
    const Finding& entry = finding_at(finding);
    const Answer* measured = gauged(finding, gone);
    if (entry.readings.empty()) return measured != nullptr ? *measured : Answer{CannotTell{}};
    const int misread = misread_[static_cast<std::size_t>(finding)];
    if (misread >= 0) return Answer{misread};
    const int by_odds = by_odds_.reading(finding, gone);
    if (measured == nullptr) return Answer{by_odds};
    const int by_gauge = reading_told(entry, *measured);
    return by_gauge >= 0 && by_gauge <= by_odds ? *measured : Answer{by_odds};  // the worst shows
}

int PracticeBoat::reading(Index finding, const std::vector<bool>& gone) const {
    const int told = reading_told(finding_at(finding), answer(finding, gone));
    return told >= 0 ? told : static_cast<int>(finding_at(finding).readings.size()) - 1;
}

bool PracticeBoat::goes_by_odds(Index result, const std::vector<bool>& gone) const {
    return std::holds_alternative<int>(answer(result, gone).given);
}

// One plain measurement: the figure, unless something that is worked out from it is known by odds alone. Then
// the figure would say something else than the boat shows, and the readings are given in its place.
void PracticeBoat::measure(Index measured, const std::vector<bool>& gone,
                           std::vector<BoatAnswer>& given) const {
    std::vector<Index> results;
    for (std::size_t f = 0; f < knowledge_->findings.size(); ++f) {
        if (makes_sense[f] && worked_out_from(*knowledge_, knowledge_->findings[f], measured)) {
            results.push_back(static_cast<Index>(f));
        }
    }
    const Answer figure = answer(measured, gone);
    const bool by_odds =
        std::holds_alternative<CannotTell>(figure.given) ||
        std::any_of(results.begin(), results.end(), [&](Index result) { return goes_by_odds(result, gone); });
    if (!by_odds) {
        given.push_back({measured, figure});
        return;
    }
    given.push_back({measured, Answer{CannotTell{}}});
    for (const Index result : results) given.push_back({result, Answer{reading(result, gone)}});
}

std::vector<BoatAnswer> PracticeBoat::answers(Index finding, const std::vector<bool>& gone) const {
    std::vector<BoatAnswer> given;
    const Finding& entry = finding_at(finding);
    if (!entry.from) {
        if (entry.readings.empty()) {
            measure(finding, gone, given);
        } else {
            given.push_back({finding, answer(finding, gone)});
        }
        return given;
    }
    for (const WorksheetInput& input : at(knowledge_->worksheets, entry.from->worksheet).inputs) {
        if (input.finding == none) continue;
        std::vector<BoatAnswer> measured;
        measure(input.finding, gone, measured);
        for (const BoatAnswer& one : measured) {
            const bool there = std::any_of(given.begin(), given.end(),
                                           [&](const BoatAnswer& g) { return g.finding == one.finding; });
            if (!there) given.push_back(one);
        }
    }
    return given;
}

rig::Faults PracticeBoat::faults_left(const std::vector<bool>& gone) const {
    return on_the_rig_[subset_of(gone)];
}

}  // namespace hardover::study

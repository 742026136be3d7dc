#include "app/window/boat_desk.hpp"

#include <algorithm>
#include <cmath>

#include "app/jobs/rig_boat.hpp"

namespace hardover::window {

namespace {

constexpr double least_strength = 0.5, most_strength = 1.5;
constexpr double same_angle = 1e-9;

// Choices that make a different drawing; sizes are a job's.
constexpr const char* chosen_fields[] = {"mount", "drives", "rams", "helm", "tie_bar", "helms"};

// What a field's number or word is, as `Facts` have it.
std::string told(const Facts& facts, Index field) {
    const auto found = facts.rig.find(field);
    if (found == facts.rig.end()) return "";
    if (const auto* word = std::get_if<std::string>(&found->second)) return *word;
    return std::to_string(std::lround(std::get<Quantity>(found->second).value));
}

// What is chosen at first: the kind of boat that is drawn while nothing is told.
Facts usual_choices(const Knowledge& knowledge) {
    const Facts all = facts_of_boat(knowledge, rig::Boat{});
    Facts chosen;
    for (const char* id : chosen_fields) {
        const auto found = all.rig.find(find(knowledge.rig_fields, id));
        if (found != all.rig.end()) chosen.rig.insert(*found);
    }
    return chosen;
}

}  // namespace

BoatDesk::BoatDesk(const PreparedKnowledge& prepared)
    : prepared_(prepared), own_facts_(usual_choices(prepared.knowledge())) {}

void BoatDesk::show(const Facts* job_facts, UnitSystem units) {
    const Facts& wanted = job_facts != nullptr ? *job_facts : own_facts_;
    const bool as_before = shown_ && of_job_ == (job_facts != nullptr) && wanted.rig == facts_.rig;
    of_job_ = job_facts != nullptr;
    const bool other_units = setting_.units != units;
    setting_.units = units;
    if (as_before) {
        if (other_units) draw();
        return;
    }
    shown_ = true;
    facts_ = wanted;
    possible_ = possible_faults(prepared_, facts_);
    std::erase_if(faults_, [&](const FaultIn& fault) {
        return std::none_of(possible_.begin(), possible_.end(),
                            [&](const PossibleFault& other) { return other.id == fault.cause; });
    });
    list_choices();
    survey();
}

void BoatDesk::use(const PreparedKnowledge& prepared) {
    prepared_ = prepared;
    own_facts_ = usual_choices(prepared_.knowledge());
    shown_ = false;
}

void BoatDesk::open(const Facts& facts, const std::vector<std::string>& faults) {
    own_facts_ = facts;
    faults_.clear();
    for (const std::string& cause : faults) faults_.push_back({cause, 1});
    shown_ = false;
    show(nullptr, setting_.units);
}

void BoatDesk::list_choices() {
    choices_.clear();
    if (of_job_) return;
    const Knowledge& knowledge = prepared_.knowledge();
    for (const char* id : chosen_fields) {
        const Index index = find(knowledge.rig_fields, id);
        if (index == none) continue;
        const RigField& field = knowledge.rig_fields[static_cast<std::size_t>(index)];
        const std::string now = told(facts_, index);
        RigChoice choice{field.id, field.name, {}};
        for (const Word& word : field.choices) choice.ways.push_back({word.id, word.text, word.id == now});
        if (field.choices.empty())
            for (const char* number : {"1", "2"}) choice.ways.push_back({number, number, number == now});
        choices_.push_back(std::move(choice));
    }
}

void BoatDesk::survey() {
    surveyed_ = survey_boat(prepared_.knowledge(), facts_, faults_);
    draw();
}

void BoatDesk::draw() {
    page_ = make_boat_page(prepared_, facts_, surveyed_, setting_);
    setting_ = page_.setting;
    place_ = {};
    if (part_.empty() || !page_.sketch) return;
    for (const drawing::Drawing* view : {&page_.sketch->above, &page_.sketch->behind, &page_.sketch->side}) {
        if (drawing::find_part(*view, part_) == nullptr) continue;
        place_ = place_of_part(prepared_, facts_, *view, part_);
        return;
    }
}

void BoatDesk::carry_out(const BoatAction& action) {
    if (!shown_) return;
    std::visit([&](const auto& one) { apply(one); }, action);
}

void BoatDesk::apply(const TurnTo& turn) {
    // At a lock the wheel is still pressed the way it was asked to go.
    const double way = turn.steer - setting_.steer;
    if (std::abs(way) > same_angle) setting_.way = way > 0 ? rig::Way::to_starboard : rig::Way::to_port;
    setting_.steer = std::clamp(turn.steer, page_.least_steer, page_.most_steer);
    draw();
}

void BoatDesk::apply(const TurnWheel& turn) {
    const rig::BoatAtWork* boat = surveyed_.shown();
    if (boat != nullptr) apply(TurnTo{boat->steer_at(turn.wheel)});
}

void BoatDesk::apply(const TrimTo& to) {
    setting_.trim = to.trim;
    draw();
}

void BoatDesk::apply(const GoAt& at) {
    setting_.speed = at.speed;
    draw();
}

void BoatDesk::apply(const HoldWheel&) {
    setting_.way = rig::Way::held;
    draw();
}

void BoatDesk::apply(const PutFaultIn& in) {
    const bool can_be = std::any_of(possible_.begin(), possible_.end(),
                                    [&](const PossibleFault& fault) { return fault.id == in.cause; });
    if (!can_be) return;
    const bool there = std::any_of(faults_.begin(), faults_.end(),
                                   [&](const FaultIn& fault) { return fault.cause == in.cause; });
    if (!there) faults_.push_back({in.cause, 1});
    survey();
}

void BoatDesk::apply(const TakeFaultOut& out) {
    std::erase_if(faults_,
                  [&](const FaultIn& fault) { return out.cause.empty() || fault.cause == out.cause; });
    survey();
}

void BoatDesk::apply(const SetStrength& set) {
    for (FaultIn& fault : faults_)
        if (fault.cause == set.cause)
            fault.strength = std::clamp(set.strength, least_strength, most_strength);
    survey();
}

void BoatDesk::apply(const LookAtPart& look) {
    part_ = look.part;
    draw();
}

void BoatDesk::apply(const LookAtEntry& look) {
    const Where where = where_is(look.entry);
    if (!where.parts.empty()) apply(LookAtPart{where.parts.front()});
}

BoatDesk::Where BoatDesk::where_is(const EntryKey& entry) const {
    if (!page_.sketch) return {};
    for (const drawing::Drawing* view : {&page_.sketch->above, &page_.sketch->behind, &page_.sketch->side}) {
        const std::vector<std::string> parts = entry.kind == "cause"
                                                   ? parts_of_cause(prepared_.knowledge(), *view, entry.id)
                                                   : parts_of_finding(prepared_.knowledge(), *view, entry.id);
        if (!parts.empty()) return {view, parts};
    }
    return {};
}

void BoatDesk::apply(const ChooseRig& choose) {
    const Index index = find(prepared_.knowledge().rig_fields, choose.field);
    if (index == none || of_job_) return;
    const RigField& field = prepared_.knowledge().rig_fields[static_cast<std::size_t>(index)];
    if (field.unit) {
        own_facts_.rig[index] = Quantity{choose.choice == "2" ? 2.0 : 1.0, field.unit->dimension, 0};
    } else {
        own_facts_.rig[index] = choose.choice;
    }
    show(nullptr, setting_.units);
}

}  // namespace hardover::window

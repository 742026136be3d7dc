#include "app/jobs/rig_boat.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "rules/reasoning/evidence.hpp"

namespace hardover {

namespace {

using rig::Boat;

// A quantity of the rig: the field's value is `factor` times the boat's size.
struct Size {
    const char* field;
    double Boat::*member;
    double factor = 1;
};
constexpr Size sizes[] = {{"ram_bore", &Boat::bore},
                          {"ram_rod", &Boat::rod},
                          {"ram_stroke", &Boat::stroke},
                          {"relief_pressure", &Boat::relief_pressure},
                          {"wheel_diameter", &Boat::wheel_radius, 2},
                          {"hose_bore", &Boat::hose_bore},
                          {"hose_length", &Boat::hose_length},
                          {"oil_at_40", &Boat::oil_at_40},
                          {"oil_at_100", &Boat::oil_at_100},
                          {"oil_density", &Boat::oil_density},
                          {"drive_spacing", &Boat::drive_spacing}};
struct Number {
    const char* field;
    int Boat::*member;
};
constexpr Number numbers[] = {{"rams", &Boat::rams}, {"drives", &Boat::drives}, {"helms", &Boat::helms}};

// A choice of the rig by its words, in the order of the boat's enumeration.
constexpr std::array mounts{"sterndrive_external", "outboard_centre", "inboard_tiller"};
constexpr std::array assists{"none", "engine_pump", "electric_pump"};
constexpr double turn = 6.283185307179586;  // rad: a helm's displacement is per turn of the wheel

const RigField* field_of(const Knowledge& knowledge, const std::string& id, Index& index) {
    index = find(knowledge.rig_fields, id);
    return index == none ? nullptr : &knowledge.rig_fields[static_cast<std::size_t>(index)];
}

void tell(const Knowledge& knowledge, Facts& facts, const std::string& id, double value) {
    Index index = none;
    const RigField* field = field_of(knowledge, id, index);
    if (field != nullptr && field->unit) facts.rig[index] = Quantity{value, field->unit->dimension, 0};
}

void tell(const Knowledge& knowledge, Facts& facts, const std::string& id, const std::string& choice) {
    Index index = none;
    if (field_of(knowledge, id, index) != nullptr) facts.rig[index] = choice;
}

const RigValue* value_of(const Knowledge& knowledge, const Facts& facts, const std::string& id) {
    const auto found = facts.rig.find(find(knowledge.rig_fields, id));
    return found == facts.rig.end() ? nullptr : &found->second;
}

void take(const Knowledge& knowledge, const Facts& facts, const std::string& id, double& into) {
    const RigValue* value = value_of(knowledge, facts, id);
    const Quantity* quantity = value != nullptr ? std::get_if<Quantity>(value) : nullptr;
    if (quantity != nullptr && std::isfinite(quantity->value)) into = quantity->value;
}

bool is(const Knowledge& knowledge, const Facts& facts, const std::string& id, const std::string& choice,
        bool otherwise) {
    const RigValue* value = value_of(knowledge, facts, id);
    const std::string* word = value != nullptr ? std::get_if<std::string>(value) : nullptr;
    return word != nullptr ? *word == choice : otherwise;
}

// Which of the words the rig says; `otherwise` when it says none of them.
template <typename Choice, typename Words>
Choice choice_of(const Knowledge& knowledge, const Facts& facts, const std::string& id, const Words& words,
                 Choice otherwise) {
    for (std::size_t i = 0; i < words.size(); ++i)
        if (is(knowledge, facts, id, words[i], false)) return static_cast<Choice>(i);
    return otherwise;
}

// Words of fields that together ask for what the numeric boat cannot be are met half way.
void make_possible(Boat& boat) {
    if (boat.mount != Boat::Mount::outboard_centre) return;
    boat.balanced = true;
    boat.rams = std::min(boat.rams, boat.drives);
}

}  // namespace

Facts facts_of_boat(const Knowledge& knowledge, const Boat& boat) {
    Facts facts;
    const bool manual = boat.helm == Boat::Helm::manual_pump;
    tell(knowledge, facts, "helm", manual ? "manual_pump" : "cable_valve");
    tell(knowledge, facts, "ram_kind", boat.balanced ? "balanced" : "single_rod");
    tell(knowledge, facts, "mount", mounts[static_cast<std::size_t>(boat.mount)]);
    // With a cable and a valve the question is not asked: no hand pushes the oil there.
    if (manual) tell(knowledge, facts, "assist", assists[static_cast<std::size_t>(boat.assist)]);
    tell(knowledge, facts, "tie_bar", boat.drives == 2 && boat.tied ? "tied" : "not_tied");
    tell(knowledge, facts, "autopilot", boat.autopilot ? "teed_in" : "no_autopilot");
    for (const auto& [field, member] : numbers) tell(knowledge, facts, field, boat.*member);
    for (const Size& size : sizes) tell(knowledge, facts, size.field, size.factor * boat.*size.member);
    if (manual) tell(knowledge, facts, "helm_displacement", boat.helm_displacement / turn);
    return facts;
}

Boat boat_of_rig(const Knowledge& knowledge, const Facts& facts, const Boat& otherwise) {
    Boat boat = otherwise;
    const bool manual =
        is(knowledge, facts, "helm", "manual_pump", otherwise.helm == Boat::Helm::manual_pump);
    boat.helm = manual ? Boat::Helm::manual_pump : Boat::Helm::cable_valve;
    boat.balanced = is(knowledge, facts, "ram_kind", "balanced", otherwise.balanced);
    boat.mount = choice_of(knowledge, facts, "mount", mounts, otherwise.mount);
    boat.assist = choice_of(knowledge, facts, "assist", assists, otherwise.assist);
    boat.tied = is(knowledge, facts, "tie_bar", "tied", otherwise.tied);
    boat.autopilot = is(knowledge, facts, "autopilot", "teed_in", otherwise.autopilot);
    for (const auto& [field, member] : numbers) {
        double number = otherwise.*member;
        take(knowledge, facts, field, number);
        boat.*member = number > 1 ? 2 : 1;
    }
    for (const Size& size : sizes) {
        double value = size.factor * otherwise.*size.member;
        take(knowledge, facts, size.field, value);
        boat.*size.member = value / size.factor;
    }
    double per_radian = otherwise.helm_displacement / turn;
    take(knowledge, facts, "helm_displacement", per_radian);
    boat.helm_displacement = per_radian * turn;
    make_possible(boat);
    return boat;
}

std::vector<std::string> rig_fields_taken_as_usual(const Knowledge& knowledge, const Facts& facts) {
    std::vector<std::string> names;
    for (const char* id :
         {"mount", "drives", "helm", "rams", "ram_kind", "ram_bore", "ram_rod", "ram_stroke"}) {
        const Index field = find(knowledge.rig_fields, id);
        if (field != none && facts.rig.count(field) == 0)
            names.push_back(knowledge.rig_fields[static_cast<std::size_t>(field)].name);
    }
    return names;
}

Result<void> add_faults_of_cause(const Cause& cause, const std::vector<double>& drawn, rig::Faults& faults) {
    for (std::size_t i = 0; i < cause.on_the_rig.size(); ++i) {
        Quantity value = cause.on_the_rig[i].value;
        if (i < drawn.size()) value.value += value.standard_deviation() * drawn[i];
        const Result<void> set = rig::set_parameter(faults, cause.on_the_rig[i].parameter, value);
        if (!set) return set;
    }
    return {};
}

Result<rig::Faults> faults_of_cause(const Cause& cause, const std::vector<double>& drawn) {
    rig::Faults faults;
    if (const Result<void> added = add_faults_of_cause(cause, drawn, faults); !added) return added.error();
    return faults;
}

std::optional<Answer> felt_reading(const Finding& finding, const rig::Readings& readings) {
    bool any_gauge = false;
    for (std::size_t i = 0; i < finding.felt.size(); ++i) {
        if (!finding.felt[i]) continue;
        const auto gauge = readings.find(finding.felt[i]->gauge);
        if (gauge == readings.end()) continue;
        any_gauge = true;
        const double beyond = gauge->second - finding.felt[i]->limit.value;
        if (finding.felt[i]->is_above ? beyond > 0 : beyond < 0) return Answer{static_cast<int>(i)};
    }
    if (!any_gauge) return std::nullopt;
    return Answer{static_cast<int>(finding.felt.size())};
}

std::map<Index, Answer> answers_of_gauges(const Knowledge& knowledge, const rig::Readings& readings,
                                          const std::vector<double>& drawn) {
    std::map<Index, Answer> answers;
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        const Finding& finding = knowledge.findings[i];
        const auto index = static_cast<Index>(i);
        if (const std::optional<Answer> felt = felt_reading(finding, readings)) answers[index] = *felt;
        const auto gauge = readings.find(finding.gauge);
        if (gauge == readings.end() || !finding.unit) continue;
        const double noise = i < drawn.size() ? drawn[i] * finding.spread / 2 : 0;
        answers[index] = Answer{Quantity{gauge->second + noise, finding.unit->dimension, finding.spread}};
    }
    return answers;
}

int reading_told(const Finding& finding, const Answer& answer) {
    if (const int* reading = std::get_if<int>(&answer.given)) return *reading;
    const Quantity* measured = std::get_if<Quantity>(&answer.given);
    if (measured == nullptr || finding.readings.empty()) return -1;
    const Choice choice = possible_readings(finding, *measured);
    return choice.possible.empty() ? -1 : find_reading(finding, choice.possible.front());
}

}  // namespace hardover

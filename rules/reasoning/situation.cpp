#include "rules/reasoning/situation.hpp"

#include "rules/reasoning/evidence.hpp"
#include "rules/reasoning/worksheets.hpp"

namespace hardover {

namespace {

bool is_unknown(const Value& value) {
    if (std::holds_alternative<Unknown>(value)) return true;
    const Truth* truth = std::get_if<Truth>(&value);
    return truth && *truth == Truth::unknown;
}

const std::string fact_prefix = "fact.";

bool in_range(Index index, std::size_t count) {
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

}  // namespace

Situation::Situation(const Knowledge& knowledge, const Facts& facts)
    : knowledge_(knowledge),
      facts_(facts),
      rule_progress_(knowledge.rules.size(), Progress::untouched),
      rule_truth_(knowledge.rules.size(), Truth::unknown),
      sheet_progress_(knowledge.worksheets.size(), Progress::untouched),
      sheets_(knowledge.worksheets.size()) {
    names_["history"] = {Name::Kind::history, none, -1};
    names_["complaint"] = {Name::Kind::complaint, none, -1};
    for (std::size_t i = 0; i < knowledge.rig_fields.size(); ++i) {
        names_["rig." + knowledge.rig_fields[i].id] = {Name::Kind::rig, static_cast<Index>(i), -1};
    }
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        names_[knowledge.findings[i].id] = {Name::Kind::finding, static_cast<Index>(i), -1};
    }
    for (std::size_t w = 0; w < knowledge.worksheets.size(); ++w) {
        const Worksheet& sheet = knowledge.worksheets[w];
        for (std::size_t r = 0; r < sheet.results.size(); ++r) {
            names_[sheet.id + "." + sheet.results[r].id] = {Name::Kind::result, static_cast<Index>(w),
                                                            static_cast<int>(r)};
        }
    }
    for (std::size_t r = 0; r < knowledge.rules.size(); ++r) {
        for (const Action& action : knowledge.rules[r].then) {
            if (action.kind == Action::Kind::derive) {
                derived_by_[action.fact].push_back(static_cast<Index>(r));
            }
        }
    }
    lookup_ = [this](const std::string& name) { return value_of(name); };
}

Value Situation::value_of(const std::string& name) {
    if (name.starts_with(fact_prefix)) return derived(name.substr(fact_prefix.size()));
    const auto found = names_.find(name);
    if (found == names_.end()) return Unknown{};
    const Name& known = found->second;
    switch (known.kind) {
        case Name::Kind::rig:
            return rig_value(known.index);
        case Name::Kind::history:
            return history_value();
        case Name::Kind::complaint:
            return complaint_value();
        case Name::Kind::finding:
            return finding_value(known.index);
        case Name::Kind::result:
            return result_value(known.index, known.result);
    }
    return Unknown{};
}

Truth Situation::holds(const Expression& condition) {
    return condition.condition(lookup_);
}

Value Situation::rig_value(Index field) {
    const RigField& f = knowledge_.rig_fields[static_cast<std::size_t>(field)];
    const auto given = facts_.rig.find(field);
    if (given != facts_.rig.end()) {
        if (const Quantity* quantity = std::get_if<Quantity>(&given->second)) {
            if (f.unit && quantity->dimension == f.unit->dimension) return *quantity;
            return Unknown{};
        }
        return Choice{{std::get<std::string>(given->second)}};
    }
    if (std::holds_alternative<Unknown>(f.assumed)) return Unknown{};
    assumed_.insert(field);
    if (const Quantity* quantity = std::get_if<Quantity>(&f.assumed)) return *quantity;
    return Choice{{std::get<std::string>(f.assumed)}};
}

Value Situation::history_value() const {
    if (!in_range(facts_.history, knowledge_.histories.size())) return Unknown{};
    return Choice{{knowledge_.histories[static_cast<std::size_t>(facts_.history)].id}};
}

Value Situation::complaint_value() const {
    Choice present;
    for (Index complaint : facts_.complaints) {
        if (!in_range(complaint, knowledge_.complaints.size())) continue;
        present.possible.push_back(knowledge_.complaints[static_cast<std::size_t>(complaint)].id);
    }
    if (present.possible.empty()) return Unknown{};
    return present;
}

Value Situation::finding_value(Index finding) {
    const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
    const std::optional<Answer> answer = answer_to(finding);
    if (!answer) return Unknown{};
    if (const int* reading = std::get_if<int>(&answer->given)) {
        if (!in_range(*reading, f.readings.size())) return Unknown{};
        return Choice{{f.readings[static_cast<std::size_t>(*reading)].id}};
    }
    const Quantity* quantity = std::get_if<Quantity>(&answer->given);
    if (!quantity || !f.unit || !(quantity->dimension == f.unit->dimension)) return Unknown{};
    const Quantity measured = with_spread(*quantity, f.spread);
    if (f.readings.empty()) return measured;
    return Measured{measured, possible_readings(f, measured)};
}

std::optional<Answer> Situation::answer_to(Index finding) {
    const auto given = facts_.answers.find(finding);
    if (given != facts_.answers.end()) return given->second;
    const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
    if (f.from) {
        const Value result = result_value(f.from->worksheet, f.from->result);
        if (const Quantity* quantity = std::get_if<Quantity>(&result)) return Answer{*quantity};
    }
    int worst = -1;
    for (Index complaint : facts_.complaints) {
        if (!in_range(complaint, knowledge_.complaints.size())) continue;
        for (const auto& [about, reading] : knowledge_.complaints[static_cast<std::size_t>(complaint)].says) {
            if (about == finding && (worst < 0 || reading < worst)) worst = reading;
        }
    }
    if (worst < 0) return std::nullopt;
    return Answer{worst};
}

Value Situation::result_value(Index worksheet, int result) {
    if (!in_range(worksheet, sheets_.size())) return Unknown{};
    if (sheet_progress_[static_cast<std::size_t>(worksheet)] == Progress::running) return Unknown{};
    const WorkedSheet& sheet = worked(worksheet);
    if (!in_range(result, sheet.results.size())) return Unknown{};
    return sheet.results[static_cast<std::size_t>(result)];
}

const WorkedSheet& Situation::worked(Index worksheet) {
    const auto at = static_cast<std::size_t>(worksheet);
    if (sheet_progress_[at] == Progress::untouched) {
        sheet_progress_[at] = Progress::running;
        sheets_[at] = work_out_here(worksheet);
        sheet_progress_[at] = Progress::done;
    }
    return sheets_[at];
}

WorkedSheet Situation::work_out_here(Index worksheet) {
    const Worksheet& sheet = knowledge_.worksheets[static_cast<std::size_t>(worksheet)];
    std::vector<Value> inputs;
    std::vector<bool> assumed;
    for (const WorksheetInput& input : sheet.inputs) {
        Value value = Unknown{};
        const bool from_rig = in_range(input.rig_field, knowledge_.rig_fields.size());
        if (from_rig) {
            value = rig_value(input.rig_field);
        } else if (in_range(input.finding, knowledge_.findings.size())) {
            value = finding_value(input.finding);
        }
        assumed.push_back(from_rig && !is_unknown(value) && !facts_.rig.contains(input.rig_field));
        inputs.push_back(std::move(value));
    }
    WorkedSheet sheet_here = work_out(knowledge_, worksheet, inputs);
    sheet_here.input_assumed = std::move(assumed);
    return sheet_here;
}

Truth Situation::rule_holds(Index rule) {
    const auto at = static_cast<std::size_t>(rule);
    if (rule_progress_[at] == Progress::running) return Truth::unknown;
    if (rule_progress_[at] == Progress::untouched) {
        rule_progress_[at] = Progress::running;
        rule_truth_[at] = holds(knowledge_.rules[at].when);
        rule_progress_[at] = Progress::done;
    }
    return rule_truth_[at];
}

Truth Situation::derived(const std::string& fact) {
    const auto rules = derived_by_.find(fact);
    if (rules == derived_by_.end()) return Truth::no;
    Truth truth = Truth::no;
    for (Index rule : rules->second) truth = either(truth, rule_holds(rule));
    return truth;
}

std::vector<std::string> Situation::known_names(const Expression& condition) {
    std::vector<std::string> known;
    for (const std::string& name : condition.names()) {
        if (!is_unknown(value_of(name))) known.push_back(name);
    }
    return known;
}

}  // namespace hardover

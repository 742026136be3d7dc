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

Situation::Situation(const PreparedKnowledge& prepared, const Facts& facts)
    : prepared_(prepared),
      knowledge_(prepared.knowledge()),
      facts_(facts),
      values_(prepared.names().size()),
      value_known_(prepared.names().size(), 0),
      condition_(prepared.texts()),
      answers_(knowledge_.findings.size()),
      answer_known_(knowledge_.findings.size(), 0),
      rule_progress_(knowledge_.rules.size(), Progress::untouched),
      rule_truth_(knowledge_.rules.size(), Truth::unknown),
      sheet_progress_(knowledge_.worksheets.size(), Progress::untouched),
      sheets_(knowledge_.worksheets.size()) {}

Value Situation::value_of(const std::string& name) {
    const int place = prepared_.place_of(name);
    if (place >= 0) return value_at(place);
    if (name.starts_with(fact_prefix)) return derived(name.substr(fact_prefix.size()));
    return Unknown{};
}

// Facts are not kept here: which rules hold is, and a rule on the way to itself counts as unknown.
const Value& Situation::value_at(int name) {
    const auto at = static_cast<std::size_t>(name);
    if (value_known_[at]) return values_[at];
    const KnownName& known = prepared_.names()[at];
    Value value = work_out_value(known);
    value_known_[at] = sheets_running_ == 0 && known.kind != KnownName::Kind::fact;
    values_[at] = std::move(value);
    return values_[at];
}

Value Situation::work_out_value(const KnownName& name) {
    switch (name.kind) {
        case KnownName::Kind::rig:
            return rig_value(name.index);
        case KnownName::Kind::history:
            return history_value();
        case KnownName::Kind::complaint:
            return complaint_value();
        case KnownName::Kind::finding:
            return finding_value(name.index);
        case KnownName::Kind::result:
            return result_value(name.index, name.result);
        case KnownName::Kind::fact:
            return derived_by(name.rules);
        case KnownName::Kind::nothing:
            break;
    }
    return Unknown{};
}

Truth Situation::holds(const Expression& condition) {
    if (condition.empty()) return Truth::yes;
    return condition.condition([this](const std::string& name) { return value_of(name); });
}

// All values are worked out before the first is looked at: working one out may move on another that is not
// kept.
Truth Situation::holds(const PreparedCondition& condition) {
    if (condition.condition->empty()) return Truth::yes;
    std::optional<Truth>& kept = condition_[static_cast<std::size_t>(condition.text)];
    if (kept) return *kept;
    for (int name : condition.names) value_at(name);
    named_.clear();
    bool nothing_known = true;
    for (int name : condition.names) {
        const Value& value = values_[static_cast<std::size_t>(name)];
        named_.push_back(&value);
        nothing_known = nothing_known && std::holds_alternative<Unknown>(value);
    }
    const Truth truth =
        nothing_known ? condition.when_nothing_known : condition.condition->condition_with(named_);
    if (sheets_running_ == 0 && !condition.by_fact) kept = truth;
    return truth;
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
    const std::optional<Answer>& answer = answer_to(finding);
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

const std::optional<Answer>& Situation::answer_to(Index finding) {
    const auto at = static_cast<std::size_t>(finding);
    if (answer_known_[at]) return answers_[at];
    std::optional<Answer> answer = work_out_answer(finding);
    answer_known_[at] = sheets_running_ == 0;
    answers_[at] = std::move(answer);
    return answers_[at];
}

std::optional<Answer> Situation::work_out_answer(Index finding) {
    const auto given = facts_.answers.find(finding);
    if (given != facts_.answers.end()) return given->second;
    const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
    if (f.from) {
        const Value result = result_value(f.from->worksheet, f.from->result);
        if (const Quantity* quantity = std::get_if<Quantity>(&result)) return Answer{*quantity};
    }
    int worst = -1;
    for (const auto& [complaint, reading] : prepared_.told_by_complaints(finding)) {
        if (facts_.complaints.contains(complaint) && (worst < 0 || reading < worst)) worst = reading;
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
        ++sheets_running_;
        sheets_[at] = work_out_here(worksheet);
        --sheets_running_;
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
        rule_truth_[at] = holds(prepared_.rule_when(rule));
        rule_progress_[at] = Progress::done;
    }
    return rule_truth_[at];
}

bool Situation::rule_fires(Index rule) {
    const int needed = prepared_.rule_when(rule).needed;
    if (needed >= 0 && is_unknown(value_at(needed))) return false;
    return rule_holds(rule) == Truth::yes;
}

Truth Situation::derived_by(const std::vector<Index>& rules) {
    Truth truth = Truth::no;
    for (Index rule : rules) truth = either(truth, rule_holds(rule));
    return truth;
}

Truth Situation::derived(const std::string& fact) {
    const int place = prepared_.place_of(fact_prefix + fact);
    if (place < 0) return Truth::no;
    return derived_by(prepared_.names()[static_cast<std::size_t>(place)].rules);
}

std::vector<std::string> Situation::known_names(const Expression& condition) {
    std::vector<std::string> known;
    for (const std::string& name : condition.names()) {
        if (!is_unknown(value_of(name))) known.push_back(name);
    }
    return known;
}

std::vector<std::string> Situation::known_names(const PreparedCondition& condition) {
    std::vector<std::string> known;
    for (std::size_t n = 0; n < condition.names.size(); ++n) {
        if (!is_unknown(value_at(condition.names[n]))) known.push_back(condition.condition->names()[n]);
    }
    return known;
}

}  // namespace hardover

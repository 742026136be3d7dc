// Reads worksheets in two steps: first the names of inputs and results, on which findings and conditions
// rest, then, when all is known, where inputs come from, the formulas, guards and advice.
#include <algorithm>
#include <unordered_set>

#include "rules/reading/draft.hpp"
#include "rules/reading/scopes.hpp"

namespace hardover::reading_detail {
namespace {

// Whether an input may do without a unit: it is a choice, its own or a rig field's.
bool may_be_choice(const YamlNode& input) {
    const YamlNode* from = value_in(input, "from");
    return value_in(input, "choices") != nullptr || (from != nullptr && from->text.rfind("rig.", 0) == 0);
}

// Pairs with good ids and a readable unit; the others are faults and make the worksheet doubtful.
struct NamedValue {
    const Pair pair;
    Unit unit;
};

std::vector<NamedValue> named_values(Draft& draft, const YamlNode& node, const std::string& what,
                                     const std::string& worksheet) {
    std::vector<NamedValue> found;
    for (const Pair& pair : pairs_of(node, what, draft.faults)) {
        const YamlNode* unit_node = value_in(*pair.value, "unit");
        const bool good_id = check_word(draft, *pair.key, "id");
        const auto unit = unit_node == nullptr ? std::nullopt : unit_of(*unit_node, draft.faults);
        const bool good_unit = unit || (unit_node == nullptr && may_be_choice(*pair.value));
        if (!good_id || !good_unit) draft.doubtful.insert({worksheet, pair.key->text});
        if (good_id) found.push_back({pair, unit.value_or(Unit{})});
    }
    return found;
}

void read_input(Draft& draft, const NamedValue& named, WorksheetInput& input) {
    input.id = named.pair.key->text;
    input.unit = named.unit;
    MapReader map(*named.pair.value, "input '" + input.id + "'", draft.faults);
    input.name = map.text("name");
    const bool is_choice = may_be_choice(*named.pair.value) && map.get("unit") == nullptr;
    const bool has_unit = !is_choice && map.need("unit") != nullptr && !draft.is_doubtful(input.id);
    map.get("from");  // in the second step
    if (const YamlNode* choices = map.get("choices")) {
        if (!is_choice) add_fault(draft.faults, *choices, map.owner() + " has both 'choices' and 'unit'");
        input.choices = read_choices(draft, *choices, input.id);
    }
    if (const YamlNode* spread = map.get("spread")) {
        if (is_choice) add_fault(draft.faults, *spread, "a choice has no spread");
        if (has_unit) input.spread = spread_of(*spread, input.unit, draft.faults).value_or(0);
    }
    if (const YamlNode* example = map.get("example"); example != nullptr && has_unit) {
        input.example = quantity_of(*example, input.unit, draft.faults);
    }
    map.refuse_other_keys();
}

void read_result(Draft& draft, const NamedValue& named, WorksheetOutput& result) {
    result.id = named.pair.key->text;
    result.unit = named.unit;
    MapReader map(*named.pair.value, "result '" + result.id + "'", draft.faults);
    result.name = map.text("name");
    map.need("unit");
    map.need("formula");  // in the second step
    map.refuse_other_keys();
}

void read_names(Draft& draft, MapReader& map, Worksheet& sheet) {
    sheet.name = map.text("name");
    sheet.about = map.text("about");
    std::unordered_set<std::string> taken;
    const auto refuse_taken = [&](const NamedValue& named) {
        if (taken.insert(named.pair.key->text).second) return;
        add_fault(draft.faults, *named.pair.key,
                  "'" + named.pair.key->text + "' is already an input of " + map.owner());
    };
    if (const YamlNode* inputs = map.need("inputs")) {
        for (const NamedValue& named : named_values(draft, *inputs, "'inputs'", sheet.id)) {
            refuse_taken(named);
            read_input(draft, named, sheet.inputs.emplace_back());
        }
    }
    if (const YamlNode* results = map.need("results")) {
        for (const NamedValue& named : named_values(draft, *results, "'results'", sheet.id)) {
            refuse_taken(named);
            read_result(draft, named, sheet.results.emplace_back());
        }
        if (results->is(YamlNode::Kind::map) && results->items.empty()) {
            add_fault(draft.faults, *results, "'results' of " + map.owner() + " is empty");
        }
    }
    map.get("holds_when");  // both in the second step
    map.get("advice");
    read_sources(draft, map, sheet, SourceRule::required);
}

// Without a unit the input takes its choices from the rig field it comes from.
void take_choices(Draft& draft, const YamlNode& from, WorksheetInput& input) {
    const RigField& field = draft.knowledge.rig_fields[input.rig_field];
    if (!input.choices.empty()) {
        add_fault(draft.faults, from, "'" + from.text + "' brings its own choices",
                  "leave 'choices' out, or 'from'");
    } else if (field.choices.empty()) {
        add_fault(draft.faults, from, "'" + from.text + "' is measured, so the input needs a 'unit'",
                  "write unit: " + (field.unit ? field.unit->name : std::string()));
    }
    input.choices = field.choices;
}

// "rig.bore" or a finding's id, measured in the input's dimension; or a rig field that is a choice.
void read_from(Draft& draft, const YamlNode& node, bool has_unit, WorksheetInput& input) {
    const auto text = text_of(node, "'from'", draft.faults);
    if (!text) return;
    const bool is_rig = text->rfind("rig.", 0) == 0;
    YamlNode name = node;
    if (is_rig) name.text = text->substr(4);
    const Index index = resolve(draft, is_rig ? EntryKind::rig_field : EntryKind::finding, name);
    if (index == none || draft.is_doubtful(name.text) || draft.is_doubtful(input.id)) return;
    (is_rig ? input.rig_field : input.finding) = index;
    if (is_rig && !has_unit) {
        take_choices(draft, node, input);
        return;
    }
    const std::optional<Unit>& unit =
        is_rig ? draft.knowledge.rig_fields[index].unit : draft.knowledge.findings[index].unit;
    if (!unit) {
        add_fault(draft.faults, node, "'" + *text + "' is not measured, so a worksheet cannot take it");
    } else if (unit->dimension != input.unit.dimension) {
        add_fault(draft.faults, node,
                  "'" + *text + "' is in " + unit->name + ", but the input is in " + input.unit.name);
    }
}

// The example of a choice: one of its words.
void read_example(Draft& draft, const YamlNode& node, WorksheetInput& input) {
    const auto is_it = [&](const Word& choice) { return choice.id == node.text; };
    if (std::any_of(input.choices.begin(), input.choices.end(), is_it)) {
        input.example_choice = node.text;
    } else if (!input.choices.empty()) {
        add_fault(draft.faults, node, "'" + node.text + "' is no choice of input '" + input.id + "'");
    }
}

void read_guards(Draft& draft, const YamlNode& node, const Scope& scope, Worksheet& sheet) {
    for (const YamlNode* item : list_of(node, "'holds_when'", draft.faults)) {
        MapReader map(*item, "a guard of worksheet '" + sheet.id + "'", draft.faults);
        WorksheetGuard guard;
        if (const YamlNode* condition = map.need("condition")) {
            guard.condition = read_condition_at(draft, *condition, scope);
        }
        guard.otherwise = map.text("else");
        map.refuse_other_keys();
        sheet.holds_when.push_back(std::move(guard));
    }
}

void read_advice(Draft& draft, const YamlNode& node, const Scope& scope, Worksheet& sheet) {
    for (const YamlNode* item : list_of(node, "'advice'", draft.faults)) {
        MapReader map(*item, "an advice of worksheet '" + sheet.id + "'", draft.faults);
        WorksheetAdvice advice;
        if (const YamlNode* when = map.need("when")) advice.when = read_condition_at(draft, *when, scope);
        advice.say = map.text("say");
        map.refuse_other_keys();
        sheet.advice.push_back(std::move(advice));
    }
}

void read_second_step(Draft& draft, const YamlNode& entry, Worksheet& sheet) {
    const YamlNode* inputs = value_in(entry, "inputs");
    for (WorksheetInput& input : sheet.inputs) {
        const YamlNode& written = *value_in(*inputs, input.id);
        const YamlNode* from = value_in(written, "from");
        const bool has_unit = value_in(written, "unit") != nullptr;
        if (from != nullptr) read_from(draft, *from, has_unit, input);
        const YamlNode* example = value_in(written, "example");
        if (example != nullptr && !has_unit) read_example(draft, *example, input);
    }
    const YamlNode* results = value_in(entry, "results");
    for (std::size_t i = 0; i < sheet.results.size(); ++i) {
        WorksheetOutput& result = sheet.results[i];
        const YamlNode* formula = value_in(*value_in(*results, result.id), "formula");
        if (formula == nullptr || draft.is_doubtful(result.id)) continue;
        result.formula = read_formula_at(draft, *formula, inner_names(sheet, i), result.unit.dimension);
    }
    const NameTable scope = inner_names(sheet, sheet.results.size());
    if (const YamlNode* guards = value_in(entry, "holds_when")) read_guards(draft, *guards, scope, sheet);
    if (const YamlNode* advice = value_in(entry, "advice")) read_advice(draft, *advice, scope, sheet);
}

}  // namespace

void read_worksheet_names(Draft& draft) {
    each_entry(draft, EntryKind::worksheet, draft.knowledge.worksheets,
               [&](MapReader& map, Worksheet& sheet) { read_names(draft, map, sheet); });
}

void read_worksheet_formulas(Draft& draft) {
    auto& sheets = draft.knowledge.worksheets;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const YamlNode* entry = draft.entries(EntryKind::worksheet)[i].node;
        if (entry != nullptr) read_second_step(draft, *entry, sheets[i]);
    }
}

}  // namespace hardover::reading_detail

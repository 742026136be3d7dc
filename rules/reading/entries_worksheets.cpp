// Reads worksheets in two steps: first the names of inputs and results, on which findings and conditions
// rest, then, when all is known, where inputs come from, the formulas, guards and advice.
#include <unordered_set>

#include "rules/reading/draft.hpp"
#include "rules/reading/scopes.hpp"

namespace hardover::reading_detail {
namespace {

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
        if (!good_id || !unit) draft.doubtful.insert({worksheet, pair.key->text});
        if (good_id) found.push_back({pair, unit.value_or(Unit{})});
    }
    return found;
}

void read_input(Draft& draft, const NamedValue& named, WorksheetInput& input) {
    input.id = named.pair.key->text;
    input.unit = named.unit;
    MapReader map(*named.pair.value, "input '" + input.id + "'", draft.faults);
    input.name = map.text("name");
    const bool has_unit = map.need("unit") != nullptr && !draft.is_doubtful(input.id);
    map.get("from");  // in the second step
    if (const YamlNode* spread = map.get("spread"); spread != nullptr && has_unit) {
        input.spread = spread_of(*spread, input.unit, draft.faults).value_or(0);
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

// "rig.bore" or a finding's id, measured in the input's dimension.
void read_from(Draft& draft, const YamlNode& node, WorksheetInput& input) {
    const auto text = text_of(node, "'from'", draft.faults);
    if (!text) return;
    const bool is_rig = text->rfind("rig.", 0) == 0;
    YamlNode name = node;
    if (is_rig) name.text = text->substr(4);
    const Index index = resolve(draft, is_rig ? EntryKind::rig_field : EntryKind::finding, name);
    if (index == none || draft.is_doubtful(name.text) || draft.is_doubtful(input.id)) return;
    (is_rig ? input.rig_field : input.finding) = index;
    const std::optional<Unit>& unit =
        is_rig ? draft.knowledge.rig_fields[index].unit : draft.knowledge.findings[index].unit;
    if (!unit) {
        add_fault(draft.faults, node, "'" + *text + "' is not measured, so a worksheet cannot take it");
    } else if (unit->dimension != input.unit.dimension) {
        add_fault(draft.faults, node,
                  "'" + *text + "' is in " + unit->name + ", but the input is in " + input.unit.name);
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
        const YamlNode* from = value_in(*value_in(*inputs, input.id), "from");
        if (from != nullptr) read_from(draft, *from, input);
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

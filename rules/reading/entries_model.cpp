// Reads what findings and causes say of the numeric model: gauges, felt limits, changed sizes, explained
// differences. Knows the model only by the names handed in with the functions.
#include <algorithm>

#include "rules/reading/draft.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::reading_detail {
namespace {

// "{gauge: lag, above: 3 in}", or without its gauge where the finding gives one for all its readings.
std::optional<GaugeLimit> read_gauge_limit(Draft& draft, const Pair& pair, const YamlNode* common) {
    MapReader map(*pair.value, "felt reading '" + pair.key->text + "'", draft.faults);
    const YamlNode* own = map.get("gauge");
    const YamlNode* above = map.get("above");
    const YamlNode* below = map.get("below");
    map.refuse_other_keys();
    if (!pair.value->is(YamlNode::Kind::map)) return std::nullopt;
    const YamlNode* named = own != nullptr ? own : common;
    if (named == nullptr) {
        add_fault(draft.faults, *pair.key, "felt reading '" + pair.key->text + "' names no gauge");
        return std::nullopt;
    }
    if ((above == nullptr) == (below == nullptr)) {
        add_fault(draft.faults, *pair.key,
                  "felt reading '" + pair.key->text + "' needs either 'above' or 'below'");
        return std::nullopt;
    }
    const ModelName* gauge = resolve_model_name(draft, draft.functions.gauges, "gauge", *named);
    if (gauge == nullptr) return std::nullopt;
    const YamlNode& at = above != nullptr ? *above : *below;
    const std::optional<Quantity> limit = quantity_of(at, gauge->unit, draft.faults);
    if (!limit) return std::nullopt;
    return GaugeLimit{gauge->name, *limit, above != nullptr};
}

void read_felt(Draft& draft, const YamlNode& node, Finding& finding) {
    if (finding.readings.empty() || finding.unit) {
        if (!draft.is_doubtful(finding.id)) {
            add_fault(draft.faults, node, "'felt' is for a finding with readings and without 'unit'",
                      "a measured finding has its limits in its readings and needs only 'gauge'");
        }
        return;
    }
    const YamlNode* common = value_in(node, "gauge");
    const std::size_t sound = finding.readings.size() - 1;
    finding.felt.assign(sound, std::nullopt);
    for (const Pair& pair : pairs_of(node, "'felt'", draft.faults)) {
        if (pair.key->text == "gauge") continue;
        const int reading = resolve_reading(draft, finding, *pair.key);
        const std::optional<GaugeLimit> limit = read_gauge_limit(draft, pair, common);
        if (reading < 0) continue;
        if (static_cast<std::size_t>(reading) == sound) {
            add_fault(draft.faults, *pair.key,
                      "'" + pair.key->text + "' is the sound reading, it has what is left", "leave it out");
        } else {
            finding.felt[static_cast<std::size_t>(reading)] = limit;
        }
    }
    const bool none_given = std::none_of(finding.felt.begin(), finding.felt.end(),
                                         [](const auto& limit) { return limit.has_value(); });
    if (none_given && node.keys.size() <= (common != nullptr ? 1 : 0)) {
        add_fault(draft.faults, node, "'felt' gives no reading");
    }
}

void read_change(Draft& draft, const Pair& pair, Cause& cause) {
    const ModelName* parameter =
        resolve_model_name(draft, draft.functions.parameters, "parameter", *pair.key);
    if (parameter == nullptr) return;
    const std::optional<Quantity> value = quantity_of(*pair.value, parameter->unit, draft.faults);
    if (value) cause.on_the_rig.push_back({parameter->name, *value});
}

}  // namespace

const ModelName* resolve_model_name(Draft& draft, const std::vector<ModelName>& names,
                                    const std::string& kind, const YamlNode& node) {
    const auto text = text_of(node, "a " + kind, draft.faults);
    if (!text) return nullptr;
    std::vector<std::string> known;
    for (const ModelName& name : names) {
        if (name.name == *text) return &name;
        known.push_back(name.name);
    }
    add_fault(draft.faults, node, "unknown " + kind + " '" + *text + "'",
              names.empty() ? "there is no numeric model here" : did_you_mean(*text, known));
    return nullptr;
}

void read_gauge(Draft& draft, MapReader& map, Finding& finding) {
    const YamlNode* gauge = map.get("gauge");
    const YamlNode* felt = map.get("felt");
    if (felt != nullptr) read_felt(draft, *felt, finding);
    if (gauge == nullptr) return;
    if (!finding.unit || finding.from) {
        if (!draft.is_doubtful(finding.id)) {
            add_fault(draft.faults, *gauge, "'gauge' is for a finding that is measured and not worked out",
                      "give limits in the gauge's unit under 'felt'");
        }
        return;
    }
    const ModelName* found = resolve_model_name(draft, draft.functions.gauges, "gauge", *gauge);
    if (found == nullptr) return;
    if (!(found->unit.dimension == finding.unit->dimension)) {
        add_fault(draft.faults, *gauge,
                  "gauge '" + found->name + "' is in " + found->unit.name + ", but the finding is in " +
                      finding.unit->name);
        return;
    }
    finding.gauge = found->name;
}

void read_on_the_rig(Draft& draft, MapReader& map, Cause& cause) {
    const YamlNode* changes = map.get("on_the_rig");
    if (changes != nullptr) {
        for (const Pair& pair : pairs_of(*changes, "'on_the_rig'", draft.faults))
            read_change(draft, pair, cause);
    }
    const YamlNode* differs = map.get("differs");
    if (differs == nullptr) return;
    if (changes == nullptr) {
        add_fault(draft.faults, *differs, "'differs' needs 'on_the_rig': there is nothing to differ from");
    }
    for (const Pair& pair : pairs_of(*differs, "'differs'", draft.faults)) {
        const Index finding = resolve(draft, EntryKind::finding, *pair.key);
        const auto reason = text_of(*pair.value, "'" + pair.key->text + "'", draft.faults);
        if (finding != none && reason) cause.differs.push_back({finding, *reason});
    }
}

}  // namespace hardover::reading_detail

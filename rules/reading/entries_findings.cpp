// Reads findings with their readings, thresholds and stray shares, and the complaints that report them.
#include <algorithm>

#include "rules/reading/draft.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::reading_detail {
namespace {

std::vector<std::string> ids_of(const std::vector<Reading>& readings) {
    std::vector<std::string> ids;
    for (const Reading& reading : readings) ids.push_back(reading.id);
    return ids;
}

// A limit as it stands in the file; nullptr where the reading has none.
struct LimitNode {
    const YamlNode* node = nullptr;
    bool is_above = true;
};

LimitNode read_limit(Draft& draft, MapReader& map, const Finding& finding, Reading& reading) {
    const YamlNode* above = map.get("above");
    const YamlNode* below = map.get("below");
    if (above != nullptr && below != nullptr) {
        add_fault(draft.faults, *below, "a reading is either 'above' or 'below' a limit, not both");
    }
    const LimitNode limit{above != nullptr ? above : below, above != nullptr};
    if (limit.node == nullptr) return limit;
    if (!finding.unit) {
        if (!draft.is_doubtful(finding.id)) {
            add_fault(draft.faults, *limit.node, "a limit needs a finding with 'unit'");
        }
        return {};
    }
    reading.limit = quantity_of(*limit.node, *finding.unit, draft.faults);
    return limit;
}

// One reading, either "springy: Springy" or "large: {text: ..., above: 2 in}".
LimitNode read_reading(Draft& draft, const Pair& pair, Finding& finding) {
    Reading reading;
    reading.id = pair.key->text;
    if (!check_word(draft, *pair.key, "reading")) draft.doubtful.insert(finding.id);
    LimitNode limit;
    if (pair.value->is(YamlNode::Kind::map)) {
        MapReader map(*pair.value, "reading '" + reading.id + "'", draft.faults);
        reading.text = map.text("text");
        limit = read_limit(draft, map, finding, reading);
        map.refuse_other_keys();
    } else {
        reading.text = text_of(*pair.value, "'" + reading.id + "'", draft.faults).value_or("");
    }
    finding.readings.push_back(std::move(reading));
    return limit;
}

// Limits: all but the last reading have one, all on the same side, and worst comes first.
void check_limits(Draft& draft, const YamlNode& node, Finding& finding,
                  const std::vector<LimitNode>& limits) {
    const auto first = std::find_if(limits.begin(), limits.end(), [](const LimitNode& l) { return l.node; });
    if (first == limits.end()) {
        add_fault(draft.faults, node,
                  "finding '" + finding.id + "' is measured, but its readings have no limits",
                  "give all but the last an 'above' or all a 'below'");
        return;
    }
    finding.limits_are_lower_ends = first->is_above;
    std::optional<Quantity> worse;
    for (std::size_t i = 0; i < limits.size(); ++i) {
        const Reading& reading = finding.readings[i];
        const bool is_last = i + 1 == limits.size();
        const YamlNode* at = limits[i].node;
        if (is_last && at != nullptr) {
            add_fault(draft.faults, *at, "the last reading is what is left, it takes no limit");
        } else if (!is_last && at == nullptr) {
            add_fault(draft.faults, node, "reading '" + reading.id + "' has no limit");
        } else if (at != nullptr && limits[i].is_above != first->is_above) {
            add_fault(draft.faults, *at, "the limits of one finding are all 'above' or all 'below'");
        } else if (at != nullptr && reading.limit) {
            const bool in_order = !worse || (first->is_above ? reading.limit->value < worse->value
                                                             : reading.limit->value > worse->value);
            if (!in_order) {
                add_fault(draft.faults, *at, "the limits are out of order: the worst reading comes first",
                          first->is_above ? "each 'above' smaller than the one before it"
                                          : "each 'below' larger than the one before it");
            }
            worse = reading.limit;
        }
    }
}

void read_readings(Draft& draft, const YamlNode& node, Finding& finding) {
    std::vector<LimitNode> limits;
    if (!node.is(YamlNode::Kind::map)) draft.doubtful.insert(finding.id);
    for (const Pair& pair : pairs_of(node, "'readings'", draft.faults)) {
        limits.push_back(read_reading(draft, pair, finding));
    }
    if (!node.is(YamlNode::Kind::map)) return;
    if (finding.readings.size() < 2) {
        add_fault(draft.faults, node, "'readings' needs at least two, worst first");
        draft.doubtful.insert(finding.id);
    } else if (finding.unit) {
        check_limits(draft, node, finding, limits);
    }
}

// The share of sound boats with each reading: the setting shared out evenly over the bad readings, unless the
// finding says otherwise; the sound (last) reading has what is left.
void read_stray(Draft& draft, MapReader& map, Finding& finding) {
    const YamlNode* node = map.get("stray");
    if (finding.readings.size() < 2) {
        if (node != nullptr && !draft.is_doubtful(finding.id)) {
            add_fault(draft.faults, *node, "'stray' needs a finding with readings");
        }
        return;
    }
    const int sound = static_cast<int>(finding.readings.size()) - 1;
    finding.stray.assign(finding.readings.size(), draft.knowledge.settings.stray / sound);
    if (node != nullptr) {
        for (const Pair& pair : pairs_of(*node, "'stray'", draft.faults)) {
            const int reading = find_reading(finding, pair.key->text);
            const auto share = number_of(*pair.value, "'" + pair.key->text + "'", draft.faults);
            if (reading < 0) {
                add_fault(draft.faults, *pair.key,
                          "unknown reading '" + pair.key->text + "' of finding '" + finding.id + "'",
                          did_you_mean(pair.key->text, ids_of(finding.readings)));
            } else if (reading == sound) {
                add_fault(draft.faults, *pair.key,
                          "'" + pair.key->text + "' is the sound reading, it has what is left",
                          "leave it out");
            } else if (share && (*share < 0 || *share > 1)) {
                add_fault(draft.faults, *pair.value, "'" + pair.key->text + "' must be a share from 0 to 1");
            } else if (share) {
                finding.stray[reading] = *share;
            }
        }
    }
    double bad = 0;
    for (int i = 0; i < sound; ++i) bad += finding.stray[i];
    if (bad > 1 && node != nullptr) add_fault(draft.faults, *node, "the stray shares add to more than 1");
    finding.stray[sound] = std::max(0.0, 1 - bad);
}

// "worksheet.result"
void read_from(Draft& draft, const YamlNode& node, Finding& finding) {
    const auto text = text_of(node, "'from'", draft.faults);
    if (!text) return;
    const std::size_t dot = text->find('.');
    YamlNode sheet_name = node;
    sheet_name.text = text->substr(0, dot);
    const Index sheet = resolve(draft, EntryKind::worksheet, sheet_name);
    if (sheet == none) return;
    const std::string wanted = dot == std::string::npos ? "" : text->substr(dot + 1);
    const auto& results = draft.knowledge.worksheets[sheet].results;
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < results.size(); ++i) {
        ids.push_back(results[i].id);
        if (results[i].id != wanted) continue;
        finding.from = WorksheetResultRef{sheet, static_cast<int>(i)};
        if (!finding.unit) {
            finding.unit = results[i].unit;
        } else if (finding.unit->dimension != results[i].unit.dimension) {
            add_fault(draft.faults, node,
                      "'" + *text + "' is in " + results[i].unit.name + ", but the finding is in " +
                          finding.unit->name);
        }
        return;
    }
    if (draft.is_doubtful(sheet_name.text)) return;
    add_fault(draft.faults, node, "worksheet '" + sheet_name.text + "' has no result '" + wanted + "'",
              did_you_mean(wanted, ids));
}

void read_measure(Draft& draft, MapReader& map, Finding& finding) {
    const YamlNode* unit = map.get("unit");
    const YamlNode* from = map.get("from");
    const YamlNode* spread = map.get("spread");
    if (unit != nullptr) {
        finding.unit = unit_of(*unit, draft.faults);
        if (!finding.unit) draft.doubtful.insert(finding.id);
    }
    if (from != nullptr) {
        read_from(draft, *from, finding);
        if (!finding.from) draft.doubtful.insert(finding.id);
    }
    if (spread == nullptr) return;
    if (finding.unit) {
        finding.spread = spread_of(*spread, *finding.unit, draft.faults).value_or(0);
    } else if (!draft.is_doubtful(finding.id)) {
        add_fault(draft.faults, *spread, "'spread' needs a finding with 'unit'");
    }
}

void read_finding(Draft& draft, MapReader& map, Finding& finding) {
    finding.name = map.text("name");
    finding.ask = map.text("ask");
    finding.look = map.optional_texts("look");
    read_measure(draft, map, finding);
    if (const YamlNode* readings = map.get("readings")) {
        read_readings(draft, *readings, finding);
    } else if (!finding.unit && !draft.is_doubtful(finding.id)) {
        add_fault(draft.faults, map.node(), map.owner() + " has neither 'readings' nor 'unit'");
        draft.doubtful.insert(finding.id);
    }
    read_stray(draft, map, finding);
    read_gauge(draft, map, finding);
    if (const YamlNode* minutes = map.get("minutes")) {
        finding.minutes = minutes_of(*minutes, "'minutes'", draft.faults).value_or(finding.minutes);
    } else if (!map.has("minutes")) {
        add_warning(draft.faults, map.node(), map.owner() + " does not say what it takes",
                    "without 'minutes' it is taken as 1 min");
    }
    if (const YamlNode* check = map.get("check")) finding.check = resolve(draft, EntryKind::check, *check);
    finding.needs = optional_list(draft, EntryKind::need, map, "needs");
    if (const YamlNode* part = map.get("part")) finding.part = resolve(draft, EntryKind::part, *part);
    read_later(draft, map.get("possible_when"), finding.possible_when);
    read_sources(draft, map, finding, SourceRule::required);
}

}  // namespace

int resolve_reading(Draft& draft, const Finding& finding, const YamlNode& node) {
    const auto id = text_of(node, "a reading", draft.faults);
    if (!id || draft.is_doubtful(finding.id)) return -1;
    const int reading = find_reading(finding, *id);
    if (reading < 0) {
        const bool has_readings = !finding.readings.empty();
        add_fault(draft.faults, node,
                  has_readings ? "unknown reading '" + *id + "' of finding '" + finding.id + "'"
                               : "finding '" + finding.id + "' has no readings",
                  did_you_mean(*id, ids_of(finding.readings)));
    }
    return reading;
}

void read_findings(Draft& draft) {
    each_entry(draft, EntryKind::finding, draft.knowledge.findings,
               [&](MapReader& map, Finding& finding) { read_finding(draft, map, finding); });
}

void read_complaints(Draft& draft) {
    each_entry(
        draft, EntryKind::complaint, draft.knowledge.complaints, [&](MapReader& map, Complaint& complaint) {
            complaint.name = map.text("name");
            complaint.words = map.texts("words", 1);
            read_sources(draft, map, complaint, SourceRule::required);
            const YamlNode* says = map.get("says");
            if (says == nullptr) return;
            for (const Pair& pair : pairs_of(*says, "'says'", draft.faults)) {
                const Index finding = resolve(draft, EntryKind::finding, *pair.key);
                if (finding == none) continue;
                const int reading = resolve_reading(draft, draft.knowledge.findings[finding], *pair.value);
                if (reading >= 0) complaint.says.emplace_back(finding, reading);
            }
        });
}

}  // namespace hardover::reading_detail

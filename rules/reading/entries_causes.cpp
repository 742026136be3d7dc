// Reads causes: their odds for each history, what they show and how they are proved.
#include <algorithm>

#include "rules/reading/draft.hpp"
#include "rules/reading/letters.hpp"

namespace hardover::reading_detail {
namespace {

void read_odds(Draft& draft, MapReader& map, Cause& cause) {
    const auto& histories = draft.knowledge.histories;
    cause.odds.assign(histories.size(), 0);
    const YamlNode* node = map.need("odds");
    if (node == nullptr) return;
    std::vector<bool> named(histories.size(), false);
    for (const Pair& pair : pairs_of(*node, "'odds'", draft.faults)) {
        const Index history = resolve(draft, EntryKind::history, *pair.key);
        const auto odds = number_of(*pair.value, "'" + pair.key->text + "'", draft.faults);
        if (odds && (*odds < 0 || *odds > 1000)) {
            add_fault(draft.faults, *pair.value, "odds are from 0 to 1000, they are per 1000 comebacks");
        }
        if (history == none) continue;
        named[history] = true;
        cause.odds[history] = odds.value_or(0);
    }
    if (!node->is(YamlNode::Kind::map)) return;
    for (std::size_t i = 0; i < histories.size(); ++i) {
        const bool is_first = draft.index[static_cast<std::size_t>(EntryKind::history)][histories[i].id] ==
                              static_cast<Index>(i);
        if (is_first && !named[i]) {
            add_fault(draft.faults, *node, "'odds' does not name the history '" + histories[i].id + "'");
        }
    }
}

// How often the cause alone gives each reading of one finding; the sound reading has what is left.
void read_shares(Draft& draft, const Pair& pair, const Finding& finding, Cause& cause) {
    if (finding.readings.empty()) {
        if (!draft.is_doubtful(finding.id)) {
            add_fault(draft.faults, *pair.key,
                      "finding '" + finding.id + "' has no readings, so a cause cannot show it");
        }
        return;
    }
    Shows shows;
    shows.finding = draft.index[static_cast<std::size_t>(EntryKind::finding)][finding.id];
    shows.how_often.assign(finding.readings.size(), 0);
    const int sound = static_cast<int>(finding.readings.size()) - 1;
    double sum = 0;
    for (const Pair& share : pairs_of(*pair.value, "'" + finding.id + "'", draft.faults)) {
        const int reading = resolve_reading(draft, finding, *share.key);
        const auto value = scale_value(draft, "how_often", *share.value);
        if (reading == sound) {
            add_fault(
                draft.faults, *share.key,
                "'" + share.key->text + "' is the sound reading of '" + finding.id + "', it has what is left",
                "leave it out");
        } else if (value && (*value < 0 || *value > 1)) {
            add_fault(draft.faults, *share.value, "'" + share.key->text + "' must be a share from 0 to 1");
        } else if (value && reading >= 0) {
            shows.how_often[reading] = *value;
            sum += *value;
        }
    }
    if (sum > 1 + 1e-9) {
        add_fault(draft.faults, *pair.key,
                  "the shares of '" + finding.id + "' add to " + short_number(sum) + ", more than 1");
    }
    shows.how_often[sound] = std::max(0.0, 1 - sum);
    cause.shows.push_back(std::move(shows));
}

// A list of causes, for which the cause's own sources speak; or each with its own source.
void read_origins(Draft& draft, MapReader& map, Cause& cause) {
    const YamlNode* node = map.get("comes_from");
    if (node == nullptr) return;
    if (!node->is(YamlNode::Kind::map)) {
        cause.comes_from = resolve_list(draft, EntryKind::cause, *node, "'comes_from'");
        return;
    }
    for (const Pair& pair : pairs_of(*node, "'comes_from'", draft.faults)) {
        const Index origin = resolve(draft, EntryKind::cause, *pair.key);
        std::vector<Index> sources = sources_in(draft, *pair.value);
        if (origin == none) continue;
        cause.comes_from.push_back(origin);
        cause.origin_sources.push_back({origin, std::move(sources)});
    }
}

void read_cause(Draft& draft, MapReader& map, Cause& cause) {
    cause.name = map.text("name");
    cause.about = map.text("about");
    if (const YamlNode* part = map.get("part")) cause.part = resolve(draft, EntryKind::part, *part);
    read_odds(draft, map, cause);
    read_later(draft, map.get("possible_when"), cause.possible_when);
    if (const YamlNode* shows = map.need("shows")) {
        for (const Pair& pair : pairs_of(*shows, "'shows'", draft.faults)) {
            const Index finding = resolve(draft, EntryKind::finding, *pair.key);
            if (finding != none) read_shares(draft, pair, draft.knowledge.findings[finding], cause);
        }
    }
    if (const YamlNode* proof = map.need("proof")) cause.proof = resolve(draft, EntryKind::check, *proof);
    read_later(draft, map.need("proved_when"), cause.proved_when);
    if (const YamlNode* remedy = map.need("remedy")) {
        cause.remedy = resolve(draft, EntryKind::remedy, *remedy);
    }
    read_origins(draft, map, cause);
    read_on_the_rig(draft, map, cause);
    read_sources(draft, map, cause, SourceRule::required);
}

// Whether a finding names a check that there is not: that has been reported at the finding.
bool has_unknown_check(const Draft& draft, Index finding) {
    const YamlNode* node = draft.entries(EntryKind::finding)[finding].node;
    return node == nullptr || value_in(*node, "check") != nullptr;
}

// The shortest way round from a cause through what it comes from back to itself: the causes in order, from it
// on. Empty when there is none.
std::vector<Index> circle_from(const std::vector<Cause>& causes, Index first) {
    std::vector<Index> reached = {first};
    std::vector<std::size_t> by = {0};  // the place in `reached` of the one that comes from it
    for (std::size_t n = 0; n < reached.size(); ++n) {
        for (const Index further : causes[reached[n]].comes_from) {
            if (further == first) {
                std::vector<Index> circle;
                for (std::size_t at = n; at != 0; at = by[at]) circle.push_back(reached[at]);
                circle.push_back(first);
                std::reverse(circle.begin(), circle.end());
                return circle;
            }
            if (std::find(reached.begin(), reached.end(), further) != reached.end()) continue;
            reached.push_back(further);
            by.push_back(n);
        }
    }
    return {};
}

// Where an entry names a cause under 'comes_from': in a list, or as the key of its own source.
const YamlNode& origin_named(const YamlNode& entry, const std::string& id) {
    const YamlNode& all = *value_in(entry, "comes_from");
    const std::vector<YamlNode>& names = all.is(YamlNode::Kind::map) ? all.keys : all.items;
    const auto found =
        std::find_if(names.begin(), names.end(), [&id](const YamlNode& name) { return name.text == id; });
    return found == names.end() ? all : *found;
}

}  // namespace

void read_causes(Draft& draft) {
    each_entry(draft, EntryKind::cause, draft.knowledge.causes,
               [&](MapReader& map, Cause& cause) { read_cause(draft, map, cause); });
}

// One remedy must cure them all: telling them apart would otherwise matter.
void read_same_cures(Draft& draft) {
    const std::vector<Cause>& causes = draft.knowledge.causes;
    each_entry(draft, EntryKind::same_cure, draft.knowledge.same_cures, [&](MapReader& map, SameCure& same) {
        same.why = map.text("why");
        read_sources(draft, map, same, SourceRule::optional);
        const YamlNode* node = map.need("causes");
        if (node == nullptr) return;
        same.causes = resolve_list(draft, EntryKind::cause, *node, "'causes'");
        if (node->is(YamlNode::Kind::list) && node->items.size() < 2) {
            add_fault(draft.faults, *node, "'causes' needs at least two");
        }
        for (const Index cause : same.causes) {
            same.name += (same.name.empty() ? "" : "; ") + causes[cause].name;
            const Index remedy = causes[cause].remedy;
            const Index first = causes[same.causes.front()].remedy;
            if (remedy == none || first == none || remedy == first) continue;
            add_fault(draft.faults, *node,
                      "'" + causes[cause].id + "' and '" + causes[same.causes.front()].id +
                          "' have different remedies",
                      "give them a finding that tells them apart");
        }
    });
}

// What a cause comes from is put right before it: no cause may come from itself, however many steps round.
void check_origins(Draft& draft) {
    const std::vector<Cause>& causes = draft.knowledge.causes;
    std::vector<bool> told(causes.size(), false);
    for (std::size_t i = 0; i < causes.size(); ++i) {
        const std::vector<Index> circle = circle_from(causes, static_cast<Index>(i));
        // Each circle once, from the first of its causes on.
        if (std::any_of(circle.begin(), circle.end(), [&told](Index cause) { return told[cause]; })) continue;
        for (const Index cause : circle) told[cause] = true;
        if (circle.empty()) continue;
        std::string what = "'" + causes[i].id + "' comes from itself";
        if (circle.size() > 1) {
            what = "causes go round in a circle: ";
            for (const Index cause : circle) what += "'" + causes[cause].id + "' comes from ";
            what += "'" + causes[i].id + "'";
        }
        const Index next = circle[circle.size() > 1 ? 1 : 0];
        add_fault(draft.faults, origin_named(*draft.entries(EntryKind::cause)[i].node, causes[next].id), what,
                  "name under 'comes_from' only what is there before it");
    }
}

// A proof must be had from the check that is named for it: every finding in proved_when is one it gets.
void check_proofs(Draft& draft) {
    const Knowledge& knowledge = draft.knowledge;
    const auto& findings = draft.index[static_cast<std::size_t>(EntryKind::finding)];
    for (std::size_t i = 0; i < knowledge.causes.size(); ++i) {
        const Cause& cause = knowledge.causes[i];
        if (cause.proof == none || cause.proved_when.empty()) continue;
        if (draft.entries(EntryKind::check)[cause.proof].node == nullptr) continue;
        const YamlNode& entry = *draft.entries(EntryKind::cause)[i].node;
        const YamlNode& condition = *value_in(entry, "proved_when");
        const Check& check = knowledge.checks[cause.proof];
        bool uses_finding = false;
        for (const std::string& name : cause.proved_when.names()) {
            const auto finding = findings.find(name);
            if (finding == findings.end()) continue;
            uses_finding = true;
            const Index got_by = knowledge.findings[finding->second].check;
            if (got_by == cause.proof || (got_by == none && has_unknown_check(draft, finding->second)))
                continue;
            add_fault(draft.faults, condition,
                      "'proved_when' uses '" + name + "', which the check '" + check.id + "' does not get");
        }
        if (!uses_finding) {
            add_fault(draft.faults, condition,
                      "'proved_when' uses no finding of the check '" + check.id + "'");
        }
    }
}

}  // namespace hardover::reading_detail

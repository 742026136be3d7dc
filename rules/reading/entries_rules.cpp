// Reads rules: when a condition holds, then do.
#include <algorithm>
#include <array>

#include "rules/reading/draft.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::reading_detail {
namespace {

struct ActionWord {
    const char* key;
    Action::Kind kind;
    EntryKind target;
};

constexpr std::array<ActionWord, 7> action_words = {{{"favour", Action::Kind::favour, EntryKind::cause},
                                                     {"rule_out", Action::Kind::rule_out, EntryKind::cause},
                                                     {"run", Action::Kind::run, EntryKind::worksheet},
                                                     {"ask", Action::Kind::ask, EntryKind::finding},
                                                     {"caution", Action::Kind::caution, EntryKind::caution},
                                                     {"defer", Action::Kind::defer, EntryKind::deferral},
                                                     {"stop", Action::Kind::stop, EntryKind::stop}}};

void read_favour(Draft& draft, MapReader& map, Action& action) {
    const YamlNode* by = map.need("by");
    if (by == nullptr) return;
    const auto factor = scale_value(draft, "favour", *by);
    if (!factor) return;
    if (*factor <= 0) {
        add_fault(draft.faults, *by, "'by' must be more than 0", "to exclude a cause write rule_out");
        return;
    }
    action.by = *factor;
}

void read_action(Draft& draft, const YamlNode& node, const std::string& rule, std::vector<Action>& actions) {
    MapReader map(node, "an action of rule '" + rule + "'", draft.faults);
    std::vector<Action> found;
    for (const ActionWord& word : action_words) {
        const YamlNode* target = map.get(word.key);
        if (target == nullptr) continue;
        Action action;
        action.kind = word.kind;
        action.target = resolve(draft, word.target, *target);
        if (word.kind == Action::Kind::favour) read_favour(draft, map, action);
        found.push_back(std::move(action));
    }
    if (const YamlNode* fact = map.get("derive")) {
        Action action;
        action.kind = Action::Kind::derive;
        action.fact = fact->text;
        if (check_word(draft, *fact, "fact")) found.push_back(std::move(action));
    } else if (found.empty() && node.is(YamlNode::Kind::map) && node.keys.size() == 1) {
        std::vector<std::string> words = {"derive"};
        for (const ActionWord& word : action_words) words.emplace_back(word.key);
        std::string cure = did_you_mean(node.keys[0].text, words);
        if (cure.empty()) cure = "favour, rule_out, derive, run, ask, caution, defer or stop";
        const bool is_unknown = std::find(words.begin(), words.end(), node.keys[0].text) == words.end();
        if (is_unknown) add_fault(draft.faults, node, "unknown action '" + node.keys[0].text + "'", cure);
        return;
    }
    if (found.size() > 1) add_fault(draft.faults, node, "one action each, after its own '- '");
    map.refuse_other_keys();
    actions.insert(actions.end(), found.begin(), found.end());
}

}  // namespace

void read_rules(Draft& draft) {
    each_entry(draft, EntryKind::rule, draft.knowledge.rules, [&](MapReader& map, Rule& rule) {
        read_later(draft, map.need("when"), rule.when);
        if (const YamlNode* then = map.need("then")) {
            const auto actions = list_of(*then, "'then'", draft.faults);
            for (const YamlNode* action : actions) read_action(draft, *action, rule.id, rule.then);
            if (then->is(YamlNode::Kind::list) && actions.empty()) {
                add_fault(draft.faults, *then, "'then' of " + map.owner() + " is empty",
                          "give at least one action");
            }
        }
        rule.why = map.text("why");
        read_sources(draft, map, rule, SourceRule::required);
    });
}

}  // namespace hardover::reading_detail

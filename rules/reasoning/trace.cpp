#include "rules/reasoning/trace.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "rules/reasoning/leading.hpp"

namespace hardover {

namespace {

void add_once(std::vector<Index>& list, Index index) {
    if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

// What a condition rests on, followed through worksheets and derived facts.
class Roots {
  public:
    Roots(const Knowledge& knowledge, const Facts& facts, Situation& situation, TracedRule& rule)
        : knowledge_(knowledge), facts_(facts), situation_(situation), rule_(rule) {}

    void follow(const Expression& condition) {
        for (const std::string& name : situation_.known_names(condition)) follow(name);
    }

  private:
    void follow(const std::string& name) {
        if (name.starts_with("rig.")) return follow_rig(find(knowledge_.rig_fields, name.substr(4)));
        if (name.starts_with("fact.")) return follow_fact(name.substr(5));
        if (const std::size_t dot = name.find('.'); dot != std::string::npos) {
            return follow_sheet(find(knowledge_.worksheets, name.substr(0, dot)));
        }
        follow_finding(find(knowledge_.findings, name));
    }

    void follow_rig(Index field) {
        if (field == none || facts_.rig.contains(field)) return;
        if (std::holds_alternative<Unknown>(knowledge_.rig_fields[static_cast<std::size_t>(field)].assumed))
            return;
        add_once(rule_.assumptions, field);
    }

    void follow_finding(Index finding) {
        if (finding == none) return;
        const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
        if (!facts_.answers.contains(finding) && f.from) return follow_sheet(f.from->worksheet);
        add_once(rule_.findings, finding);
    }

    void follow_sheet(Index sheet) {
        if (sheet == none || std::find(sheets_.begin(), sheets_.end(), sheet) != sheets_.end()) return;
        sheets_.push_back(sheet);
        for (const WorksheetInput& input : knowledge_.worksheets[static_cast<std::size_t>(sheet)].inputs) {
            follow_rig(input.rig_field);
            follow_finding(input.finding);
        }
    }

    void follow_fact(const std::string& fact) {
        for (std::size_t r = 0; r < knowledge_.rules.size(); ++r) {
            const Rule& rule = knowledge_.rules[r];
            const auto index = static_cast<Index>(r);
            const bool derives = std::any_of(rule.then.begin(), rule.then.end(), [&](const Action& action) {
                return action.kind == Action::Kind::derive && action.fact == fact;
            });
            const bool seen = std::find(rule_.rules.begin(), rule_.rules.end(), index) != rule_.rules.end();
            if (!derives || seen || situation_.rule_holds(index) != Truth::yes) continue;
            rule_.rules.push_back(index);
            follow(rule.when);
        }
    }

    const Knowledge& knowledge_;
    const Facts& facts_;
    Situation& situation_;
    TracedRule& rule_;
    std::vector<Index> sheets_;
};

Without seen_from(const Leading& then, Index first) {
    Without without;
    without.probability = then.all[static_cast<std::size_t>(first)];
    without.first = then.first;
    without.first_probability = then.probability;
    return without;
}

std::vector<TracedAnswer> traced_answers(const DiagnosisCase& diagnosis, Index first) {
    std::vector<TracedAnswer> answers;
    std::vector<bool> in_use(diagnosis.items().size(), true);
    for (std::size_t n = 0; n < in_use.size(); ++n) {
        const EvidenceItem& item = diagnosis.items()[n];
        if (item.kind != Weight::Kind::finding) continue;
        in_use[n] = false;
        answers.push_back({item.index, item.stage, item.reading,
                           seen_from(leading(diagnosis, diagnosis.with(in_use)), first)});
        in_use[n] = true;
    }
    return answers;
}

}  // namespace

Trace trace(const PreparedKnowledge& prepared, const Facts& facts) {
    const Knowledge& knowledge = prepared.knowledge();
    Trace trace;
    Situation situation(prepared, facts);
    const Fired fired = fire(knowledge, situation);
    const DiagnosisCase diagnosis(knowledge, facts, fired, situation);
    const Leading now = leading(diagnosis, diagnosis.with_all());
    if (now.first == none) return trace;
    trace.first = now.first;
    trace.probability = now.probability;
    Knowledge other = knowledge;  // with one thing less at a time
    for (const FiredRule& rule : fired.rules) {
        TracedRule traced;
        traced.rule = rule.rule;
        traced.because = rule.because;
        Roots(knowledge, facts, situation, traced)
            .follow(knowledge.rules[static_cast<std::size_t>(rule.rule)].when);
        std::vector<Action>& then = other.rules[static_cast<std::size_t>(rule.rule)].then;
        const std::vector<Action> actions = std::exchange(then, {});
        traced.without = seen_from(leading(other, facts), now.first);
        then = actions;
        trace.rules.push_back(std::move(traced));
    }
    const std::set<Index> assumed = situation.assumed();
    for (Index field : assumed) {
        TracedAssumption traced;
        traced.rig_field = field;
        for (const TracedRule& rule : trace.rules) {
            const auto& on = rule.assumptions;
            if (std::find(on.begin(), on.end(), field) != on.end()) traced.rules.push_back(rule.rule);
        }
        auto& value = other.rig_fields[static_cast<std::size_t>(field)].assumed;
        const auto as_assumed = std::exchange(value, Unknown{});
        traced.without = seen_from(leading(other, facts), now.first);
        value = as_assumed;
        trace.assumptions.push_back(std::move(traced));
    }
    trace.answers = traced_answers(diagnosis, now.first);
    return trace;
}

}  // namespace hardover

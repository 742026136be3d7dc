// Puts rules into layers, so that a rule only uses facts that are settled before it, and refuses circles: of
// rules that wait for each other's facts, and of worksheets that wait for each other's results.
#include <algorithm>
#include <unordered_map>

#include "rules/reading/draft.hpp"

namespace hardover::reading_detail {
namespace {

using Needs = std::vector<std::vector<int>>;  // for each member, the members it waits for

// The members of one circle among those without a layer, from the lowest on. From a member that has no layer
// there is always another without layer that it waits for, so the walk must come back to where it was.
std::vector<int> find_circle(const Needs& needs, const std::vector<int>& layer) {
    int at = static_cast<int>(std::find(layer.begin(), layer.end(), -1) - layer.begin());
    std::vector<int> walk;
    while (std::find(walk.begin(), walk.end(), at) == walk.end()) {
        walk.push_back(at);
        at = *std::find_if(needs[at].begin(), needs[at].end(), [&](int n) { return layer[n] < 0; });
    }
    walk.erase(walk.begin(), std::find(walk.begin(), walk.end(), at));
    std::rotate(walk.begin(), std::min_element(walk.begin(), walk.end()), walk.end());
    return walk;
}

struct Layers {
    std::vector<int> layer;  // of each member: one more than the highest it waits for
    std::vector<std::vector<int>> circles;
};

Layers layers_of(const Needs& needs) {
    const std::size_t count = needs.size();
    Layers found;
    found.layer.assign(count, -1);
    std::vector<int> open(count, 0);
    Needs waiting(count);  // who waits for this member
    std::vector<int> ready;
    for (std::size_t i = 0; i < count; ++i) {
        open[i] = static_cast<int>(needs[i].size());
        for (const int need : needs[i]) waiting[need].push_back(static_cast<int>(i));
        if (open[i] == 0) ready.push_back(static_cast<int>(i));
    }
    std::size_t settled = 0;
    const auto settle = [&](int member) {
        int layer = 0;
        for (const int need : needs[member]) layer = std::max(layer, found.layer[need] + 1);
        found.layer[member] = layer;
        ++settled;
        for (const int other : waiting[member]) {
            if (--open[other] == 0 && found.layer[other] < 0) ready.push_back(other);
        }
    };
    while (settled < count) {
        while (!ready.empty()) {
            const int next = ready.back();
            ready.pop_back();
            if (found.layer[next] < 0) settle(next);
        }
        if (settled == count) break;
        found.circles.push_back(find_circle(needs, found.layer));
        for (const int member : found.circles.back()) {
            if (found.layer[member] < 0) settle(member);
        }
    }
    return found;
}

template <typename E>
std::string as_chain(const std::vector<int>& circle, const std::vector<E>& entries) {
    std::string chain;
    for (const int member : circle) chain += "'" + entries[member].id + "' waits for ";
    return chain + "'" + entries[circle.front()].id + "'";
}

void add_unique(std::vector<int>& list, int member) {
    if (std::find(list.begin(), list.end(), member) == list.end()) list.push_back(member);
}

}  // namespace

void put_rules_in_layers(Draft& draft) {
    std::vector<Rule>& rules = draft.knowledge.rules;
    std::unordered_map<std::string, std::vector<int>> derived_by;
    for (std::size_t i = 0; i < rules.size(); ++i) {
        for (const Action& action : rules[i].then) {
            if (action.kind == Action::Kind::derive) {
                add_unique(derived_by["fact." + action.fact], static_cast<int>(i));
            }
        }
    }
    Needs needs(rules.size());
    for (std::size_t i = 0; i < rules.size(); ++i) {
        for (const std::string& name : rules[i].when.names()) {
            const auto found = derived_by.find(name);
            if (found == derived_by.end()) continue;
            for (const int rule : found->second) add_unique(needs[i], rule);
        }
    }
    const Layers layers = layers_of(needs);
    for (const auto& circle : layers.circles) {
        draft.faults.push_back({rules[circle.front()].place,
                                "rules go round in a circle: " + as_chain(circle, rules),
                                "no fact may rest on itself"});
    }
    for (std::size_t i = 0; i < rules.size(); ++i) rules[i].layer = layers.layer[i];
    std::stable_sort(rules.begin(), rules.end(),
                     [](const Rule& a, const Rule& b) { return a.layer < b.layer; });
}

void refuse_worksheet_circles(Draft& draft) {
    const Knowledge& knowledge = draft.knowledge;
    Needs needs(knowledge.worksheets.size());
    for (std::size_t i = 0; i < needs.size(); ++i) {
        for (const WorksheetInput& input : knowledge.worksheets[i].inputs) {
            if (input.finding == none) continue;
            const auto& from = knowledge.findings[input.finding].from;
            if (from) add_unique(needs[i], from->worksheet);
        }
    }
    for (const auto& circle : layers_of(needs).circles) {
        draft.faults.push_back({knowledge.worksheets[circle.front()].place,
                                "worksheets go round in a circle: " + as_chain(circle, knowledge.worksheets),
                                "an input must not rest on the worksheet's own result"});
    }
}

}  // namespace hardover::reading_detail

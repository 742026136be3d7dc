#include "rules/reading/rigs.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace hardover::reading_detail {
namespace {

// More combinations of choices than this are not tried.
constexpr std::size_t most_rigs = 4096;

// Plain numbers over no more than this are tried one by one; anything wider stands for all between its ends,
// the ends included.
constexpr double widest_count = 16;
constexpr double a_little = 1e-6;

// The names conditions use ("history", "rig.helm") with the values that can be.
struct NameValues {
    std::string name;
    std::vector<Value> values;
};

NameValues values_of_field(const std::string& name, const RigField& field) {
    NameValues found{name, {}};
    for (const Word& word : field.choices) found.values.emplace_back(Choice{{word.id}});
    if (!found.values.empty() || !field.least || !field.most) return found;
    const double range = field.most->value - field.least->value;
    Quantity value = *field.least;
    if (value.dimension.is_number() && range <= widest_count) {
        for (; value.value <= field.most->value; ++value.value) found.values.emplace_back(value);
        return found;
    }
    value.value += range / 2;
    value.spread = range / 2 * (1 + a_little);
    found.values.emplace_back(value);
    return found;
}

std::vector<NameValues> values_in(const std::vector<const Expression*>& conditions,
                                  const Knowledge& knowledge) {
    std::set<std::string> names;
    for (const Expression* condition : conditions) {
        names.insert(condition->names().begin(), condition->names().end());
    }
    std::vector<NameValues> found;
    for (const std::string& name : names) {
        NameValues values{name, {}};
        if (name == "history") {
            for (const History& history : knowledge.histories)
                values.values.emplace_back(Choice{{history.id}});
        } else if (name.rfind("rig.", 0) == 0) {
            const Index field = find(knowledge.rig_fields, name.substr(4));
            if (field != none) values = values_of_field(name, knowledge.rig_fields[field]);
        }
        if (!values.values.empty()) found.push_back(std::move(values));
    }
    return found;
}

// "is known" and "is unknown" are decided even where nothing is known, so such a condition is not judged.
bool asks_what_is_known(const Expression& condition) {
    return condition.text().find("known") != std::string::npos;
}

}  // namespace

bool never_hold_together(const std::vector<const Expression*>& conditions, const Knowledge& knowledge) {
    const auto says_nothing = [](const Expression* condition) { return condition->empty(); };
    const auto cannot_be_judged = [](const Expression* condition) { return asks_what_is_known(*condition); };
    if (std::all_of(conditions.begin(), conditions.end(), says_nothing)) return false;
    if (std::any_of(conditions.begin(), conditions.end(), cannot_be_judged)) return false;
    const std::vector<NameValues> names = values_in(conditions, knowledge);
    std::size_t rigs = 1;
    for (const NameValues& name : names) rigs *= name.values.size();
    if (rigs > most_rigs) return false;
    for (std::size_t rig = 0; rig < rigs; ++rig) {
        std::map<std::string, Value> values;
        std::size_t rest = rig;
        for (const NameValues& name : names) {
            values[name.name] = name.values[rest % name.values.size()];
            rest /= name.values.size();
        }
        const auto lookup = [&](const std::string& name) {
            const auto value = values.find(name);
            return value == values.end() ? Value{Unknown{}} : value->second;
        };
        const bool refused = std::any_of(
            conditions.begin(), conditions.end(),
            [&](const Expression* condition) { return condition->condition(lookup) == Truth::no; });
        if (!refused) return false;
    }
    return true;
}

}  // namespace hardover::reading_detail

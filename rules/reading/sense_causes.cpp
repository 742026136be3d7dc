// Can the causes be told apart and proved, and is there a rig on which each question and cause makes sense.
#include <algorithm>
#include <map>

#include "rules/reading/sense.hpp"

namespace hardover::reading_detail {
namespace {

// More combinations of choices than this are not tried.
constexpr std::size_t most_rigs = 4096;

using Signs = std::vector<std::pair<Index, std::vector<double>>>;

Signs signs_of(const Cause& cause) {
    Signs signs;
    for (const Shows& shows : cause.shows) signs.emplace_back(shows.finding, shows.how_often);
    std::sort(signs.begin(), signs.end());
    return signs;
}

// Causes that show just the same on the same rigs: no answer can put one before the other.
void check_told_apart(const Knowledge& knowledge, std::vector<Fault>& faults) {
    std::map<std::pair<Signs, std::string>, const Cause*> first_with;
    for (const Cause& cause : knowledge.causes) {
        const auto key = std::make_pair(signs_of(cause), cause.possible_when.text());
        const auto [found, is_new] = first_with.emplace(key, &cause);
        if (is_new) continue;
        const Cause& other = *found->second;
        const bool same_remedy = cause.remedy == other.remedy;
        faults.push_back({cause.place,
                          "no finding tells '" + cause.id + "' from '" + other.id + "'" +
                              (same_remedy ? "; the remedy is the same" : ", and their remedies differ"),
                          "give one of them a finding of its own under 'shows'", same_remedy});
    }
}

// A proof that the cause is not said to show does nothing for its rank.
void check_proof_is_shown(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        const auto& names = cause.proved_when.names();
        const bool shown = std::any_of(cause.shows.begin(), cause.shows.end(), [&](const Shows& shows) {
            return std::find(names.begin(), names.end(), knowledge.findings[shows.finding].id) != names.end();
        });
        if (shown) continue;
        faults.push_back({cause.place, "'" + cause.id + "' is proved by a finding that it does not show",
                          "add the finding to its 'shows'", true});
    }
}

// The choice names a condition uses ("history", "rig.helm") with their words.
struct ChoiceName {
    std::string name;
    std::vector<std::string> words;
};

std::vector<ChoiceName> choices_in(const Expression& condition, const Knowledge& knowledge) {
    std::vector<ChoiceName> found;
    for (const std::string& name : condition.names()) {
        ChoiceName choice{name, {}};
        if (name == "history") {
            for (const History& history : knowledge.histories) choice.words.push_back(history.id);
        } else if (name.rfind("rig.", 0) == 0) {
            const Index field = find(knowledge.rig_fields, name.substr(4));
            if (field == none) continue;
            for (const Word& word : knowledge.rig_fields[field].choices) choice.words.push_back(word.id);
        }
        if (!choice.words.empty()) found.push_back(std::move(choice));
    }
    return found;
}

// Whether the condition is a plain no for every combination of choices, whatever else is unknown.
bool never_holds(const Expression& condition, const Knowledge& knowledge) {
    if (condition.empty()) return false;
    const std::vector<ChoiceName> choices = choices_in(condition, knowledge);
    std::size_t rigs = 1;
    for (const ChoiceName& choice : choices) rigs *= choice.words.size();
    if (rigs > most_rigs) return false;
    for (std::size_t rig = 0; rig < rigs; ++rig) {
        std::map<std::string, Value> values;
        std::size_t rest = rig;
        for (const ChoiceName& choice : choices) {
            values[choice.name] = Choice{{choice.words[rest % choice.words.size()]}};
            rest /= choice.words.size();
        }
        const auto lookup = [&](const std::string& name) {
            const auto value = values.find(name);
            return value == values.end() ? Value{Unknown{}} : value->second;
        };
        if (condition.condition(lookup) != Truth::no) return false;
    }
    return true;
}

template <typename E>
void check_reachable(const std::vector<E>& entries, const char* kind, const Knowledge& knowledge,
                     std::vector<Fault>& faults) {
    for (const E& entry : entries) {
        if (!never_holds(entry.possible_when, knowledge)) continue;
        faults.push_back(
            {entry.place,
             std::string("there is no rig on which the ") + kind + " '" + entry.id + "' is possible",
             "look at its 'possible_when'", true});
    }
}

}  // namespace

void check_causes(const Knowledge& knowledge, std::vector<Fault>& faults) {
    check_told_apart(knowledge, faults);
    check_proof_is_shown(knowledge, faults);
    check_reachable(knowledge.causes, "cause", knowledge, faults);
    check_reachable(knowledge.findings, "finding", knowledge, faults);
}

}  // namespace hardover::reading_detail

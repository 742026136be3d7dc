#include "app/study/portrait.hpp"

#include <algorithm>
#include <cctype>
#include <set>
#include <utility>

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/situation.hpp"
#include "rules/reasoning/usable_shares.hpp"

namespace hardover::study {

namespace {

constexpr double complains_enough = 0.2;
constexpr double carried_often = 0.3;
constexpr int fewest_works = 3;        // with fewer, a word says nothing
constexpr std::size_t word_start = 5;  // letters that tell a word: "tighten", "tightly"

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

// Yes, no or unknown by rig and history alone.
Truth holds_on(const Knowledge& knowledge, const Facts& facts, const Expression& condition) {
    if (condition.empty()) return Truth::yes;
    return condition.condition([&](const std::string& name) -> Value {
        if (name == "history" && facts.history != none) {
            return Choice{{at(knowledge.histories, facts.history).id}};
        }
        if (name.rfind("rig.", 0) != 0) return Unknown{};
        const auto value = facts.rig.find(find(knowledge.rig_fields, name.substr(4)));
        if (value == facts.rig.end()) return Unknown{};
        if (const auto* choice = std::get_if<std::string>(&value->second)) return Choice{{*choice}};
        return std::get<Quantity>(value->second);
    });
}

// What a field may be, what is usual first: choices, and small counts such as one ram or two.
std::vector<RigValue> values_of(const RigField& field) {
    std::vector<RigValue> values;
    if (!field.choices.empty()) {
        const auto* usual = std::get_if<std::string>(&field.assumed);
        if (usual != nullptr) values.emplace_back(*usual);
        for (const Word& choice : field.choices) {
            if (usual == nullptr || choice.id != *usual) values.emplace_back(choice.id);
        }
        return values;
    }
    if (!field.least || !field.most || !field.least->dimension.is_number()) return values;
    for (double count = field.least->value; count <= field.most->value && values.size() < 4; ++count) {
        values.emplace_back(Quantity{count, {}, 0});
    }
    return values;
}

// The fields of the rig that a condition names and that have a value in `facts`.
std::vector<Index> fields_in(const Knowledge& knowledge, const Facts& facts, const Expression& condition) {
    std::vector<Index> fields;
    for (const std::string& name : condition.names()) {
        if (name.rfind("rig.", 0) != 0) continue;
        const Index field = find(knowledge.rig_fields, name.substr(4));
        if (facts.rig.contains(field)) fields.push_back(field);
    }
    return fields;
}

// Tries the values of these fields from `from` on, together, until the condition may hold. False when no
// values do; the facts are then as before.
bool make_hold(const Knowledge& knowledge, Facts& facts, const Expression& condition,
               const std::vector<Index>& fields, std::size_t from = 0) {
    if (holds_on(knowledge, facts, condition) != Truth::no) return true;
    if (from == fields.size()) return false;
    RigValue& value = facts.rig.at(fields[from]);
    const RigValue before = value;
    for (const RigValue& other : values_of(at(knowledge.rig_fields, fields[from]))) {
        value = other;
        if (make_hold(knowledge, facts, condition, fields, from + 1)) return true;
    }
    value = before;
    return false;
}

// The beginnings of all longer words, each once.
std::set<std::string> words_of(const std::vector<std::string>& texts) {
    std::set<std::string> words;
    for (const std::string& text : texts) {
        std::string word;
        for (const char letter : text + " ") {
            if (std::isalpha(static_cast<unsigned char>(letter))) {
                word += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
                continue;
            }
            if (word.size() >= word_start) words.insert(word.substr(0, word_start));
            word.clear();
        }
    }
    return words;
}

}  // namespace

Portraits::Portraits(const Knowledge& knowledge)
    : knowledge_(knowledge), prepared_(knowledge), authored_(read_authored(knowledge).items) {
    for (const Cause& cause : knowledge.causes) {
        double odds = 0;
        for (std::size_t h = 0; h < knowledge.histories.size(); ++h) {
            odds += knowledge.histories[h].share * cause.odds[h];
        }
        odds_.push_back(odds);
    }
    for (const Check& check : knowledge.checks) count_words(check.steps, check.cautions);
    for (const Remedy& remedy : knowledge.remedies) count_words(remedy.steps, remedy.cautions);
}

void Portraits::count_words(const std::vector<std::string>& steps, const std::vector<Index>& cautions) {
    for (const std::string& word : words_of(steps)) {
        Works& works = works_[word];
        ++works.count;
        for (const Index caution : cautions) ++works.cautions[caution];
    }
}

std::vector<Index> Portraits::often_carried(const std::vector<std::string>& steps) const {
    std::set<Index> often;
    for (const std::string& word : words_of(steps)) {
        const auto found = works_.find(word);
        if (found == works_.end() || found->second.count < fewest_works) continue;
        for (const auto& [caution, count] : found->second.cautions) {
            if (count >= carried_often * found->second.count) often.insert(caution);
        }
    }
    return {often.begin(), often.end()};
}

std::vector<double> Portraits::readings(Index cause, Index finding) const {
    for (const Shows& shows : shown(cause)) {
        if (shows.finding == finding) return usable_link(shows.how_often);
    }
    return readings_without(finding);
}

std::vector<double> Portraits::readings_without(Index finding) const {
    return usable_stray(at(knowledge_.findings, finding), knowledge_.settings.stray);
}

const std::vector<Shows>& Portraits::shown(Index cause) const {
    return at(knowledge_.causes, cause).shows;
}

bool Portraits::is_shown(Index cause, Index finding) const {
    return std::any_of(shown(cause).begin(), shown(cause).end(),
                       [&](const Shows& shows) { return shows.finding == finding; });
}

Index Portraits::likeliest_history(Index cause) const {
    Index best = 0;
    const auto boats = [&](Index h) {
        return at(knowledge_.histories, h).share *
               at(knowledge_.causes, cause).odds[static_cast<std::size_t>(h)];
    };
    for (std::size_t h = 1; h < knowledge_.histories.size(); ++h) {
        if (boats(static_cast<Index>(h)) > boats(best)) best = static_cast<Index>(h);
    }
    return best;
}

double Portraits::complains(Index cause, Index complaint) const {
    double chance = at(knowledge_.complaints, complaint).says.empty() ? 0 : 1;
    for (const auto& [finding, reading] : at(knowledge_.complaints, complaint).says) {
        if (!is_shown(cause, finding)) return 0;
        chance *= readings(cause, finding)[static_cast<std::size_t>(reading)];
    }
    return chance;
}

std::vector<Index> Portraits::complaints_of(Index cause) const {
    std::vector<Index> found;
    for (std::size_t c = 0; c < knowledge_.complaints.size(); ++c) {
        if (complains(cause, static_cast<Index>(c)) >= complains_enough) {
            found.push_back(static_cast<Index>(c));
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [&](Index a, Index b) { return complains(cause, a) > complains(cause, b); });
    return found;
}

std::vector<Index> Portraits::rivals(Index cause) const {
    const std::vector<Index> complaints = complaints_of(cause);
    std::vector<Index> found;
    for (std::size_t c = 0; c < knowledge_.causes.size(); ++c) {
        const auto other = static_cast<Index>(c);
        const bool shares = std::any_of(complaints.begin(), complaints.end(), [&](Index complaint) {
            return complains(other, complaint) >= complains_enough;
        });
        if (other != cause && shares) found.push_back(other);
    }
    std::stable_sort(found.begin(), found.end(), [&](Index a, Index b) { return odds(a) > odds(b); });
    return found;
}

// Makes the cause possible, then gives each field the value that suits best, until none gets better.
std::optional<Facts> Portraits::boat_for(Index cause) const {
    Facts facts;
    facts.history = likeliest_history(cause);
    for (std::size_t f = 0; f < knowledge_.rig_fields.size(); ++f) {
        const std::vector<RigValue> values = values_of(knowledge_.rig_fields[f]);
        if (!values.empty()) facts.rig[static_cast<Index>(f)] = values.front();
    }
    const Expression& condition = at(knowledge_.causes, cause).possible_when;
    if (!make_hold(knowledge_, facts, condition, fields_in(knowledge_, facts, condition))) {
        return std::nullopt;
    }
    const auto suits = [&] {
        int signs = is_possible(facts, cause) ? 1000 : 0;
        for (const Shows& shows : shown(cause)) signs += makes_sense(facts, shows.finding) ? 1 : 0;
        return signs;
    };
    int best = suits();
    for (bool better = true; better;) {
        better = false;
        for (auto& [field, value] : facts.rig) {
            for (const RigValue& other : values_of(at(knowledge_.rig_fields, field))) {
                const RigValue before = std::exchange(value, other);
                const int now = suits();
                if (now > best) {
                    best = now;
                    better = true;
                } else {
                    value = before;
                }
            }
        }
    }
    return facts;
}

bool Portraits::makes_sense(const Facts& facts, Index finding) const {
    return holds_on(knowledge_, facts, at(knowledge_.findings, finding).possible_when) != Truth::no;
}

bool Portraits::is_possible(const Facts& facts, Index cause) const {
    return holds_on(knowledge_, facts, at(knowledge_.causes, cause).possible_when) != Truth::no;
}

Belief believe(const PreparedKnowledge& prepared, const Facts& facts) {
    const Knowledge& knowledge = prepared.knowledge();
    Situation situation(prepared, facts);
    const Fired fired = fire(knowledge, situation);
    const Ranking ranking = rank(DiagnosisCase(knowledge, facts, fired, situation));
    Belief belief{std::vector<double>(knowledge.causes.size(), 0), ranking.not_listed};
    for (const RankedCause& cause : ranking.causes) {
        belief.causes[static_cast<std::size_t>(cause.cause)] = cause.probability;
    }
    return belief;
}

std::vector<NextStep> steps_by_minutes(const PreparedKnowledge& prepared, const Facts& facts) {
    const Assessment assessment = assess(prepared, facts, {.weights = false, .branches = true});
    std::vector<NextStep> steps = {assessment.next};
    steps.insert(steps.end(), assessment.also.begin(), assessment.also.end());
    std::stable_sort(steps.begin(), steps.end(), [](const NextStep& a, const NextStep& b) {
        return a.minutes + a.minutes_after < b.minutes + b.minutes_after;
    });
    return steps;
}

}  // namespace hardover::study

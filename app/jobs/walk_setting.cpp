#include "app/jobs/walk_setting.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "rules/reading/reading.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::jobs_detail {

namespace {

// More combinations of rig fields than this are not tried.
constexpr std::size_t most_rigs = 20000;
constexpr double widest_count = 8;

template <typename E>
Result<Index> named(const std::vector<E>& entries, const std::string& kind, const std::string& id) {
    const Index found = find(entries, id);
    if (found != none) return found;
    std::vector<std::string> ids;
    for (const E& entry : entries) ids.push_back(entry.id);
    return Error{Error::Kind::not_found, "there is no " + kind + " '" + id + "'", "", did_you_mean(id, ids)};
}

// The values to try for a field, what is usual first. Empty: nothing can be said about it.
std::vector<RigValue> values_of(const RigField& field) {
    std::vector<RigValue> values;
    const auto add = [&](const RigValue& value) {
        if (std::find(values.begin(), values.end(), value) == values.end()) values.push_back(value);
    };
    if (const auto* assumed = std::get_if<std::string>(&field.assumed)) add(*assumed);
    if (const auto* assumed = std::get_if<Quantity>(&field.assumed)) add(*assumed);
    for (const Word& choice : field.choices) add(choice.id);
    if (!field.least || !field.most) return values;
    add(*field.least);
    const bool is_count =
        field.least->dimension.is_number() && field.most->value - field.least->value <= widest_count;
    for (double v = field.least->value + 1; is_count && v < field.most->value; ++v) {
        Quantity between = *field.least;
        between.value = v;
        add(between);
    }
    add(*field.most);
    return values;
}

// Measured or read off a plate, not counted or chosen.
bool is_size(const RigField& field) {
    return field.least && !field.least->dimension.is_number();
}

// A field and the values still open for it; nothing: it is left unknown.
struct OpenField {
    Index field = none;
    std::vector<std::optional<RigValue>> values;
};

Truth holds_on(const Knowledge& knowledge, const Facts& facts, const Expression& condition) {
    return condition.condition([&](const std::string& name) -> Value {
        if (name == "history" && facts.history != none) {
            return Choice{{knowledge.histories[static_cast<std::size_t>(facts.history)].id}};
        }
        if (name.rfind("rig.", 0) != 0) return Unknown{};
        const auto value = facts.rig.find(find(knowledge.rig_fields, name.substr(4)));
        if (value == facts.rig.end()) return Unknown{};
        if (const auto* choice = std::get_if<std::string>(&value->second)) return Choice{{*choice}};
        return std::get<Quantity>(value->second);
    });
}

// How well a rig suits: faults that are possible, then their signs that make sense.
std::pair<int, int> suits(const Knowledge& knowledge, const Facts& facts, const std::vector<Index>& faults) {
    int possible = 0;
    int signs = 0;
    for (const Index fault : faults) {
        const Cause& cause = knowledge.causes[static_cast<std::size_t>(fault)];
        if (holds_on(knowledge, facts, cause.possible_when) != Truth::no) ++possible;
        for (const Shows& shows : cause.shows) {
            const Finding& finding = knowledge.findings[static_cast<std::size_t>(shows.finding)];
            if (holds_on(knowledge, facts, finding.possible_when) != Truth::no) ++signs;
        }
    }
    return {possible, signs};
}

std::set<Index> fields_that_matter(const Knowledge& knowledge, const std::vector<Index>& faults) {
    std::set<Index> fields;
    const auto take = [&](const Expression& condition) {
        for (const std::string& name : condition.names()) {
            if (name.rfind("rig.", 0) == 0) fields.insert(find(knowledge.rig_fields, name.substr(4)));
        }
    };
    for (const Index fault : faults) {
        const Cause& cause = knowledge.causes[static_cast<std::size_t>(fault)];
        take(cause.possible_when);
        for (const Shows& shows : cause.shows) {
            take(knowledge.findings[static_cast<std::size_t>(shows.finding)].possible_when);
        }
    }
    fields.erase(none);
    return fields;
}

Result<void> take_wished(const Knowledge& knowledge, const WalkWish& wish, Facts& facts) {
    for (const std::string& pair : wish.rig) {
        const std::size_t middle = pair.find('=');
        if (middle == std::string::npos) {
            return Error{Error::Kind::bad_input, "'" + pair + "' is not a rig field and its value", "",
                         "write field=value, such as rams=2"};
        }
        const Result<Index> field = named(knowledge.rig_fields, "rig field", pair.substr(0, middle));
        if (!field) return field.error();
        const Result<RigValue> value = read_rig_value(
            knowledge.rig_fields[static_cast<std::size_t>(field.value())], pair.substr(middle + 1));
        if (!value) return value.error();
        facts.rig[field.value()] = value.value();
    }
    if (wish.history.empty()) return {};
    const Result<Index> history = named(knowledge.histories, "history", wish.history);
    if (!history) return history.error();
    facts.history = history.value();
    return {};
}

// Where the faults turn up most.
Index history_of(const Knowledge& knowledge, const std::vector<Index>& faults) {
    Index best = none;
    double most = -1;
    for (std::size_t h = 0; h < knowledge.histories.size(); ++h) {
        double boats = knowledge.histories[h].share;
        for (const Index fault : faults) boats *= knowledge.causes[static_cast<std::size_t>(fault)].odds[h];
        if (boats > most) {
            most = boats;
            best = static_cast<Index>(h);
        }
    }
    return best;
}

// Tries the open fields' values in every combination; keeps the first of the best.
Facts best_rig(const Knowledge& knowledge, const Facts& start, const std::vector<OpenField>& open,
               const std::vector<Index>& faults) {
    std::size_t rigs = 1;
    for (const OpenField& field : open) rigs = std::min(most_rigs, rigs * field.values.size());
    Facts best = start;
    std::pair<int, int> best_suits{-1, -1};
    for (std::size_t rig = 0; rig < rigs; ++rig) {
        Facts facts = start;
        std::size_t rest = rig;
        for (const OpenField& field : open) {
            const std::optional<RigValue>& value = field.values[rest % field.values.size()];
            if (value) facts.rig[field.field] = *value;
            rest /= field.values.size();
        }
        const std::pair<int, int> now = suits(knowledge, facts, faults);
        if (now <= best_suits) continue;
        best_suits = now;
        best = facts;
    }
    return best;
}

// Some condition of the knowledge comes out otherwise with another choice for the field, or a worksheet takes
// it.
bool has_a_say(const Knowledge& knowledge, const Facts& facts, Index field) {
    const auto differs = [&](const Expression& condition) {
        std::set<Truth> truths;
        Facts other = facts;
        for (const Word& choice : knowledge.rig_fields[static_cast<std::size_t>(field)].choices) {
            other.rig[field] = choice.id;
            truths.insert(holds_on(knowledge, other, condition));
        }
        return truths.size() > 1;
    };
    const auto any = [&](const auto& entries, auto condition) {
        return std::any_of(entries.begin(), entries.end(),
                           [&](const auto& entry) { return differs(entry.*condition); });
    };
    const bool taken = std::any_of(
        knowledge.worksheets.begin(), knowledge.worksheets.end(), [&](const Worksheet& worksheet) {
            return std::any_of(worksheet.inputs.begin(), worksheet.inputs.end(),
                               [&](const WorksheetInput& input) { return input.rig_field == field; });
        });
    return taken || any(knowledge.causes, &Cause::possible_when) ||
           any(knowledge.findings, &Finding::possible_when) || any(knowledge.rules, &Rule::when) ||
           any(knowledge.deferrals, &Deferral::when);
}

// What is assumed anyway and has no say on this rig: what helps the hand, where no hand pumps the oil.
void leave_out_idle(const Knowledge& knowledge, const std::map<Index, RigValue>& wished, Facts& facts) {
    const Facts whole = facts;
    for (const auto& [field, value] : whole.rig) {
        const auto& assumed = knowledge.rig_fields[static_cast<std::size_t>(field)].assumed;
        const auto* choice = std::get_if<std::string>(&assumed);
        const bool is_assumed = choice != nullptr && value == RigValue(*choice);
        if (is_assumed && !wished.contains(field) && !has_a_say(knowledge, whole, field))
            facts.rig.erase(field);
    }
}

}  // namespace

Result<std::vector<Index>> faults_named(const Knowledge& knowledge, const std::vector<std::string>& ids) {
    std::set<Index> faults;
    for (const std::string& id : ids) {
        const Result<Index> cause = named(knowledge.causes, "cause", id);
        if (!cause) return cause.error();
        faults.insert(cause.value());
    }
    return std::vector<Index>(faults.begin(), faults.end());
}

Result<Facts> setting_for(const Knowledge& knowledge, const WalkWish& wish,
                          const std::vector<Index>& faults) {
    Facts facts;
    const Result<void> taken = take_wished(knowledge, wish, facts);
    if (!taken) return taken.error();
    const std::map<Index, RigValue> wished = facts.rig;
    if (facts.history == none) facts.history = history_of(knowledge, faults);
    const std::set<Index> matter = fields_that_matter(knowledge, faults);
    std::vector<OpenField> open;
    for (std::size_t f = 0; f < knowledge.rig_fields.size(); ++f) {
        const auto field = static_cast<Index>(f);
        if (facts.rig.contains(field)) continue;
        const std::vector<RigValue> values = values_of(knowledge.rig_fields[f]);
        if (values.empty()) continue;
        if (matter.contains(field)) {
            open.push_back({field, {values.begin(), values.end()}});
            // A size is seldom known before it is read off, and some signs are asked for only then.
            if (is_size(knowledge.rig_fields[f]))
                open.back().values.insert(open.back().values.begin(), std::nullopt);
        } else if (!knowledge.rig_fields[f].choices.empty()) {
            facts.rig[field] = values.front();  // seen at a glance; sizes are left to be measured
        }
    }
    facts = best_rig(knowledge, facts, open, faults);
    leave_out_idle(knowledge, wished, facts);
    for (const Index fault : faults) {
        const Cause& cause = knowledge.causes[static_cast<std::size_t>(fault)];
        if (holds_on(knowledge, facts, cause.possible_when) != Truth::no) continue;
        return Error{Error::Kind::bad_input,
                     "there is no such rig on which '" + cause.id + "' is possible" +
                         (faults.size() > 1 ? " together with the others" : ""),
                     "", "it is possible when " + cause.possible_when.text()};
    }
    return facts;
}

std::vector<double> chances_of(const FaultNetwork& network, const std::vector<Index>& faults,
                               const std::vector<bool>& gone, Index finding) {
    std::vector<double> none_worse = no_worse_than(network.findings[static_cast<std::size_t>(finding)].stray);
    for (std::size_t n = 0; n < faults.size(); ++n) {
        if (gone[n]) continue;
        for (const FaultLink& link : network.causes[static_cast<std::size_t>(faults[n])]) {
            if (link.finding != finding) continue;
            const std::vector<double> alone = no_worse_than(link.how_often);
            for (std::size_t k = 0; k < none_worse.size(); ++k) none_worse[k] *= alone[k];
        }
    }
    std::vector<double> chances(none_worse.size());
    for (std::size_t k = 0; k < chances.size(); ++k) {
        chances[k] = none_worse[k] - (k + 1 < chances.size() ? none_worse[k + 1] : 0);
    }
    return chances;
}

std::vector<ComplaintChance> complaints_of(const Knowledge& knowledge, const FaultNetwork& network,
                                           const std::vector<Index>& faults,
                                           const std::vector<bool>& makes_sense) {
    const std::vector<bool> none_gone(faults.size(), false);
    std::vector<ComplaintChance> found;
    for (std::size_t c = 0; c < knowledge.complaints.size(); ++c) {
        double chance = knowledge.complaints[c].says.empty() ? 0 : 1;
        bool sense = true;
        for (const auto& [finding, reading] : knowledge.complaints[c].says) {
            sense = sense && makes_sense[static_cast<std::size_t>(finding)];
            chance *= chances_of(network, faults, none_gone, finding)[static_cast<std::size_t>(reading)];
        }
        if (sense) found.push_back({static_cast<Index>(c), chance});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const ComplaintChance& a, const ComplaintChance& b) { return a.chance > b.chance; });
    return found;
}

}  // namespace hardover::jobs_detail

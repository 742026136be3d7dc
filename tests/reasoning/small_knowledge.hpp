// Small knowledge bases written in code, so that the reasoning is tested without files and without boats.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover;

// The names a condition may use with a knowledge base that is still being written.
class Names : public Scope {
  public:
    explicit Names(const Knowledge& knowledge) {
        for (const RigField& field : knowledge.rig_fields) {
            NameKind& kind = kinds_["rig." + field.id];
            if (field.unit) measured(kind, *field.unit);
            for (const Word& word : field.choices) kind.words.push_back(word.id);
        }
        for (const History& history : knowledge.histories) kinds_["history"].words.push_back(history.id);
        for (const Complaint& complaint : knowledge.complaints) {
            kinds_["complaint"].words.push_back(complaint.id);
            kinds_["complaint"].several = true;
        }
        for (const Finding& finding : knowledge.findings) {
            NameKind& kind = kinds_[finding.id];
            if (finding.unit) measured(kind, *finding.unit);
            for (const Reading& reading : finding.readings) kind.words.push_back(reading.id);
        }
        for (const Worksheet& sheet : knowledge.worksheets) {
            for (const WorksheetOutput& result : sheet.results) {
                measured(kinds_[sheet.id + "." + result.id], result.unit);
            }
        }
        for (const Rule& rule : knowledge.rules) {
            for (const Action& action : rule.then) {
                if (action.kind == Action::Kind::derive) kinds_["fact." + action.fact].is_truth = true;
            }
        }
    }

    // The short names inside a worksheet.
    explicit Names(const Worksheet& sheet) {
        for (const WorksheetInput& input : sheet.inputs) measured(kinds_[input.id], input.unit);
        for (const WorksheetOutput& result : sheet.results) measured(kinds_[result.id], result.unit);
    }

    const NameKind* kind_of(const std::string& name) const override {
        const auto found = kinds_.find(name);
        return found == kinds_.end() ? nullptr : &found->second;
    }

    std::vector<std::string> names() const override {
        std::vector<std::string> names;
        for (const auto& [name, kind] : kinds_) names.push_back(name);
        return names;
    }

  private:
    static void measured(NameKind& kind, const Unit& unit) {
        kind.is_quantity = true;
        kind.unit = unit;
    }

    std::map<std::string, NameKind> kinds_;
};

inline Expression condition(const Scope& names, const std::string& text) {
    const Result<Expression> read = read_condition(text, names, Functions(), {});
    REQUIRE_OK(read);
    return read.value();
}

inline Expression condition(const Knowledge& knowledge, const std::string& text) {
    return condition(Names(knowledge), text);
}

inline Unit unit(const std::string& name) {
    const Result<Unit> found = find_unit(name);
    REQUIRE_OK(found);
    return found.value();
}

inline Quantity quantity(const std::string& text) {
    const Result<Quantity> read = read_quantity(text);
    REQUIRE_OK(read);
    return read.value();
}

// A finding with these readings, worst first, and this share of stray bad readings.
inline Index add_finding(Knowledge& knowledge, const std::string& id,
                         const std::vector<std::string>& readings, double stray = 0.02, double minutes = 1) {
    Finding finding;
    finding.id = finding.name = id;
    finding.minutes = minutes;
    for (const std::string& reading : readings) finding.readings.push_back({reading, reading, {}});
    if (!readings.empty()) {
        const auto bad = static_cast<double>(readings.size() - 1);
        finding.stray.assign(readings.size(), bad > 0 ? stray / bad : 0);
        finding.stray.back() = 1 - (bad > 0 ? stray : 0);
    }
    knowledge.findings.push_back(finding);
    return static_cast<Index>(knowledge.findings.size()) - 1;
}

inline Index add_remedy(Knowledge& knowledge, const std::string& id, double minutes, double price = 0) {
    Remedy remedy;
    remedy.id = remedy.name = id;
    remedy.minutes = minutes;
    if (price > 0) remedy.parts.push_back({"part", price});
    knowledge.remedies.push_back(remedy);
    return static_cast<Index>(knowledge.remedies.size()) - 1;
}

// A cause with a remedy of its own.
inline Index add_cause(Knowledge& knowledge, const std::string& id, double odds,
                       const std::vector<Shows>& shows, double remedy_minutes = 30) {
    Cause cause;
    cause.id = cause.name = id;
    cause.odds = {odds};
    cause.shows = shows;
    cause.remedy = add_remedy(knowledge, id + "_remedy", remedy_minutes);
    knowledge.causes.push_back(cause);
    return static_cast<Index>(knowledge.causes.size()) - 1;
}

inline Index add_check(Knowledge& knowledge, const std::string& id, double minutes,
                       const std::vector<Index>& gets) {
    Check check;
    check.id = check.name = id;
    check.minutes = minutes;
    check.gets = gets;
    knowledge.checks.push_back(check);
    const Index index = static_cast<Index>(knowledge.checks.size()) - 1;
    for (Index finding : gets) knowledge.findings[static_cast<std::size_t>(finding)].check = index;
    return index;
}

inline void prove(Knowledge& knowledge, Index cause, Index check, const std::string& when) {
    Cause& proved = knowledge.causes[static_cast<std::size_t>(cause)];
    proved.proof = check;
    proved.proved_when = condition(knowledge, when);
}

inline Rule& add_rule(Knowledge& knowledge, const std::string& id, const std::string& when,
                      const std::vector<Action>& then) {
    Rule rule;
    rule.id = rule.name = id;
    rule.then = then;
    knowledge.rules.push_back(rule);
    if (!when.empty()) knowledge.rules.back().when = condition(knowledge, when);
    return knowledge.rules.back();
}

inline Action derive(const std::string& fact) {
    Action action;
    action.kind = Action::Kind::derive;
    action.fact = fact;
    return action;
}

inline Action action(Action::Kind kind, Index target, double by = 1) {
    Action action;
    action.kind = kind;
    action.target = target;
    action.by = by;
    return action;
}

// One history, so that odds are plain numbers.
inline Knowledge empty_knowledge() {
    Knowledge knowledge;
    History history;
    history.id = "in_service";
    history.share = 1;
    knowledge.histories.push_back(history);
    return knowledge;
}

}  // namespace hardover_tests

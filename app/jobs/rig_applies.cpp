#include "app/jobs/rig_applies.hpp"

#include <algorithm>
#include <string>

namespace hardover::jobs_detail {

namespace {

class Rig {
  public:
    Rig(const Knowledge& knowledge, const Facts& facts) : knowledge_(knowledge), facts_(facts) {}

    // By rig and history alone, without one field (`none`: with all).
    Truth holds(const Expression& condition, Index without) const {
        if (condition.empty()) return Truth::yes;
        return condition.condition([&](const std::string& name) { return value_of(name, without); });
    }

    bool hangs_on(const Expression& condition, Index field) const {
        const auto& names = condition.names();
        const std::string name = "rig." + knowledge_.rig_fields[static_cast<std::size_t>(field)].id;
        return std::find(names.begin(), names.end(), name) != names.end() &&
               holds(condition, field) == Truth::unknown;
    }

    bool gives_a_finding(Index worksheet) const {
        return std::any_of(knowledge_.findings.begin(), knowledge_.findings.end(),
                           [&](const Finding& finding) {
                               return finding.from && finding.from->worksheet == worksheet &&
                                      holds(finding.possible_when, none) != Truth::no;
                           });
    }

  private:
    Value value_of(const std::string& name, Index without) const {
        if (name == "history" && facts_.history != none) {
            return Choice{{knowledge_.histories[static_cast<std::size_t>(facts_.history)].id}};
        }
        if (!name.starts_with("rig.")) return Unknown{};
        const Index field = find(knowledge_.rig_fields, name.substr(4));
        if (field == none || field == without) return Unknown{};
        const auto given = facts_.rig.find(field);
        if (given != facts_.rig.end()) {
            if (const auto* choice = std::get_if<std::string>(&given->second)) return Choice{{*choice}};
            return std::get<Quantity>(given->second);
        }
        const auto& assumed = knowledge_.rig_fields[static_cast<std::size_t>(field)].assumed;
        if (const auto* choice = std::get_if<std::string>(&assumed)) return Choice{{*choice}};
        if (const auto* quantity = std::get_if<Quantity>(&assumed)) return *quantity;
        return Unknown{};
    }

    const Knowledge& knowledge_;
    const Facts& facts_;
};

}  // namespace

bool applies_here(const Knowledge& knowledge, const Job& job, Index field) {
    const Rig rig(knowledge, job.facts);
    const auto is_run = [&](Index worksheet) {
        const auto& run = job.assessment.worksheets;
        return std::any_of(run.begin(), run.end(), [&](const WorkedSheet& sheet) {
            return sheet.worksheet == worksheet && sheet.called_for;
        });
    };
    const auto any = [&](const auto& entries, auto condition) {
        return std::any_of(entries.begin(), entries.end(),
                           [&](const auto& entry) { return rig.hangs_on(entry.*condition, field); });
    };
    if (any(knowledge.causes, &Cause::possible_when) || any(knowledge.findings, &Finding::possible_when) ||
        any(knowledge.rules, &Rule::when) || any(knowledge.deferrals, &Deferral::when)) {
        return true;
    }
    for (std::size_t w = 0; w < knowledge.worksheets.size(); ++w) {
        const auto& inputs = knowledge.worksheets[w].inputs;
        const bool takes = std::any_of(inputs.begin(), inputs.end(), [field](const WorksheetInput& input) {
            return input.rig_field == field;
        });
        const auto sheet = static_cast<Index>(w);
        if (takes && (is_run(sheet) || rig.gives_a_finding(sheet))) return true;
    }
    return false;
}

}  // namespace hardover::jobs_detail

#include "rules/reasoning/effort.hpp"

#include <algorithm>

namespace hardover {

namespace {

bool in_range(Index index, std::size_t count) {
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

void add_once(std::vector<Index>& list, Index index) {
    if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

// Which inputs of the sheet a result is worked out from, itself or through other results.
std::vector<bool> inputs_of(const Worksheet& sheet, Index result) {
    std::vector<bool> inputs(sheet.inputs.size(), false);
    std::vector<Index> results{result};
    for (std::size_t n = 0; n < results.size(); ++n) {
        for (const std::string& name : sheet.results[static_cast<std::size_t>(results[n])].formula.names()) {
            for (std::size_t i = 0; i < inputs.size(); ++i)
                inputs[i] = inputs[i] || sheet.inputs[i].id == name;
            for (std::size_t r = 0; r < sheet.results.size(); ++r) {
                if (sheet.results[r].id == name) add_once(results, static_cast<Index>(r));
            }
        }
    }
    return inputs;
}

}  // namespace

double minutes_of_remedy(const Knowledge& knowledge, Index remedy, double shop_rate) {
    const Remedy& r = knowledge.remedies[static_cast<std::size_t>(remedy)];
    const double rate = shop_rate > 0 ? shop_rate : knowledge.settings.shop_rate;
    double price = 0;
    for (const PricedPart& part : r.parts) price += part.price;
    const double minutes = r.minutes + (rate > 0 ? price / rate * 60 : 0) + knowledge.settings.try_out;
    return std::max(least_minutes, minutes);
}

Effort::Effort(const Knowledge& knowledge, const Facts& facts, const Fired& fired, Situation& situation,
               const DiagnosisCase& diagnosis)
    : knowledge_(knowledge), facts_(facts), fired_(fired), situation_(situation), diagnosis_(diagnosis) {
    setting_up_.reserve(knowledge.checks.size());
    for (const Check& check : knowledge.checks) {
        const bool done = std::any_of(check.gets.begin(), check.gets.end(),
                                      [&](Index finding) { return facts.answers.contains(finding); });
        setting_up_.push_back(done ? 0 : check.minutes);
    }
    findings_.reserve(knowledge.findings.size());
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        findings_.push_back(work_out(static_cast<Index>(f)));
    }
}

bool Effort::answered(Index finding) const {
    return situation_.answer_to(finding).has_value();
}

std::optional<FindingEffort> Effort::work_out(Index finding) {
    const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
    if (!diagnosis_.makes_sense(finding) || answered(finding)) return std::nullopt;
    FindingEffort effort;
    if (f.from) {
        if (!add_inputs(f, effort)) return std::nullopt;
    } else {
        effort.minutes = std::max(least_minutes, f.minutes);
    }
    effort.blocked = effort.blocked || !missing_for(finding).empty();
    return effort;
}

// The measurements a worksheet still needs. False when one cannot be had.
bool Effort::add_inputs(const Finding& finding, FindingEffort& effort) const {
    if (!in_range(finding.from->worksheet, knowledge_.worksheets.size())) return false;
    const Worksheet& sheet = knowledge_.worksheets[static_cast<std::size_t>(finding.from->worksheet)];
    const WorkedSheet& worked = situation_.worked(finding.from->worksheet);
    if (!worked.refused.empty()) return false;
    std::vector<Index> checks;
    const std::vector<bool> used = inputs_of(sheet, finding.from->result);
    for (std::size_t n = 0; n < sheet.inputs.size(); ++n) {
        if (!used[n] || !std::holds_alternative<Unknown>(worked.inputs[n])) continue;
        const Index input = sheet.inputs[n].finding;
        if (!in_range(input, knowledge_.findings.size()) || answered(input) ||
            !diagnosis_.makes_sense(input)) {
            return false;
        }
        const Finding& measured = knowledge_.findings[static_cast<std::size_t>(input)];
        if (measured.from) return false;  // a worksheet fed by another: its own finding is proposed first
        add_once(effort.measured, input);
        effort.minutes += std::max(least_minutes, measured.minutes);
        effort.blocked = effort.blocked || !missing_for(input).empty();
        if (measured.check != none && measured.check != finding.check) add_once(checks, measured.check);
    }
    for (Index check : checks) effort.minutes += setting_up(check);
    effort.minutes = std::max(least_minutes, effort.minutes);
    return !effort.measured.empty();
}

bool Effort::missing(Index need) const {
    return facts_.unavailable.contains(need) || fired_.barred.contains(need);
}

std::vector<Index> Effort::missing_for_check(Index check) const {
    std::vector<Index> needs;
    if (!in_range(check, knowledge_.checks.size())) return needs;
    for (Index need : knowledge_.checks[static_cast<std::size_t>(check)].needs) {
        if (missing(need)) needs.push_back(need);
    }
    return needs;
}

std::vector<Index> Effort::missing_for(Index finding) const {
    const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
    std::vector<Index> needs = missing_for_check(f.check);
    for (Index need : f.needs) {
        if (missing(need)) add_once(needs, need);
    }
    return needs;
}

double Effort::of_remedy(Index remedy) const {
    return minutes_of_remedy(knowledge_, remedy, facts_.shop_rate);
}

bool Effort::proved(Index cause) const {
    const Cause& c = knowledge_.causes[static_cast<std::size_t>(cause)];
    return !c.proved_when.empty() &&
           situation_.holds(situation_.prepared().cause_proved_when(cause)) == Truth::yes;
}

std::optional<ProofEffort> Effort::of_proof(Index cause) const {
    const Cause& c = knowledge_.causes[static_cast<std::size_t>(cause)];
    if (!in_range(c.proof, knowledge_.checks.size()) || !missing_for_check(c.proof).empty())
        return std::nullopt;
    const PreparedKnowledge& prepared = situation_.prepared();
    if (!c.proved_when.empty() && situation_.holds(prepared.cause_proved_when(cause)) != Truth::unknown) {
        return std::nullopt;
    }
    std::vector<Index> wanted = prepared.proving_findings(cause);
    if (wanted.empty()) wanted = knowledge_.checks[static_cast<std::size_t>(c.proof)].gets;
    ProofEffort proof;
    proof.check = c.proof;
    proof.minutes = setting_up(c.proof);
    for (Index finding : wanted) {
        const std::optional<FindingEffort>& effort = of(finding);
        if (!effort || effort->blocked) continue;
        proof.findings.push_back(finding);
        proof.minutes += effort->minutes;
    }
    if (proof.findings.empty()) return std::nullopt;
    return proof;
}

std::vector<Index> Effort::open_findings(Index check) const {
    std::vector<Index> open;
    for (Index finding : knowledge_.checks[static_cast<std::size_t>(check)].gets) {
        const std::optional<FindingEffort>& effort = of(finding);
        if (!effort || effort->blocked) continue;
        if (effort->measured.empty()) {
            add_once(open, finding);
        } else {
            for (Index measured : effort->measured) add_once(open, measured);
        }
    }
    return open;
}

}  // namespace hardover

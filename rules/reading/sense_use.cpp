// Is everything in the base used by something: findings, checks, cautions, stops, needs, settings.
#include <unordered_set>

#include "rules/reading/letters.hpp"
#include "rules/reading/map_reader.hpp"
#include "rules/reading/sense.hpp"

namespace hardover {
namespace reading_detail {
namespace {

struct Used {
    std::unordered_set<Index> findings;
    std::unordered_set<Index> cautions;
    std::unordered_set<Index> stops;
    std::unordered_set<Index> needs;
    std::unordered_set<Index> remedies;
    std::unordered_set<std::string> names;  // in any condition

    void take(const Expression& expression) {
        names.insert(expression.names().begin(), expression.names().end());
    }
};

Used everything_used(const Knowledge& knowledge) {
    Used used;
    for (const Cause& cause : knowledge.causes) {
        for (const Shows& shows : cause.shows) {
            if (shows.how_often.back() < 1) used.findings.insert(shows.finding);
        }
        used.remedies.insert(cause.remedy);
        used.take(cause.possible_when);
        used.take(cause.proved_when);
    }
    for (const Worksheet& sheet : knowledge.worksheets) {
        for (const WorksheetInput& input : sheet.inputs) used.findings.insert(input.finding);
    }
    for (const Rule& rule : knowledge.rules) {
        used.take(rule.when);
        for (const Action& action : rule.then) {
            if (action.kind == Action::Kind::ask) used.findings.insert(action.target);
            if (action.kind == Action::Kind::caution) used.cautions.insert(action.target);
            if (action.kind == Action::Kind::stop) used.stops.insert(action.target);
        }
    }
    for (const Finding& finding : knowledge.findings) {
        used.take(finding.possible_when);
        used.needs.insert(finding.needs.begin(), finding.needs.end());
    }
    for (const Deferral& deferral : knowledge.deferrals) used.take(deferral.when);
    for (const Need& need : knowledge.needs) {
        used.take(need.possible_when);
        used.take(need.takes_when);
        used.needs.insert(need.takes.begin(), need.takes.end());
    }
    for (const Check& check : knowledge.checks) {
        used.cautions.insert(check.cautions.begin(), check.cautions.end());
        used.needs.insert(check.needs.begin(), check.needs.end());
    }
    for (const Remedy& remedy : knowledge.remedies) {
        used.cautions.insert(remedy.cautions.begin(), remedy.cautions.end());
    }
    return used;
}

bool is_told(const Knowledge& knowledge, Index finding) {
    for (const Complaint& complaint : knowledge.complaints) {
        for (const auto& says : complaint.says) {
            if (says.first == finding) return true;
        }
    }
    return false;
}

void warn(std::vector<Fault>& faults, const Entry& entry, std::string what, std::string cure = "") {
    faults.push_back({entry.place, std::move(what), std::move(cure), true});
}

void check_settings(const Knowledge& knowledge, std::vector<Fault>& faults) {
    if (knowledge.sources.empty()) return;
    const Settings& s = knowledge.settings;
    const std::pair<const char*, double> all[] = {{"stray", s.stray},
                                                  {"not_listed_odds", s.not_listed_odds},
                                                  {"not_listed_shows", s.not_listed_shows},
                                                  {"misreading", s.misreading},
                                                  {"call_for_help", s.call_for_help},
                                                  {"try_out", s.try_out},
                                                  {"shop_rate", s.shop_rate}};
    for (const auto& [id, value] : all) {
        if (find(knowledge.setting_entries, id) != none) continue;
        warn(faults, knowledge.sources.front(), std::string("the setting '") + id + "' is not given",
             "without it " + short_number(value) + " is taken, and nobody can see where that comes from");
    }
}

}  // namespace

void check_use(const Knowledge& knowledge, std::vector<Fault>& faults) {
    const Used used = everything_used(knowledge);
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        const Finding& finding = knowledge.findings[i];
        const bool is_used =
            used.findings.count(static_cast<Index>(i)) > 0 || used.names.count(finding.id) > 0;
        if (is_used) continue;
        const bool told = is_told(knowledge, static_cast<Index>(i));
        warn(faults, finding,
             told ? "only complaints speak of the finding '" + finding.id + "', so it changes nothing"
                  : "nothing uses the finding '" + finding.id + "'",
             told ? "name it in the 'shows' of the causes that produce it" : "");
    }
    for (const Check& check : knowledge.checks) {
        if (check.gets.empty()) {
            warn(faults, check, "the check '" + check.id + "' gets no finding",
                 "name it in a finding's 'check'");
        }
    }
    for (std::size_t i = 0; i < knowledge.remedies.size(); ++i) {
        if (used.remedies.count(static_cast<Index>(i)) > 0) continue;
        warn(faults, knowledge.remedies[i], "the remedy '" + knowledge.remedies[i].id + "' cures no cause");
    }
    for (std::size_t i = 0; i < knowledge.cautions.size(); ++i) {
        if (used.cautions.count(static_cast<Index>(i)) > 0) continue;
        warn(faults, knowledge.cautions[i],
             "no check, remedy or rule carries the caution '" + knowledge.cautions[i].id + "'");
    }
    for (std::size_t i = 0; i < knowledge.stops.size(); ++i) {
        if (used.stops.count(static_cast<Index>(i)) > 0) continue;
        warn(faults, knowledge.stops[i], "no rule orders the stop '" + knowledge.stops[i].id + "'");
    }
    for (std::size_t i = 0; i < knowledge.needs.size(); ++i) {
        if (used.needs.count(static_cast<Index>(i)) > 0) continue;
        warn(faults, knowledge.needs[i], "nothing needs '" + knowledge.needs[i].id + "'");
    }
    check_settings(knowledge, faults);
}

}  // namespace reading_detail

std::vector<Fault> check_sense(const Knowledge& knowledge) {
    std::vector<Fault> faults;
    reading_detail::check_causes(knowledge, faults);
    reading_detail::check_told_apart(knowledge, faults);
    reading_detail::check_use(knowledge, faults);
    reading_detail::check_texts(knowledge, faults);
    reading_detail::put_in_order(faults);
    return faults;
}

}  // namespace hardover

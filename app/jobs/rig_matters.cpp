// Every cause that shows what is complained of counts for the rig fields that decide on it, by its odds.
#include "app/jobs/rig_matters.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace hardover::jobs_detail {

namespace {

constexpr double least_share = 0.02;     // of all causes by odds that must hang on a field
constexpr double through_figures = 0.5;  // a field that only a worksheet needs counts half

using Scores = std::map<Index, double>;

// How often a cause is there and shows what is complained of, on its own scale.
double weight_of(const Knowledge& knowledge, const Cause& cause, const std::set<Index>& complaints) {
    double odds = 0;
    for (const double one : cause.odds) odds += one;
    if (complaints.empty()) return odds;
    double shown = 0;
    for (const Index complaint : complaints) {
        double all = 1;
        for (const auto& [finding, reading] : knowledge.complaints[complaint].says) {
            double how_often = 0;
            for (const Shows& shows : cause.shows) {
                if (shows.finding == finding) how_often = shows.how_often[static_cast<std::size_t>(reading)];
            }
            all *= how_often;
        }
        shown += all;
    }
    return odds * shown;
}

void add_named(const Knowledge& knowledge, const Expression& condition, std::set<Index>& fields) {
    for (const std::string& name : condition.names()) {
        if (!name.starts_with("rig.")) continue;
        const Index field = find(knowledge.rig_fields, std::string_view(name).substr(4));
        if (field != none) fields.insert(field);
    }
}

bool is_about(const Rule& rule, Index cause) {
    return std::any_of(rule.then.begin(), rule.then.end(), [cause](const Action& action) {
        const bool judges = action.kind == Action::Kind::favour || action.kind == Action::Kind::rule_out;
        return judges && action.target == cause;
    });
}

void add_figures(const Knowledge& knowledge, const Cause& cause, std::set<Index>& fields) {
    for (const Shows& shows : cause.shows) {
        const auto& from = knowledge.findings[shows.finding].from;
        if (!from) continue;
        for (const WorksheetInput& input : knowledge.worksheets[from->worksheet].inputs) {
            if (input.rig_field != none) fields.insert(input.rig_field);
        }
    }
}

Scores scores_of(const Knowledge& knowledge, const std::set<Index>& complaints) {
    Scores scores;
    double sum = 0;
    for (std::size_t c = 0; c < knowledge.causes.size(); ++c) {
        const Cause& cause = knowledge.causes[c];
        const double weight = weight_of(knowledge, cause, complaints);
        if (weight <= 0) continue;
        sum += weight;
        std::set<Index> deciding, figures;
        add_named(knowledge, cause.possible_when, deciding);
        for (const Rule& rule : knowledge.rules) {
            if (is_about(rule, static_cast<Index>(c))) add_named(knowledge, rule.when, deciding);
        }
        add_figures(knowledge, cause, figures);
        for (const Index field : deciding) scores[field] += weight;
        for (const Index field : figures) {
            if (!deciding.contains(field)) scores[field] += through_figures * weight;
        }
    }
    if (sum > 0) {
        for (auto& [field, score] : scores) score /= sum;
    }
    return scores;
}

}  // namespace

std::set<Index> rig_fields_that_matter(const Knowledge& knowledge, const std::set<Index>& complaints) {
    const Scores scores = scores_of(knowledge, complaints);
    std::vector<std::pair<Index, double>> order(scores.begin(), scores.end());
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    std::set<Index> fields;
    for (const auto& [field, score] : order) {
        if (fields.size() < most_that_matter && score >= least_share) fields.insert(field);
    }
    return fields;
}

}  // namespace hardover::jobs_detail

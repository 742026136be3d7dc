#include "rules/reasoning/outlook.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace hardover {

namespace {

constexpr double negligible = 1e-12;  // of the weights, which add to 1

}  // namespace

Outlook::Outlook(const FaultNetwork& network, const std::vector<Hypothesis>& hypotheses, RepairModel model)
    : network_(network),
      hypotheses_(hypotheses),
      model_(std::move(model)),
      planner_(model_),
      chances_(network.findings.size()) {
    double sum = 0;
    for (const Hypothesis& hypothesis : hypotheses) sum += hypothesis.probability;
    for (const Hypothesis& hypothesis : hypotheses) {
        weights_.push_back(sum > 0 ? hypothesis.probability / sum : weights_.empty() ? 1 : 0);
    }
    plan_ = planner_.plan(weights_, known_after({}));
}

std::vector<char> Outlook::known_after(const std::vector<int>& findings) const {
    std::vector<char> known(model_.actions.size(), 0);
    for (std::size_t a = 0; a < known.size(); ++a) {
        const std::vector<int>& proof = model_.actions[a].proof_findings;
        known[a] = !proof.empty() && std::all_of(proof.begin(), proof.end(), [&](int finding) {
            return std::find(findings.begin(), findings.end(), finding) != findings.end();
        });
    }
    return known;
}

const std::vector<double>& Outlook::chances_of(int finding) {
    std::vector<double>& chances = chances_[static_cast<std::size_t>(finding)];
    if (!chances.empty()) return chances;
    const FaultNetwork::Finding& f = network_.findings[static_cast<std::size_t>(finding)];
    const std::size_t levels = f.stray.size();
    const std::size_t count = hypotheses_.size();
    const std::vector<double> stray = no_worse_than(f.stray);
    const std::vector<double> unlisted = no_worse_than(f.unlisted);
    std::vector<std::vector<double>> shown_by(network_.causes.size());
    for (std::size_t i = 0; i < shown_by.size(); ++i) {
        for (const FaultLink& link : network_.causes[i]) {
            if (link.finding == finding) shown_by[i] = no_worse_than(link.how_often);
        }
    }
    chances.resize(levels * count);
    for (std::size_t h = 0; h < count; ++h) {
        double better = 0;
        for (std::size_t k = levels; k-- > 0;) {
            double share = hypotheses_[h].unlisted ? stray[k] * unlisted[k] : stray[k];
            for (int cause : hypotheses_[h].causes) {
                const std::vector<double>& shown = shown_by[static_cast<std::size_t>(cause)];
                if (!shown.empty()) share *= shown[k];
            }
            chances[k * count + h] = std::max(0.0, share - better);
            better = share;
        }
    }
    return chances;
}

double Outlook::after_answer(const Weights& weights, const std::vector<char>& proof_known) {
    const double anew = planner_.plan(weights, proof_known).minutes;
    const double unchanged =
        planner_.minutes_of(plan_.order, weights, std::vector<char>(model_.actions.size(), 0));
    return std::min(anew, unchanged);
}

double Outlook::after_all(const Weights& weights, const std::vector<int>& findings, std::size_t from,
                          const std::vector<char>& proof_known) {
    if (from == findings.size()) return after_answer(weights, proof_known);
    const std::vector<double>& chances = chances_of(findings[from]);
    const std::size_t count = weights.size();
    double minutes = 0;
    Weights then(count);
    for (std::size_t reading = 0; reading * count < chances.size(); ++reading) {
        double mass = 0;
        for (std::size_t h = 0; h < count; ++h) {
            then[h] = weights[h] * chances[reading * count + h];
            mass += then[h];
        }
        if (mass > negligible) minutes += after_all(then, findings, from + 1, proof_known);
    }
    return minutes;
}

double Outlook::minutes_after(const std::vector<int>& findings) {
    return std::min(plan_.minutes, after_all(weights_, findings, 0, known_after(findings)));
}

double Outlook::minutes_after(const Question& question, const std::vector<Question>& others) {
    const std::vector<double>& chances = chances_of(question.finding);
    const std::size_t count = weights_.size();
    double minutes = 0;
    Weights then(count);
    for (std::size_t reading = 0; reading * count < chances.size(); ++reading) {
        double mass = 0;
        for (std::size_t h = 0; h < count; ++h) {
            then[h] = weights_[h] * chances[reading * count + h];
            mass += then[h];
        }
        if (mass <= negligible) continue;
        double best = after_answer(then, known_after({question.finding}));
        for (const Question& next : others) {
            if (next.finding == question.finding) continue;
            const bool set_up = next.check >= 0 && next.check == question.check;
            const double asking = (set_up ? 0 : next.setting_up) + next.minutes;
            if (mass * asking >= best) continue;
            const double after =
                after_all(then, {next.finding}, 0, known_after({question.finding, next.finding}));
            best = std::min(best, mass * asking + after);
        }
        minutes += best;
    }
    return std::min(plan_.minutes, minutes);
}

double Outlook::information(int finding) {
    const std::vector<double>& chances = chances_of(finding);
    const std::size_t count = weights_.size();
    double bits = 0;
    for (std::size_t reading = 0; reading * count < chances.size(); ++reading) {
        double mass = 0;
        for (std::size_t h = 0; h < count; ++h) mass += weights_[h] * chances[reading * count + h];
        for (std::size_t h = 0; h < count; ++h) {
            const double chance = chances[reading * count + h];
            if (weights_[h] > 0 && chance > 0) bits += weights_[h] * chance * std::log2(chance / mass);
        }
    }
    return bits;
}

double Outlook::minutes_applying(int action) {
    std::vector<char> known(model_.actions.size(), 0);
    known[static_cast<std::size_t>(action)] = 1;
    std::vector<int> order{action};
    for (int other : plan_.order) {
        if (other != action) order.push_back(other);
    }
    return planner_.minutes_of(order, weights_, known);
}

}  // namespace hardover

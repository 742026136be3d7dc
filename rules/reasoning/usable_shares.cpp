#include "rules/reasoning/usable_shares.hpp"

#include <algorithm>
#include <map>
#include <numeric>

#include "rules/reasoning/diagnosis_case.hpp"

namespace hardover {

namespace {

// Odds of every cause over all histories.
std::vector<double> usual_odds(const Knowledge& knowledge) {
    std::vector<double> odds(knowledge.causes.size(), 0.0);
    for (std::size_t i = 0; i < odds.size(); ++i) {
        const Cause& cause = knowledge.causes[i];
        for (std::size_t h = 0; h < std::min(cause.odds.size(), knowledge.histories.size()); ++h) {
            odds[i] += knowledge.histories[h].share * cause.odds[h];
        }
    }
    return odds;
}

// Does the reading prove the cause by itself?
bool proves_alone(const Cause& cause, const Finding& finding, std::size_t reading) {
    if (cause.proved_when.empty() || reading >= finding.readings.size()) return false;
    const auto seen = [&](const std::string& name) -> Value {
        if (name == finding.id) return Choice{{finding.readings[reading].id}};
        return Unknown{};
    };
    return cause.proved_when.condition(seen) == Truth::yes;
}

enum class Proofs { counted, left_out };

// Shares of all findings, of those causes weighed so; with or without the readings that prove their cause.
std::vector<std::vector<double>> weighed_shares(const Knowledge& knowledge,
                                                const std::vector<double>& weights, Proofs proofs) {
    std::vector<std::vector<double>> shares(knowledge.findings.size());
    const double all = std::accumulate(weights.begin(), weights.end(), 0.0);
    for (std::size_t i = 0; i < weights.size(); ++i) {
        for (const Shows& shows : knowledge.causes[i].shows) {
            if (shows.finding < 0 || static_cast<std::size_t>(shows.finding) >= shares.size()) continue;
            const Finding& finding = knowledge.findings[static_cast<std::size_t>(shows.finding)];
            std::vector<double>& share = shares[static_cast<std::size_t>(shows.finding)];
            share.resize(std::max(share.size(), shows.how_often.size()));
            if (!(all > 0)) continue;
            for (std::size_t k = 0; k < shows.how_often.size(); ++k) {
                if (proofs == Proofs::left_out && proves_alone(knowledge.causes[i], finding, k)) continue;
                share[k] += weights[i] / all * shows.how_often[k];
            }
        }
    }
    return shares;
}

// Chance that the cause, or stray chance, gives the reading.
double gives(const Cause& cause, Index finding, int reading, double stray) {
    double share = 0;
    for (const Shows& shows : cause.shows) {
        const auto k = static_cast<std::size_t>(reading);
        if (shows.finding == finding && k < shows.how_often.size()) share = shows.how_often[k];
    }
    return std::max(share, stray);
}

}  // namespace

std::vector<double> usable_stray(const Finding& finding, double setting) {
    const std::size_t levels = std::max<std::size_t>(1, finding.readings.size());
    std::vector<double> stray = finding.stray;
    if (stray.size() != levels) {
        const double each = levels > 1 ? setting / static_cast<double>(levels - 1) : 0;
        stray.assign(levels, each);
    }
    double bad = 0;
    for (std::size_t k = 0; k + 1 < levels; ++k) bad += stray[k] = std::max(stray[k], least_stray);
    const double most = 1 - least_sound;
    if (bad > most) {
        for (std::size_t k = 0; k + 1 < levels; ++k) stray[k] *= most / bad;
        bad = most;
    }
    stray[levels - 1] = 1 - bad;
    return stray;
}

std::vector<double> usable_link(std::vector<double> how_often) {
    const double sum = std::accumulate(how_often.begin(), how_often.end(), 0.0);
    const double bad = sum - how_often.back();
    const double most = (1 - least_sound) * std::max(1.0, sum);
    if (bad > most) {
        for (double& share : how_often) share *= most / bad;
    }
    const double left = std::accumulate(how_often.begin(), how_often.end() - 1, 0.0);
    how_often.back() = std::max(0.0, 1 - left);
    return how_often;
}

std::vector<std::vector<double>> typical_shares(const Knowledge& knowledge,
                                                const std::set<Index>& complaints) {
    std::vector<double> weights = usual_odds(knowledge);
    std::map<Index, std::vector<double>> told;  // shares of what the complaints say, each given those before
    for (Index complaint : complaints) {
        if (complaint < 0 || static_cast<std::size_t>(complaint) >= knowledge.complaints.size()) continue;
        for (const auto& [finding, reading] :
             knowledge.complaints[static_cast<std::size_t>(complaint)].says) {
            if (finding < 0 || static_cast<std::size_t>(finding) >= knowledge.findings.size()) continue;
            const auto f = static_cast<std::size_t>(finding);
            if (reading < 0) continue;
            const auto shares = weighed_shares(knowledge, weights, Proofs::counted);
            if (!told.emplace(finding, shares[f]).second) continue;
            const std::vector<double> stray = usable_stray(knowledge.findings[f], knowledge.settings.stray);
            if (static_cast<std::size_t>(reading) >= stray.size()) continue;
            for (std::size_t i = 0; i < weights.size(); ++i) {
                weights[i] *=
                    gives(knowledge.causes[i], finding, reading, stray[static_cast<std::size_t>(reading)]);
            }
        }
    }
    std::vector<std::vector<double>> typical = weighed_shares(knowledge, weights, Proofs::left_out);
    for (auto& [finding, share] : told) typical[static_cast<std::size_t>(finding)] = std::move(share);
    return typical;
}

double usable_not_listed_shows(double setting) {
    return std::clamp(setting, 0.0, 1 - least_sound);
}

std::vector<double> unlisted_share(const std::vector<double>& stray, const std::vector<double>& typical,
                                   double least) {
    std::vector<double> share = stray;
    const double bad_by_stray = 1 - stray.back();
    double bad = 0;
    for (std::size_t k = 0; k + 1 < share.size(); ++k) bad += k < typical.size() ? typical[k] : 0;
    const double more = std::max(0.0, least - bad);
    const double most = 1 - least_sound;
    for (std::size_t k = 0; k + 1 < share.size(); ++k) {
        share[k] *= more / bad_by_stray;
        if (k < typical.size()) share[k] += typical[k];
        if (bad > most) share[k] *= most / bad;
    }
    share.back() = 1;
    for (std::size_t k = 0; k + 1 < share.size(); ++k) share.back() -= share[k];
    return share;
}

}  // namespace hardover

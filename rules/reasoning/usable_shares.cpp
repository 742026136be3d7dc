#include "rules/reasoning/usable_shares.hpp"

#include <algorithm>
#include <numeric>

#include "rules/reasoning/diagnosis_case.hpp"

namespace hardover {

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

std::vector<std::vector<double>> typical_shares(const Knowledge& knowledge) {
    std::vector<std::vector<double>> typical(knowledge.findings.size());
    double all_odds = 0;
    for (const Cause& cause : knowledge.causes) {
        double odds = 0;
        for (std::size_t h = 0; h < std::min(cause.odds.size(), knowledge.histories.size()); ++h) {
            odds += knowledge.histories[h].share * cause.odds[h];
        }
        all_odds += odds;
        for (const Shows& shows : cause.shows) {
            if (shows.finding < 0 || static_cast<std::size_t>(shows.finding) >= typical.size()) continue;
            std::vector<double>& share = typical[static_cast<std::size_t>(shows.finding)];
            share.resize(std::max(share.size(), shows.how_often.size()));
            for (std::size_t k = 0; k < shows.how_often.size(); ++k) share[k] += odds * shows.how_often[k];
        }
    }
    for (std::vector<double>& share : typical) {
        for (double& reading : share) reading = all_odds > 0 ? reading / all_odds : 0;
    }
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

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

double usable_not_listed_shows(double setting) {
    return std::clamp(setting, 0.0, 1 - least_sound);
}

std::vector<double> unlisted_share(const std::vector<double>& stray, double shows) {
    const double bad = 1 - stray.back();
    std::vector<double> share = stray;
    for (std::size_t k = 0; k + 1 < share.size(); ++k) share[k] *= shows / bad;
    share.back() = share.size() > 1 ? 1 - shows : 1;
    return share;
}

}  // namespace hardover

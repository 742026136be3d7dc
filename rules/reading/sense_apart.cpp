// Can the causes be told apart by what they show, and do the pairs said to share their cure really look
// alike.
#include <algorithm>
#include <cmath>
#include <set>

#include "rules/reading/letters.hpp"
#include "rules/reading/rigs.hpp"
#include "rules/reading/sense.hpp"

namespace hardover::reading_detail {
namespace {

// Two causes are told apart when some finding reads differently on at least this share of boats (the total
// variation distance of its readings). "Often" against "sometimes" (0.25) is not enough, "often" against
// "never" (0.5) is. From memory: a third of boats is what a technician would call a sign.
constexpr double told_apart_from = 0.3;

struct Apart {
    double share = 0;  // the greatest difference of any finding
    Index finding = none;
};

// Both lists are sorted by finding; one that is not listed shows its sound reading.
double difference(const Shows* a, const Shows* b) {
    const std::vector<double>& longer = (a != nullptr ? a : b)->how_often;
    double sum = 0;
    for (std::size_t k = 0; k < longer.size(); ++k) {
        const double sound = k + 1 == longer.size() ? 1 : 0;
        sum += std::abs((a != nullptr ? a->how_often[k] : sound) - (b != nullptr ? b->how_often[k] : sound));
    }
    return sum / 2;
}

using Signs = std::vector<const Shows*>;

Signs signs_of(const Cause& cause) {
    Signs signs;
    for (const Shows& shows : cause.shows) signs.push_back(&shows);
    std::sort(signs.begin(), signs.end(),
              [](const Shows* a, const Shows* b) { return a->finding < b->finding; });
    return signs;
}

Apart apart(const Signs& a, const Signs& b) {
    Apart most;
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < a.size() || j < b.size()) {
        const bool take_a = i < a.size() && (j == b.size() || a[i]->finding <= b[j]->finding);
        const bool take_b = j < b.size() && (i == a.size() || b[j]->finding <= a[i]->finding);
        const double share = difference(take_a ? a[i] : nullptr, take_b ? b[j] : nullptr);
        if (share > most.share) most = {share, take_a ? a[i]->finding : b[j]->finding};
        i += take_a ? 1 : 0;
        j += take_b ? 1 : 0;
    }
    return most;
}

std::string of_100(double share) {
    return std::to_string(std::lround(100 * share)) + " of 100 boats";
}

using Pairs = std::set<std::pair<Index, Index>>;

Pairs pairs_of_same_cure(const Knowledge& knowledge) {
    Pairs pairs;
    for (const SameCure& same : knowledge.same_cures) {
        for (const Index a : same.causes) {
            for (const Index b : same.causes) {
                if (a < b) pairs.emplace(a, b);
            }
        }
    }
    return pairs;
}

void check_pair(const Knowledge& knowledge, const Cause& earlier, const Cause& later, const Apart& difference,
                std::vector<Fault>& faults) {
    if (never_hold_together({&earlier.possible_when, &later.possible_when}, knowledge)) return;
    const std::string pair = "'" + later.id + "' from '" + earlier.id + "'";
    if (earlier.remedy == later.remedy) {
        faults.push_back({later.place, "no finding tells " + pair + "; the remedy is the same",
                          "give one of them a finding of its own under 'shows', or say so in an entry "
                          "'same_cure' with the reason",
                          true});
    } else if (difference.share <= 0) {
        faults.push_back({later.place, "no finding tells " + pair + ", and their remedies differ",
                          "give one of them a finding of its own under 'shows'"});
    } else {
        faults.push_back({later.place,
                          "hardly anything tells " + pair + ", and their remedies differ: most of all '" +
                              knowledge.findings[difference.finding].id + "', on " + of_100(difference.share),
                          "give one of them a finding of its own under 'shows'; " + of_100(told_apart_from) +
                              " are asked for",
                          true});
    }
}

// What is said to look alike must look alike: otherwise the entry hides a difference the technician could
// use.
void check_same_cures(const Knowledge& knowledge, const std::vector<Signs>& signs,
                      std::vector<Fault>& faults) {
    for (const SameCure& same : knowledge.same_cures) {
        for (std::size_t i = 0; i < same.causes.size(); ++i) {
            for (std::size_t j = i + 1; j < same.causes.size(); ++j) {
                const Index a = same.causes[i];
                const Index b = same.causes[j];
                const Apart difference = apart(signs[a], signs[b]);
                if (difference.share < told_apart_from) continue;
                faults.push_back({same.place,
                                  "'" + knowledge.causes[a].id + "' and '" + knowledge.causes[b].id +
                                      "' can be told apart: by '" +
                                      knowledge.findings[difference.finding].id + "', on " +
                                      of_100(difference.share),
                                  "take them out of '" + same.id + "'"});
            }
        }
    }
}

}  // namespace

void check_told_apart(const Knowledge& knowledge, std::vector<Fault>& faults) {
    std::vector<Signs> signs;
    for (const Cause& cause : knowledge.causes) signs.push_back(signs_of(cause));
    const Pairs excused = pairs_of_same_cure(knowledge);
    const auto count = static_cast<Index>(knowledge.causes.size());
    for (Index later = 0; later < count; ++later) {
        for (Index earlier = 0; earlier < later; ++earlier) {
            const Apart difference = apart(signs[earlier], signs[later]);
            if (difference.share >= told_apart_from || excused.count({earlier, later}) > 0) continue;
            check_pair(knowledge, knowledge.causes[earlier], knowledge.causes[later], difference, faults);
        }
    }
    check_same_cures(knowledge, signs, faults);
}

}  // namespace hardover::reading_detail

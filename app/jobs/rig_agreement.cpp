#include "app/jobs/rig_agreement.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "app/jobs/rig_boat.hpp"
#include "app/rig/chance.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

namespace {

constexpr int most_tries = 20;  // boats sampled for one on which a cause is possible

// How often each reading of a finding came up.
struct Tally {
    std::vector<int> by_reading;
    int total = 0;
};

std::vector<double> words_of_scale(const Knowledge& knowledge) {
    std::vector<double> words;
    for (const Word& word : knowledge.scale_words) {
        if (word.id.rfind("how_often.", 0) == 0) words.push_back(std::strtod(word.text.c_str(), nullptr));
    }
    std::sort(words.begin(), words.end());
    return words;
}

std::vector<double> draw(rig::Chance& chance, std::size_t count) {
    std::vector<double> drawn(count);
    for (double& number : drawn) number = chance.normal();
    return drawn;
}

void count_readings(const Knowledge& knowledge, Situation& situation, std::vector<Tally>& tallies) {
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        const Finding& finding = knowledge.findings[i];
        if (finding.readings.empty() || situation.holds(finding.possible_when) == Truth::no) continue;
        const std::optional<Answer> answer = situation.answer_to(static_cast<Index>(i));
        const int reading = answer ? reading_told(finding, *answer) : -1;
        if (reading < 0) continue;
        tallies[i].by_reading.resize(finding.readings.size(), 0);
        ++tallies[i].by_reading[static_cast<std::size_t>(reading)];
        ++tallies[i].total;
    }
}

// One boat with the cause in it, surveyed and put into the tallies; no when this boat cannot have the cause.
Result<bool> sample_one(const Knowledge& knowledge, const Cause& cause, std::uint64_t seed,
                        std::vector<Tally>& tallies, Agreement& agreement) {
    const rig::Boat boat = rig::sample_boat(seed);
    Facts facts = facts_of_boat(knowledge, boat);
    if (Situation(knowledge, facts).holds(cause.possible_when) == Truth::no) return false;
    rig::Chance chance(seed ^ 0x9e3779b97f4a7c15);  // other numbers than the boat's own
    const Result<rig::Faults> faults = faults_of_cause(cause, draw(chance, cause.on_the_rig.size()));
    if (!faults) return faults.error();
    ++agreement.surveys;
    const Result<rig::Readings> readings = rig::survey(boat, faults.value());
    if (!readings) {
        ++agreement.unsettled;
        return true;
    }
    facts.answers = answers_of_gauges(knowledge, readings.value(), draw(chance, knowledge.findings.size()));
    Situation situation(knowledge, facts);
    count_readings(knowledge, situation, tallies);
    return true;
}

// Chance of this reading or a worse one, of what the cause shows and stray shares alone, the worse showing.
double this_or_worse(const std::vector<double>& shares, int reading) {
    double sum = 0;
    for (int i = 0; i <= reading; ++i) sum += shares[static_cast<std::size_t>(i)];
    return std::min(1.0, sum);
}

double with_stray(double share, const Finding& finding, int reading) {
    return 1 - (1 - share) * (1 - this_or_worse(finding.stray, reading));
}

double by_table(const Cause& cause, Index finding, int reading) {
    for (const Shows& shows : cause.shows) {
        if (shows.finding == finding) return this_or_worse(shows.how_often, reading);
    }
    return 0;
}

// Whether a share in the table and one counted on boats are further apart than is agreed, the count given the
// benefit of two standard deviations.
bool apart(const std::vector<double>& words, double table, double counted, int sampled) {
    const double doubt = 2 * std::sqrt(counted * (1 - counted) / sampled);
    const double nearest = std::clamp(table, counted - doubt, counted + doubt);
    return std::abs(scale_position(words, table) - scale_position(words, nearest)) > agreed_steps;
}

std::string reason_of(const Cause& cause, Index finding) {
    for (const Differs& differs : cause.differs) {
        if (differs.finding == finding) return differs.reason;
    }
    return "";
}

void compare(const Knowledge& knowledge, Index cause, const std::vector<double>& words,
             const std::vector<Tally>& tallies, Agreement& agreement) {
    const Cause& entry = knowledge.causes[static_cast<std::size_t>(cause)];
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        const Finding& finding = knowledge.findings[i];
        if (tallies[i].total == 0) continue;
        ++agreement.pairs;
        const auto index = static_cast<Index>(i);
        bool differs = false;
        int counted = 0;
        for (int reading = 0; reading + 1 < static_cast<int>(finding.readings.size()); ++reading) {
            counted += tallies[i].by_reading[static_cast<std::size_t>(reading)];
            const bool told = finding.unit || finding.felt[static_cast<std::size_t>(reading)].has_value();
            if (!told) continue;
            const double share = static_cast<double>(counted) / tallies[i].total;
            const double table = with_stray(by_table(entry, index, reading), finding, reading);
            const double boats = with_stray(share, finding, reading);
            if (!apart(words, table, boats, tallies[i].total)) continue;
            differs = true;
            agreement.disagreements.push_back(
                {cause, index, reading, table, boats, tallies[i].total, reason_of(entry, index)});
        }
        if (!differs && !reason_of(entry, index).empty()) agreement.idle.push_back({cause, index});
    }
}

}  // namespace

int Agreement::unexplained() const {
    return static_cast<int>(std::count_if(disagreements.begin(), disagreements.end(),
                                          [](const Disagreement& d) { return d.reason.empty(); }));
}

double scale_position(const std::vector<double>& ascending_words, double share) {
    for (std::size_t i = 1; i < ascending_words.size(); ++i) {
        const double low = ascending_words[i - 1], high = ascending_words[i];
        if (share > high || !(high > low)) continue;
        return static_cast<double>(i - 1) + std::max(0.0, share - low) / (high - low);
    }
    return static_cast<double>(ascending_words.size()) - 1;
}

Result<Agreement> compare_with_rig(const Knowledge& knowledge, const AgreementSample& sample) {
    const std::vector<double> words = words_of_scale(knowledge);
    if (words.size() < 2) {
        return Error{Error::Kind::bad_knowledge, "the scale 'how_often' has no words to count steps by",
                     knowledge.folder, "give it at least two"};
    }
    Agreement agreement;
    for (std::size_t c = 0; c < knowledge.causes.size(); ++c) {
        const Cause& cause = knowledge.causes[c];
        if (cause.on_the_rig.empty()) continue;
        ++agreement.causes;
        std::vector<Tally> tallies(knowledge.findings.size());
        const int unsettled_before = agreement.unsettled;
        int sampled = 0;
        for (int attempt = 0; sampled < sample.boats && attempt < sample.boats * most_tries; ++attempt) {
            const std::uint64_t seed = sample.seed * 1000003 + static_cast<std::uint64_t>(attempt);
            const Result<bool> possible = sample_one(knowledge, cause, seed, tallies, agreement);
            if (!possible) return possible.error();
            if (possible.value()) ++sampled;
        }
        if (2 * (agreement.unsettled - unsettled_before) > sampled) {
            return Error{Error::Kind::unsupported,
                         "the numeric boat settles on fewer than half of the boats with '" + cause.id + "'",
                         cause.place.file + ":" + std::to_string(cause.place.line),
                         "smaller sizes in 'on_the_rig'"};
        }
        compare(knowledge, static_cast<Index>(c), words, tallies, agreement);
    }
    return agreement;
}

}  // namespace hardover

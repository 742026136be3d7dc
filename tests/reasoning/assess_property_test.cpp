// assess() as a whole against a plain sum over all sets of faults, on random small knowledge bases: priors,
// answers, rules, remedies that were tried and "not on this list" together.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "brute_force.hpp"
#include "chance.hpp"
#include "rules/reasoning/assessment.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Job {
    Knowledge knowledge;
    Facts facts;
};

void add_findings(Chance& chance, Job& job) {
    const int findings = chance.upto(8);
    for (int f = 0; f < findings; ++f) {
        std::vector<std::string> readings;
        for (int k = 2 + chance.upto(2); k > 0; --k) readings.push_back("r" + std::to_string(k));
        const Index index = add_finding(job.knowledge, "f" + std::to_string(f), readings);
        Finding& finding = job.knowledge.findings.back();
        finding.stray = shares(chance, readings.size(), chance.between(0.02, 0.1));
        if (chance.one_in(3)) {
            finding.unit = unit("in");
            finding.spread = quantity("1/4 in").value;
            for (std::size_t k = 0; k + 1 < readings.size(); ++k) {
                finding.readings[k].limit = quantity(std::to_string(readings.size() - k) + " in");
            }
        }
        if (chance.one_in(4)) continue;
        if (chance.one_in(8)) {
            job.facts.answers[index] = {CannotTell{}};
        } else if (finding.unit) {
            Quantity measured = quantity("1 in");
            measured.value *= chance.between(0.5, 5);
            job.facts.answers[index] = {measured};
        } else {
            job.facts.answers[index] = {chance.upto(static_cast<int>(readings.size()) - 1)};
        }
    }
}

void add_causes(Chance& chance, Job& job) {
    const int causes = chance.upto(8);
    for (int i = 0; i < causes; ++i) {
        std::vector<Shows> shows;
        for (std::size_t f = 0; f < job.knowledge.findings.size(); ++f) {
            if (chance.one_in(2)) continue;
            shows.push_back({static_cast<Index>(f), shares(chance, job.knowledge.findings[f].readings.size(),
                                                           chance.between(0.1, 0.95))});
        }
        add_cause(job.knowledge, "c" + std::to_string(i), chance.between(5, 250), shows,
                  chance.between(5, 90));
        if (i > 0 && chance.one_in(4)) job.knowledge.causes.back().remedy = job.knowledge.causes[0].remedy;
    }
}

void add_rules_and_remedies(Chance& chance, Job& job) {
    const int causes = static_cast<int>(job.knowledge.causes.size());
    if (causes == 0) return;
    for (int r = chance.upto(2); r > 0; --r) {
        const auto kind = chance.one_in(3) ? Action::Kind::rule_out : Action::Kind::favour;
        const double by = chance.one_in(2) ? 4 : 0.25;
        add_rule(job.knowledge, "rule" + std::to_string(r), "", {action(kind, chance.upto(causes - 1), by)});
    }
    for (int t = chance.upto(2); t > 0; --t) {
        const Index remedy = job.knowledge.causes[static_cast<std::size_t>(chance.upto(causes - 1))].remedy;
        job.facts.tried[remedy] = chance.one_in(3) ? Outcome::better : Outcome::not_cured;
    }
    if (chance.one_in(8)) {
        job.facts.tried[job.knowledge.causes[static_cast<std::size_t>(chance.upto(causes - 1))].remedy] =
            Outcome::cured;
    }
}

Job random_job(unsigned seed) {
    Chance chance(seed);
    Job job;
    job.knowledge = empty_knowledge();
    job.facts.history = 0;
    add_findings(chance, job);
    add_causes(chance, job);
    add_rules_and_remedies(chance, job);
    return job;
}

// The job in the terms of the judge, read off the knowledge afresh.
struct Expected {
    FaultNetwork network;
    FaultCase given;
    std::vector<bool> put_right;
    bool cured = false;
};

// P(low < X <= high) for a normal X, by adding up thin slices.
double normal_between(double low, double high, double mean, double deviation) {
    const int slices = 20000;
    const double from = std::max(low, mean - 9 * deviation);
    const double to = std::min(high, mean + 9 * deviation);
    if (to <= from) return 0;
    double sum = 0;
    for (int n = 0; n < slices; ++n) {
        const double z = (from + (n + 0.5) * (to - from) / slices - mean) / deviation;
        sum += std::exp(-z * z / 2);
    }
    return sum * (to - from) / slices / (deviation * std::sqrt(2 * std::acos(-1.0)));
}

std::vector<double> likelihood_of_answer(const Finding& finding, const Answer& answer) {
    const std::size_t levels = finding.readings.size();
    if (std::holds_alternative<CannotTell>(answer.given)) return {};
    std::vector<double> likelihood(levels, 0.0);
    if (const int* reading = std::get_if<int>(&answer.given)) {
        likelihood[static_cast<std::size_t>(*reading)] = 1;
        return likelihood;
    }
    const double far = 1e9;
    const double mean = std::get<Quantity>(answer.given).value;
    for (std::size_t k = 0; k < levels; ++k) {
        const double low = k + 1 < levels ? finding.readings[k].limit->value : -far;
        const double high = k > 0 ? finding.readings[k - 1].limit->value : far;
        likelihood[k] =
            0.98 * normal_between(low, high, mean, finding.spread / 2) + 0.02 / static_cast<double>(levels);
    }
    const double greatest = *std::max_element(likelihood.begin(), likelihood.end());
    for (double& l : likelihood) l = std::max(l / greatest, 0.01);
    return likelihood;
}

double with_odds_times(double p, double factor) {
    return p * factor / (1 - p + p * factor);
}

// The stated odds are of boats on which something is wrong: scaled down until the mean number of faults of
// such boats is the sum of the odds (at least 1.05); then the rules' factors.
void scale_to_comebacks(FaultCase& given, const std::vector<double>& factor) {
    const double stated = std::accumulate(given.prior.begin(), given.prior.end(), given.unlisted_prior);
    const auto scaled_by = [&](double scale) {
        FaultCase scaled = given;
        for (double& p : scaled.prior) p = with_odds_times(p, scale);
        scaled.unlisted_prior = with_odds_times(given.unlisted_prior, scale);
        return scaled;
    };
    const auto mean = [&](double scale) {
        const FaultCase scaled = scaled_by(scale);
        double none = 1 - scaled.unlisted_prior;
        double sum = scaled.unlisted_prior;
        for (double p : scaled.prior) {
            none *= 1 - p;
            sum += p;
        }
        return sum / (1 - none);
    };
    double scale = 1;
    if (mean(1) > std::max(1.05, stated)) {
        double step = 0.5;
        for (int n = 0; n < 60; ++n, step /= 2) {
            if (scale > step && mean(scale - step) > std::max(1.05, stated)) scale -= step;
        }
    }
    given = scaled_by(scale);
    for (std::size_t i = 0; i < factor.size(); ++i) {
        given.prior[i] = std::min(factor[i] == 1 ? 1 : 0.9, with_odds_times(given.prior[i], factor[i]));
    }
}

Expected expected_of(const Job& job) {
    const Knowledge& k = job.knowledge;
    Expected expected;
    const std::size_t causes = k.causes.size();
    double all_odds = 0;
    std::vector<std::vector<double>> shown_by_all(k.findings.size());  // per reading, times the odds
    std::vector<double> factor(causes, 1.0);
    for (const Rule& rule : k.rules) {
        for (const Action& a : rule.then) {
            factor[static_cast<std::size_t>(a.target)] *= a.kind == Action::Kind::rule_out ? 0 : a.by;
        }
    }
    for (std::size_t i = 0; i < causes; ++i) {
        std::vector<FaultLink> links;
        for (const Shows& shows : k.causes[i].shows) {
            links.push_back({shows.finding, shows.how_often});
            std::vector<double>& shown = shown_by_all[static_cast<std::size_t>(shows.finding)];
            shown.resize(shows.how_often.size());
            for (std::size_t r = 0; r < shown.size(); ++r)
                shown[r] += k.causes[i].odds[0] * shows.how_often[r];
        }
        all_odds += k.causes[i].odds[0];
        expected.network.causes.push_back(links);
        expected.given.prior.push_back(k.causes[i].odds[0] / 1000);
    }
    for (std::size_t f = 0; f < k.findings.size(); ++f) {
        const std::vector<double>& stray = k.findings[f].stray;
        std::vector<double> unlisted = stray;
        // As the listed causes do on average, but bad in 3 % at least wherever one of them shows it.
        const std::vector<double>& shown = shown_by_all[f];
        double bad = 0;
        for (std::size_t r = 0; r + 1 < shown.size(); ++r) bad += shown[r] / all_odds;
        const double more = shown.empty() ? 0 : std::max(0.0, 0.03 - bad);
        unlisted.back() = 1;
        for (std::size_t r = 0; r + 1 < stray.size(); ++r) {
            unlisted[r] = stray[r] * more / (1 - stray.back()) + (shown.empty() ? 0 : shown[r] / all_odds);
            unlisted.back() -= unlisted[r];
        }
        expected.network.findings.push_back({stray, unlisted});
        const auto answer = job.facts.answers.find(static_cast<Index>(f));
        expected.given.likelihood.push_back(answer == job.facts.answers.end()
                                                ? std::vector<double>()
                                                : likelihood_of_answer(k.findings[f], answer->second));
    }
    expected.given.unlisted_prior = 0.04;
    scale_to_comebacks(expected.given, factor);
    expected.put_right.assign(causes, false);
    Requirement wrong{std::vector<bool>(causes, true), true};
    for (const auto& [remedy, outcome] : job.facts.tried) {
        Requirement helped{std::vector<bool>(causes, false), false};
        for (std::size_t i = 0; i < causes; ++i) {
            if (k.causes[i].remedy != remedy) continue;
            expected.put_right[i] = true;
            helped.causes[i] = true;
            if (outcome != Outcome::cured) wrong.causes[i] = false;
        }
        if (outcome == Outcome::better) expected.given.requirements.push_back(helped);
        expected.cured = expected.cured || outcome == Outcome::cured;
    }
    expected.given.requirements.push_back(wrong);
    if (expected.cured) {
        expected.given.unlisted_prior = 0;
        for (std::size_t i = 0; i < causes; ++i) {
            if (!expected.put_right[i]) expected.given.prior[i] = 0;
        }
    }
    return expected;
}

double log_odds(double p) {
    return std::log(p / (1 - p));
}

}  // namespace

TEST_CASE("assess() equals a sum over every set of faults, for 3000 random knowledge bases") {
    for (unsigned seed = 1; seed <= 3000; ++seed) {
        const Job job = random_job(seed);
        const Expected e = expected_of(job);
        const std::vector<bool> ignored = e.cured ? std::vector<bool>() : e.put_right;
        const Enumerated expected = enumerate(e.network, e.given, ignored);
        const Assessment found = assess(job.knowledge, job.facts);
        INFO("seed " << seed);
        REQUIRE(found.ranking.size() == job.knowledge.causes.size());
        if (!(expected.total > 0)) {
            REQUIRE_FALSE(found.conflict.empty());
            continue;
        }
        REQUIRE(found.bound == 0);
        for (const RankedCause& cause : found.ranking) {
            const auto i = static_cast<std::size_t>(cause.cause);
            const bool gone = !ignored.empty() && ignored[i];
            REQUIRE(cause.probability == Approx(gone ? 0 : expected.marginal[i]).margin(1e-9));
        }
        REQUIRE(found.not_listed == Approx(expected.unlisted).margin(1e-9));
        REQUIRE(found.several == Approx(expected.several).margin(1e-9));
        std::vector<double> heaviest;
        for (const auto& [set, probability] : expected.sets) heaviest.push_back(probability);
        std::sort(heaviest.rbegin(), heaviest.rend());
        // Nothing is left out but what is hardly possible.
        const std::size_t listed = found.sets.size();
        REQUIRE((listed == std::min<std::size_t>(8, heaviest.size()) || heaviest[listed] < 1e-4));
        for (std::size_t h = 0; h < found.sets.size(); ++h) {
            REQUIRE(found.sets[h].probability == Approx(heaviest[h]).margin(1e-9));
        }
        FaultCase nothing = e.given;
        if (!e.cured) {
            nothing.likelihood.assign(nothing.likelihood.size(), {});
            nothing.requirements = {{std::vector<bool>(nothing.prior.size(), true), true}};
            const double wrong = enumerate(e.network, nothing).total;
            REQUIRE(found.log_evidence == Approx(std::log(expected.total / wrong)).margin(1e-9));
        }
    }
}

TEST_CASE("The weights of a cause add up to the whole change of its log-odds") {
    for (unsigned seed = 1; seed <= 500; ++seed) {
        const Job job = random_job(seed);
        const Assessment found = assess(job.knowledge, job.facts);
        INFO("seed " << seed);
        for (const RankedCause& cause : found.ranking) {
            if (cause.weights.empty()) continue;
            double sum = 0;
            for (const Weight& weight : cause.weights) sum += weight.decibans;
            const double change = log_odds(cause.probability) - log_odds(cause.prior);
            REQUIRE(sum == Approx(change * 10 / std::log(10.0)).margin(1e-9));
        }
    }
}

TEST_CASE("Every cause that can still be there has its weights") {
    for (unsigned seed = 1; seed <= 500; ++seed) {
        const Job job = random_job(seed);
        const Assessment found = assess(job.knowledge, job.facts);
        if (!found.conflict.empty() || found.evidence.empty()) continue;
        for (const RankedCause& cause : found.ranking) {
            if (cause.probability > 0 && cause.probability < 1) REQUIRE_FALSE(cause.weights.empty());
        }
    }
}

TEST_CASE("The same facts give the same assessment to the last bit") {
    for (unsigned seed = 1; seed <= 100; ++seed) {
        const Job job = random_job(seed);
        const Assessment a = assess(job.knowledge, job.facts);
        const Assessment b = assess(job.knowledge, job.facts);
        REQUIRE(a.log_evidence == b.log_evidence);
        REQUIRE(a.minutes_left == b.minutes_left);
        for (std::size_t n = 0; n < a.ranking.size(); ++n) {
            REQUIRE(a.ranking[n].cause == b.ranking[n].cause);
            REQUIRE(a.ranking[n].probability == b.ranking[n].probability);
        }
    }
}

TEST_CASE("Causes that are alike in everything come in the order of the knowledge, whatever was answered") {
    int alike = 0;
    for (unsigned seed = 1; seed <= 500; ++seed) {
        Job job = random_job(seed);
        const std::size_t causes = job.knowledge.causes.size();
        for (std::size_t i = 0; i < causes; ++i) {
            Cause twin = job.knowledge.causes[i];
            twin.id += "_twin";
            job.knowledge.causes.push_back(twin);
        }
        const Assessment found = assess(job.knowledge, job.facts, {false, false, false});
        INFO("seed " << seed);
        std::vector<std::size_t> place(2 * causes);
        std::vector<double> probability(2 * causes);
        for (std::size_t n = 0; n < found.ranking.size(); ++n) {
            place[static_cast<std::size_t>(found.ranking[n].cause)] = n;
            probability[static_cast<std::size_t>(found.ranking[n].cause)] = found.ranking[n].probability;
        }
        for (std::size_t i = 0; i < causes; ++i) {
            const double twin = probability[i + causes];  // a rule speaks of one of them only
            if (twin <= 0 || std::abs(probability[i] - twin) > 1e-14 * twin) continue;
            ++alike;
            REQUIRE(place[i] < place[i + causes]);
        }
    }
    CHECK(alike > 500);
}

TEST_CASE("The order in which causes and findings are written does not change the ranking") {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const Job job = random_job(seed);
        Chance chance(seed + 100000);
        std::vector<std::size_t> finding_at(job.knowledge.findings.size());
        std::vector<std::size_t> cause_at(job.knowledge.causes.size());
        std::iota(finding_at.begin(), finding_at.end(), 0);
        std::iota(cause_at.begin(), cause_at.end(), 0);
        std::shuffle(finding_at.begin(), finding_at.end(), chance.engine);
        std::shuffle(cause_at.begin(), cause_at.end(), chance.engine);
        Job other = job;
        other.facts.answers.clear();
        for (std::size_t f = 0; f < finding_at.size(); ++f) {
            other.knowledge.findings[finding_at[f]] = job.knowledge.findings[f];
            const auto answer = job.facts.answers.find(static_cast<Index>(f));
            if (answer != job.facts.answers.end()) {
                other.facts.answers[static_cast<Index>(finding_at[f])] = answer->second;
            }
        }
        for (std::size_t i = 0; i < cause_at.size(); ++i) {
            Cause cause = job.knowledge.causes[i];
            for (Shows& shows : cause.shows) {
                shows.finding = static_cast<Index>(finding_at[static_cast<std::size_t>(shows.finding)]);
            }
            other.knowledge.causes[cause_at[i]] = cause;
        }
        for (Rule& rule : other.knowledge.rules) {
            for (Action& a : rule.then)
                a.target = static_cast<Index>(cause_at[static_cast<std::size_t>(a.target)]);
        }
        const Assessment first = assess(job.knowledge, job.facts);
        const Assessment second = assess(other.knowledge, other.facts);
        INFO("seed " << seed);
        REQUIRE(first.log_evidence == Approx(second.log_evidence).margin(1e-11));
        REQUIRE(first.several == Approx(second.several).margin(1e-11));
        std::vector<double> by_cause(cause_at.size());
        for (const RankedCause& cause : second.ranking) {
            by_cause[static_cast<std::size_t>(cause.cause)] = cause.probability;
        }
        for (const RankedCause& cause : first.ranking) {
            REQUIRE(cause.probability ==
                    Approx(by_cause[cause_at[static_cast<std::size_t>(cause.cause)]]).margin(1e-11));
        }
    }
}

TEST_CASE(
    "Taking an answer back is the same as never having given it, and can't tell changes no probability") {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        const Job job = random_job(seed);
        if (job.facts.answers.empty()) continue;
        const Index finding = job.facts.answers.begin()->first;
        Facts without = job.facts;
        without.answers.erase(finding);
        Facts taken_back = without;
        taken_back.answers[finding] = {0};
        taken_back.answers.erase(finding);
        Facts cannot_tell = without;
        cannot_tell.answers[finding] = {CannotTell{}};
        const Assessment a = assess(job.knowledge, without);
        const Assessment b = assess(job.knowledge, taken_back);
        const Assessment c = assess(job.knowledge, cannot_tell);
        REQUIRE(a.log_evidence == b.log_evidence);
        REQUIRE(a.log_evidence == c.log_evidence);
        for (std::size_t n = 0; n < a.ranking.size(); ++n) {
            REQUIRE(a.ranking[n].probability == b.ranking[n].probability);
            REQUIRE(a.ranking[n].cause == c.ranking[n].cause);
            REQUIRE(a.ranking[n].probability == c.ranking[n].probability);
        }
        REQUIRE(a.next.index == b.next.index);
    }
}

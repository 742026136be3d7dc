// How the time of one step grows with the knowledge: random bases of up to thousands of causes and findings.
// CPU time of one thread.
#include <iostream>

#include "bench/common.hpp"
#include "reasoning/chance.hpp"
#include "rules/reasoning/assessment.hpp"

using namespace hardover;
using namespace hardover_bench;
using hardover_tests::Chance;

namespace {

Finding random_finding(int number, Chance& chance) {
    Finding finding;
    finding.id = finding.name = "f" + std::to_string(number);
    finding.readings = {{"bad", "bad", {}}, {"sound", "sound", {}}};
    const double stray = chance.between(0.005, 0.05);
    finding.stray = {stray, 1 - stray};
    finding.minutes = chance.between(1, 10);
    return finding;
}

// Each cause shows about ten findings, and has a remedy of its own.
Knowledge random_knowledge(int causes, int findings, Chance& chance) {
    Knowledge knowledge;
    History history;
    history.id = "any";
    history.share = 1;
    knowledge.histories = {history};
    for (int f = 0; f < findings; ++f) knowledge.findings.push_back(random_finding(f, chance));
    for (int i = 0; i < causes; ++i) {
        Cause cause;
        cause.id = cause.name = "c" + std::to_string(i);
        cause.odds = {900.0 / causes * chance.between(0.2, 1.8)};
        for (int n = 0; n < 10; ++n) {
            const double often = chance.between(0.2, 0.95);
            // Each from its own tenth of the findings, so that none comes twice.
            const int finding = n * (findings / 10) + chance.upto(findings / 10 - 1);
            cause.shows.push_back({finding, {often, 1 - often}});
        }
        cause.remedy = i;
        knowledge.causes.push_back(cause);
        Remedy remedy;
        remedy.id = remedy.name = "r" + std::to_string(i);
        remedy.minutes = chance.between(10, 120);
        knowledge.remedies.push_back(remedy);
    }
    return knowledge;
}

// What one cause shows, and a dozen other findings that are sound.
Facts random_facts(const Knowledge& knowledge, Chance& chance) {
    Facts facts;
    facts.history = 0;
    const Cause& cause =
        knowledge
            .causes[static_cast<std::size_t>(chance.upto(static_cast<int>(knowledge.causes.size()) - 1))];
    for (const Shows& shows : cause.shows) {
        if (chance.one_in(2)) {
            facts.answers[shows.finding] = {chance.between(0, 1) < shows.how_often[0] ? 0 : 1};
        }
    }
    for (int n = 0; n < 12; ++n) {
        facts.answers.insert({chance.upto(static_cast<int>(knowledge.findings.size()) - 1), Answer{1}});
    }
    return facts;
}

}  // namespace

// growth_bench [JOBS]
int main(int argc, char** argv) {
    const int jobs = argument(argc, argv, 1, 20);
    std::cout << "Answer, ranking and next step, ms of one core, " << jobs << " random jobs a row\n\n";
    std::vector<std::vector<std::string>> table{
        {"causes", "findings", "median", "longest", "median per 1000 causes and findings"}};
    for (const auto& [causes, findings] :
         {std::pair{50, 100}, std::pair{100, 500}, std::pair{200, 1000}, std::pair{500, 2500},
          std::pair{1000, 5000}, std::pair{2000, 10000}}) {
        Chance chance(static_cast<unsigned>(causes));
        const Knowledge knowledge = random_knowledge(causes, findings, chance);
        const PreparedKnowledge prepared(knowledge);
        std::vector<double> taken;
        for (int n = 0; n < jobs; ++n) {
            const Facts facts = random_facts(knowledge, chance);
            const double before = thread_milliseconds();
            if (assess(prepared, facts, {false, false}).ranking.empty()) return 1;
            taken.push_back(thread_milliseconds() - before);
        }
        const double median = percentile(taken, 0.5);
        table.push_back({std::to_string(causes), std::to_string(findings), fixed(median, 2),
                         fixed(percentile(taken, 1), 2), fixed(median * 1000 / (causes + findings), 2)});
    }
    print_table(table);
    std::cout << "Aim: 1,000 causes and 5,000 findings under 100 ms; near-linear growth.\n";
}

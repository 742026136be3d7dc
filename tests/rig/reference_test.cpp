// Every published check value is either computed with the rig's formulas and compared, or named here with the
// reason why it is not.
#include <cmath>
#include <set>

#include "reference_checks.hpp"
#include "support.hpp"

using namespace hardover_tests;

namespace {

struct NotOurs {
    std::string reason;
    std::set<std::string> ids;
};

// Rows that are computed, in all: one that drops out fails the test.
constexpr int rows_used = 485;
constexpr int networks = 15;  // number of that calculation in the file

const std::vector<NotOurs>& not_ours() {
    static const std::vector<NotOurs> all = {
        {"units that the program does not know: nautical mile, imperial gallon", {"UNI-015", "UNI-016"}},
        {"mechanisms that no steering has (slotted bar, cam peg, law of sines)",
         {"LNK-009", "LNK-010", "LNK-011", "LNK-012", "LNK-015"}},
        {"correlated inputs: the program takes inputs as independent", {"SQR-015", "SQR-016"}},
        {"friction formulas and a chart that the program does not use: Churchill and Colebrook are enough",
         {"FLO-038", "FLO-042", "FLO-043", "FLO-044"}},
        {"limits of specifications for other fluids, most from memory: not in the program",
         {"VIS-060", "VIS-061", "VIS-062", "VIS-063", "VIS-064", "VIS-065"}},
        {"strength of a rudder stock: deferred to class rules", {"STR-003", "STR-004"}},
    };
    return all;
}

ReferenceFormulas all_formulas() {
    ReferenceFormulas all;
    for (const ReferenceFormulas& some :
         {cylinder_formulas(), linkage_formulas(), joint_formulas(), flow_formulas(), oil_formulas(),
          network_formulas(), plain_formulas()}) {
        all.insert(all.end(), some.begin(), some.end());
    }
    return all;
}

// By id first, then by the longest beginning of the title. The key that was used, or an empty one.
std::string key_for(const ReferenceCheck& check, const ReferenceFormulas& formulas) {
    std::string best;
    for (const auto& [key, formula] : formulas) {
        if (key == check.id) return key;
        if (check.title.rfind(key, 0) == 0 && key.size() > best.size()) best = key;
    }
    return best;
}

const ReferenceFormula& formula_of(const std::string& key, const ReferenceFormulas& formulas) {
    for (const auto& [name, formula] : formulas) {
        if (name == key) return formula;
    }
    FAIL("no formula under '" << key << "'");
    return formulas.front().second;
}

std::string reason_not_ours(const std::string& id) {
    for (const NotOurs& group : not_ours()) {
        if (group.ids.contains(id)) return group.reason;
    }
    return "";
}

}  // namespace

TEST_CASE("Every published check value is met by the rig's formulas") {
    const ReferenceFormulas formulas = all_formulas();
    std::string from_memory;
    int computed = 0;
    for (const ReferenceCheck& check : read_reference_checks()) {
        if (!reason_not_ours(check.id).empty()) continue;
        INFO(check.id << ": " << check.title << "\n  source: " << check.source);
        const std::string key = key_for(check, formulas);
        if (key.empty()) {
            FAIL_CHECK("nothing computes this check and no reason is given");
            continue;
        }
        const double ours = formula_of(key, formulas)(check);
        ++computed;
        INFO("  ours " << ours << ", expected " << check.expected << " within " << check.tolerance
                       << " (SI)");
        // Room for the rounding of unit factors, or for the circuit solver, where the tolerance is "exact".
        const double room = (check.calculation == networks ? 1e-10 : 1e-12) * std::abs(check.expected);
        CHECK(std::abs(ours - check.expected) <= check.tolerance + room);
        if (check.status == "memory") from_memory += " " + check.id;
    }
    CHECK(computed == rows_used);
    WARN("met, but only FROM MEMORY (a match proves little):" << from_memory);
}

TEST_CASE("No check value is both computed and excused, and every reason and formula is needed") {
    const ReferenceFormulas formulas = all_formulas();
    std::set<std::string> ids;
    std::set<std::string> used;
    for (const ReferenceCheck& check : read_reference_checks()) {
        INFO(check.id);
        CHECK(ids.insert(check.id).second);
        const bool excused = !reason_not_ours(check.id).empty();
        if (!excused) used.insert(key_for(check, formulas));
        for (const auto& [key, formula] : formulas) CHECK_FALSE((excused && key == check.id));
    }
    CHECK(ids.size() >= 500);
    for (const NotOurs& group : not_ours()) {
        for (const std::string& id : group.ids) {
            INFO("excused " << id);
            CHECK(ids.contains(id));
        }
    }
    for (const auto& [key, formula] : formulas) {
        INFO("formula under '" << key << "'");
        CHECK(used.contains(key));
    }
}

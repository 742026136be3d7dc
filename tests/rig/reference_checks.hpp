// Published check values as the tests use them: inputs in SI by name, expected value and tolerance in SI.
// Knows the file's form, not the formulas.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace hardover_tests {

struct ReferenceCheck {
    std::string id;
    int calculation = 0;
    std::string title;
    std::map<std::string, std::vector<double>> numbers;  // SI; one number is a list of one
    std::map<std::string, std::string> words;
    double expected = 0;   // SI
    double tolerance = 0;  // SI, absolute
    std::string status;    // read, computed or memory
    std::string source;    // "A. Esposito, ..., Ex 6.1 p.219 (read)"

    // A number or word by its name. A missing one fails the test with its name.
    double operator()(const std::string& name) const;
    const std::vector<double>& list(const std::string& name) const;
    const std::string& word(const std::string& name) const;
    bool titled(const std::string& part) const { return title.find(part) != std::string::npos; }
};

// Reads tests/reference/check_values.yaml; a fault in it (an unknown unit, say) fails the test with the id.
std::vector<ReferenceCheck> read_reference_checks();

// The value in SI of one unit as the file spells it. Temperatures with an offset go through to_si.
double to_si(double number, const std::string& unit);

// How a check is computed with the rig's formulas. The key is a check's id or the beginning of its title.
using ReferenceFormula = std::function<double(const ReferenceCheck&)>;
using ReferenceFormulas = std::vector<std::pair<std::string, ReferenceFormula>>;

ReferenceFormulas cylinder_formulas();
ReferenceFormulas linkage_formulas();
ReferenceFormulas joint_formulas();  // threads, drilling, hoses and fittings, load, metals
ReferenceFormulas flow_formulas();
ReferenceFormulas oil_formulas();      // viscosity, density, stiffness, leaks, bleeding
ReferenceFormulas network_formulas();  // by the circuit solver
ReferenceFormulas plain_formulas();    // units, sums and products

}  // namespace hardover_tests

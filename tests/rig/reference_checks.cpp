#include "reference_checks.hpp"

#include <yaml-cpp/yaml.h>

#include <cmath>

#include "rules/quantity/quantity.hpp"
#include "support.hpp"

namespace hardover_tests {

namespace {

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
        text.replace(at, from.size(), to);
    }
    return text;
}

// Units of the textbooks that the program itself has no use for.
const std::map<std::string, double>& textbook_units() {
    static const std::map<std::string, double> units = {
        {"", 1},
        {"1", 1},
        {"-", 1},
        {"1 on diameter", 1},
        {"VI", 1},
        {"SUS", 1},
        {"strokes", 1},
        {"drops", 1},
        {"line volumes", 1},
        {"in^0.3", 1},
        {"N/(m^2 knot^2)", 1},
        {"g*bar", 1e5},
        {"s^2/m^5", 1},
        {"um", 1e-6},
        {"nm", 1e-9},
        {"V", 1},
        {"mV", 1e-3},
        {"A", 1},
        {"mA", 1e-3},
        {"ohm", 1},
        {"K", 1},
        {"m of water", 1000 * 9.80665},
        {"newt (in^2/s)", 0.0254 * 0.0254},
        {"cSt/s", 1e-6},
        {"L/min/m", 1e-3 / 60},
        {"cm^3/s/bar", 1e-6 / 1e5},
        {"Pa.s/m^3", 1},
        {"mPa.s", 1e-3},
        // Flow coefficients as the flow at 1 bar.
        {"gpm/psi^0.5", 3.785411784e-3 / 60 * std::sqrt(1e5 / 6894.757293168361)},
        {"Lpm/kPa^0.5", 1e-3 / 60 * std::sqrt(1e5 / 1e3)},
        {"imperial gallon", 4.54609e-3},
        {"nautical mile", 1852},
    };
    return units;
}

std::string program_spelling(std::string unit) {
    for (const char* suffix : {" gauge", " abs"}) unit = replaced(unit, suffix, "");
    unit = replaced(unit, "psia", "psi");
    unit = replaced(unit, "psig", "psi");
    unit = replaced(unit, "pound-force inch", "lbf*in");
    unit = replaced(unit, "pound-force foot", "lbf*ft");
    unit = replaced(unit, "mile/hour", "mph");
    unit = replaced(unit, "US fluid ounce", "floz");
    unit = replaced(unit, "US gallon", "gal");
    unit = replaced(unit, "US quart", "qt");
    unit = replaced(unit, "USgal", "gal");
    unit = replaced(unit, "USfloz", "floz");
    return replaced(unit, ".", "*");
}

std::vector<double> numbers_of(const YAML::Node& node, const std::string& unit) {
    std::vector<double> numbers;
    if (node.IsSequence()) {
        for (const YAML::Node& item : node) numbers.push_back(to_si(item.as<double>(), unit));
    } else {
        numbers.push_back(to_si(node.as<double>(), unit));
    }
    return numbers;
}

bool is_number(const YAML::Node& node) {
    double ignored = 0;
    return node.IsSequence() || YAML::convert<double>::decode(node, ignored);
}

ReferenceCheck read_check(const YAML::Node& node, const YAML::Node& sources) {
    ReferenceCheck check;
    check.id = node["id"].as<std::string>();
    INFO("check " << check.id);
    check.calculation = node["calculation"].as<int>();
    check.title = node["title"].as<std::string>();
    for (const auto& input : node["inputs"]) {
        const std::string name = input.first.as<std::string>();
        const YAML::Node& value = input.second["value"];
        if (is_number(value)) {
            check.numbers[name] = numbers_of(value, input.second["unit"].as<std::string>(""));
        } else {
            check.words[name] = value.as<std::string>();
        }
    }
    const YAML::Node& result = node["expected"]["result"];
    check.expected = to_si(result["value"].as<double>(), result["unit"].as<std::string>(""));
    const YAML::Node& tolerance = node["tolerance"];
    if (tolerance["rel"]) {
        check.tolerance = std::abs(check.expected) * tolerance["rel"].as<double>();
    } else {
        const std::string unit = tolerance["unit"].as<std::string>("");
        check.tolerance = to_si(tolerance["abs"].as<double>(), unit) - to_si(0, unit);
    }
    check.status = node["status"].as<std::string>();
    const std::string title = sources[node["source"].as<std::string>()]["title"].as<std::string>();
    const std::string state = check.status == "memory" ? "FROM MEMORY" : check.status;
    check.source = title + ", " + node["place"].as<std::string>("") + " (" + state + ")";
    return check;
}

}  // namespace

double to_si(double number, const std::string& unit) {
    if (const auto found = textbook_units().find(unit); found != textbook_units().end()) {
        return number * found->second;
    }
    if (unit.rfind("1/", 0) == 0) return number / to_si(1, unit.substr(2));
    const auto known = hardover::find_unit(program_spelling(unit));
    REQUIRE_OK(known);
    return number * known.value().factor + known.value().offset;
}

double ReferenceCheck::operator()(const std::string& name) const {
    return list(name).front();
}

const std::vector<double>& ReferenceCheck::list(const std::string& name) const {
    INFO("check " << id << " has no number '" << name << "'");
    REQUIRE(numbers.contains(name));
    return numbers.at(name);
}

const std::string& ReferenceCheck::word(const std::string& name) const {
    INFO("check " << id << " has no word '" << name << "'");
    REQUIRE(words.contains(name));
    return words.at(name);
}

std::vector<ReferenceCheck> read_reference_checks() {
    const YAML::Node file = YAML::LoadFile(source_path("tests/reference/check_values.yaml"));
    std::vector<ReferenceCheck> checks;
    for (const YAML::Node& node : file["checks"]) checks.push_back(read_check(node, file["sources"]));
    return checks;
}

}  // namespace hardover_tests

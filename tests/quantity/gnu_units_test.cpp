// Compares every unit factor with GNU units, where that program is installed.
#include <array>
#include <cstdio>
#include <cstdlib>
#include <map>

#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover;

namespace {

// The first number a command prints; none where it prints none.
std::string output_of(const std::string& command) {
    std::string output;
    FILE* pipe = popen((command + " 2>/dev/null").c_str(), "r");
    if (pipe == nullptr) return output;
    std::array<char, 256> buffer{};
    while (std::fgets(buffer.data(), buffer.size(), pipe) != nullptr) output += buffer.data();
    pclose(pipe);
    return output;
}

double factor_in_gnu_units(const std::string& unit) {
    return std::atof(output_of("LC_ALL=C units -1 -t -o %.15g '1 " + unit + "'").c_str());
}

}  // namespace

TEST_CASE("Every unit factor agrees with GNU units") {
    if (output_of("units --version").find("GNU Units") == std::string::npos) {
        WARN("GNU units is not installed: comparison left out");
        return;
    }
    // Where its name differs from ours. A drop is no unit of that program.
    const std::map<std::string, std::string> other_names = {
        {"in", "inch"},         {"ft", "foot"},       {"yd", "yard"},       {"deg", "degree"},
        {"rad", "radian"},      {"gal", "usgallon"},  {"qt", "usquart"},    {"pt", "uspint"},
        {"floz", "usfloz"},     {"lb", "pound"},      {"oz", "ounce"},      {"h", "hour"},
        {"d", "day"},           {"kn", "knot"},       {"F", "degF"},        {"C", "degC"},
        {"cSt", "centistokes"}, {"cP", "centipoise"}, {"hp", "horsepower"}, {"%", "percent"},
        {"L", "liter"},         {"mL", "milliliter"}, {"s", "second"},      {"min", "minute"},
        {"g", "gram"},          {"N", "newton"},      {"W", "watt"}};
    int compared = 0;
    for (const std::string& name : unit_names()) {
        if (name == "drop" || name == "count") continue;
        INFO(name);
        const auto other = other_names.find(name);
        const double factor = factor_in_gnu_units(other == other_names.end() ? name : other->second);
        CHECK(find_unit(name).value().factor == Approx(factor).epsilon(1e-13));
        ++compared;
    }
    CHECK(compared > 35);
}

// Registers plain formulas under their names. Inner header of functions*.cpp; knows the dimensions they use.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "rules/language/language.hpp"

namespace hardover::rig::function_table {

inline constexpr Dimension number{};
inline constexpr Dimension length{.length = 1};
inline constexpr Dimension area{.length = 2};
inline constexpr Dimension volume{.length = 3};
inline constexpr Dimension angle{.angle = 1};
inline constexpr Dimension time_{.time = 1};
inline constexpr Dimension frequency{.time = -1};
inline constexpr Dimension turning_speed{.time = -1, .angle = 1};
inline constexpr Dimension displacement{.length = 3, .angle = -1};
inline constexpr Dimension speed{.length = 1, .time = -1};
inline constexpr Dimension flow{.length = 3, .time = -1};
inline constexpr Dimension force{.length = 1, .mass = 1, .time = -2};
inline constexpr Dimension torque{.length = 2, .mass = 1, .time = -2};
inline constexpr Dimension power{.length = 2, .mass = 1, .time = -3};
inline constexpr Dimension pressure{.length = -1, .mass = 1, .time = -2};
inline constexpr Dimension spring_rate{.mass = 1, .time = -2};
inline constexpr Dimension density{.length = -3, .mass = 1};
inline constexpr Dimension viscosity{.length = -1, .mass = 1, .time = -1};
inline constexpr Dimension kinematic_viscosity{.length = 2, .time = -1};
inline constexpr Dimension flow_resistance{.length = -4, .mass = 1, .time = -1};
inline constexpr Dimension hose_compliance{.length = 3, .mass = -1, .time = 2};
inline constexpr Dimension temperature{.temperature = 1};
inline constexpr Dimension expansion{.temperature = -1};

template <typename... Numbers, std::size_t... places>
double call(double (*formula)(Numbers...), const std::vector<double>& arguments,
            std::index_sequence<places...>) {
    return formula(arguments[places]...);
}

// As many dimensions as the formula has arguments, or it does not build.
template <typename... Numbers>
void add(Functions& functions, const std::string& name, double (*formula)(Numbers...),
         const Dimension (&arguments)[sizeof...(Numbers)], const Dimension& result,
         const std::string& source) {
    functions.add({name,
                   {std::begin(arguments), std::end(arguments)},
                   result,
                   [formula](const std::vector<double>& values) {
                       return call(formula, values, std::index_sequence_for<Numbers...>{});
                   },
                   source});
}

void add_oil_functions(Functions& functions);
void add_geometry_functions(Functions& functions);
void add_linkage_functions(Functions& functions);

}  // namespace hardover::rig::function_table

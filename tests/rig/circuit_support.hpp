// What the tests of the circuit solver share. Knows invented oil and a pump that is only a flow.
#pragma once

#include "app/rig/circuit.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover::rig::circuit;

inline constexpr double bar = 1e5;   // Pa
inline constexpr double cm3 = 1e-6;  // m^3
inline constexpr double mm = 1e-3;   // m
inline constexpr double gravity = 9.80665;

// Invented oil of an ordinary steering system.
inline const hardover::rig::FlowingOil oil{870, 32e-6};

inline Solution solved(const Circuit& circuit) {
    const auto result = solve(circuit);
    REQUIRE_OK(result);
    CHECK(result.value().imbalance <= 1e-9);
    return result.value();
}

// A source that gives `flow` against whatever stands in its way.
inline Pump source(const std::string& name, const std::string& inlet, const std::string& outlet,
                   double flow) {
    return {.name = name,
            .inlet = inlet,
            .outlet = outlet,
            .displacement = cm3,
            .speed = flow / cm3,
            .torque_limit = 1e3};
}

inline Restriction linear(const std::string& name, const std::string& from, const std::string& to,
                          double conductance) {
    return {.name = name, .from = from, .to = to, .linear = 1 / conductance};
}

}  // namespace hardover_tests

// Arithmetic and trade names of dimensions.
#include <array>
#include <utility>

#include "rules/quantity/quantity.hpp"

namespace hardover {
namespace {

constexpr std::array<std::pair<Dimension, const char*>, 26> trade_names = {{
    {{}, "plain number"},
    {{.length = 1}, "length"},
    {{.length = 2}, "area"},
    {{.length = 3}, "volume"},
    {{.mass = 1}, "mass"},
    {{.time = 1}, "time"},
    {{.temperature = 1}, "temperature"},
    {{.angle = 1}, "angle"},
    {{.length = 1, .time = -1}, "speed"},
    {{.length = 1, .time = -2}, "acceleration"},
    {{.length = 1, .mass = 1, .time = -2}, "force"},
    {{.length = 2, .mass = 1, .time = -2}, "torque"},
    {{.length = -1, .mass = 1, .time = -2}, "pressure"},
    {{.length = 2, .mass = 1, .time = -3}, "power"},
    {{.length = 3, .time = -1}, "flow"},
    {{.length = 3, .angle = -1}, "volume per turn"},
    {{.length = 1, .angle = -1}, "length per turn"},
    {{.length = 2, .mass = 1, .time = -2, .angle = -1}, "torque per angle"},
    {{.mass = 1, .time = -2}, "force per length"},
    {{.length = -3, .mass = 1}, "density"},
    {{.time = -1, .angle = 1}, "speed of turning"},
    {{.time = -1}, "number per time"},
    {{.length = 2, .time = -1}, "kinematic viscosity"},
    {{.length = -1, .mass = 1, .time = -1}, "dynamic viscosity"},
    {{.length = -1, .angle = 1}, "angle per length"},
    {{.mass = 1, .time = -1}, "mass per time"},
}};

}  // namespace

Dimension operator*(const Dimension& a, const Dimension& b) {
    return {a.length + b.length, a.mass + b.mass, a.time + b.time, a.temperature + b.temperature,
            a.angle + b.angle};
}

Dimension operator/(const Dimension& a, const Dimension& b) {
    return a * power(b, -1);
}

Dimension power(const Dimension& a, int exponent) {
    return {a.length * exponent, a.mass * exponent, a.time * exponent, a.temperature * exponent,
            a.angle * exponent};
}

std::string name_of(const Dimension& dimension) {
    for (const auto& [known, name] : trade_names) {
        if (known == dimension) return name;
    }
    const std::array<std::pair<int, const char*>, 5> bases = {{{dimension.length, "m"},
                                                               {dimension.mass, "kg"},
                                                               {dimension.time, "s"},
                                                               {dimension.temperature, "K"},
                                                               {dimension.angle, "rad"}}};
    std::string above;
    std::string below;
    for (const auto& [exponent, base] : bases) {
        if (exponent == 0) continue;
        const int size = exponent < 0 ? -exponent : exponent;
        const std::string part = size == 1 ? base : std::string(base) + "^" + std::to_string(size);
        if (exponent < 0) {
            below += "/" + part;
        } else {
            above += (above.empty() ? "" : "·") + part;
        }
    }
    return (above.empty() ? "1" : above) + below;
}

}  // namespace hardover

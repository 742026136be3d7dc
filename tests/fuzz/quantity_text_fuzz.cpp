// Quantities as people type them: read, or refused in words; what is read can be shown, and what is shown is
// read back.
#include <cmath>

#include "fuzz/target.hpp"
#include "rules/quantity/quantity.hpp"

using namespace hardover;
using namespace hardover_fuzz;

namespace {

std::vector<Unit> all_units() {
    std::vector<Unit> units;
    for (const std::string& name : unit_names()) {
        const Result<Unit> unit = find_unit(name);
        demand(unit.ok(), "a unit that is listed and not known: " + name);
        units.push_back(unit.value());
    }
    return units;
}

// read_quantity takes numbers from 1e-60 to 1e60, which another unit can lead out of.
bool ordinary(double number) {
    return number == 0 || (std::abs(number) > 1e-59 && std::abs(number) < 1e59);
}

void demand_shown_and_read_back(const Quantity& quantity, const std::string& typed) {
    demand(std::isfinite(quantity.value) && std::isfinite(quantity.spread), "not finite: " + typed);
    demand(quantity.spread >= 0, "a spread below nothing: " + typed);
    static const std::vector<Unit> units = all_units();
    for (const Unit& unit : units) {
        if (unit.dimension != quantity.dimension) continue;
        for (const UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
            const std::string shown = show(quantity, unit, system);
            const Unit shown_in = shown_unit(unit, system);
            if (!ordinary(in_unit(quantity, shown_in)) || !ordinary(quantity.spread / shown_in.factor))
                continue;
            const Result<Quantity> back = read_quantity(shown, unit.name);
            demand(back.ok(), "'" + typed + "' is shown as '" + shown + "', which is refused");
            demand(back.value().dimension == quantity.dimension, "'" + shown + "' has become something else");
        }
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text = text_of(data, size);
    const Result<Quantity> quantity = read_quantity(text);
    if (quantity) {
        demand_shown_and_read_back(quantity.value(), text);
    } else {
        demand_worded(quantity.error());
    }
    const Result<QuantityRange> range = read_range(text, "in");
    if (range) {
        demand(std::isfinite(range.value().low.value) && std::isfinite(range.value().high.value),
               "a range without ends: " + text);
    } else {
        demand_worded(range.error());
    }
    static const Unit psi = find_unit("psi").value();
    const Result<Quantity> pressure = read_quantity_of(text, psi);
    if (pressure) {
        demand(pressure.value().dimension == psi.dimension, "not a pressure: " + text);
    } else {
        demand_worded(pressure.error());
    }
    const Result<Unit> unit = find_unit(text);
    if (!unit) demand_worded(unit.error());
    return 0;
}

#include "app/rig/galvanic.hpp"

#include <cmath>

#include "app/rig/named.hpp"

namespace hardover::rig {

const std::vector<Metal>& metals(Electrode electrode) {
    static const std::vector<Metal> calomel = {
        {"zinc", Electrode::calomel, -1.03, 0.03},
        {"aluminium 3003-H", Electrode::calomel, -0.79, 0.03},
        {"carbon steel", Electrode::calomel, -0.61, 0.03},
        {"304 stainless, active", Electrode::calomel, -0.53, 0.03},
        {"naval brass 464", Electrode::calomel, -0.40, 0.03},
        {"copper", Electrode::calomel, -0.36, 0.03},
        {"G bronze", Electrode::calomel, -0.31, 0.03},
        {"90-10 Cu-Ni", Electrode::calomel, -0.28, 0.03},
        {"316 stainless, active", Electrode::calomel, -0.18, 0.03},
        {"titanium", Electrode::calomel, -0.10, 0.03},
        {"304 stainless, passive", Electrode::calomel, -0.08, 0.03},
        {"316 stainless, passive", Electrode::calomel, -0.05, 0.03},
    };
    static const std::vector<Metal> silver_chloride = {
        {"zinc", Electrode::silver_chloride, -1.05, 0.02},
        {"aluminium 5086/5083/6061", Electrode::silver_chloride, -0.82, 0.02},
        {"mild steel", Electrode::silver_chloride, -0.79, 0.04},
        {"stainless active", Electrode::silver_chloride, -0.55, 0.04},
        {"naval brass", Electrode::silver_chloride, -0.45, 0.02},
        {"silicon bronze", Electrode::silver_chloride, -0.26, 0.02},
    };
    return electrode == Electrode::calomel ? calomel : silver_chloride;
}

Result<Metal> find_metal(Electrode electrode, std::string_view name) {
    return find_named(metals(electrode), name, "metal");
}

Result<Couple> couple(Electrode electrode, std::string_view one, std::string_view other) {
    const Result<Metal> first = find_metal(electrode, one);
    if (!first) return first.error();
    const Result<Metal> second = find_metal(electrode, other);
    if (!second) return second.error();
    const bool first_eaten = first.value().potential < second.value().potential;
    const Metal& anode = first_eaten ? first.value() : second.value();
    const Metal& cathode = first_eaten ? second.value() : first.value();
    Couple couple;
    couple.voltage = cathode.potential - anode.potential;
    couple.spread = std::hypot(anode.spread, cathode.spread);
    couple.eaten = anode.name;
    couple.spared = cathode.name;
    couple.of_concern = couple.voltage > concern_voltage;
    return couple;
}

}  // namespace hardover::rig

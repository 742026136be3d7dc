#include "app/rig/seal_volume.hpp"

#include <cmath>
#include <limits>

#include "app/rig/cylinder.hpp"

namespace hardover::rig {

namespace {
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
}

double bead_volume(double bead_diameter, double length) {
    return length >= 0 ? circle_area(bead_diameter) * length : nan;
}

double squeezed_width(double bead_diameter, double gap) {
    return gap > 0 && gap < bead_diameter ? circle_area(bead_diameter) / gap : nan;
}

double bead_for_joint(double width, double gap) {
    return width > 0 && gap > 0 ? circle_diameter(width * gap) : nan;
}

double annulus_volume(double hole, double bolt, double depth) {
    return depth >= 0 ? ram_area(hole, bolt) * depth : nan;
}

double cartridges(double volume, double cartridge, double waste) {
    if (!(volume >= 0 && cartridge > 0 && waste >= 0 && waste < 1)) return nan;
    return std::ceil(volume / (cartridge * (1 - waste)));
}

}  // namespace hardover::rig

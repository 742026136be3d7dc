// How much sealing compound a joint takes. SI throughout; plane and solid geometry only.
// NaN for sizes that cannot be.
#pragma once

namespace hardover::rig {

// A round bead laid along a length, m^3.
double bead_volume(double bead_diameter, double length);

// How wide that bead becomes, m, squeezed to a gap: its area over the gap. NaN unless the gap is above zero
// and below the bead's diameter.
double squeezed_width(double bead_diameter, double gap);

// Bead diameter, m, that fills a joint of that width and gap.
double bead_for_joint(double width, double gap);

// Ring of compound round a bolt in an oversize hole, m^3.
double annulus_volume(double hole, double bolt, double depth);

// Cartridges to open, a whole number, with `waste` the part that stays behind, 0 to below 1.
double cartridges(double volume, double cartridge, double waste);

}  // namespace hardover::rig

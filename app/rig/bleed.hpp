// Getting air out: when steering lock to lock can carry it home, and when a bleeder must be opened. SI
// throughout. Plug flow in the hose, derived here; no published figure for this was found.
#pragma once

namespace hardover::rig {

// Oil in a hose, m^3.
double hose_volume(double bore, double length);

// Part of the way home that one full stroke carries air, 1 or more: it arrives. `sweep` is what one stroke
// moves, `line` what lies between the air and the reservoir.
double sweep_share(double sweep, double line);

// Whether one sweep carries air all the way. If not, it only moves to and fro: steering lock to lock never
// delivers it, however often. Open a bleeder at the ram or push oil from the far end.
bool air_reaches_reservoir(double sweep, double line);

// Full strokes each way until air that lies `line` from the reservoir is out: 1 when a sweep reaches,
// infinity when the hose holds more than a stroke. NaN for volumes not above zero.
double bleed_cycles(double sweep, double line);

// Wheel turning, rad, to push one line volume through with a bleeder open; displacement in m^3/rad.
double turning_to_flush(double line, double displacement, double efficiency);

// Laminar flushing: part of the old oil still in a line after `line_volumes` went through: 1/(4·theta) from
// one half on, and all of it but what went through before (the first new oil arrives at one half: the core
// runs twice as fast as the mean).
double old_oil_left(double line_volumes);
// Part of what comes out that is new: 1 - 1/(4·theta^2) from one half on, none before.
double new_oil_arriving(double line_volumes);
// Line volumes to push until only that part of the old oil is left.
double line_volumes_to_flush(double part_left);

// Fastest climb of a bore-filling bubble in a vertical line of thin oil, m/s: 0.35·sqrt(g·d) (R. Davies and
// G. Taylor 1950; from memory). Cold oil and small bores are much slower.
double bubble_climb(double bore);

}  // namespace hardover::rig

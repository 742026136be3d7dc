// Drilling through a panel or a raked transom: where the drill comes out and how to guide it. SI, angles in
// rad. Flat parallel faces; plane trigonometry. Every function gives NaN for an angle of 80 deg or more off
// square.
#pragma once

namespace hardover::rig {

// How far the hole leaves the far face from where it should, m; `thickness` square to the panel, `error` the
// angle off square. A drill held level at a transom raked by r from vertical is r off square.
double exit_offset(double thickness, double error);
// The same when the thickness was measured along the drilled path.
double exit_offset_along_path(double path, double error);
// Length of the drilled path, and the long axis of the ellipse the hole makes on the face.
double drilled_path(double thickness, double error);
double entry_ellipse(double drill_diameter, double error);

// Angle off square from a measured exit offset.
double error_of_offset(double offset, double thickness);

// Two errors in planes square to each other as one.
double compound_error(double error_one, double error_two);

// Height of a guide block's wedge over a base length that turns a drill by an angle: to drill level through a
// raked transom, or square to it with a drill guide that stands level.
double guide_wedge(double base, double angle);

}  // namespace hardover::rig

// Hoses and their fittings: sizes, bends, slack, wall strength and tightening torques. SI throughout.
// Knows no flow. NaN for sizes that are not above zero.
#pragma once

#include <string>
#include <vector>

namespace hardover::rig {

// Dash number n means n/16 in: bore of a hose, outside of a tube (SAE J517). Exception: hose of type 100R5.
double size_of_dash(double dash);
double dash_of_size(double size);

// Minimum bend radius of SAE 100R1 / 100R7 hose, m, measured to the inside of the bend, by bore. From memory
// of SAE J517: ask for the hose maker's figure. NaN for a bore that is not in the table.
double least_bend_radius(double bore);

// Radius of a bend from a straight edge of length `chord` laid inside it and the gap `rise` at its middle, m.
double bend_radius(double chord, double rise);
// Length of hose in a bend, m; radius to the inside of the bend, so half the outside diameter is added.
double bend_length(double inside_radius, double outside_diameter, double angle);

// Hose to cut, m, for ends that come at most `greatest_span` apart: a hose under pressure may shorten by that
// share (SAE J517 allows 4 %; from memory), and `spare` is kept on top. NaN unless 0 <= shortening < 1.
double hose_to_cut(double greatest_span, double shortening, double spare);
// Slack left, m, at a span; below zero the hose is pulled.
double hose_slack(double length, double shortening, double span);

// Working pressure of a thin tube, Pa: Barlow 2·S·t/(D·safety), D its bore (A. Esposito, ch. 10).
double tube_working_pressure(double wall, double bore, double strength, double safety);

// NPT pitch diameter at the pipe's end, m: D - (0.05·D + 1.1)·p, D and p in inches (ASME B1.20.1).
double npt_pitch_diameter(double outside_diameter, double pitch);

// Thread of a 37 degree flare fitting, SAE J514 (from memory). Sizes 4, 5, 8 and 10 share it with the 45
// degree flare: the nut runs on, and it leaks.
struct FlareThread {
    int dash = 0;
    std::string thread;   // "7/16-20"
    double diameter = 0;  // m
};
const std::vector<FlareThread>& flare_threads();

// What a flare nut turns on.
enum class FlareNut { aluminium_tube, steel_tube, hose };

// Torque limits of flare nuts with lubricated threads, N·m: aircraft practice, US Army TM 55-1520-240-23-1.
// Industrial tables differ by 30 % and more: ask for the fitting maker's figure.
struct FlareTorque {
    int dash = 0;
    FlareNut nut = FlareNut::hose;
    double least = 0;
    double greatest = 0;
};
const std::vector<FlareTorque>& flare_torques();
// nullptr for a size that the table lacks.
const FlareTorque* flare_torque(int dash, FlareNut nut);

}  // namespace hardover::rig

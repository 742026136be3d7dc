#include "app/rig/faults.hpp"

#include <algorithm>

#include "app/rig/named.hpp"

namespace hardover::rig {

namespace {

template <auto member>
double& plain(Faults& faults) {
    return faults.*member;
}

template <auto both, auto one>
double& side(Faults& faults) {
    return faults.*both.*one;
}

std::vector<Parameter> all_parameters() {
    return {
        {"bracket.offset_port", "in", "rod of the port ram too far out, drive straight", -4, 4,
         side<&Faults::bracket_offset, &Sides::port>},
        {"bracket.offset_starboard", "in", "rod of the starboard ram too far out, drive straight", -4, 4,
         side<&Faults::bracket_offset, &Sides::starboard>},
        {"rod_end.offset_port", "in", "rod end of the port ram screwed too far out", -2, 2,
         side<&Faults::rod_end_offset, &Sides::port>},
        {"rod_end.offset_starboard", "in", "rod end of the starboard ram screwed too far out", -2, 2,
         side<&Faults::rod_end_offset, &Sides::starboard>},
        {"bracket.height_port", "in", "anchor of the port ram too high", -4, 4,
         side<&Faults::bracket_height, &Sides::port>},
        {"bracket.height_starboard", "in", "anchor of the starboard ram too high", -4, 4,
         side<&Faults::bracket_height, &Sides::starboard>},
        {"wing_plate.height_port", "in", "pin of the port ram above the trim axis", -4, 4,
         side<&Faults::wing_plate_height, &Sides::port>},
        {"wing_plate.height_starboard", "in", "pin of the starboard ram above the trim axis", -4, 4,
         side<&Faults::wing_plate_height, &Sides::starboard>},
        {"tie_bar.length", "in", "tie bar of two drives too long", -1, 1, plain<&Faults::tie_bar_length>},
        {"tie_bar.play", "in", "slack at the ends of the tie bar of two drives", 0, 1,
         plain<&Faults::tie_bar_play>},
        {"tiller.slip", "deg", "rudder to starboard of where its tiller says", -20, 20,
         plain<&Faults::tiller_slip>},
        {"tiller.play", "in", "slack of the tiller on its stock, at the ram pin", 0, 1,
         plain<&Faults::tiller_play>},
        {"drive.mark_offset", "deg", "mark for straight to starboard of straight", -15, 15,
         plain<&Faults::mark_offset>},
        {"bracket.play", "in", "play of the port ram's bracket", 0, 1, plain<&Faults::bracket_play>},
        {"pin.play", "in", "play at the port ram's pins and rod ends", 0, 1, plain<&Faults::pin_play>},
        {"wing_plate.play", "in", "play of the wing plate on the drive", 0, 1,
         plain<&Faults::wing_plate_play>},
        {"gimbal.play", "in", "play of the drive's swivel, at the ram pins", 0, 1,
         plain<&Faults::gimbal_play>},
        {"bracket.tightness", "count", "torque left on the bracket bolts, share of their figure", 0, 1,
         plain<&Faults::bracket_tightness>},
        {"wing_plate.tightness", "count", "torque left on the wing plate bolts, share of their figure", 0, 1,
         plain<&Faults::wing_plate_tightness>},
        {"foul.before_stop_port", "deg", "swing to port cut short by what ram or hose meets", 0, 20,
         side<&Faults::foul, &Sides::port>},
        {"foul.before_stop_starboard", "deg", "swing to starboard cut short by what ram or hose meets", 0, 20,
         side<&Faults::foul, &Sides::starboard>},
        {"hose.kink_port", "count", "bore left of the pressure hose at full port lock", 0.02, 1,
         side<&Faults::hose_kink, &Sides::port>},
        {"hose.kink_starboard", "count", "bore left of the pressure hose at full starboard lock", 0.02, 1,
         side<&Faults::hose_kink, &Sides::starboard>},
        {"hose.short_port", "in", "hose that lacks at full port lock", 0, 6,
         side<&Faults::hose_short, &Sides::port>},
        {"hose.short_starboard", "in", "hose that lacks at full starboard lock", 0, 6,
         side<&Faults::hose_short, &Sides::starboard>},
        {"hose.bore_port", "count", "bore left of the port line", 0.02, 1,
         side<&Faults::hose_bore, &Sides::port>},
        {"hose.bore_starboard", "count", "bore left of the starboard line", 0.02, 1,
         side<&Faults::hose_bore, &Sides::starboard>},
        {"passage.feed_port", "count", "bore left of what feeds the port line; oil comes back freely", 0.02,
         1, side<&Faults::feed_bore, &Sides::port>},
        {"passage.feed_starboard", "count",
         "bore left of what feeds the starboard line; oil comes back freely", 0.02, 1,
         side<&Faults::feed_bore, &Sides::starboard>},
        {"hose.swelling", "count", "give of the hoses over that of sound ones", 1, 100,
         plain<&Faults::hose_swelling>},
        {"circuit.trapped_air", "mL", "air caught in the lines, half on each side", 0, 200,
         plain<&Faults::trapped_air>},
        {"circuit.air_share", "count", "bubbles drawn in, share of the oil", 0, 0.2,
         plain<&Faults::air_share>},
        {"reservoir.level", "count", "1 full mark, 0 low mark, -1 no oil to be seen", -1, 1,
         plain<&Faults::reservoir_level>},
        {"oil.viscosity_factor", "count", "thickness of the oil over that of the right one", 0.2, 20,
         plain<&Faults::oil_viscosity>},
        {"oil.strangeness", "count", "0 the right family of oil, 1 clearly another", 0, 1,
         plain<&Faults::oil_strangeness>},
        {"strainer.bore_factor", "count", "bore left on the suction side", 0.02, 1,
         plain<&Faults::strainer_bore>},
        {"ram.leak_port", "mL/min", "past the port ram's piston at 1000 psi", 0, 5000,
         side<&Faults::ram_leak, &Sides::port>},
        {"ram.leak_starboard", "mL/min", "past the starboard ram's piston at 1000 psi", 0, 5000,
         side<&Faults::ram_leak, &Sides::starboard>},
        {"helm.wear", "mL/min", "slip of a hand helm's pump at 1000 psi, more than a sound one's", 0, 20000,
         plain<&Faults::helm_wear>},
        {"pump.wear", "mL/min",
         "slip of the driven pump or of an assist at 1000 psi, more than a sound one's", 0, 20000,
         plain<&Faults::pump_wear>},
        {"helm.leak_port", "mL/min", "from the port line back to the reservoir in the helm at 1000 psi", 0,
         5000, side<&Faults::helm_leak, &Sides::port>},
        {"helm.leak_starboard", "mL/min",
         "from the starboard line back to the reservoir in the helm at 1000 psi", 0, 5000,
         side<&Faults::helm_leak, &Sides::starboard>},
        {"second_helm.leak_port", "mL/min",
         "from the port line back through the second of two manual helms at 1000 psi", 0, 5000,
         side<&Faults::second_helm_leak, &Sides::port>},
        {"second_helm.leak_starboard", "mL/min",
         "from the starboard line back through the second of two manual helms at 1000 psi", 0, 5000,
         side<&Faults::second_helm_leak, &Sides::starboard>},
        {"autopilot.bypass", "mL/min", "from line to line through the teed-in autopilot's pump at 1000 psi",
         0, 5000, plain<&Faults::autopilot_bypass>},
        {"assist.strength", "count", "help of a manual helm's assist, share of a sound one's", 0, 1,
         plain<&Faults::assist_strength>},
        {"belt.grip", "count", "torque the pump's belt still carries, share of a sound one's", 0.02, 1,
         plain<&Faults::belt_grip>},
        {"relief.factor", "count", "relief pressure over the maker's", 0.02, 1.5,
         plain<&Faults::relief_factor>},
        {"valve.travel_port", "count", "share of the valve's travel that the cable reaches to port", 0.02, 1,
         side<&Faults::valve_travel, &Sides::port>},
        {"valve.travel_starboard", "count", "share of the valve's travel that the cable reaches to starboard",
         0.02, 1, side<&Faults::valve_travel, &Sides::starboard>},
        {"valve.stuck", "count", "where the let-go valve stays, -1 full to port, 1 full to starboard", -1, 1,
         plain<&Faults::valve_stuck>},
        {"cable.friction", "lbf", "drag of the cable, more than a sound one's", 0, 200,
         plain<&Faults::cable_friction>},
        {"cable.play", "in", "slack at the cable's ends", 0, 2, plain<&Faults::cable_play>},
        {"helm.play", "in", "slack of wheel and helm on their mounting, at the rim", 0, 12,
         plain<&Faults::helm_play>},
        {"drive.friction", "lbf*ft", "drag of the drive's swivel, more than a sound one's", 0, 600,
         plain<&Faults::drive_friction>},
        {"drive.bind_torque", "lbf*ft", "more drag of the swivel within the binding range", 0, 600,
         plain<&Faults::bind_torque>},
        {"ram.bind_force", "lbf", "more drag in the port ram within the binding range", 0, 1000,
         plain<&Faults::ram_bind_force>},
        {"drive.bind_from", "deg", "where the binding range begins", -40, 40, plain<&Faults::bind_from>},
        {"drive.bind_to", "deg", "where the binding range ends", -40, 40, plain<&Faults::bind_to>},
        {"rod.bend", "in", "out of straight of the port ram's rod", 0, 1, plain<&Faults::rod_bend>},
        {"trim_tab.angle", "deg", "how far the trim tab is off, positive pulls to starboard", -40, 40,
         plain<&Faults::tab_angle>},
        {"load.list", "deg", "list of the boat, positive pulls to starboard", -20, 20,
         plain<&Faults::list_angle>},
        {"rams.swapped", "count", "1: the two hoses of the second ram exchanged", 0, 1,
         plain<&Faults::rams_swapped>},
        {"weep.seat", "drop/min", "from under a hose nut while the wheel is worked", 0, 600,
         plain<&Faults::weep_seat>},
        {"weep.thread", "drop/min", "from a thread while the wheel is worked", 0, 600,
         plain<&Faults::weep_thread>},
        {"weep.crimp", "drop/min", "from a hose crimp while the wheel is worked", 0, 600,
         plain<&Faults::weep_crimp>},
        {"weep.block_joint", "drop/min", "between valve block and ram while the wheel is worked", 0, 600,
         plain<&Faults::weep_block_joint>},
        {"weep.cap", "drop/min", "from a ram's end cap while the wheel is worked", 0, 600,
         plain<&Faults::weep_cap>},
        {"weep.rod", "drop/min", "from a ram's gland while the wheel is worked", 0, 600,
         plain<&Faults::weep_rod>},
        {"weep.bulkhead", "drop/min", "from the transom fitting while the wheel is worked", 0, 600,
         plain<&Faults::weep_bulkhead>},
    };
}

}  // namespace

const std::vector<Parameter>& parameters() {
    static const std::vector<Parameter> all = all_parameters();
    return all;
}

Result<void> set_parameter(Faults& faults, std::string_view name, const Quantity& value) {
    const Result<Parameter> parameter = find_named(parameters(), name, "parameter");
    if (!parameter) return parameter.error();
    const Parameter& found = parameter.value();
    const Result<Unit> unit = find_unit(found.unit);
    if (!unit) return unit.error();
    if (!(value.dimension == unit.value().dimension))
        return Error{Error::Kind::bad_input, "parameter '" + found.name + "' is not in " + found.unit, "",
                     "give it in " + found.unit};
    const double within =
        std::clamp(value.value, found.least * unit.value().factor, found.most * unit.value().factor);
    found.of(faults) = within;
    return {};
}

}  // namespace hardover::rig

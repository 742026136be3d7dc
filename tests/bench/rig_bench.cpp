// How long the numeric boat takes: a whole survey of sound boats and of boats with each kind of fault, and
// the circuit solver by itself. CPU time of one thread, so that other programs on the machine do not count.
#include <iostream>

#include "app/rig/circuit_steering.hpp"
#include "app/rig/survey.hpp"
#include "bench/common.hpp"

using namespace hardover;
using namespace hardover_bench;

namespace {

struct FaultClass {
    const char* name;
    std::vector<std::pair<const char*, const char*>> parameters;
};

const std::vector<FaultClass>& fault_classes() {
    static const std::vector<FaultClass> all{
        {"sound", {}},
        {"bracket off", {{"bracket.offset_port", "3/4 in"}}},
        {"tie bar too long", {{"tie_bar.length", "1/4 in"}}},
        {"trapped air", {{"circuit.trapped_air", "20 mL"}}},
        {"bubbles drawn in", {{"circuit.air_share", "0.05"}}},
        {"piston leaks", {{"ram.leak_port", "300 mL/min"}}},
        {"helm leaks", {{"helm.leak_port", "300 mL/min"}}},
        {"helm worn", {{"helm.wear", "4000 mL/min"}}},
        {"pump worn", {{"pump.wear", "4000 mL/min"}}},
        {"relief low", {{"relief.factor", "0.4"}}},
        {"belt slips", {{"belt.grip", "0.3"}}},
        {"hose kinked at the lock", {{"hose.kink_port", "0.2"}}},
        {"line narrow", {{"hose.bore_port", "0.2"}}},
        {"feed blocked", {{"passage.feed_port", "0.2"}}},
        {"strainer blocked", {{"strainer.bore_factor", "0.2"}}},
        {"reservoir dry", {{"reservoir.level", "-1"}}},
        {"oil too thick", {{"oil.viscosity_factor", "6"}}},
        {"drive drags", {{"drive.friction", "200 lbf*ft"}}},
        {"drive binds",
         {{"drive.bind_torque", "150 lbf*ft"}, {"drive.bind_from", "10 deg"}, {"drive.bind_to", "30 deg"}}},
        {"trim tab off", {{"trim_tab.angle", "20 deg"}}},
        {"valve sticks", {{"valve.stuck", "1"}}},
        {"two rams swapped", {{"rams.swapped", "1"}}},
    };
    return all;
}

std::vector<std::string> row_of(const std::string& name, const std::vector<double>& milliseconds,
                                const std::string& unsettled) {
    return {name,
            std::to_string(milliseconds.size()),
            fixed(percentile(milliseconds, 0.5), 2),
            fixed(percentile(milliseconds, 0.99), 2),
            fixed(percentile(milliseconds, 1), 2),
            unsettled};
}

// Surveys of sampled boats with one class of fault; false when a parameter is not known.
bool time_surveys(const FaultClass& fault_class, int boats, std::vector<double>& times, int& unsettled) {
    rig::Faults faults;
    for (const auto& [name, value] : fault_class.parameters) {
        const Result<Quantity> quantity = read_quantity(value);
        if (!quantity || !rig::set_parameter(faults, name, quantity.value())) return false;
    }
    for (int seed = 1; seed <= boats; ++seed) {
        const rig::Boat boat = rig::sample_boat(static_cast<std::uint64_t>(seed));
        const double before = thread_milliseconds();
        const Result<rig::Readings> readings = rig::survey(boat, faults);
        times.push_back(thread_milliseconds() - before);
        unsettled += !readings;
    }
    return true;
}

// One steering circuit of each helm, solved from nothing, with its status.
std::vector<std::string> solver_row(const char* name, rig::circuit::SteeringHydraulics::Helm helm,
                                    bool swapped, int solves) {
    rig::circuit::SteeringHydraulics h;
    h.helm = helm;
    h.oil = {870, 40e-6};
    h.rams = 2;
    h.bore = 0.035;
    h.rod = 0.016;
    h.stroke = 0.2;
    h.ram_friction = 30;
    h.hose_length = 5;
    h.hose_bore = 0.0065;
    h.tee_length = 0.5;
    h.supply_length = 3;
    h.supply_bore = 0.0095;
    const bool manual = helm == rig::circuit::SteeringHydraulics::Helm::manual;
    h.displacement = manual ? 60e-6 : 8e-6;
    h.torque_limit = 40;
    h.relief_pressure = 70e5;
    h.relief_slope = 1e9;
    h.valve_loss = 2e13;
    h.valve_underlap = 0.4;
    h.faults.second_ram_swapped = swapped;
    std::vector<double> times;
    int steps = 0;
    for (int i = 0; i < solves; ++i) {
        h.load_friction = 300 + 2.0 * i;
        const double before = thread_milliseconds();
        const auto motion =
            steer(h, {.turns_per_second = manual ? 0.5 : 10, .valve_position = manual ? 0.0 : 1.0});
        times.push_back(thread_milliseconds() - before);
        if (motion) steps += motion.value().solution.steps;
    }
    return row_of(name, times, fixed(static_cast<double>(steps) / solves, 1));
}

}  // namespace

// rig_bench [BOATS]
int main(int argc, char** argv) {
    const int boats = argument(argc, argv, 1, 200);
    std::cout << "Survey of a boat, every gauge, " << boats << " sampled boats a row, ms of one core\n\n";
    std::vector<std::vector<std::string>> rows{
        {"fault", "surveys", "median", "99 %", "longest", "unsettled"}};
    std::vector<double> all;
    int all_unsettled = 0;
    for (const FaultClass& fault_class : fault_classes()) {
        std::vector<double> times;
        int unsettled = 0;
        if (!time_surveys(fault_class, boats, times, unsettled)) {
            std::cerr << "rig_bench: a parameter of '" << fault_class.name << "' is not known\n";
            return 1;
        }
        rows.push_back(row_of(fault_class.name, times, std::to_string(unsettled)));
        all.insert(all.end(), times.begin(), times.end());
        all_unsettled += unsettled;
    }
    rows.push_back(row_of("all", all, std::to_string(all_unsettled)));
    print_table(rows);
    std::cout
        << "Aim: under 5 ms.\n\nOne steering circuit solved from nothing, status and all, ms of one core\n\n";
    using Helm = rig::circuit::SteeringHydraulics::Helm;
    rows = {{"circuit", "solves", "median", "99 %", "longest", "Newton steps"}};
    rows.push_back(solver_row("manual helm, two rams", Helm::manual, false, boats));
    rows.push_back(solver_row("power assist, two rams", Helm::power_assist, false, boats));
    rows.push_back(solver_row("manual helm, rams swapped", Helm::manual, true, boats));
    rows.push_back(solver_row("power assist, rams swapped", Helm::power_assist, true, boats));
    print_table(rows);
}

#include "app/rig/circuit_network.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hardover::rig::circuit {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double inch = 0.0254;         // m
constexpr double least_opening = 1e-6;  // of a control valve's edge; less is shut

class Builder {
  public:
    Builder(const Circuit& circuit, const Scales& scales)
        : oil_(circuit.oil), air_(nodes_full_of_air(circuit)) {
        network_.scales = scales;
        network_.vapour = vapour_pressure / scales.pressure;
        // Loads first, so that a ram may stand before the load it moves.
        for (const Element& element : circuit.elements)
            if (const auto* load = std::get_if<Load>(&element)) add_load(*load);
        for (const Element& element : circuit.elements)
            std::visit([&](const auto& kind) { add(kind); }, element);
        for (Body& body : network_.bodies) finish(body);
    }
    Network take() { return std::move(network_); }

  private:
    int node(const std::string& name) {
        if (name.empty()) return Branch::outside;
        const auto found = std::find(network_.nodes.begin(), network_.nodes.end(), name);
        if (found == network_.nodes.end()) {
            network_.nodes.push_back(name);
            return static_cast<int>(network_.nodes.size()) - 1;
        }
        return static_cast<int>(found - network_.nodes.begin());
    }
    double resistance(double value) const { return value * network_.scales.flow / network_.scales.pressure; }
    double quadratic(double value) const { return resistance(value) * network_.scales.flow; }
    double pressure(double value) const { return value / network_.scales.pressure; }

    // No way for oil: no unknown to solve for.
    void shut(const std::string& name, const std::string& from, const std::string& to) {
        node(from);
        node(to);
        network_.shut.push_back(name);
    }
    Branch& branch(const std::string& name, Branch::Kind kind, const std::string& from,
                   const std::string& to) {
        Branch added;
        added.name = name;
        added.kind = kind;
        added.from = node(from);
        added.to = node(to);
        network_.branches.push_back(added);
        return network_.branches.back();
    }
    void leak(const std::string& name, const std::string& from, const std::string& to, double conductance) {
        if (conductance > 0) branch(name, Branch::Kind::path, from, to).linear = resistance(1 / conductance);
    }

    void add(const Reservoir& r) {
        Branch& b = branch(r.name, Branch::Kind::held, r.node, "");
        b.pressure = pressure(r.pressure);
    }
    void add(const Pump& p) {
        leak(p.name, p.inlet, p.outlet, p.leak);
        if (p.displacement <= 0 || air_.contains(suction_node(p))) return shut(p.name, p.inlet, p.outlet);
        Branch& b = branch(p.name, Branch::Kind::pump, p.inlet, p.outlet);
        b.command = p.displacement * p.speed / network_.scales.flow;
        b.limit = pressure(stall_pressure(p));
        b.suction_limit = pressure(p.suction_limit);
        b.no_filling = pressure(pump_starves_at);
    }
    void add(const ReliefValve& v) {
        Branch& b = branch(v.name, Branch::Kind::one_way, v.from, v.to);
        b.cracking = pressure(v.cracking_pressure);
        b.linear = resistance(v.slope);
    }
    void add(const CheckValve& v) {
        Branch& b = branch(v.name, Branch::Kind::one_way, v.from, v.to);
        b.cracking = pressure(v.cracking_pressure);
        b.linear = resistance(v.resistance);
        leak(v.name, v.from, v.to, v.leak);
    }
    void add(const PilotCheckValve& v) {
        Branch& b = branch(v.name, Branch::Kind::pilot, v.from, v.to);
        b.pilot = node(v.pilot);
        b.cracking = pressure(v.cracking_pressure);
        b.pilot_ratio = v.pilot_ratio;
        b.opening_range = pressure(v.opening_range);
        b.linear = resistance(v.resistance);
        leak(v.name, v.from, v.to, v.leak);
    }
    void add(const LockValve& v) {
        add(PilotCheckValve{v.name + " a", v.helm_a, v.ram_a, v.helm_b, v.cracking_pressure, v.pilot_ratio,
                            v.opening_range, v.resistance, v.leak_a});
        add(PilotCheckValve{v.name + " b", v.helm_b, v.ram_b, v.helm_a, v.cracking_pressure, v.pilot_ratio,
                            v.opening_range, v.resistance, v.leak_b});
    }
    void add(const ControlValve& v) {
        const auto edge = [&](const char* words, const std::string& from, const std::string& to,
                              double sign) {
            const double opening = std::clamp(v.underlap + sign * v.position, 0.0, 1.0);
            leak(v.name + words, from, to, v.leak);
            if (opening <= least_opening) return shut(v.name + words, from, to);
            Branch& b = branch(v.name + words, Branch::Kind::path, from, to);
            b.quadratic = quadratic(v.loss_coefficient / (opening * opening));
        };
        edge(" supply-a", v.supply, v.port_a, 1);
        edge(" supply-b", v.supply, v.port_b, -1);
        edge(" a-tank", v.port_a, v.tank, -1);
        edge(" b-tank", v.port_b, v.tank, 1);
    }
    void add(const Hose& h) {
        if (h.bore <= 0) return shut(h.name, h.from, h.to);
        Branch& b = branch(h.name, Branch::Kind::path, h.from, h.to);
        const double viscosity = oil_.density * oil_.kinematic_viscosity;
        b.linear = resistance(laminar_resistance(viscosity, h.length, h.bore));
        b.reynolds_per_flow = network_.scales.flow * 4 / (pi * h.bore * oil_.kinematic_viscosity);
        b.roughness = h.roughness / h.bore;
    }
    void add(const PipeFitting& f) {
        if (f.bore <= 0) return shut(f.name, f.from, f.to);
        Branch& b = branch(f.name, Branch::Kind::path, f.from, f.to);
        // K·density·v^2/2 with K = k1/Re + k_infinite·(1 + 1 in/D): the first part is linear in the flow.
        const double area = pi / 4 * f.bore * f.bore;
        b.linear = resistance(f.k1 * oil_.kinematic_viscosity * oil_.density / (2 * f.bore * area));
        b.quadratic = quadratic(f.k_infinite * (1 + inch / f.bore) * oil_.density / (2 * area * area));
    }
    void add(const Restriction& r) {
        Branch& b = branch(r.name, Branch::Kind::path, r.from, r.to);
        b.linear = resistance(r.linear);
        b.quadratic = quadratic(r.quadratic);
    }
    void add(const Leak& l) {
        if (l.conductance > 0)
            leak(l.name, l.from, l.to, l.conductance);
        else
            shut(l.name, l.from, l.to);
    }
    void add(const TrappedAir& air) { node(air.node); }
    void add(const Load&) {}

    void add_load(const Load& l) {
        Body body;
        body.name = l.name;
        body.area = 0;
        body.force = l.force;
        body.friction = l.friction;
        body.damping = l.damping;
        body.at_least = l.position <= l.least;
        body.at_most = l.position >= l.most;
        network_.bodies.push_back(body);
    }
    void add(const Ram& r) {
        Body& body = *std::find_if(network_.bodies.begin(), network_.bodies.end(),
                                   [&](const Body& b) { return b.name == r.load; });
        body.pistons.push_back({node(r.side_a), node(r.side_b), r.lever * r.area_a, r.lever * r.area_b});
        body.area += std::abs(r.lever) * (r.area_a + r.area_b);
        body.friction += std::abs(r.lever) * r.friction;
        const bool out = r.position >= r.most, in = r.position <= r.least;
        body.at_most = body.at_most || (r.lever > 0 ? out : in);
        body.at_least = body.at_least || (r.lever > 0 ? in : out);
    }
    void finish(Body& body) const {
        const double force = network_.scales.pressure * body.area;
        for (Piston& piston : body.pistons) {
            piston.pull_a /= body.area;
            piston.pull_b /= body.area;
        }
        body.force /= force;
        body.friction /= force;
        body.damping *= network_.scales.flow / body.area / force;
    }

    FlowingOil oil_;
    std::set<std::string> air_;
    Network network_;
};

// Pressure that a load's own force and friction ask of its rams.
double load_pressure(const Circuit& circuit, const Load& load) {
    double area = 0, force = std::abs(load.force) + load.friction;
    for (const Element& element : circuit.elements)
        if (const auto* ram = std::get_if<Ram>(&element); ram && ram->load == load.name) {
            area += std::abs(ram->lever) * (ram->area_a + ram->area_b) / 2;
            force += std::abs(ram->lever) * ram->friction;
        }
    return area > 0 ? force / area : 0;
}

// What an element loses at a flow, Pa, where it is plainly known.
double loss(const Element& element, const FlowingOil& oil, double flow) {
    if (const auto* h = std::get_if<Hose>(&element))
        return h->bore > 0 ? line_loss({h->bore, h->length, h->roughness}, oil, flow) : 0;
    if (const auto* r = std::get_if<Restriction>(&element))
        return r->linear * flow + r->quadratic * flow * flow;
    if (const auto* v = std::get_if<CheckValve>(&element)) return v->cracking_pressure + v->resistance * flow;
    if (const auto* v = std::get_if<LockValve>(&element)) return v->cracking_pressure + v->resistance * flow;
    if (const auto* v = std::get_if<ControlValve>(&element)) return v->loss_coefficient * flow * flow;
    return 0;
}

}  // namespace

double stall_pressure(const Pump& pump) {
    return 2 * pi * pump.torque_limit / pump.displacement;
}

const std::string& suction_node(const Pump& pump) {
    return pump.speed < 0 ? pump.outlet : pump.inlet;
}

std::set<std::string> nodes_full_of_air(const Circuit& circuit) {
    std::set<std::string> air;
    for (const Element& element : circuit.elements)
        if (const auto* r = std::get_if<Reservoir>(&element); r && r->empty) air.insert(r->node);
    const auto spread = [&](const std::string& from, const std::string& to) {
        if (air.contains(from)) return air.insert(to).second;
        return air.contains(to) && air.insert(from).second;
    };
    for (bool more = !air.empty(); more;) {
        more = false;
        for (const Element& element : circuit.elements) {
            if (const auto* h = std::get_if<Hose>(&element))
                more = (h->bore > 0 && spread(h->from, h->to)) || more;
            if (const auto* f = std::get_if<PipeFitting>(&element)) more = spread(f->from, f->to) || more;
            if (const auto* r = std::get_if<Restriction>(&element)) more = spread(r->from, r->to) || more;
        }
    }
    return air;
}

Scales natural_scales(const Circuit& circuit) {
    double flow = 0, most = 0, pressure = 0;
    for (const Element& element : circuit.elements) {
        if (const auto* relief = std::get_if<ReliefValve>(&element))
            most = std::max(most, relief->cracking_pressure);
        if (const auto* pump = std::get_if<Pump>(&element); pump && pump->displacement > 0) {
            most = std::max(most, stall_pressure(*pump));
            flow = std::max(flow, pump->displacement * std::abs(pump->speed));
        }
    }
    Scales scales;
    if (flow > 0) scales.flow = flow;
    for (const Element& element : circuit.elements) {
        pressure = std::max(pressure, loss(element, circuit.oil, flow));
        if (const auto* load = std::get_if<Load>(&element))
            pressure = std::max(pressure, load_pressure(circuit, *load));
    }
    // No higher than pumps and reliefs allow, but loads and tanks press as they press.
    pressure = std::min(pressure, most);
    for (const Element& element : circuit.elements) {
        if (const auto* r = std::get_if<Reservoir>(&element))
            pressure = std::max(pressure, std::abs(r->pressure));
        if (const auto* load = std::get_if<Load>(&element))
            pressure = std::max(pressure, load_pressure(circuit, *load));
    }
    scales.pressure = std::max(pressure, 1e5);
    return scales;
}

Network network(const Circuit& circuit, const Scales& scales) {
    return Builder(circuit, scales).take();
}

}  // namespace hardover::rig::circuit

// Finds what is wrong with a circuit before it is solved, and names it.
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <sstream>

#include "app/rig/circuit_network.hpp"

namespace hardover::rig::circuit {

namespace {

Error fault(const std::string& where, const std::string& what, const std::string& cure) {
    return {Error::Kind::bad_input, what, where, cure};
}

std::string in_words(double value) {
    std::ostringstream text;
    text << value;
    return text.str();
}

enum class Rule { any, not_negative, positive, share, signed_share };

struct Size {
    const char* name;
    double value;
    Rule rule;
};

struct End {
    const char* name;
    std::string node;
    bool may_be_outside = false;
};

// What check() has to know of any element.
struct Facts {
    std::string kind, name;
    std::vector<End> ends;
    std::vector<Size> sizes;
    std::vector<std::string> parts = {};  // what is reported of it, after its name
    bool joins = true;                    // oil can pass between its ends
    double least = -1, position = 0, most = 1;
};

constexpr auto any = Rule::any;
constexpr auto not_negative = Rule::not_negative;
constexpr auto positive = Rule::positive;

Facts facts(const Reservoir& r) {
    return {"reservoir", r.name, {{"node", r.node}}, {{"pressure", r.pressure, any}}};
}
Facts facts(const Pump& p) {
    return {"pump",
            p.name,
            {{"inlet", p.inlet}, {"outlet", p.outlet}},
            {{"displacement", p.displacement, not_negative},
             {"speed", p.speed, any},
             {"torque limit", p.torque_limit, not_negative},
             {"leak", p.leak, not_negative},
             {"suction limit less the pressure of no filling", p.suction_limit - pump_starves_at, positive}}};
}
Facts facts(const ReliefValve& v) {
    return {"relief valve",
            v.name,
            {{"from", v.from}, {"to", v.to}},
            {{"cracking pressure", v.cracking_pressure, positive}, {"slope", v.slope, not_negative}}};
}
Facts facts(const CheckValve& v) {
    return {"check valve",
            v.name,
            {{"from", v.from}, {"to", v.to}},
            {{"cracking pressure", v.cracking_pressure, not_negative},
             {"resistance", v.resistance, not_negative},
             {"leak", v.leak, not_negative}}};
}
Facts facts(const PilotCheckValve& v) {
    return {"pilot check valve",
            v.name,
            {{"from", v.from}, {"to", v.to}, {"pilot", v.pilot}},
            {{"cracking pressure", v.cracking_pressure, not_negative},
             {"pilot ratio", v.pilot_ratio, positive},
             {"opening range", v.opening_range, positive},
             {"resistance", v.resistance, positive},
             {"leak", v.leak, not_negative}}};
}
Facts facts(const LockValve& v) {
    return {"lock valve",
            v.name,
            {{"helm a", v.helm_a}, {"ram a", v.ram_a}, {"helm b", v.helm_b}, {"ram b", v.ram_b}},
            {{"cracking pressure", v.cracking_pressure, not_negative},
             {"pilot ratio", v.pilot_ratio, positive},
             {"opening range", v.opening_range, positive},
             {"resistance", v.resistance, positive},
             {"leak a", v.leak_a, not_negative},
             {"leak b", v.leak_b, not_negative}},
            {" a", " b"}};
}
Facts facts(const ControlValve& v) {
    return {"control valve",
            v.name,
            {{"supply", v.supply}, {"tank", v.tank}, {"port a", v.port_a}, {"port b", v.port_b}},
            {{"position", v.position, Rule::signed_share},
             {"underlap", v.underlap, Rule::share},
             {"loss coefficient", v.loss_coefficient, positive},
             {"leak", v.leak, not_negative}},
            {" supply-a", " supply-b", " a-tank", " b-tank"}};
}
Facts facts(const Hose& h) {
    return {"hose",
            h.name,
            {{"from", h.from}, {"to", h.to}},
            {{"length", h.length, positive},
             {"bore", h.bore, not_negative},
             {"roughness", h.roughness, not_negative}}};
}
Facts facts(const PipeFitting& f) {
    return {"fitting",
            f.name,
            {{"from", f.from}, {"to", f.to}},
            {{"bore", f.bore, not_negative},
             {"k1", f.k1, not_negative},
             {"k infinite", f.k_infinite, not_negative}}};
}
Facts facts(const Restriction& r) {
    return {"restriction",
            r.name,
            {{"from", r.from}, {"to", r.to}},
            {{"linear loss", r.linear, not_negative}, {"quadratic loss", r.quadratic, not_negative}}};
}
Facts facts(const Leak& l) {
    return {"leak",
            l.name,
            {{"from", l.from}, {"to", l.to, true}},
            {{"conductance", l.conductance, not_negative}}};
}
Facts facts(const TrappedAir& air) {
    Facts known{"trapped air", air.name, {{"node", air.node}}, {{"volume", air.volume, not_negative}}};
    known.joins = false;
    return known;
}
Facts facts(const Load& l) {
    Facts known{"load",
                l.name,
                {},
                {{"force", l.force, any},
                 {"friction", l.friction, not_negative},
                 {"damping", l.damping, not_negative},
                 {"position", l.position, any}}};
    known.joins = false;
    known.least = l.least;
    known.most = l.most;
    known.position = l.position;
    return known;
}
Facts facts(const Ram& r) {
    Facts known{"ram",
                r.name,
                {{"side a", r.side_a}, {"side b", r.side_b}},
                {{"area a", r.area_a, positive},
                 {"area b", r.area_b, positive},
                 {"lever", r.lever, any},
                 {"friction", r.friction, not_negative},
                 {"position", r.position, any}}};
    known.joins = false;
    known.least = r.least;
    known.most = r.most;
    known.position = r.position;
    return known;
}

std::optional<Error> fault_in_size(const std::string& where, const Size& size) {
    const bool fits = std::isfinite(size.value) && (size.rule != Rule::positive || size.value > 0) &&
                      (size.rule != Rule::not_negative || size.value >= 0) &&
                      (size.rule != Rule::share || (size.value >= 0 && size.value <= 1)) &&
                      (size.rule != Rule::signed_share || std::abs(size.value) <= 1);
    if (fits) return std::nullopt;
    const char* right = size.rule == Rule::positive       ? "a number above 0"
                        : size.rule == Rule::not_negative ? "0 or more"
                        : size.rule == Rule::share        ? "0 to 1"
                        : size.rule == Rule::signed_share ? "-1 to 1"
                                                          : "a finite number";
    return fault(where, std::string(size.name) + " is " + in_words(size.value), right);
}

std::optional<Error> fault_in_element(const Facts& element) {
    const std::string where = element.kind + " '" + element.name + "'";
    if (element.name.empty())
        return fault(element.kind, "an element without a name", "give each element a name of its own");
    std::set<std::string> seen;
    for (const End& end : element.ends) {
        if (end.node.empty() && !end.may_be_outside)
            return fault(where, std::string(end.name) + " is joined to no node", "name a node");
        if (!seen.insert(end.node).second)
            return fault(where, "two of its ends are on node '" + end.node + "'", "different nodes");
    }
    for (const Size& size : element.sizes)
        if (auto error = fault_in_size(where, size)) return error;
    if (!(element.least <= element.position && element.position <= element.most))
        return fault(where, "its position is beyond its stops", "least <= position <= most");
    return std::nullopt;
}

// Rams and loads refer to each other by name.
std::optional<Error> fault_in_loads(const Circuit& circuit) {
    std::map<std::string, double> reach;
    for (const Element& element : circuit.elements)
        if (const auto* load = std::get_if<Load>(&element)) reach[load->name] = 0;
    for (const Element& element : circuit.elements) {
        const auto* ram = std::get_if<Ram>(&element);
        if (!ram) continue;
        const auto load = reach.find(ram->load);
        if (load == reach.end())
            return fault("ram '" + ram->name + "'", "moves no known load: '" + ram->load + "'",
                         "the name of a load of this circuit");
        load->second += std::abs(ram->lever);
    }
    for (const auto& [name, lever] : reach)
        if (lever == 0)
            return fault("load '" + name + "'", "no ram moves it", "join a ram with a lever other than 0");
    return std::nullopt;
}

// Each node must be touched at least twice, and oil must be able to get to it from a reservoir.
std::optional<Error> fault_in_nodes(const std::vector<Facts>& elements) {
    std::map<std::string, std::vector<const Facts*>> at;
    for (const Facts& element : elements)
        for (const End& end : element.ends)
            if (!end.node.empty()) at[end.node].push_back(&element);
    std::set<std::string> reached;
    std::vector<std::string> next;
    for (const Facts& element : elements)
        if (element.kind == "reservoir") {
            const std::string& node = element.ends[0].node;
            if (!reached.insert(node).second)
                return fault("node '" + node + "'", "two reservoirs on one node", "one reservoir a node");
            next.push_back(node);
        }
    if (next.empty())
        return fault("circuit", "no reservoir", "at least one reservoir, so that pressures have a zero");
    while (!next.empty()) {
        const std::string node = next.back();
        next.pop_back();
        for (const Facts* element : at[node]) {
            if (!element->joins) continue;
            for (const End& end : element->ends)
                if (!end.node.empty() && reached.insert(end.node).second) next.push_back(end.node);
        }
    }
    for (const auto& [node, touching] : at) {
        const std::string first = touching.front()->kind + " '" + touching.front()->name + "'";
        if (touching.size() == 1 && touching.front()->kind != "reservoir")
            return fault("node '" + node + "'", "ends nowhere: only " + first + " is joined to it",
                         "join a second element, or see whether the node's name is spelt alike everywhere");
        if (!reached.contains(node))
            return fault("node '" + node + "'",
                         "floating: no way for oil from a reservoir to it (at " + first + ")",
                         "join its part of the circuit to one that has a reservoir");
    }
    return std::nullopt;
}

}  // namespace

Result<void> check(const Circuit& circuit) {
    if (!(circuit.oil.density > 0 && std::isfinite(circuit.oil.density)))
        return fault("oil", "density is " + in_words(circuit.oil.density), "above 0, in kg/m^3");
    if (!(circuit.oil.kinematic_viscosity > 0 && std::isfinite(circuit.oil.kinematic_viscosity)))
        return fault("oil", "kinematic viscosity is " + in_words(circuit.oil.kinematic_viscosity),
                     "above 0, in m^2/s");
    std::vector<Facts> elements;
    std::set<std::string> names;
    for (const Element& element : circuit.elements) {
        elements.push_back(std::visit([](const auto& kind) { return facts(kind); }, element));
        const Facts& added = elements.back();
        if (auto error = fault_in_element(added)) return *error;
        bool is_new = names.insert(added.name).second;
        for (const std::string& part : added.parts) is_new = names.insert(added.name + part).second && is_new;
        if (!is_new)
            return fault(added.kind + " '" + added.name + "'", "a second element of that name",
                         "give each element a name of its own");
    }
    if (auto error = fault_in_loads(circuit)) return *error;
    if (auto error = fault_in_nodes(elements)) return *error;
    return {};
}

}  // namespace hardover::rig::circuit

// The gauges of the sound boat and of the one with faults, side by side and in words.
#include <algorithm>
#include <array>
#include <cmath>

#include "app/jobs/boat_parts.hpp"
#include "app/jobs/rig_boat.hpp"
#include "app/jobs/wording.hpp"

namespace hardover::jobs_detail {

namespace {

// A gauge of the survey that is always shown, by the name people know it by.
struct Shown {
    const char* gauge;
    const char* name;
};
constexpr std::array always{Shown{"turns_port", "Turns, lock to lock, to port"},
                            Shown{"turns_starboard", "Turns, lock to lock, to starboard"},
                            Shown{"rim_force_port", "Pull at the rim to port"},
                            Shown{"rim_force_starboard", "Pull at the rim to starboard"},
                            Shown{"rim_sponge", "Sponge at the rim"},
                            Shown{"free_play", "Free play at the rim"},
                            Shown{"wheel_creep", "Wheel creep, held on the stop"},
                            Shown{"drift_rate", "Drift of the rams"},
                            Shown{"pressure_at_stop", "Pressure at the stop"},
                            Shown{"lock_angle_port", "Lock angle to port"},
                            Shown{"lock_angle_starboard", "Lock angle to starboard"},
                            Shown{"ram_reserve", "Ram reserve at the stop"},
                            Shown{"trim_steer", "Steers itself over the trim"}};

const char* name_shown(const std::string& gauge) {
    for (const Shown& shown : always)
        if (shown.gauge == gauge) return shown.name;
    return nullptr;
}

// What is read off one boat, in a unit; missing: the boat has no such thing, or it cannot be done.
struct Read {
    std::optional<double> sound, faulty;
    std::string unit;
    double spread = 0;             // in that unit; less is no difference
    const char* missing = "none";  // what stands where nothing can be read
};

class Row {
  public:
    Row(bool with_fault, UnitSystem units) : with_fault_(with_fault), units_(units) {}

    BoatGauge operator()(std::string id, std::string name, const Read& read) const {
        const Unit unit = find_unit(read.unit).value();
        const auto text = [&](const std::optional<double>& value) {
            return value ? shown(*value, unit) : std::string(read.missing);
        };
        BoatGauge gauge{std::move(id), std::move(name), text(read.sound), "", "", false};
        if (!with_fault_) return gauge;
        gauge.faulty = text(read.faulty);
        if (read.sound.has_value() != read.faulty.has_value()) {
            gauge.differs = true;
            gauge.difference = read.faulty ? "not so in the sound boat" : "";
            return gauge;
        }
        if (!read.sound) return gauge;
        const double by = *read.faulty - *read.sound;
        const double least = std::max(read.spread * unit.factor, 0.02 * std::abs(*read.sound));
        gauge.differs = std::abs(by) > least && gauge.sound != gauge.faulty;
        gauge.difference =
            gauge.differs ? shown(std::abs(by), unit) + (by > 0 ? " more" : " less") : "the same";
        return gauge;
    }

  private:
    // Inches and a figure behind the point are enough for a gauge; so near to nothing is nothing.
    std::string shown(double value, const Unit& unit) const {
        const double number = value / unit.factor;
        const double rounded = std::abs(number) < 0.005 ? 0 : value;
        return show(Quantity{rounded, unit.dimension, 0}, unit, units_, std::abs(number) < 10 ? 2 : 3);
    }
    bool with_fault_;
    UnitSystem units_;
};

std::optional<double> reading(const rig::Readings& readings, const std::string& gauge) {
    const auto found = readings.find(gauge);
    if (found == readings.end() || !std::isfinite(found->second)) return std::nullopt;
    return found->second;
}

// The finding that is felt by the gauge.
const Finding* felt_by(const Knowledge& knowledge, const std::string& gauge) {
    for (const Finding& finding : knowledge.findings) {
        for (const auto& limit : finding.felt) {
            if (limit && limit->gauge == gauge) return &finding;
        }
    }
    return nullptr;
}

// The knowledge's name for a gauge that it has a finding for, else what the gauge means.
std::string name_of_gauge(const Knowledge& knowledge, const rig::Gauge& gauge) {
    for (const Finding& finding : knowledge.findings)
        if (finding.gauge == gauge.name) return finding.name;
    const Finding* felt = felt_by(knowledge, gauge.name);
    return felt != nullptr ? felt->name : upper_first(gauge.meaning);
}

// A scale of the numeric boat's own is told by what is felt or seen there, where the two boats differ in it.
void tell_as_felt(const Knowledge& knowledge, const SurveyedBoat& both, const rig::Gauge& from,
                  BoatGauge& gauge) {
    const Finding* felt = felt_by(knowledge, from.name);
    if (felt == nullptr || from.unit != "count") return;
    const auto text = [&](const rig::Readings& readings) -> std::string {
        const std::optional<Answer> answer = felt_reading(*felt, readings);
        return answer ? felt->readings[static_cast<std::size_t>(std::get<int>(answer->given))].text : "";
    };
    const std::string sound = text(both.sound_readings), faulty = text(both.faulty_readings);
    if (sound.empty() || faulty.empty() || sound == faulty) return;
    gauge.sound = sound;
    gauge.faulty = faulty;
    gauge.difference.clear();
}

double held_between_locks(const rig::BoatAtWork& boat, double steer) {
    return std::clamp(steer, boat.port_lock(), boat.starboard_lock());
}

Result<rig::Pull> pull_of(const rig::BoatAtWork& boat, const BoatSetting& setting) {
    return boat.pull({held_between_locks(boat, setting.steer), setting.speed, setting.way});
}

std::string ram_name(const rig::BoatAtWork& boat, std::size_t ram) {
    if (boat.drives().rams.size() == 1) return "Ram";
    return ram == 0 ? "Port ram" : "Starboard ram";
}

// Rod travel left at this angle; a ram that the faults leave beyond its travel has none.
Read rod_left(const SurveyedBoat& both, const BoatSetting& setting, std::size_t ram, bool to_come_out) {
    const auto left = [&](const std::optional<rig::BoatAtWork>& boat) -> std::optional<double> {
        if (!boat) return std::nullopt;
        const double steer = held_between_locks(*boat, setting.steer);
        const double out = rig::rod_out(boat->drives(), ram, steer, setting.trim);
        const double stroke = boat->drives().rams[ram].travel.stroke;
        return std::clamp(to_come_out ? stroke - out : out, 0.0, stroke);
    };
    return {left(both.sound), left(both.faulty), "in", 1.0 / 16};
}

Result<GaugeGroup> at_this_moment(const SurveyedBoat& both, const BoatSetting& setting, const Row& row) {
    const Result<rig::Pull> sound = pull_of(*both.sound, setting);
    if (!sound) return sound.error();
    const Result<rig::Pull> faulty = both.faulty ? pull_of(*both.faulty, setting) : sound;
    if (!faulty) return faulty.error();
    GaugeGroup group{"At this angle and speed", {}};
    const auto of_both = [&](double s, double f, const char* unit, double spread) {
        return Read{s, f, unit, spread};
    };
    if (setting.way != rig::Way::held) {
        Read pull = of_both(sound.value().force, faulty.value().force, "lbf", 1);
        pull.missing = "it does not move";
        if (!sound.value().goes) pull.sound.reset();
        if (!faulty.value().goes) pull.faulty.reset();
        group.gauges.push_back(row("pull", "Pull at the rim", pull));
    }
    group.gauges.push_back(row("line_port", "Pressure, port line",
                               of_both(sound.value().lines.port, faulty.value().lines.port, "psi", 5)));
    group.gauges.push_back(
        row("line_starboard", "Pressure, starboard line",
            of_both(sound.value().lines.starboard, faulty.value().lines.starboard, "psi", 5)));
    for (std::size_t ram = 0; ram < both.sound->drives().rams.size(); ++ram) {
        const std::string id = ram == 0 ? "left_port" : "left_starboard";
        const std::string name = ram_name(*both.sound, ram);
        group.gauges.push_back(
            row(id + "_out", name + ": rod left to come out", rod_left(both, setting, ram, true)));
        group.gauges.push_back(
            row(id + "_in", name + ": rod left to go in", rod_left(both, setting, ram, false)));
    }
    return group;
}

Read of_survey(const SurveyedBoat& both, const rig::Gauge& gauge) {
    Read read{reading(both.sound_readings, gauge.name), reading(both.faulty_readings, gauge.name), gauge.unit,
              gauge.spread};
    if (gauge.name.starts_with("turns_")) read.missing = "cannot be turned";
    return read;
}

// What the fault has changed first.
std::vector<GaugeGroup> by_difference(const std::vector<GaugeGroup>& groups) {
    GaugeGroup changed{"Different with the fault", {}}, same{"The same as in the sound boat", {}};
    for (const GaugeGroup& group : groups)
        for (const BoatGauge& gauge : group.gauges) (gauge.differs ? changed : same).gauges.push_back(gauge);
    std::vector<GaugeGroup> ordered;
    if (!changed.gauges.empty()) ordered.push_back(std::move(changed));
    if (!same.gauges.empty()) ordered.push_back(std::move(same));
    return ordered;
}

}  // namespace

Result<rig::Pull> shown_pull(const SurveyedBoat& boat, const BoatSetting& setting) {
    return pull_of(*boat.shown(), setting);
}

Result<std::vector<GaugeGroup>> gauge_groups(const Knowledge& knowledge, const SurveyedBoat& boat,
                                             const BoatSetting& setting) {
    const Row row(boat.faulty.has_value(), setting.units);
    Result<GaugeGroup> now = at_this_moment(boat, setting, row);
    if (!now) return now.error();
    GaugeGroup whole{"The whole boat, tied up", {}};
    GaugeGroup also{"", {}};
    for (const rig::Gauge& gauge : rig::gauges()) {
        const Read read = of_survey(boat, gauge);
        if (!read.sound && !read.faulty) continue;
        const char* name = name_shown(gauge.name);
        BoatGauge shown = row(gauge.name, name != nullptr ? name : name_of_gauge(knowledge, gauge), read);
        if (shown.differs) tell_as_felt(knowledge, boat, gauge, shown);
        if (name != nullptr) {
            whole.gauges.push_back(std::move(shown));
        } else if (shown.differs) {
            also.gauges.push_back(std::move(shown));
        }
    }
    const auto place = [](const BoatGauge& gauge) {
        return std::find_if(always.begin(), always.end(),
                            [&](const Shown& shown) { return shown.gauge == gauge.id; });
    };
    std::sort(whole.gauges.begin(), whole.gauges.end(),
              [&](const BoatGauge& a, const BoatGauge& b) { return place(a) < place(b); });
    if (!boat.faulty) return std::vector<GaugeGroup>{std::move(now.value()), std::move(whole)};
    return by_difference({std::move(now.value()), std::move(whole), std::move(also)});
}

}  // namespace hardover::jobs_detail

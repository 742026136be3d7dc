// The boat page: what is set is held to what the rig can do, then drawn, gauged and put in words.
#include "app/jobs/boat_view.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "app/drawing/wheel_words.hpp"
#include "app/jobs/boat_parts.hpp"
#include "app/jobs/rig_boat.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

namespace {

using namespace jobs_detail;
using rig::Boat;

constexpr double in_degrees = 180 / std::numbers::pi;
constexpr double top_speed = 1.5;  // of the cruising speed: as fast as the boat is shown

std::string degrees_text(double radians) {
    char text[24];
    std::snprintf(text, sizeof text, "%.1f°", std::abs(radians) * in_degrees);
    return text;
}

std::string trouble_of(const Error& error, const std::string& start) {
    std::string text = start + ": " + error.what;
    if (!error.where.empty() && error.where != "boat") text += " (" + error.where + ")";
    if (!error.cure.empty()) text += ". Right would be: " + error.cure;
    return sentence(text);
}

// All causes on one boat: each change goes as far from sound as its strength says.
rig::Faults faults_of(const Knowledge& knowledge, const std::vector<FaultIn>& faults) {
    rig::Faults all;
    for (const FaultIn& fault : faults) {
        const Index index = find(knowledge.causes, fault.cause);
        if (index == none) continue;
        for (const ModelChange& change : knowledge.causes[static_cast<std::size_t>(index)].on_the_rig) {
            for (const rig::Parameter& parameter : rig::parameters()) {
                if (parameter.name != change.parameter) continue;
                rig::Faults none_yet;
                const double sound = parameter.of(none_yet);
                Quantity value = change.value;
                value.value = sound + fault.strength * (value.value - sound);
                // The knowledge's own values were checked when it was read.
                (void)rig::set_parameter(all, change.parameter, value);
            }
        }
    }
    return all;
}

std::string rig_words(const Boat& boat) {
    const bool two = boat.drives == 2;
    std::string text = boat.mount == Boat::Mount::sterndrive_external
                           ? two ? "Two stern drives" : "Stern drive"
                       : boat.mount == Boat::Mount::outboard_centre ? two ? "Two outboards" : "Outboard"
                       : two                                        ? "Two rudders"
                                                                    : "Rudder";
    if (two) text += boat.tied ? ", tied" : ", not tied";
    const std::string kind = boat.balanced ? "balanced " : "single-rod ";
    text += boat.rams == 1 ? ", one " + kind + "ram" : ", two " + kind + "rams";
    text += boat.helm == Boat::Helm::manual_pump ? ", hand helm pump" : ", cable and power-assist valve";
    if (boat.helms == 2) text += ", two helms";
    return text;
}

// What the drawing and the gauges rest on that nobody has told.
std::vector<std::string> assumptions_of(const Knowledge& knowledge, const Facts& facts, const Boat& boat) {
    std::vector<std::string> lines;
    const std::vector<std::string> open = rig_fields_taken_as_usual(knowledge, facts);
    if (!open.empty()) lines.push_back("Not told, taken as usual: " + listed(open) + ".");
    lines.push_back(
        "Rams, pins and brackets are to scale, worked out for this stroke; not measured on this boat.");
    lines.push_back("Hull, drive, helm, reservoir and hoses are symbols.");
    lines.push_back("Pressures and pull are those of a slow, steady turn, the drive level.");
    lines.push_back(
        "At speed the water's push is that of a hard turn, by angle and by speed squared: within a factor of "
        "two, from memory.");
    if (boat.assist != Boat::Assist::none) lines.push_back("The power assist is running.");
    return lines;
}

std::vector<std::string> warnings_of(const rig::BoatAtWork& boat) {
    std::vector<std::string> warnings;
    const rig::SteeredDrives& drives = boat.drives();
    const double down = drawing::trims(boat.boat()) ? boat.boat().trim_down : 0;
    const double up = drawing::trims(boat.boat()) ? boat.boat().trim_up : 0;
    for (std::size_t ram = 0; ram < drives.rams.size(); ++ram) {
        const std::string warning = rig::over_centre_warning(drives.rams[ram], down, up);
        if (warning.empty()) continue;
        const char* name = drives.rams.size() == 1 ? "Ram" : ram == 0 ? "Port ram" : "Starboard ram";
        warnings.push_back(std::string(name) + ": " + lower_first(warning));
    }
    return warnings;
}

// How far the drive swings over its whole trim, and what the ends of the swing differ by.
std::vector<std::string> trim_locks_of(const rig::BoatAtWork& boat) {
    if (!drawing::trims(boat.boat())) return {};
    std::vector<rig::MountedRam> on_first;
    for (std::size_t ram = 0; ram < boat.drives().rams.size(); ++ram)
        if (!boat.drives().on_second[ram]) on_first.push_back(boat.drives().rams[ram]);
    const Result<rig::LocksOverTrim> locks =
        rig::locks_over_trim(on_first, boat.boat().trim_down, boat.boat().trim_up);
    if (!locks) return {trouble_of(locks.error(), "Over the whole trim the locks cannot be told")};
    const rig::LocksOverTrim& found = locks.value();
    std::vector<std::string> lines{"The rams reach at least " + degrees_text(found.lowest) +
                                   " to port (trim " + drawing::trim_text(found.lowest_at) + ") and " +
                                   degrees_text(found.highest) + " to starboard (trim " +
                                   drawing::trim_text(found.highest_at) + ")."};
    if (found.asymmetry > 0.5 / in_degrees)
        lines.push_back("Port and starboard differ by up to " + degrees_text(found.asymmetry) + " (trim " +
                        drawing::trim_text(found.asymmetry_at) + ").");
    return lines;
}

std::string turns_text(double wheel) {
    const std::string turns = drawing::turns_words(wheel);
    return "Wheel " + (turns.empty() ? "straight" : turns);
}

std::string speed_text_of(double speed) {
    const Unit knots = find_unit("kn").value();
    return speed < 0.1 ? "Boat at rest"
                       : "Boat at " + std::to_string(std::lround(speed / knots.factor)) + " kn";
}

std::string strength_words(double strength) {
    return strength < 0.75 ? "a little of it" : strength > 1.25 ? "bad" : "as usual";
}

const char* doing_text(rig::Way way) {
    return way == rig::Way::to_port        ? "Turning to port"
           : way == rig::Way::to_starboard ? "Turning to starboard"
                                           : "Wheel held still";
}

// Holds the setting to what the boat that is shown can do.
void hold(const rig::BoatAtWork& boat, BoatPage& page) {
    const Boat& sizes = boat.boat();
    page.most_speed = top_speed * sizes.cruising_speed;
    page.setting.speed = std::clamp(page.setting.speed, 0.0, page.most_speed);
    if (drawing::trims(sizes)) {
        page.least_trim = sizes.trim_down;
        page.most_trim = sizes.trim_up;
    }
    page.setting.trim = std::clamp(page.setting.trim, page.least_trim, page.most_trim);
    page.least_steer = boat.port_lock();
    page.most_steer = boat.starboard_lock();
    // Trimmed, a ram may end before the drive's own stop does.
    if (const Result<rig::DriveLocks> trimmed = rig::drive_locks(boat.drives(), page.setting.trim)) {
        page.least_steer = std::max(page.least_steer, trimmed.value().lowest);
        page.most_steer = std::min(page.most_steer, trimmed.value().highest);
    }
    page.setting.steer = std::clamp(page.setting.steer, page.least_steer, page.most_steer);
    page.wheel = boat.wheel_at(page.setting.steer);
}

void word(BoatPage& page) {
    page.steer_text = upper_first(drawing::steer_text(page.setting.steer));
    page.trim_short = upper_first(drawing::trim_text(page.setting.trim));
    page.trim_text = "Trim " + drawing::trim_text(page.setting.trim);
    page.speed_text = speed_text_of(page.setting.speed);
    page.speed_short = upper_first(page.speed_text.substr(std::string("Boat at ").size()));
    page.wheel_text = turns_text(page.wheel);
    page.doing = doing_text(page.setting.way);
    page.title = page.steer_text;
    if (page.most_trim > page.least_trim) page.title += ", " + lower_first(page.trim_text);
    page.title += ", " + lower_first(page.speed_text);
}

void draw(const Knowledge& knowledge, const SurveyedBoat& boat, BoatPage& page) {
    drawing::Pose pose{page.setting.steer, page.setting.trim, page.wheel, std::nullopt};
    if (const Result<rig::Pull> pull = shown_pull(boat, page.setting))
        pose.pressure = drawing::LinePressures{page.setting.way, pull.value().lines};
    Result<drawing::RigSketch> sketch =
        drawing::rig_sketch(drawing::plan_of(*boat.shown()), pose, page.setting.units);
    if (!sketch) {
        page.trouble = trouble_of(sketch.error(), "This cannot be drawn");
        return;
    }
    for (FaultShown& fault : page.faults) {
        fault.parts = parts_of_cause(knowledge, sketch.value().above, fault.id);
        for (drawing::Drawing* view : {&sketch.value().above, &sketch.value().behind, &sketch.value().side})
            drawing::mark_faults(*view, fault.parts);
    }
    page.sketch = std::move(sketch.value());
}

// The boat sound and with its faults, as far as either can be.
SurveyedBoat both_boats(const Knowledge& knowledge, const Facts& facts, const std::vector<FaultIn>& faults) {
    SurveyedBoat surveyed;
    surveyed.faults = faults;
    const Boat boat = boat_of_rig(knowledge, facts, Boat{});
    Result<rig::BoatAtWork> sound = rig::BoatAtWork::of(boat, {});
    if (!sound) {
        surveyed.trouble = trouble_of(sound.error(), "No steering can be rigged of these sizes");
        return surveyed;
    }
    const Result<rig::Readings> sound_readings = rig::survey(boat, {});
    if (!sound_readings) {
        surveyed.trouble = trouble_of(sound_readings.error(), "This rig cannot be worked out");
        return surveyed;
    }
    surveyed.sound = std::move(sound.value());
    surveyed.sound_readings = sound_readings.value();
    if (faults.empty()) return surveyed;
    const rig::Faults changed = faults_of(knowledge, faults);
    Result<rig::BoatAtWork> faulty = rig::BoatAtWork::of(boat, changed);
    const Result<rig::Readings> readings = rig::survey(boat, changed);
    if (!faulty || !readings) {
        surveyed.trouble =
            trouble_of(faulty ? readings.error() : faulty.error(),
                       "With this fault the steering cannot be worked out, so the sound boat is shown");
        return surveyed;
    }
    surveyed.faulty = std::move(faulty.value());
    surveyed.faulty_readings = readings.value();
    return surveyed;
}

}  // namespace

SurveyedBoat survey_boat(const Knowledge& knowledge, const Facts& facts, const std::vector<FaultIn>& faults) {
    SurveyedBoat surveyed = both_boats(knowledge, facts, faults);
    if (surveyed.shown() == nullptr) return surveyed;
    surveyed.warnings = warnings_of(*surveyed.shown());
    surveyed.trim_locks = trim_locks_of(*surveyed.shown());
    return surveyed;
}

BoatPage make_boat_page(const PreparedKnowledge& prepared, const Facts& facts, const SurveyedBoat& boat,
                        const BoatSetting& setting) {
    const Knowledge& knowledge = prepared.knowledge();
    BoatPage page;
    page.setting = setting;
    page.trouble = boat.trouble;
    for (const FaultIn& fault : boat.faults) {
        const Index index = find(knowledge.causes, fault.cause);
        if (index == none) continue;
        page.faults.push_back({fault.cause,
                               knowledge.causes[static_cast<std::size_t>(index)].name,
                               strength_words(fault.strength),
                               {}});
    }
    const rig::BoatAtWork* shown = boat.shown();
    page.rig = rig_words(shown != nullptr ? shown->boat() : boat_of_rig(knowledge, facts, Boat{}));
    if (shown == nullptr) {
        page.title = "Cannot be rigged";
        return page;
    }
    hold(*shown, page);
    word(page);
    draw(knowledge, boat, page);
    Result<std::vector<GaugeGroup>> groups = gauge_groups(knowledge, boat, page.setting);
    if (groups) {
        page.groups = std::move(groups.value());
    } else if (page.trouble.empty()) {
        page.trouble = trouble_of(groups.error(), "The gauges cannot be worked out here");
    }
    page.warnings = boat.warnings;
    page.trim_locks = boat.trim_locks;
    page.assumptions = assumptions_of(knowledge, facts, shown->boat());
    return page;
}

}  // namespace hardover

// The gauges: the sound boat's, and beside them those with the faults that are in it.
#include <algorithm>

#include "app/window/screens/boat/boat_parts.hpp"

namespace hardover::window {

namespace {

void draw_fault(BoatScene& scene, const FaultShown& fault) {
    Kit& kit = scene.kit;
    kit.card({.line = Role::wrong, .pad = 12, .edge = Role::wrong}, [&] {
        kit.text("Fault: " + fault.name, Type::strong, Role::ink);
        kit.gap(6);
        const Box row = kit.take(kit.px(44));
        const float gap = kit.px(6), w = (row.w - 3 * gap) / 4;
        struct Choice {
            const char* id;
            const char* label;
            double strength;
        };
        int i = 0;
        for (const Choice& choice :
             {Choice{"less", "Little", 0.5}, Choice{"usual", "Usual", 1}, Choice{"more", "Bad", 1.5}}) {
            const auto& faults = scene.desk.faults();
            const bool now = std::any_of(faults.begin(), faults.end(), [&](const FaultIn& in) {
                return in.cause == fault.id && std::abs(in.strength - choice.strength) < 0.1;
            });
            const Box at{row.x + static_cast<float>(i++) * (w + gap), row.y, w, row.h};
            if (kit.button("boat.fault." + fault.id + "." + choice.id, at,
                           {.label = choice.label, .selected = now}))
                scene.act(SetStrength{fault.id, choice.strength});
        }
        const Box at{row.x + 3 * (w + gap), row.y, w, row.h};
        if (kit.button("boat.fault." + fault.id + ".out", at,
                       {.label = "Out", .face = Face::quiet, .name = "Take this fault out"}))
            scene.act(TakeFaultOut{fault.id});
    });
    kit.gap(8);
}

// Name over the values, so that each has half of the width; what differs is said below them.
void draw_gauge(Kit& kit, const BoatGauge& gauge, bool two_columns) {
    kit.gap(7);
    kit.text(gauge.name, Type::small, Role::ink2);
    const float half = kit.width() / 2, gap = kit.px(8);
    const Box at = kit.take(0);
    const float room = two_columns ? half - gap : kit.width();
    const float sound =
        kit.inside({at.x, at.y, room, 0}, [&] { kit.text(gauge.sound, Type::strong, Role::ink); });
    float faulty = 0;
    if (two_columns) {
        faulty = kit.inside({at.x + half, at.y, room, 0}, [&] {
            kit.text(gauge.faulty, Type::strong, gauge.differs ? Role::weigh_against : Role::ink);
            if (gauge.differs) kit.text(gauge.difference, Type::small, Role::weigh_against);
        });
    }
    kit.take(std::max(sound, faulty));
    kit.gap(7);
    kit.hairline(kit.take(kit.px(1)));
}

void draw_group(Kit& kit, const GaugeGroup& group, bool two_columns) {
    kit.card({.pad = 14}, [&] {
        kit.text(group.title, Type::strong, Role::ink);
        if (two_columns) {
            const Box row = kit.take(kit.theme().line_height(Type::caps) + kit.px(6));
            kit.line_in({row.x, row.y, row.w / 2, row.h}, "SOUND", Type::caps, Role::ink2);
            kit.line_in({row.x + row.w / 2, row.y, row.w / 2, row.h}, "WITH FAULT", Type::caps, Role::ink2);
        }
        for (const BoatGauge& gauge : group.gauges) draw_gauge(kit, gauge, two_columns);
    });
    kit.gap(10);
}

void draw_notes(Kit& kit, const std::vector<std::string>& lines, bool warning) {
    if (lines.empty()) return;
    kit.card({.fill = warning ? Role::safety_tint : Role::panel,
              .pad = 12,
              .edge = warning ? Role::safety : Role::outline},
             [&] {
                 for (const std::string& line : lines) {
                     kit.text(line, Type::small, Role::ink);
                     kit.gap(4);
                 }
             });
    kit.gap(10);
}

}  // namespace

void draw_boat_gauges(BoatScene& scene) {
    Kit& kit = scene.kit;
    const BoatPage& page = scene.page();
    kit.text(page.rig, Type::small, Role::ink2);
    kit.gap(10);
    if (!page.trouble.empty()) {
        kit.card({.fill = Role::wrong_tint, .line = Role::wrong, .pad = 14, .edge = Role::wrong},
                 [&] { kit.text(page.trouble, Type::small, Role::ink); });
        kit.gap(10);
    }
    for (const FaultShown& fault : page.faults) draw_fault(scene, fault);
    draw_notes(kit, page.warnings, true);
    const bool two_columns = !page.faults.empty() && scene.page().groups.size() > 0 &&
                             !scene.page().groups.front().gauges.empty() &&
                             !scene.page().groups.front().gauges.front().faulty.empty();
    for (const GaugeGroup& group : page.groups) draw_group(kit, group, two_columns);
    draw_notes(kit, page.trim_locks, false);
    if (page.assumptions.empty()) return;
    kit.text("What this rests on", Type::strong, Role::ink);
    kit.gap(4);
    draw_notes(kit, page.assumptions, false);
}

}  // namespace hardover::window

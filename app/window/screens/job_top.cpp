// The job screen's bands along the top: the stops, and the phases of the job on a scale.
#include <array>
#include <cmath>
#include <string_view>

#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

constexpr float stop_edge = 64;  // dp: hatch and octagon

// The phases of JobPage::phase in order.
constexpr std::array<std::string_view, 6> phases{"Intake",           "Finding the cause", "Proving it",
                                                 "Putting it right", "Checks after",      "Handed back"};

}  // namespace

float stops_height(Kit& kit, const JobPage& page, float width_px) {
    float h = 0;
    for (const std::string& stop : page.stops) {
        h += kit.text_height(stop, Type::strong, width_px - kit.px(stop_edge + 32)) + kit.px(8);
    }
    return h == 0 ? 0 : std::max(kit.px(52), h + kit.px(12));
}

void draw_stops(JobScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    kit.pane("stops", box, {.fill = Role::stop, .pad_x = 0, .pad_y = 0}, [&] {
        kit.fill({box.x, box.y, kit.px(stop_edge), box.h}, Role::stop_hatch);
        kit.hatch({box.x, box.y, kit.px(stop_edge), box.h}, 9, Role::stop);
        const float side = kit.px(34);
        kit.fill({box.x + kit.px(stop_edge / 2) - side / 2 - kit.px(3), box.middle_y() - side / 2 - kit.px(3),
                  side + kit.px(6), side + kit.px(6)},
                 Role::stop_hatch, 20);
        kit.icon({box.x + kit.px(stop_edge / 2) - side / 2, box.middle_y() - side / 2, side, side},
                 Icon::stop, Role::on_stop);
        const float content = stops_height(kit, scene.page, box.w);
        const float top = box.y + std::max(kit.px(10), (box.h - content) / 2 + kit.px(10)) - box.y;
        kit.take(top);
        const Box start = kit.take(0);
        kit.take(
            kit.inside({start.x + kit.px(stop_edge + 16), start.y, start.w - kit.px(stop_edge + 32), 0}, [&] {
                for (const std::string& stop : scene.page.stops) {
                    kit.text(stop, Type::strong, Role::on_stop);
                    kit.gap(8);
                }
            }));
    });
}

void draw_track(JobScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    kit.fill(box, Role::panel);
    std::size_t now = 0;
    for (std::size_t i = 0; i < phases.size(); ++i) {
        if (phases[i] == scene.page.phase) now = i;
    }
    // A scale as on a rudder indicator: a tick every 8 dp, the way gone in colour, a pointer at the phase in
    // hand.
    const float base = box.bottom() - kit.px(1);
    const float part = box.w / static_cast<float>(phases.size());
    const float at = box.x + part * (static_cast<float>(now) + 0.5F);
    const float step = kit.px(8);
    const int ticks = static_cast<int>(box.w / step);
    for (int i = 0; i <= ticks; ++i) {
        const float x = box.x + static_cast<float>(i) * step;
        const bool tall = i % 5 == 0;
        const Role role = x <= at ? Role::accent : Role::hairline;
        kit.fill(
            {std::round(x), base - kit.px(tall ? 7 : 4), std::max(1.0F, kit.px(1.2F)), kit.px(tall ? 7 : 4)},
            role);
    }
    kit.fill({box.x, base, at - box.x, kit.px(2)}, Role::accent);
    kit.fill({at, base, box.right() - at, kit.px(1)}, Role::hairline);
    for (std::size_t i = 0; i < phases.size(); ++i) {
        const Box cell{box.x + part * static_cast<float>(i) + kit.px(4), box.y + kit.px(2), part - kit.px(8),
                       box.h - kit.px(11)};
        const bool here = i == now;
        kit.line_in(cell, phases[i], here ? Type::strong : Type::small, here ? Role::accent : Role::ink2,
                    Align::centre);
    }
    kit.fill({at - kit.px(3), base - kit.px(9), kit.px(6), kit.px(10)}, Role::accent, 2);
}

}  // namespace hardover::window

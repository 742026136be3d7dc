// What is about to be done, what came of it, and the ranking before and after.
#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "app/window/screens/parts.hpp"
#include "app/window/screens/project/project_parts.hpp"

namespace hardover::window {

using classroom::RankBar;

namespace {

constexpr float seconds_to_move = 0.9F;

// Slow at both ends, so that the eye can follow.
double eased(float share) {
    const double s = std::clamp(static_cast<double>(share), 0.0, 1.0);
    return s * s * (3 - 2 * s);
}

// Moves on by what the last frame took, and asks for the next.
void move_bars(ProjectScene& scene) {
    ProjectView& view = scene.view;
    const std::string moment =
        scene.page().boat.title + scene.page().boat.clock + std::to_string(scene.page().boat.ranking.size());
    if (view.ranked != moment) {
        view.moved = view.ranked.empty() || scene.still ? 1.0F : 0.0F;
        view.ranked = moment;
    }
    if (scene.still) view.moved = 1;
    if (view.moved >= 1) return;
    view.moved = std::min(1.0F, view.moved + ImGui::GetIO().DeltaTime / seconds_to_move);
    scene.kit.keep_moving();
}

void draw_caution(Kit& kit, const CautionText& caution) {
    kit.card({.fill = Role::safety_tint, .line = Role::safety, .pad = 14, .edge = Role::safety}, [&] {
        kit.text(caution.name, Type::h2, Role::ink);
        kit.gap(4);
        kit.text(caution.hurts, Type::strong, Role::ink);
        kit.gap(4);
        kit.text(caution.avoid, Type::strong, Role::ink);
    });
    kit.gap(8);
}

}  // namespace

void draw_customer(ProjectScene& scene) {
    Kit& kit = scene.kit;
    const classroom::HandsPage& boat = scene.page().boat;
    kit.card({.pad = 14, .edge = Role::accent}, [&] {
        kit.text(boat.customer, Type::h2, Role::ink);
        kit.gap(2);
        kit.text(boat.complaint + ". " + boat.history + ".", Type::body, Role::ink2);
    });
}

void draw_agreed(ProjectScene& scene) {
    Kit& kit = scene.kit;
    if (!scene.page().boat.agreed) return;
    const classroom::AgreedStep& step = *scene.page().boat.agreed;
    draw_trouble(kit, scene.page().trouble);
    for (const study::practice::CautionQuestion& question : step.cautions) {
        for (const CautionText& caution : question.cautions) draw_caution(kit, caution);
    }
    kit.text(step.card.heading.empty() ? step.card.ask : step.card.heading, Type::h1, Role::ink);
    if (!step.card.heading.empty() && !step.card.ask.empty()) {
        kit.gap(4);
        kit.text(step.card.ask, Type::h2, Role::ink);
    }
    kit.gap(8);
    draw_numbered(kit, step.card.steps);
    for (const std::string& figure : step.card.figures) {
        kit.gap(4);
        kit.text(figure, Type::body, Role::ink);
    }
    if (step.card.source.empty()) return;
    kit.gap(8);
    kit.text(step.card.source, Type::small, Role::ink2);
}

void draw_ranking(ProjectScene& scene) {
    Kit& kit = scene.kit;
    move_bars(scene);
    const double share = eased(scene.view.moved);
    kit.text("What it may be", Type::strong, Role::ink2);
    kit.gap(6);
    for (const RankBar& bar : scene.page().boat.ranking) {
        const std::string percent = bar.percent + (bar.moved.empty() ? "" : ", " + bar.moved);
        const std::string name = bar.true_fault ? bar.name + " (this is it)" : bar.name;
        kit.text(name, Type::strong, bar.true_fault ? Role::right : Role::ink);
        kit.gap(2);
        const Box line = kit.take(kit.px(22));
        const float words = kit.text_width(percent, Type::small) + 1;
        const Box track{line.x, line.y + kit.px(3), line.w - std::max(words, kit.px(120)) - kit.px(10),
                        kit.px(16)};
        kit.bar(track, bar.before + (bar.probability - bar.before) * share,
                bar.true_fault ? Role::right : Role::accent);
        // Where it stood, so that the move can be read when nothing moves any more.
        if (!bar.moved.empty()) {
            const float x = track.x + track.w * static_cast<float>(bar.before);
            kit.fill({x - kit.px(1.5F), track.y - kit.px(3), kit.px(3), track.h + kit.px(6)}, Role::ink);
        }
        kit.line_in({line.right() - words, line.y, words, line.h}, percent, Type::small, Role::ink,
                    Align::right);
        kit.gap(8);
    }
}

void draw_outcome(ProjectScene& scene, bool with_ranking) {
    Kit& kit = scene.kit;
    const classroom::HandsPage& boat = scene.page().boat;
    draw_trouble(kit, scene.page().trouble);
    kit.card({.pad = 16, .edge = boat.right ? Role::right : Role::accent}, [&] {
        kit.text(boat.right ? "The boat is right" : "What came of it", Type::strong, Role::ink2);
        for (const std::string& line : boat.happened) {
            kit.gap(4);
            kit.text(line, Type::h1, Role::ink);
        }
        kit.gap(4);
        kit.text(boat.clock, Type::strong, Role::ink2);
    });
    kit.gap(12);
    if (!boat.after.empty()) {
        kit.text("Checks before it is handed over", Type::h2, Role::ink);
        kit.gap(4);
        draw_numbered(kit, boat.after);
    } else if (with_ranking) {
        draw_ranking(scene);
    }
}

}  // namespace hardover::window

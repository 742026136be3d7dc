// How the learner is doing: what is due, sureness against truth, and the map by complaint and by part.
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

constexpr float side_by_side_from = 820;  // dp

// Met as the paler bar, remembered as the darker one inside it; the words say the same.
void draw_mastery(Kit& kit, const study::MasteryLine& line) {
    kit.text(line.name, Type::strong, Role::ink);
    kit.gap(3);
    const Box bar = kit.take(kit.px(14));
    kit.fill(bar, Role::bar_track, 3);
    const float met = bar.w * static_cast<float>(line.met);
    const float kept = bar.w * static_cast<float>(line.remembered);
    if (met >= 1) kit.outline({bar.x, bar.y, met, bar.h}, Role::accent, 2, 3);
    if (kept >= 1) kit.fill({bar.x, bar.y, kept, bar.h}, Role::accent, 3);
    kit.gap(3);
    kit.text(line.words, Type::small, Role::ink2);
    kit.gap(10);
}

void draw_map(Kit& kit, const std::string& title, const std::vector<study::MasteryLine>& lines) {
    kit.card({.pad = 20}, [&] {
        kit.text(title, Type::h2, Role::ink);
        kit.text("Outlined: met. Filled: will still be known tomorrow.", Type::small, Role::ink2);
        kit.gap(10);
        for (const study::MasteryLine& line : lines) draw_mastery(kit, line);
    });
    kit.gap(16);
}

void draw_due(Kit& kit, const study::ProgressPage& progress) {
    kit.card({.pad = 20}, [&] {
        kit.text("What comes back when", Type::h2, Role::ink);
        kit.gap(6);
        if (progress.due.empty()) kit.text("Nothing has been answered yet.", Type::body, Role::ink2);
        for (const study::DueLine& line : progress.due) {
            const Box box = kit.take(kit.theme().line_height(Type::body) + kit.px(6));
            kit.line_in({box.x, box.y, box.w * 0.7F, box.h}, line.when, Type::body, Role::ink);
            kit.line_in({box.x + box.w * 0.7F, box.y, box.w * 0.3F, box.h}, std::to_string(line.statements),
                        Type::strong, Role::ink, Align::right);
        }
    });
    kit.gap(16);
}

// Said and right as two bars under each other.
void draw_band(Kit& kit, const study::SureBand& band) {
    const float h = kit.px(10);
    kit.text(band.name, Type::strong, Role::ink);
    const Box said = kit.take(h);
    kit.bar(said, band.said, Role::bar_other);
    kit.gap(3);
    const Box right = kit.take(h);
    kit.bar(right, band.right, Role::accent);
    kit.gap(3);
    kit.text(band.words, Type::small, Role::ink2);
    kit.gap(10);
}

void draw_sureness(Kit& kit, const study::ProgressPage& progress) {
    kit.card({.pad = 20}, [&] {
        kit.text("As sure as right?", Type::h2, Role::ink);
        kit.gap(6);
        for (const std::string& line : progress.sureness) {
            kit.text(line, Type::body, Role::ink);
            kit.gap(4);
        }
        if (progress.bands.empty()) return;
        kit.text("Upper bar: how sure you were. Lower bar: how often you were right.", Type::small,
                 Role::ink2);
        kit.gap(8);
        for (const study::SureBand& band : progress.bands) draw_band(kit, band);
    });
    kit.gap(16);
}

// By what review times go, and the other way.
void draw_memory(StudyScene& scene, const study::ProgressPage& progress) {
    Kit& kit = scene.kit;
    kit.card({.pad = 20}, [&] {
        kit.text("Review times", Type::h2, Role::ink);
        kit.gap(6);
        for (const std::string& line : progress.memory) {
            kit.text(line, Type::body, Role::ink);
            kit.gap(4);
        }
        kit.gap(6);
        const std::string label = progress.fitted ? "Back to the usual ones" : "Fit them to my answers";
        if (!draw_small_button(kit, "progress.memory", {.label = label})) return;
        if (progress.fitted) {
            scene.ask(UsualMemory{});
        } else {
            scene.ask(FitMemory{});
        }
    });
    kit.gap(16);
}

void draw_boats(Kit& kit, const study::ProgressPage& progress) {
    kit.card({.pad = 20}, [&] {
        kit.text("Practice boats", Type::h2, Role::ink);
        kit.gap(6);
        if (progress.boats.empty()) kit.text("None yet.", Type::body, Role::ink2);
        for (const std::string& line : progress.boats) {
            kit.text(line, Type::body, Role::ink);
            kit.gap(6);
        }
    });
    kit.gap(16);
}

}  // namespace

void draw_progress(StudyScene& scene) {
    Kit& kit = scene.kit;
    draw_trouble(kit, scene.page.trouble);
    draw_notice(kit, scene.page.notice);
    const ButtonLook back{.label = "Back to Study", .icon = Icon::back, .key = "Esc"};
    kit.tab_starts_here();
    if (draw_small_button(kit, "progress.back", back)) scene.ask(ShowStudy{StudyShowing::start});
    kit.gap(10);
    if (!scene.page.progress) return;
    const study::ProgressPage& progress = *scene.page.progress;
    kit.text(scene.page.learner, Type::h1, Role::ink);
    kit.text(progress.headline, Type::body, Role::ink);
    kit.gap(12);
    const auto left = [&] {
        draw_due(kit, progress);
        draw_memory(scene, progress);
        draw_sureness(kit, progress);
        draw_boats(kit, progress);
    };
    const auto right = [&] {
        draw_map(kit, "By complaint", progress.by_complaint);
        draw_map(kit, "By part of the system", progress.by_part);
    };
    if (kit.width() >= kit.px(side_by_side_from)) {
        draw_columns(kit, 0.45F, left, right);
        return;
    }
    left();
    right();
}

}  // namespace hardover::window

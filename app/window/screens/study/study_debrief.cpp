// The debrief of a practice boat: cautions left out first, then minutes, habits, the job step by step, and
// what to practise.
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

using practice::MinutesPart;

struct PartLook {
    Role role;
    bool hatched;
};
PartLook look_of(MinutesPart::Kind kind) {
    switch (kind) {
        case MinutesPart::Kind::work:
            return {Role::bar_other, false};
        case MinutesPart::Kind::spared:
            return {Role::right, true};
        case MinutesPart::Kind::avoidable:
            return {Role::weigh_against, false};
        case MinutesPart::Kind::bad_luck:
            break;
    }
    return {Role::weigh_for, true};
}

void paint_part(Kit& kit, const Box& box, MinutesPart::Kind kind) {
    const PartLook look = look_of(kind);
    if (!look.hatched) {
        kit.fill(box, look.role, 2);
        return;
    }
    kit.fill(box, Role::bar_track, 2);
    kit.hatch(box, 6, look.role);
    kit.outline(box, look.role, 1.5F, 2);
}

// All minutes as one bar, and under it what each part of it is.
void draw_minutes(StudyScene& scene, const std::vector<MinutesPart>& parts) {
    Kit& kit = scene.kit;
    double sum = 0;
    for (const MinutesPart& part : parts) sum += part.minutes;
    if (sum <= 0) return;
    const Box bar = kit.take(kit.px(30));
    float x = bar.x;
    for (const MinutesPart& part : parts) {
        const float w = bar.w * static_cast<float>(part.minutes / sum);
        paint_part(kit, {x, bar.y, std::max(kit.px(3), w - kit.px(2)), bar.h}, part.kind);
        x += w;
    }
    kit.gap(8);
    for (const MinutesPart& part : parts) {
        const Box start = kit.take(0);
        const float indent = kit.px(34);
        const float used = kit.inside({start.x + indent, start.y, start.w - indent, 0},
                                      [&] { kit.text(part.words, Type::body, Role::ink); });
        paint_part(kit, {start.x, start.y + kit.px(3), kit.px(20), kit.px(16)}, part.kind);
        kit.take(used);
        kit.gap(5);
    }
}

void draw_habit(Kit& kit, const practice::Habit& habit) {
    const float indent = kit.px(34);
    const Box start = kit.take(0);
    const float used = kit.inside({start.x + indent, start.y, start.w - indent, 0}, [&] {
        kit.text(habit.name, Type::strong, Role::ink);
        kit.text(habit.text, Type::body, Role::ink);
    });
    kit.icon({start.x, start.y, kit.px(22), kit.px(22)}, habit.kept ? Icon::tick : Icon::cross,
             habit.kept ? Role::right : Role::wrong);
    kit.take(used);
    kit.gap(8);
}

void draw_ranking(Kit& kit, const std::vector<practice::RankLine>& ranking) {
    for (const practice::RankLine& rank : ranking) {
        const float side = kit.px(92), gauge = kit.px(120);
        const float name = kit.width() - side - gauge - kit.px(12);
        const std::string text = rank.true_fault ? rank.name + " (it was this)" : rank.name;
        const Type type = rank.true_fault ? Type::strong : Type::body;
        const float h = kit.text_height(text, type, name);
        const Box box = kit.take(h + kit.px(4));
        kit.wrapped_in({box.x, box.y, name, h}, text, type, Role::ink);
        const Box bar{box.x + name + kit.px(6), box.y + h / 2 - kit.px(5), gauge, kit.px(10)};
        kit.bar(bar, rank.probability, rank.true_fault ? Role::right : Role::bar_other);
        kit.line_in({box.right() - side, box.y, side, h}, rank.percent, Type::body, Role::ink, Align::right);
    }
}

// One piece of work; the ranking after it and the better step unfold.
void draw_step(StudyScene& scene, const practice::DebriefStep& step) {
    Kit& kit = scene.kit;
    kit.card({.pad = 14, .edge = step.good ? Role::right : Role::weigh_against}, [&] {
        const std::string number = std::to_string(step.number);
        kit.text("STEP " + number + " · " + step.minutes, Type::caps, Role::ink2);
        kit.gap(2);
        kit.text(step.did, Type::strong, Role::ink);
        kit.text(step.found, Type::body, Role::ink);
        for (const std::string& note : step.notes) {
            kit.gap(3);
            kit.text(note, Type::small, Role::ink2);
        }
        kit.gap(4);
        kit.text(step.verdict, Type::strong, step.good ? Role::right : Role::weigh_against);
        if (!step.best.empty()) {
            kit.gap(4);
            kit.text(step.best_label + ": " + step.best, Type::body, Role::ink);
            if (!step.why.empty()) kit.text(step.why, Type::small, Role::ink2);
        }
        if (step.ranking.empty()) return;
        const std::string name = "step." + number;
        const bool open = scene.view.is_open(name);
        if (kit.fold(name, "What it may have been after that", open)) scene.view.fold(name);
        if (open) draw_ranking(kit, step.ranking);
    });
    kit.gap(10);
}

void draw_ways_from_here(StudyScene& scene) {
    Kit& kit = scene.kit;
    const ButtonLook next{.label = "The next boat", .face = Face::primary, .key = "B"};
    kit.tab_starts_here();
    if (kit.button("debrief.next", kit.take(kit.px(56)), next) || take_command(kit, 'b')) {
        scene.ask(BeginBoat{std::nullopt, ""});
    }
    kit.gap(8);
    const ButtonLook boat{.label = "See this boat with its faults", .icon = Icon::wheel, .key = "V"};
    if (kit.button("debrief.boat", kit.take(kit.px(52)), boat) || take_command(kit, 'v')) {
        scene.action = OpenOnBoat{};
    }
    kit.gap(8);
    const ButtonLook back{.label = "Back to Study", .icon = Icon::back, .key = "Esc"};
    if (draw_small_button(kit, "debrief.back", back)) scene.ask(ShowStudy{StudyShowing::start});
}

}  // namespace

void draw_debrief(StudyScene& scene) {
    Kit& kit = scene.kit;
    const practice::Debrief& debrief = *scene.page.debrief;
    draw_trouble(kit, scene.page.trouble);
    draw_skipped_cautions(scene.kit, debrief.skipped_cautions);
    kit.card({.pad = 22, .edge = Role::accent}, [&] {
        kit.text("HOW IT WENT", Type::caps, Role::accent);
        kit.gap(4);
        kit.text(debrief.headline, Type::h1, Role::ink);
        kit.gap(6);
        kit.text(debrief.truth, Type::body, Role::ink);
        kit.gap(14);
        draw_minutes(scene, practice::minutes_bar(debrief.ended));
        const bool open = scene.view.is_open("minutes");
        if (kit.fold("debrief.minutes", "The minutes in words", open)) scene.view.fold("minutes");
        if (!open) return;
        for (const std::string& line : debrief.minutes) {
            kit.text(line, Type::body, Role::ink);
            kit.gap(4);
        }
    });
    kit.gap(14);
    kit.card({.pad = 20}, [&] {
        kit.text("Three things to practise", Type::h2, Role::ink);
        kit.gap(8);
        draw_numbered(kit, debrief.practise);
        draw_ways_from_here(scene);
    });
    kit.gap(14);
    kit.card({.pad = 20}, [&] {
        kit.text("Habits", Type::h2, Role::ink);
        kit.gap(8);
        for (const practice::Habit& habit : debrief.habits) draw_habit(kit, habit);
        kit.text(debrief.sureness, Type::body, Role::ink);
        kit.gap(4);
        kit.text(debrief.help, Type::body, Role::ink);
    });
    kit.gap(14);
    kit.text("Step by step", Type::h1, Role::ink);
    kit.gap(6);
    const bool open = scene.view.is_open("at_start");
    if (kit.fold("debrief.start", "What it may have been at the start", open)) scene.view.fold("at_start");
    if (open) draw_ranking(kit, debrief.ranking_at_start);
    kit.gap(6);
    for (const practice::DebriefStep& step : debrief.steps) draw_step(scene, step);
}

}  // namespace hardover::window

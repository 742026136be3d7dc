// Why this question and what would turn the order of the causes, drawn: a bar for each cause as it would
// stand then, with a tick where it stands now, and the words beside it.
#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

constexpr float bar_height = 10;  // dp
constexpr const char* outlook_name = "outlook";
constexpr const char* turning_name = "turning";

// A bar that moved: filled to where it would stand, a tick where it stands now.
void draw_moved_bar(Kit& kit, const Box& box, double now, double then, Role role) {
    kit.bar(box, then, role);
    const float x = box.x + box.w * static_cast<float>(std::clamp(now, 0.0, 1.0));
    kit.fill({x - kit.px(1.5F), box.y - kit.px(4), kit.px(3), box.h + kit.px(8)}, Role::ink);
}

// "↑", "↓" or nothing where it hardly moves.
const char* sign_of(const CauseMove& move) {
    constexpr double hardly = 0.005;
    if (move.then > move.now + hardly) return "↑ ";
    return move.then < move.now - hardly ? "↓ " : "";
}

void draw_move(Kit& kit, const CauseMove& move) {
    const std::string value = sign_of(move) + move.then_text;
    const float percent = kit.text_width("↓ under 1 %", Type::strong) + 1;  // the widest there is
    const float width = kit.width(), gauge = std::min(width * 0.3F, kit.px(220));
    const float room = width - percent - gauge - kit.px(12);
    const Type type = move.first ? Type::strong : Type::body;
    const float h = std::max(kit.px(24), kit.text_height(move.name, type, room));
    const Box box = kit.take(h + kit.px(3));
    kit.wrapped_in({box.x, box.y, room, h}, move.name, type, Role::ink);
    draw_moved_bar(
        kit, {box.x + room + kit.px(8), box.y + (h - kit.px(bar_height)) / 2, gauge, kit.px(bar_height)},
        move.now, move.then, move.first ? Role::accent : Role::bar_other);
    kit.line_in({box.right() - percent, box.y, percent, h}, value, type, Role::ink, Align::right);
}

// The answer and how likely it is.
void draw_chance(Kit& kit, const AnswerOutlook& answer) {
    kit.text(answer.answer, Type::strong, Role::ink);
    kit.gap(4);
    const std::string chance = "chance " + answer.chance_text;
    const float words = kit.text_width(chance, Type::small) + 1;
    const Box line = kit.take(kit.theme().line_height(Type::small));
    const float bar = std::clamp(line.w - words - kit.px(8), kit.px(20), kit.px(120));
    kit.bar({line.x, line.middle_y() - kit.px(4), bar, kit.px(8)}, answer.chance, Role::ink2);
    kit.line_in({line.x + bar + kit.px(8), line.y, words, line.h}, chance, Type::small, Role::ink2);
}

void draw_answer(Kit& kit, const AnswerOutlook& answer) {
    const Box line = kit.take(kit.px(1));
    kit.hairline(line);
    kit.gap(8);
    const auto moves = [&] {
        for (const CauseMove& move : answer.causes) draw_move(kit, move);
    };
    if (kit.width() < kit.px(520)) {
        draw_chance(kit, answer);
        kit.gap(4);
        moves();
    } else {
        const Box start = kit.take(0);
        const float left = start.w * 0.32F, gap = kit.px(18);
        const float words = kit.inside({start.x, start.y, left, 0}, [&] { draw_chance(kit, answer); });
        const float bars = kit.inside({start.x + left + gap, start.y, start.w - left - gap, 0}, moves);
        kit.take(std::max(words, bars));
    }
    kit.gap(8);
}

bool has_outlook(const JobScene& scene) {
    const StepCard::Kind kind = scene.card.kind;
    const bool asks =
        kind == StepCard::Kind::question || kind == StepCard::Kind::check || kind == StepCard::Kind::prove;
    if (!asks) return false;
    return (scene.outlook != nullptr && !scene.outlook->answers.empty()) || !scene.card.branches.empty();
}

// A question has nothing else to show; the steps of a check come first, and so do answers that have no place
// of their own.
bool outlook_open_at_first(const JobScene& scene) {
    return !scene.dock_inside && scene.card.kind == StepCard::Kind::question && scene.card.steps.empty();
}

// Where there is no picture, what each answer would tell in words.
void draw_branches(JobScene& scene) {
    for (const std::string& branch : scene.card.branches) {
        scene.kit.text(branch, Type::body, Role::ink2);
        scene.kit.gap(3);
    }
}

bool cured(const JobScene& scene) {
    const StepCard::Kind kind = scene.page.card.kind;
    return kind == StepCard::Kind::after || kind == StepCard::Kind::handed_back;
}

void ask_for_turning(JobScene& scene) {
    const bool asked = scene.turning != nullptr || scene.turning_in_work;
    if (!asked && !scene.action) scene.action = WorkOutTurning{};
}

void draw_turn(Kit& kit, const TurnSketch& turn) {
    kit.hairline(kit.take(kit.px(1)));
    kit.gap(6);
    kit.text(turn.condition, Type::body, Role::ink);
    if (!turn.of_given) kit.text("chance " + turn.chance_text, Type::small, Role::ink2);
    kit.gap(4);
    const float icon = kit.px(20), percent = kit.text_width(turn.probability_text, Type::strong) + 1;
    const float room = kit.width() - icon - percent - kit.px(20);
    const float h = std::max(icon, kit.text_height(turn.first, Type::strong, room));
    const Box line = kit.take(h);
    kit.icon({line.x, line.middle_y() - icon / 2, icon, icon}, Icon::hand_over, Role::accent);
    kit.wrapped_in({line.x + icon + kit.px(8), line.y, room, h}, turn.first, Type::strong, Role::ink);
    kit.line_in({line.right() - percent, line.y, percent, h}, turn.probability_text, Type::strong,
                Role::accent, Align::right);
    kit.gap(4);
    const Box bar = kit.take(kit.px(8));
    kit.bar({bar.x + icon + kit.px(8), bar.y, bar.w - icon - kit.px(8), bar.h}, turn.probability,
            Role::accent);
    kit.gap(8);
}

// First now on top; under it, for each turn, what has to be so and who would be first then.
void draw_turning_sketch(Kit& kit, const TurningSketch& turning) {
    if (turning.first.empty()) {
        for (const std::string& line : turning.nothing) kit.text(line, Type::body, Role::ink2);
        return;
    }
    kit.text("FIRST NOW", Type::caps, Role::ink2);
    kit.gap(2);
    const float percent = kit.text_width(turning.probability_text, Type::strong) + 1;
    const float room = kit.width() - percent - kit.px(10);
    const Box line = kit.take(kit.text_height(turning.first, Type::strong, room));
    kit.wrapped_in({line.x, line.y, room, line.h}, turning.first, Type::strong, Role::ink);
    kit.line_in({line.right() - percent, line.y, percent, line.h}, turning.probability_text, Type::strong,
                Role::ink, Align::right);
    kit.gap(4);
    kit.bar(kit.take(kit.px(8)), turning.probability, Role::bar_other);
    kit.gap(10);
    bool told = false;
    for (const TurnSketch& turn : turning.turns) {
        if (turn.of_given && !told) {
            kit.text("IF AN ANSWER IS WRONG", Type::caps, Role::ink2);
            kit.gap(4);
            told = true;
        }
        draw_turn(kit, turn);
    }
    for (const std::string& line : turning.nothing) {
        kit.text(line, Type::small, Role::ink2);
        kit.gap(4);
    }
}

void fold_outlook(JobScene& scene) {
    scene.view.fold(outlook_name, outlook_open_at_first(scene));
}

void fold_turning(JobScene& scene) {
    scene.view.fold(turning_name);
    if (scene.view.is_open(turning_name)) ask_for_turning(scene);
}

// All causes that are in the running show what speaks for and against them, or only the first again.
void fold_evidence(JobScene& scene) {
    JobView& view = scene.view;
    bool first = true, any_shut = false;
    for (const CauseLine& cause : scene.page.causes) {
        if (is_out(cause)) continue;
        any_shut = any_shut || !view.is_open("cause." + cause.id, first);
        first = false;
    }
    first = true;
    for (const CauseLine& cause : scene.page.causes) {
        if (is_out(cause)) continue;
        const std::string name = "cause." + cause.id;
        if (view.is_open(name, first) != (any_shut || first)) view.fold(name, first);
        first = false;
    }
    view.tab = JobTab::ahead;
}

}  // namespace

void draw_outlook(JobScene& scene) {
    if (!has_outlook(scene)) return;
    Kit& kit = scene.kit;
    kit.gap(6);
    const bool at_first = outlook_open_at_first(scene);
    const bool open = scene.view.is_open(outlook_name, at_first);
    if (kit.fold("card.outlook", "What each answer would tell", open)) fold_outlook(scene);
    if (!open) return;
    if (scene.outlook == nullptr || scene.outlook->answers.empty()) {
        draw_branches(scene);
        return;
    }
    kit.text("Bar: how likely a cause would be then. Tick: how likely it is now.", Type::small, Role::ink2);
    kit.gap(6);
    for (const AnswerOutlook& answer : scene.outlook->answers) draw_answer(kit, answer);
}

void draw_turning(JobScene& scene) {
    Kit& kit = scene.kit;
    if (scene.page.causes.empty() || is_out(scene.page.causes.front()) || cured(scene)) return;
    const bool open = scene.view.is_open(turning_name);
    if (kit.fold("ahead.turning", "What would turn it", open)) fold_turning(scene);
    if (!open) return;
    if (scene.turning == nullptr) {
        ask_for_turning(scene);
        kit.text("Working it out ...", Type::body, Role::ink2);
        return;
    }
    kit.card({.pad = 14}, [&] { draw_turning_sketch(kit, *scene.turning); });
    kit.gap(8);
}

void use_why_keys(JobScene& scene) {
    Kit& kit = scene.kit;
    if (kit.take_letter(U'w') || kit.take_letter(U'W')) {
        scene.view.tab = JobTab::now;
        if (has_outlook(scene)) fold_outlook(scene);
    }
    if (kit.take_letter(U'x') || kit.take_letter(U'X')) {
        scene.view.tab = JobTab::ahead;
        fold_turning(scene);
    }
    if (kit.take_letter(U'e') || kit.take_letter(U'E')) fold_evidence(scene);
}

}  // namespace hardover::window

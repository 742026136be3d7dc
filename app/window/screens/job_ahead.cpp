// What it may be and what lies ahead: ranked causes with their evidence, the plan, and what is taken for
// granted.
#include <cmath>

#include "app/window/screens/job_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

constexpr float sign_size = 22;         // dp
constexpr float narrow_evidence = 300;  // dp; below, the words need the room more than the bar

// Of the bar, both sides.
float gauge_of(const Kit& kit, float width) {
    return kit.px(width < kit.px(narrow_evidence) ? 48 : 80);
}

float words_room(const Kit& kit, float width) {
    return width - gauge_of(kit, width) - kit.px(sign_size + 18);
}

float weight_height(const Kit& kit, const WeightText& weight, float width) {
    return std::max(kit.px(24), kit.text_height(weight.text, Type::small, words_room(kit, width)));
}

// One piece of evidence: its sign on a chip, and a bar from the middle, right for and left against.
void draw_weight(Kit& kit, const WeightText& weight, bool speaks_for) {
    const Role ink = speaks_for ? Role::weigh_for : Role::weigh_against;
    const float gauge = gauge_of(kit, kit.width()), sign = kit.px(sign_size);
    const float room = words_room(kit, kit.width());
    const float h = weight_height(kit, weight, kit.width());
    const Box box = kit.take(h + kit.px(4));
    const Box chip{box.x, box.y, sign, sign};
    kit.fill(chip, speaks_for ? Role::weigh_for_tint : Role::weigh_against_tint, 11);
    kit.icon(chip.inset(kit.px(3)), speaks_for ? Icon::plus : Icon::minus, ink);
    kit.wrapped_in({box.x + sign + kit.px(8), box.y, room, h}, weight.text, Type::small, Role::ink);
    // 12 decibans (odds sixteenfold) fill a side.
    const float middle = box.right() - gauge / 2;
    const float full = gauge / 2;
    const float reach = full * static_cast<float>(std::min(1.0, std::abs(weight.decibans) / 12));
    const float y = box.y + sign / 2 - kit.px(4);
    kit.fill({box.right() - gauge, y + kit.px(3), gauge, kit.px(2)}, Role::bar_track);
    kit.fill({speaks_for ? middle : middle - reach, y, std::max(reach, kit.px(3)), kit.px(8)}, ink, 2);
    kit.fill({middle - kit.px(1), y - kit.px(3), kit.px(2), kit.px(14)}, Role::ink2);
}

// What speaks for and against a folded cause, while the pointer rests on it.
void show_beside(Kit& kit, const Box& head, const CauseLine& cause) {
    kit.floating_card(head, kit.px(440), [&kit, cause] {
        kit.text(cause.name, Type::strong, Role::ink);
        kit.gap(6);
        for (const WeightText& weight : cause.weights_for) draw_weight(kit, weight, true);
        for (const WeightText& weight : cause.weights_against) draw_weight(kit, weight, false);
        if (cause.weights_for.empty() && cause.weights_against.empty()) {
            kit.text("Nothing speaks for or against it yet.", Type::small, Role::ink2);
        }
    });
}

// What speaks is an answer to a finding, or a rule.
EntryKey entry_of(const JobPage& page, const WeightText& weight) {
    for (const AnswerLine& answer : page.answers) {
        if (answer.finding == weight.id) return {"finding", weight.id};
    }
    return {"rule", weight.id};
}

// A piece of evidence that leads to its entry. What became of remedies has none.
void draw_linked_weight(JobScene& scene, const std::string& id, const WeightText& weight, bool speaks_for) {
    Kit& kit = scene.kit;
    if (weight.id.empty()) return draw_weight(kit, weight, speaks_for);
    const float pad = kit.px(6), way = kit.px(18);
    const float room = kit.width() - 2 * pad - way;
    const float h = weight_height(kit, weight, room);
    const Box box = kit.take(std::max(kit.px(44), h + 2 * pad));
    const Kit::Touch t = kit.touch(id, box, weight.text);
    if (t.over) kit.fill(box, Role::raised_over, 6);
    if (t.focused) kit.outline(box, Role::accent, 3, 6);
    kit.inside({box.x + pad, box.y + (box.h - h) / 2, room, 0},
               [&] { draw_weight(kit, weight, speaks_for); });
    kit.icon({box.right() - way, box.middle_y() - kit.px(7), kit.px(14), kit.px(14)}, Icon::shut, Role::ink2);
    if (t.pressed) scene.action = KnowledgeAction{ShowKnowledge{entry_of(scene.page, weight)}};
}

// The heaviest pieces on both sides; the lighter ones unfold.
void draw_weights(JobScene& scene, const CauseLine& cause) {
    Kit& kit = scene.kit;
    const std::string name = "weights." + cause.id;
    const bool all = scene.view.is_open(name);
    const std::size_t most_for =
        all ? cause.weights_for.size() : std::min<std::size_t>(3, cause.weights_for.size());
    const std::size_t most_against =
        all ? cause.weights_against.size() : std::min<std::size_t>(2, cause.weights_against.size());
    const std::string id = "weight." + cause.id;
    for (std::size_t i = 0; i < most_for; ++i)
        draw_linked_weight(scene, id + ".for." + std::to_string(i), cause.weights_for[i], true);
    for (std::size_t i = 0; i < most_against; ++i)
        draw_linked_weight(scene, id + ".against." + std::to_string(i), cause.weights_against[i], false);
    const std::size_t lighter =
        cause.weights_for.size() + cause.weights_against.size() - most_for - most_against;
    if (lighter == 0 && !all) return;
    const std::string label = all ? "Only the heaviest" : std::to_string(lighter) + " lighter";
    if (kit.fold("fold." + name, label, all)) scene.view.fold(name);
}

void draw_state(Kit& kit, const CauseLine& cause) {
    if (cause.state.empty()) return;
    kit.gap(4);
    const bool proved = cause.state == "proved";
    if (!proved) {
        kit.text(cause.state, Type::small, Role::ink2);
        return;
    }
    const Box line = kit.take(kit.theme().line_height(Type::strong));
    kit.icon({line.x, line.y + kit.px(1), kit.px(20), kit.px(20)}, Icon::tick, Role::right);
    kit.line_in({line.x + kit.px(26), line.y, line.w - kit.px(26), line.h}, "Proved", Type::strong,
                Role::right);
}

void draw_plan(JobScene& scene) {
    Kit& kit = scene.kit;
    if (scene.page.plan.empty() && scene.page.also.empty()) return;
    kit.gap(8);
    kit.text("Plan", Type::h2, Role::ink);
    kit.gap(6);
    kit.card({.pad = 14}, [&] {
        int number = 0;
        for (const PlanLine& line : scene.page.plan) {
            const std::string minutes = std::to_string(std::lround(line.minutes)) + " min";
            const float w = kit.text_width(minutes, Type::strong) + 1;
            const float indent = kit.px(26);
            const Box start = kit.take(0);
            const float used = kit.inside({start.x + indent, start.y, start.w - indent - w - kit.px(10), 0},
                                          [&] { kit.text(line.text, Type::body, Role::ink); });
            const float h = kit.theme().line_height(Type::body);
            kit.line_in({start.x, start.y, indent, h}, std::to_string(++number), Type::strong, Role::accent);
            kit.line_in({start.right() - w, start.y, w, h}, minutes, Type::strong, Role::ink2, Align::right);
            kit.take(used);
            kit.gap(7);
        }
        if (!scene.page.also.empty()) {
            kit.gap(4);
            kit.text("Also worth doing", Type::small, Role::ink2);
            for (const std::string& other : scene.page.also) kit.text(other, Type::small, Role::ink);
        }
    });
}

void draw_list(Kit& kit, const char* title, const char* note, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    kit.gap(14);
    kit.text(title, Type::strong, Role::ink);
    if (note[0] != 0) kit.text(note, Type::small, Role::ink2);
    for (const std::string& line : lines) {
        kit.gap(5);
        const Box start = kit.take(0);
        kit.fill({start.x, start.y + kit.px(8), kit.px(6), kit.px(6)}, Role::outline, 3);
        const float used = kit.inside({start.x + kit.px(16), start.y, start.w - kit.px(16), 0},
                                      [&] { kit.text(line, Type::small, Role::ink); });
        kit.take(used);
    }
}

void draw_not_listed(JobScene& scene) {
    Kit& kit = scene.kit;
    if (scene.page.not_listed.empty()) return;
    kit.card({.fill = Role::panel, .pad = 12}, [&] {
        kit.text(scene.page.not_listed, Type::strong, Role::ink);
        kit.gap(6);
        const Box bar = kit.take(kit.px(8));
        kit.bar(bar, scene.page.not_listed_probability, Role::bar_other);
    });
    kit.gap(8);
}

void draw_causes(JobScene& scene) {
    Kit& kit = scene.kit;
    std::size_t out = 0;
    bool first = true, told = false;  // told: what is not on the list stands where its odds put it
    for (const CauseLine& cause : scene.page.causes) {
        if (is_out(cause)) {
            ++out;
            continue;
        }
        if (!told && scene.page.not_listed_probability > cause.probability) {
            draw_not_listed(scene);
            told = true;
        }
        draw_cause(scene, cause, first);
        first = false;
    }
    if (!told) draw_not_listed(scene);
    if (!scene.page.several.empty()) {
        kit.text(scene.page.several, Type::body, Role::ink);
        kit.gap(8);
    }
    if (out == 0) return;
    const bool open = scene.view.is_open("out");
    if (kit.fold("fold.out", "Ruled out (" + std::to_string(out) + ")", open)) scene.view.fold("out");
    for (const CauseLine& cause : scene.page.causes) {
        if (!open || !is_out(cause)) continue;
        draw_known_link(scene, "cause." + cause.id + ".known", cause.name + ": " + cause.state,
                        {"cause", cause.id});
    }
}

}  // namespace

bool is_out(const CauseLine& cause) {
    return cause.probability <= 0 && !cause.state.empty();
}

void draw_cause(JobScene& scene, const CauseLine& cause, bool open_at_first) {
    Kit& kit = scene.kit;
    const std::string name = "cause." + cause.id;
    const bool open = scene.view.is_open(name, open_at_first);
    const Role line = open_at_first ? Role::accent : Role::hairline;
    kit.card({.line = line, .pad = 12, .line_width = open_at_first ? 2.0F : 1.0F}, [&] {
        const Type size = open_at_first ? Type::number : Type::strong;
        const float percent = kit.text_width(cause.percent, size) + 1;
        const float chevron = kit.px(26);
        const float room = kit.width() - percent - chevron - kit.px(10);
        const float h =
            std::max(kit.theme().line_height(size), kit.text_height(cause.name, Type::strong, room));
        const Box head = kit.take(h + kit.px(16));
        const Kit::Touch t = kit.touch(
            name, {head.x - kit.px(8), head.y - kit.px(6), head.w + kit.px(16), std::max(kit.px(44), head.h)},
            cause.name, true, open);
        if (t.focused)
            kit.outline({head.x - kit.px(8), head.y - kit.px(6), head.w + kit.px(16), head.h + kit.px(6)},
                        Role::accent, 3, 6);
        kit.icon({head.x - kit.px(3), head.y + kit.px(3), kit.px(18), kit.px(18)},
                 open ? Icon::open : Icon::shut, Role::ink2);
        kit.wrapped_in({head.x + chevron, head.y, room, h}, cause.name, Type::strong, Role::ink);
        kit.line_in({head.right() - percent, head.y, percent, h}, cause.percent, size,
                    open_at_first ? Role::accent : Role::ink, Align::right);
        kit.bar({head.x, head.bottom() - kit.px(11), head.w, kit.px(8)}, cause.probability,
                open_at_first ? Role::accent : Role::bar_other);
        draw_state(kit, cause);
        if (t.pressed) scene.view.fold(name, open_at_first);
        if (t.over && !open) show_beside(kit, head, cause);
        if (!open) return;
        kit.gap(4);
        draw_weights(scene, cause);
        if (cause.weights_for.empty() && cause.weights_against.empty()) {
            kit.text("Nothing speaks for or against it yet.", Type::small, Role::ink2);
        }
        kit.gap(6);
        draw_known_link(scene, name + ".known", "What is known about it", {"cause", cause.id});
    });
    kit.gap(8);
}

void draw_ahead(JobScene& scene) {
    Kit& kit = scene.kit;
    kit.text("What it may be", Type::h2, Role::ink);
    if (!scene.page.minutes_left.empty()) {
        const Box line = kit.take(0);
        kit.icon({line.x, line.y + kit.px(1), kit.px(18), kit.px(18)}, Icon::clock, Role::ink2);
        const float used = kit.inside({line.x + kit.px(26), line.y, line.w - kit.px(26), 0},
                                      [&] { kit.text(scene.page.minutes_left, Type::small, Role::ink2); });
        kit.take(used);
    }
    kit.gap(8);
    if (!scene.page.conflict.empty()) {
        kit.card({.fill = Role::safety_tint, .line = Role::safety, .pad = 12, .edge = Role::safety},
                 [&] { kit.text(scene.page.conflict, Type::body, Role::ink); });
        kit.gap(10);
    }
    draw_causes(scene);
    draw_turning(scene);
    draw_plan(scene);
    draw_list(kit, "Not ours to decide", "", scene.page.deferrals);
    draw_list(kit, "Taken for granted", "Measure these on the boat when in doubt.", scene.page.assumptions);
}

}  // namespace hardover::window

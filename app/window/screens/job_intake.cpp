// The boat as it comes in: complaint, history, what can be done here, and how it is rigged. All optional.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

enum class Digits { none, press };

// Buttons for one choice out of some, or for several; gives the id of the one pressed.
std::string draw_choices(Kit& kit, const std::string& prefix, const std::vector<ChoiceText>& choices,
                         Digits digits = Digits::none) {
    std::vector<std::string> ids, caps;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        ids.push_back(prefix + choices[i].id);
        caps.push_back(digits == Digits::press && i < 9 ? std::to_string(i + 1) : "");
    }
    std::vector<ChoiceLook> looks;
    int pressed = -1;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        looks.push_back({.label = choices[i].text, .cap = caps[i], .selected = choices[i].chosen});
        if (!caps[i].empty() && kit.take_letter(U'1' + static_cast<char32_t>(i)))
            pressed = static_cast<int>(i);
    }
    const int clicked = draw_choice_cells(kit, ids, looks, 3);
    if (clicked >= 0) pressed = clicked;
    return pressed < 0 ? "" : choices[static_cast<std::size_t>(pressed)].id;
}

bool is_chosen(const std::vector<ChoiceText>& choices, const std::string& id) {
    for (const ChoiceText& choice : choices) {
        if (choice.id == id) return choice.chosen;
    }
    return false;
}

void draw_rig_line(JobScene& scene, const RigLine& line) {
    Kit& kit = scene.kit;
    if (line.choices.empty()) {
        draw_number(scene, line.field);
        return;
    }
    kit.text(line.name, Type::small, Role::ink);
    kit.text(line.ask, Type::small, Role::ink2);
    if (line.assumed) kit.text("Assumed: " + line.value, Type::small, Role::weigh_against);
    kit.gap(6);
    const std::string pressed = draw_choices(kit, "rig." + line.id + ".", line.choices);
    if (!pressed.empty()) scene.action = SetRig{line.id, is_chosen(line.choices, pressed) ? "" : pressed};
    kit.gap(14);
}

// Choices one under the other, then numbers, two side by side where there is room.
void draw_rig_lines(JobScene& scene, const std::vector<const RigLine*>& lines) {
    Kit& kit = scene.kit;
    const bool two = kit.width() > kit.px(520);
    const float gap = kit.px(22);
    const float w = two ? (kit.width() - gap) / 2 : kit.width();
    std::vector<const RigLine*> numbers;
    for (const RigLine* line : lines) {
        if (line->choices.empty()) {
            numbers.push_back(line);
        } else {
            draw_rig_line(scene, *line);
        }
    }
    for (std::size_t i = 0; i < numbers.size(); i += two ? 2 : 1) {
        const Box start = kit.take(0);
        float h = kit.inside({start.x, start.y, w, 0}, [&] { draw_rig_line(scene, *numbers[i]); });
        if (two && i + 1 < numbers.size()) {
            h = std::max(h, kit.inside({start.x + w + gap, start.y, w, 0},
                                       [&] { draw_rig_line(scene, *numbers[i + 1]); }));
        }
        kit.take(h);
    }
}

std::size_t told_of(const std::vector<const RigLine*>& lines) {
    return static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), [](const RigLine* line) {
        return !line->value.empty() && !line->assumed;
    }));
}

// The rest is folded, with how much of it is told.
void draw_rig_group(JobScene& scene, const std::string& name, const std::string& label,
                    const std::vector<const RigLine*>& lines) {
    if (lines.empty()) return;
    Kit& kit = scene.kit;
    const bool open = scene.view.is_open(name);
    const std::string count =
        " (" + std::to_string(told_of(lines)) + " of " + std::to_string(lines.size()) + " told)";
    if (kit.fold("fold." + name, label + count, open)) scene.view.fold(name);
    if (!open) return;
    kit.gap(6);
    draw_rig_lines(scene, lines);
}

// What decides on the causes of this complaint first.
void draw_rig(JobScene& scene) {
    std::vector<const RigLine*> first, built, sizes;
    for (const RigLine& line : scene.page.rig) {
        (line.matters ? first : line.choices.empty() ? sizes : built).push_back(&line);
    }
    Kit& kit = scene.kit;
    if (!first.empty()) {
        kit.text("WHAT DECIDES MOST HERE", Type::caps, Role::accent);
        kit.gap(8);
        draw_rig_lines(scene, first);
    }
    draw_rig_group(scene, "rig_built", "How else it is built and used", built);
    draw_rig_group(scene, "rig_sizes", "Other sizes and figures", sizes);
}

void draw_complaints(JobScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = scene.low ? 16.0F : 22.0F, .edge = Role::accent}, [&] {
        const bool asked = scene.page.card.kind == StepCard::Kind::intake;
        kit.text("INTAKE", Type::caps, Role::accent);
        kit.gap(5);
        kit.text(asked ? scene.page.card.heading : "The boat and its history",
                 scene.low ? Type::h2 : Type::h1, Role::ink);
        if (asked && !scene.page.card.why.empty()) {
            kit.gap(6);
            kit.text(scene.page.card.why, Type::body, Role::ink2);
        }
        if (!scene.page.words.empty()) {
            kit.gap(10);
            const Box start = kit.take(0);
            const float used = kit.inside({start.x + kit.px(16), start.y, start.w - kit.px(16), 0}, [&] {
                kit.text("In the customer's words", Type::small, Role::ink2);
                kit.text("“" + scene.page.words + "”", Type::strong, Role::ink);
            });
            kit.fill({start.x, start.y, kit.px(4), used}, Role::accent, 2);
            kit.take(used);
        }
        kit.gap(14);
        kit.text("What is complained of?", Type::strong, Role::ink);
        kit.gap(8);
        const std::string pressed = draw_choices(kit, "complaint.", scene.page.complaints, Digits::press);
        if (!pressed.empty()) scene.action = SwitchComplaint{pressed};
    });
    kit.gap(14);
}

}  // namespace

void draw_intake(JobScene& scene) {
    Kit& kit = scene.kit;
    draw_complaints(scene);
    kit.card({}, [&] {
        kit.text("What has happened to the steering lately?", Type::strong, Role::ink);
        kit.gap(8);
        const std::string history = draw_choices(kit, "history.", scene.page.histories);
        if (!history.empty()) {
            scene.action = SetHistory{is_chosen(scene.page.histories, history) ? "" : history};
        }
        if (!scene.page.needs.empty()) {
            kit.gap(16);
            kit.text("What can be done here and now?", Type::strong, Role::ink);
            kit.text("Press what is not possible. Checks that need it are put off.", Type::small, Role::ink2);
            kit.gap(8);
            const std::string need = draw_choices(kit, "need.", scene.page.needs);
            if (!need.empty()) scene.action = SwitchNeed{need};
        }
    });
    kit.gap(14);
    kit.card({}, [&] {
        kit.text("How the boat is rigged", Type::h2, Role::ink);
        kit.text("Leave open what you do not know. A figure taken for granted is marked as assumed.",
                 Type::small, Role::ink2);
        kit.gap(12);
        draw_rig(scene);
    });
}

}  // namespace hardover::window

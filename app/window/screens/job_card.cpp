// The step in hand: what to do and why, cautions before the steps.
#include <set>

#include "app/window/screens/job_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

constexpr float caution_edge = 46;  // dp

// "Tools   Tape, light": name at the left, the words beside it, or under it where there is little room.
void draw_named(Kit& kit, const char* name, const std::vector<std::string>& parts) {
    if (parts.empty()) return;
    kit.gap(8);
    const float indent = kit.width() > kit.px(420) ? kit.px(112) : 0;
    const Box start = kit.take(0);
    if (indent == 0) draw_caption(kit, name);
    const Box under = kit.take(0);
    const float used = kit.inside({under.x + indent, under.y, under.w - indent, 0}, [&] {
        for (const std::string& part : parts) {
            kit.text(part, Type::body, Role::ink);
            kit.gap(2);
        }
    });
    if (indent > 0) {
        kit.line_in({start.x, start.y, indent, kit.theme().line_height(Type::body)}, name, Type::caps,
                    Role::ink2);
    }
    kit.take(used);
}

std::vector<std::string> one_line(const std::vector<std::string>& parts) {
    std::string line;
    for (const std::string& part : parts) line += (line.empty() ? "" : ", ") + part;
    return line.empty() ? std::vector<std::string>{} : std::vector<std::string>{line};
}

// Back to the step that was asked, when a finding was looked up.
void draw_way_back(JobScene& scene) {
    Kit& kit = scene.kit;
    const ButtonLook look{.label = "Back to the step in hand", .icon = Icon::back, .key = "Esc"};
    const Box line = kit.take(kit.px(44));
    if (kit.button("card.back", {line.x, line.y, std::min(line.w, kit.button_width(look)), line.h}, look)) {
        scene.action = Show{Showing::step, ""};
    }
    kit.gap(12);
}

// Those of the step first, then those raised by rules, each once.
std::vector<CautionText> all_cautions(const JobScene& scene) {
    std::vector<CautionText> cautions = scene.card.cautions;
    std::set<std::string> seen;
    for (const CautionText& caution : cautions) seen.insert(caution.id);
    for (const CautionText& caution : scene.page.cautions) {
        if (seen.insert(caution.id).second) cautions.push_back(caution);
    }
    return cautions;
}

Role edge_of(StepCard::Kind kind) {
    switch (kind) {
        case StepCard::Kind::handed_back:
        case StepCard::Kind::after:
            return Role::right;
        case StepCard::Kind::call_for_help:
            return Role::safety;
        default:
            return Role::accent;
    }
}

}  // namespace

void draw_known_link(JobScene& scene, const std::string& id, const std::string& words, const EntryKey& to) {
    if (draw_entry_link(scene.kit, id, words)) scene.action = KnowledgeAction{ShowKnowledge{to}};
}

void draw_caption(Kit& kit, const std::string& text) {
    kit.text(text, Type::caps, Role::ink2);
    kit.gap(4);
}

void draw_caution(JobScene& scene, const CautionText& caution) {
    Kit& kit = scene.kit;
    // Starts open. Whoever has read it may fold it to its name; it stays folded when it comes again in this
    // job.
    const std::string name = "caution." + caution.id;
    const bool open = scene.view.is_open(name, true);
    const float edge = kit.px(caution_edge), pad = kit.px(11), chevron = kit.px(30);
    const float room = kit.width() - edge - 2 * pad;
    float h = kit.text_height(caution.name, Type::strong, room - chevron);
    if (open) {
        h += kit.text_height(caution.hurts, Type::small, room) + kit.px(4) +
             kit.text_height(caution.avoid, Type::body, room);
    }
    const Box box = kit.take(std::max(kit.px(46), h + 2 * pad));
    const Kit::Touch t = kit.touch(name, box, caution.name, true, open);
    kit.fill(box, Role::safety, 8);
    kit.fill({box.x + edge, box.y, box.w - edge, box.h}, Role::safety_tint, 8);
    kit.fill({box.x + edge, box.y, kit.px(10), box.h}, Role::safety_tint);
    if (open) kit.hatch({box.x, box.bottom() - kit.px(18), edge, kit.px(9)}, 7, Role::on_safety);
    kit.icon({box.x + kit.px(9), box.y + kit.px(9), kit.px(28), kit.px(28)}, Icon::caution, Role::on_safety);
    kit.icon({box.right() - chevron, box.y + kit.px(14), kit.px(18), kit.px(18)},
             open ? Icon::open : Icon::shut, Role::ink2);
    kit.inside({box.x + edge + pad, box.y + pad, room, 0}, [&] {
        const Box line = kit.take(0);
        const float used = kit.inside({line.x, line.y, room - chevron, 0},
                                      [&] { kit.text(caution.name, Type::strong, Role::ink); });
        kit.take(used);
        if (!open) return;
        kit.text(caution.hurts, Type::small, Role::ink2);
        kit.gap(4);
        kit.text(caution.avoid, Type::body, Role::ink);
    });
    if (t.focused) kit.outline(box, Role::accent, 3, 8);
    if (t.pressed) scene.view.fold(name, true);
    kit.gap(8);
}

namespace {

// A question's own words stand large; of a check its name does, its question is asked above the answers.
void draw_heading(JobScene& scene) {
    Kit& kit = scene.kit;
    const StepCard& card = scene.card;
    const bool asks = card.kind == StepCard::Kind::question && !card.questions.empty();
    kit.text(asks ? card.heading + " · " + card.eyebrow : card.eyebrow, Type::caps, Role::accent);
    kit.gap(5);
    kit.text(asks ? card.questions.front().ask : card.heading, scene.low ? Type::h2 : Type::h1, Role::ink);
}

}  // namespace

namespace {

// The kind of entry that a card's id names; "" where the step is none.
std::string kind_of(StepCard::Kind kind) {
    switch (kind) {
        case StepCard::Kind::question:
            return "finding";
        case StepCard::Kind::check:
        case StepCard::Kind::prove:
            return "check";
        case StepCard::Kind::remedy:
            return "remedy";
        default:
            return "";
    }
}

// What the step is about, in the knowledge: folded, since it is seldom wanted.
void draw_entries(JobScene& scene) {
    const StepCard& card = scene.card;
    std::vector<EntryKey> entries;
    const std::string kind = kind_of(card.kind);
    if (!kind.empty() && !card.id.empty()) entries.push_back({kind, card.id});
    if (!card.cause.empty()) entries.push_back({"cause", card.cause});
    for (const QuestionText& question : card.questions) {
        if (card.kind != StepCard::Kind::question) entries.push_back({"finding", question.finding});
    }
    if (entries.empty()) return;
    Kit& kit = scene.kit;
    kit.gap(6);
    const bool open = scene.view.is_open("entries");
    if (kit.fold("card.entries", "In the knowledge", open)) scene.view.fold("entries");
    if (!open) return;
    const auto words_of = [&](const EntryKey& entry) {
        for (const QuestionText& question : card.questions) {
            if (entry.kind == "finding" && entry.id == question.finding) return question.name;
        }
        for (const CauseLine& cause : scene.page.causes) {
            if (entry.kind == "cause" && entry.id == cause.id) return cause.name;
        }
        return card.heading;
    };
    for (const EntryKey& entry : entries) {
        draw_known_link(scene, "card.known." + entry.kind + "." + entry.id,
                        kind_name(entry.kind) + ": " + words_of(entry), entry);
    }
}

}  // namespace

void draw_card(JobScene& scene) {
    Kit& kit = scene.kit;
    const StepCard& card = scene.card;
    if (scene.view.showing == Showing::finding) draw_way_back(scene);
    kit.card({.pad = scene.low ? 16.0F : 22.0F, .edge = edge_of(card.kind)}, [&] {
        draw_heading(scene);
        if (!card.why.empty()) {
            kit.gap(6);
            kit.text(card.why, Type::body, Role::ink2);
        }
        const auto cautions = all_cautions(scene);
        kit.gap(cautions.empty() ? 8 : 14);
        for (const CautionText& caution : cautions) draw_caution(scene, caution);
        if (!card.steps.empty()) kit.gap(4);
        draw_numbered(kit, card.steps);
        draw_named(kit, "TOOLS", one_line(card.tools));
        draw_named(kit, "PARTS", card.parts);
        draw_named(kit, "FIGURES", card.figures);
        if (card.kind == StepCard::Kind::after) {
            draw_numbered(kit, card.after);
        } else {
            draw_named(kit, "AFTER IT", card.after);
        }
        if (scene.dock_inside) return;
        draw_outlook(scene);
        draw_card_end(scene);
    });
    kit.gap(14);
}

void draw_card_end(JobScene& scene) {
    if (!scene.card.sources.empty()) {
        scene.kit.gap(10);
        scene.kit.text(scene.card.sources, Type::small, Role::ink2);
    }
    draw_entries(scene);
}

}  // namespace hardover::window

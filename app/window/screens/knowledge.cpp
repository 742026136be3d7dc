// The list by kind or by search, and the entry in hand. A line with one link is a button as a whole; the
// links of a line with several stand under it as buttons.
#include "app/window/screens/knowledge.hpp"

#include <algorithm>

#include "app/window/layout.hpp"
#include "app/window/paint_drawing.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

struct Scene {
    Kit& kit;
    KnowledgeState& known;
    std::optional<Action> action;
    int drawn = 0;  // links so far, for their ids
};

void go(Scene& scene, const EntryKey& to) {
    scene.action = KnowledgeAction{ShowKnowledge{to}};
}

void draw_link_line(Scene& scene, const EntryText& text, const EntryKey& to) {
    const std::string id = "link." + std::to_string(scene.drawn++) + "." + to.kind + "." + to.id;
    if (draw_entry_link(scene.kit, id, text.plain())) go(scene, to);
}

void draw_item(Scene& scene, const EntryText& item, int number) {
    Kit& kit = scene.kit;
    std::vector<const EntryPiece*> links;
    for (const EntryPiece& piece : item.pieces) {
        const bool again = std::any_of(links.begin(), links.end(),
                                       [&](const EntryPiece* known) { return known->to == piece.to; });
        if (!piece.to.kind.empty() && !again) links.push_back(&piece);
    }
    const bool condition = item.pieces.front().code && item.pieces.size() > 1;
    if (links.size() == 1 && !condition) return draw_link_line(scene, item, links.front()->to);
    const std::string words = item.plain();
    if (number > 0) {
        const Box start = kit.take(0);
        const float indent = kit.px(34);
        const float used = kit.inside({start.x + indent, start.y, start.w - indent, 0},
                                      [&] { kit.text(words, Type::body, Role::ink); });
        kit.line_in({start.x, start.y, indent, kit.theme().line_height(Type::body)}, std::to_string(number),
                    Type::strong, Role::accent);
        kit.take(used);
    } else {
        kit.text(words, Type::body, Role::ink);
    }
    kit.gap(6);
    for (const EntryPiece* link : links) {
        draw_link_line(scene, EntryText(kind_name(link->to.kind) + ": " + link->text), link->to);
    }
}

void draw_row(Scene& scene, const EntryRow& row) {
    Kit& kit = scene.kit;
    kit.text(row.label, Type::caps, Role::ink2);
    kit.gap(4);
    int number = 0;
    for (const EntryText& item : row.items) {
        if (!item.empty()) draw_item(scene, item, row.numbered ? ++number : 0);
    }
    kit.gap(12);
}

bool is_warning(const EntryRow& row) {
    return !row.items.empty() && !row.items.front().empty() && row.items.front().pieces.front().warning;
}

void draw_rows(Scene& scene, const std::vector<EntryRow>& rows) {
    Kit& kit = scene.kit;
    for (const EntryRow& row : rows) {
        if (!is_warning(row)) {
            draw_row(scene, row);
            continue;
        }
        kit.card({.fill = Role::safety_tint, .line = Role::safety, .pad = 14, .edge = Role::safety}, [&] {
            kit.text(row.label, Type::strong, Role::ink);
            kit.gap(6);
            for (const EntryText& item : row.items) draw_item(scene, item, 0);
        });
        kit.gap(12);
    }
}

void draw_way(Scene& scene) {
    Kit& kit = scene.kit;
    const Box line = kit.take(kit.px(48));
    const ButtonLook back{.label = "Back", .icon = Icon::back, .key = "Esc"};
    const float w = kit.button_width(back);
    if (kit.button("known.back", {line.x, line.y, w, line.h}, back))
        scene.action = KnowledgeAction{StepInHistory{-1}};
    const bool can = scene.known.at < scene.known.history.size();
    const ButtonLook forward{.label = "Forward", .icon = Icon::shut, .enabled = can};
    const float x = line.x + w + kit.px(8), fw = kit.button_width(forward);
    if (kit.button("known.forward", {x, line.y, fw, line.h}, forward))
        scene.action = KnowledgeAction{StepInHistory{1}};
    const ButtonLook all{.label = "All entries", .icon = Icon::search, .key = "/"};
    const float ax = x + fw + kit.px(8);
    if (ax + kit.button_width(all) <= line.right() &&
        kit.button("known.all", {ax, line.y, kit.button_width(all), line.h}, all))
        go(scene, {});
    kit.gap(12);
}

// Where on the boat it is, with the way there.
void draw_where(Scene& scene) {
    if (!scene.known.where) return;
    Kit& kit = scene.kit;
    const EntryPlace& where = *scene.known.where;
    kit.card({.pad = 16}, [&] {
        kit.text("Where it is", Type::caps, Role::ink2);
        kit.gap(4);
        kit.text(where.words, Type::body, Role::ink);
        kit.gap(8);
        const Box sheet = kit.take(std::clamp(kit.width() * 0.5F, kit.px(220), kit.px(340)));
        kit.outline(sheet, Role::hairline, 1, 8);
        paint_drawing(kit, sheet.inset(kit.px(6)), where.drawing, where.parts);
        kit.gap(10);
        if (draw_small_button(kit, "known.on_boat", {.label = "Show it on the boat", .icon = Icon::boat}))
            scene.action = KnowledgeAction{ShowOnBoat{scene.known.page.key}};
    });
    kit.gap(12);
}

void draw_entry(Scene& scene) {
    Kit& kit = scene.kit;
    const EntryPage& page = scene.known.page;
    draw_way(scene);
    kit.text(page.kind, Type::caps, Role::accent);
    kit.text(page.name, Type::h1, Role::ink);
    kit.gap(12);
    if (!page.in_job.empty()) {
        kit.card({.pad = 16, .edge = Role::accent}, [&] { draw_rows(scene, page.in_job); });
        kit.gap(12);
    }
    if (page.key.kind == "worksheet") {
        if (draw_small_button(kit, "known.fill_in",
                              {.label = "Fill it in", .icon = Icon::plot, .face = Face::primary}))
            scene.action = SheetAction{ShowSheet{page.key.id}};
        kit.gap(12);
    }
    draw_where(scene);
    kit.card({.pad = 18}, [&] { draw_rows(scene, page.rows); });
}

void draw_hits(Scene& scene) {
    Kit& kit = scene.kit;
    if (scene.known.hits.empty()) {
        kit.text("Nothing has these words. Try one of them alone, or say it in another way.", Type::body,
                 Role::ink2);
        return;
    }
    draw_in_columns(kit, scene.known.hits.size(), 420, 2, [&](std::size_t i) {
        const SearchHit& hit = scene.known.hits[i];
        if (draw_hit_row(kit, "hit." + hit.to.kind + "." + hit.to.id, hit)) go(scene, hit.to);
    });
}

void draw_kinds(Scene& scene) {
    Kit& kit = scene.kit;
    std::vector<std::string> ids, labels;
    for (const KindCount& kind : scene.known.kinds) {
        ids.push_back("kind." + kind.kind);
        labels.push_back(kind.name + " " + std::to_string(kind.count));
    }
    std::vector<ChoiceLook> looks;
    for (std::size_t i = 0; i < labels.size(); ++i)
        looks.push_back({.label = labels[i], .selected = scene.known.kinds[i].kind == scene.known.kind});
    const int pressed = draw_choice_cells(kit, ids, looks, 6);
    if (pressed >= 0)
        scene.action = KnowledgeAction{BrowseKind{scene.known.kinds[static_cast<std::size_t>(pressed)].kind}};
    kit.gap(14);
}

void draw_browse(Scene& scene) {
    Kit& kit = scene.kit;
    draw_kinds(scene);
    draw_in_columns(kit, scene.known.entries.size(), 330, 3, [&](std::size_t i) {
        const EntryName& entry = scene.known.entries[i];
        const SearchHit row{entry.key, kind_name(entry.key.kind), entry.name, entry.under, 0};
        if (draw_hit_row(kit, "entry." + entry.key.kind + "." + entry.key.id, row)) go(scene, entry.key);
    });
    const std::size_t left = scene.known.all_entries - scene.known.entries.size();
    if (left == 0) return;
    if (draw_small_button(kit, "known.more", {.label = "Show more, " + std::to_string(left) + " left"}))
        scene.action = KnowledgeAction{ShowMore{}};
}

void draw_list(Scene& scene) {
    Kit& kit = scene.kit;
    KnowledgeState& known = scene.known;
    kit.tab_starts_here();
    if (draw_search_field(kit, "known.filter", known.filter, "Search the knowledge",
                          "Search: air, kinked hose, torque, a source ..."))
        scene.action = KnowledgeAction{SearchKnowledge{known.filter}};
    kit.gap(14);
    if (!known.filter.empty()) return draw_hits(scene);
    if (!known.fired.empty()) {
        kit.card({.pad = 16, .edge = Role::accent}, [&] {
            kit.text("What fired in " + known.fired_in + ", and why", Type::strong, Role::ink);
            kit.gap(8);
            for (const EntryText& line : known.fired) draw_item(scene, line, 0);
        });
        kit.gap(14);
    }
    draw_browse(scene);
}

void use_keys(Scene& scene) {
    Kit& kit = scene.kit;
    if (kit.take(Key::escape)) {
        if (scene.known.at == 0 && !scene.known.filter.empty()) {
            scene.action = KnowledgeAction{SearchKnowledge{""}};
        } else {
            scene.action = KnowledgeAction{StepInHistory{-1}};
        }
    }
    if (kit.take(Key::backspace)) scene.action = KnowledgeAction{StepInHistory{-1}};
    if (kit.take_letter(U'/')) {
        if (scene.known.at > 0) go(scene, {});
        kit.open_field("known.filter");
    }
}

}  // namespace

std::optional<Action> draw_knowledge(Kit& kit, KnowledgeState& known) {
    Scene scene{kit, known, std::nullopt};
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    const bool entry = known.at > 0;
    if (auto pressed =
            draw_header(kit, kit.placed(boxes.header), {"Knowledge", entry ? known.page.kind : "", false}))
        scene.action = pressed;
    const float widest = entry ? 900.0F : 1320.0F;
    const float spare = std::max(0.0F, boxes.body.w - widest) / 2;
    // A pane of its own for each entry, so that a new one is read from its top.
    const std::string name = entry ? "known." + known.page.key.kind + known.page.key.id : "known";
    kit.pane(name.c_str(), kit.placed(boxes.body), {.pad_x = 20 + spare, .pad_y = 16, .main = true},
             [&] { entry ? draw_entry(scene) : draw_list(scene); });
    draw_keys(kit, kit.placed(boxes.keys), {{"/", "search"}, {"Esc", "back"}});
    use_keys(scene);
    return scene.action;
}

}  // namespace hardover::window

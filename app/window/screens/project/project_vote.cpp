// The question put to the class: its choices with hands, ideas to be added, and the count.
#include <algorithm>
#include <array>
#include <cctype>

#include "app/window/screens/parts.hpp"
#include "app/window/screens/project/project_parts.hpp"

namespace hardover::window {

using classroom::ChoiceLine;

namespace {

constexpr float two_across_from = 560;  // dp of width
constexpr std::size_t most_ideas = 8;

// How a choice is set: in a low window its minutes follow its name, so that all choices can be seen at once.
struct CellLook {
    bool low = false;
    float pad = 10;  // dp
    float letter = 36;
    float field_w = 76;
    float field_h = 48;
    float bar = 6;
    Type name = Type::h2;
};
constexpr CellLook tall_cell;
constexpr CellLook low_cell{true, 6, 30, 62, 44, 0, Type::strong};

std::string hands_id(std::size_t choice) {
    return "hands." + std::string(1, static_cast<char>('A' + choice));
}

std::string name_of(const ChoiceLine& line, const CellLook& look) {
    return look.low && !line.minutes.empty() ? line.name + ", " + line.minutes : line.name;
}

float text_room(const Kit& kit, const CellLook& look, float width) {
    return width - kit.px(3 * look.pad + look.letter + look.field_w + 8);
}

float cell_height(const Kit& kit, const CellLook& look, const ChoiceLine& line, float width) {
    const float room = text_room(kit, look, width);
    float h = kit.text_height(name_of(line, look), look.name, room);
    if (!look.low && !line.note.empty()) h += kit.px(2) + kit.text_height(line.note, Type::small, room);
    return std::max(kit.px(look.field_h), h) + kit.px(2 * look.pad + look.bar);
}

// What two abreast take of the height.
float height_abreast(const Kit& kit, const CellLook& look, const std::vector<ChoiceLine>& lines) {
    const float w = (kit.width() - kit.px(8)) / 2;
    float sum = 0;
    for (std::size_t i = 0; i < lines.size(); i += 2) {
        float h = cell_height(kit, look, lines[i], w);
        if (i + 1 < lines.size()) h = std::max(h, cell_height(kit, look, lines[i + 1], w));
        sum += h + kit.px(8);
    }
    return sum;
}

// Where the choices stand: one below the other where that fits, else two abreast.
struct Cells {
    std::size_t across = 1;
    std::vector<Box> boxes;
};

Cells cells_of(Kit& kit, const CellLook& look, const std::vector<ChoiceLine>& lines, float room_height) {
    const float gap = kit.px(look.low ? 6 : 8), whole = kit.width();
    Cells cells;
    for (const std::size_t across : {std::size_t{1}, std::size_t{2}}) {
        cells.across = across;
        const float w = (whole - gap * static_cast<float>(across - 1)) / static_cast<float>(across);
        std::vector<float> heights((lines.size() + across - 1) / across, 0);
        for (std::size_t i = 0; i < lines.size(); ++i)
            heights[i / across] = std::max(heights[i / across], cell_height(kit, look, lines[i], w));
        float sum = gap * static_cast<float>(heights.size() - 1);
        for (const float h : heights) sum += h;
        if (across == 1 && sum > room_height && whole >= kit.px(two_across_from)) continue;
        const Box all = kit.take(sum);
        float y = all.y;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            if (i > 0 && i % across == 0) y += heights[i / across - 1] + gap;
            cells.boxes.push_back(
                {all.x + static_cast<float>(i % across) * (w + gap), y, w, heights[i / across]});
        }
        break;
    }
    return cells;
}

Box field_box(const Kit& kit, const CellLook& look, const Box& cell) {
    return {cell.right() - kit.px(look.pad + look.field_w), cell.y + kit.px(look.pad), kit.px(look.field_w),
            kit.px(look.field_h)};
}

// What stands in a choice: its letter, its name, and the share of hands along its foot.
void draw_choice(Kit& kit, const CellLook& look, const Box& cell, const ChoiceLine& line, double share) {
    const float side = kit.px(look.letter), top = cell.y + kit.px(look.pad + 4);
    kit.fill({cell.x + kit.px(look.pad), top, side, side}, Role::accent, 8);
    kit.line_in({cell.x + kit.px(look.pad), top, side, side}, line.letter, Type::h2, Role::on_accent,
                Align::centre);
    kit.inside({cell.x + kit.px(2 * look.pad + look.letter), cell.y + kit.px(look.pad),
                text_room(kit, look, cell.w), 0},
               [&] {
                   kit.text(name_of(line, look), look.name, Role::ink);
                   if (look.low || line.note.empty()) return;
                   kit.gap(2);
                   kit.text(line.note, Type::small, Role::ink2);
               });
    if (look.bar == 0) return;
    kit.bar({cell.x + kit.px(look.pad), cell.bottom() - kit.px(look.bar + 4), cell.w - kit.px(2 * look.pad),
             kit.px(look.bar)},
            share, Role::accent);
}

std::optional<std::size_t> majority_now(const ProjectView& view) {
    std::size_t wrong = 0;
    const auto counts = view.counted(wrong);
    return counts ? classroom::majority(*counts) : std::nullopt;
}

std::vector<int> counts_or_none(const ProjectView& view) {
    std::size_t wrong = 0;
    return view.counted(wrong).value_or(std::vector<int>());
}

bool holds(const std::string& text, const std::string& words) {
    const auto same = [](unsigned char a, unsigned char b) { return std::tolower(a) == std::tolower(b); };
    return std::search(text.begin(), text.end(), words.begin(), words.end(), same) != text.end();
}

std::string letter_of(std::size_t choice) {
    return std::string(1, static_cast<char>('A' + choice));
}

SettleVote settled(const ProjectView& view, std::size_t choice) {
    return SettleVote{counts_or_none(view), choice};
}

}  // namespace

WayOn way_on(const ProjectScene& scene) {
    const ProjectView& view = scene.view;
    switch (scene.page().scene) {
        case ProjectPage::Scene::vote: {
            std::size_t wrong = 0;
            if (!view.counted(wrong)) return {"Count " + letter_of(wrong) + " again", std::nullopt};
            if (const auto most = majority_now(view))
                return {"Take " + letter_of(*most), settled(view, *most)};
            if (view.current) return {"Take " + letter_of(*view.current), settled(view, *view.current)};
            return {"Choose one", std::nullopt};
        }
        case ProjectPage::Scene::agreed: {
            const bool cautions = scene.page().boat.agreed && !scene.page().boat.agreed->cautions.empty();
            return {cautions ? "It is read out: do it" : "Do it", DoAgreed{}};
        }
        case ProjectPage::Scene::outcome:
            return {"Next question", NextQuestion{}};
        case ProjectPage::Scene::debrief:
            return {"Close", LeaveProjector{}};
        case ProjectPage::Scene::none:
            break;
    }
    return {};
}

void draw_vote(ProjectScene& scene) {
    Kit& kit = scene.kit;
    ProjectView& view = scene.view;
    const classroom::BallotPage& ballot = scene.page().ballot;
    draw_trouble(kit, scene.page().trouble);
    const float room = kit.screen().h - kit.px(52 + 36 + 72 + 60);
    const CellLook& look =
        scene.low || height_abreast(kit, tall_cell, ballot.choices) > room ? low_cell : tall_cell;
    kit.text(ballot.question, look.low ? Type::h2 : Type::h1, Role::ink);
    kit.gap(look.low ? 4 : 8);
    const Cells cells = cells_of(kit, look, ballot.choices, room);
    const auto counts = counts_or_none(view);
    const int all = classroom::all_hands(counts);
    const auto most = majority_now(view);
    std::size_t wrong = ballot.choices.size();
    view.counted(wrong);
    for (std::size_t i = 0; i < ballot.choices.size(); ++i) {
        const Box& cell = cells.boxes[i];
        const bool leads = most == i, current = view.current == i;
        kit.fill(cell, leads ? Role::accent_tint : Role::card, 8);
        kit.outline(cell, leads || current ? Role::accent : Role::outline, leads || current ? 3 : 1.5F, 8);
        const double share = all > 0 && i < counts.size() ? static_cast<double>(counts[i]) / all : 0;
        draw_choice(kit, look, cell, ballot.choices[i], share);
    }
    // The fields first, so that Tab goes from count to count.
    for (std::size_t i = 0; i < ballot.choices.size(); ++i) {
        const std::string name = "Hands for " + ballot.choices[i].letter;
        const FieldEvent typed = kit.field(hands_id(i), field_box(kit, look, cells.boxes[i]), view.hands[i],
                                           {.name = name, .placeholder = "0", .wrong = wrong == i});
        if (typed.entered) {
            if (const WayOn way = way_on(scene); way.action) scene.ask(*way.action);
        }
    }
    for (std::size_t i = 0; i < ballot.choices.size(); ++i) {
        Box touch = cells.boxes[i];
        touch.w -= kit.px(look.field_w + look.pad + 6);
        const Kit::Touch t = kit.touch("choice." + ballot.choices[i].letter, touch, ballot.choices[i].name,
                                       true, view.current == i);
        if (t.focused) kit.focus_ring(touch, 8);
        const auto letter = static_cast<char32_t>(ballot.choices[i].letter.front());
        const bool by_key = !kit.typing() && (kit.take_letter(letter) || kit.take_letter(letter + 32));
        if (t.pressed || by_key) {
            if (view.current == i) {
                view.current.reset();
            } else {
                view.current = i;
            }
        }
    }
    if (!scene.page().ideas.empty()) {
        kit.gap(4);
        if (kit.fold("ideas", "Another idea", view.ideas)) view.ideas = !view.ideas;
        if (view.ideas) draw_ideas(scene);
    }
    if (kit.typing()) return;
    if (const auto digit = kit.take_digit()) kit.open_field(hands_id(view.current.value_or(0)), digit);
}

void draw_ideas(ProjectScene& scene) {
    Kit& kit = scene.kit;
    draw_search_field(kit, "ideas.filter", scene.view.filter, "What somebody said", "Its words, such as oil");
    kit.gap(8);
    std::size_t shown = 0;
    for (const Idea& idea : scene.page().ideas) {
        if (shown == most_ideas) break;
        if (!holds(idea.name, scene.view.filter)) continue;
        ++shown;
        const ChoiceLook look{.label = idea.name, .note = idea.note};
        const Box box = kit.take(kit.choice_height(look, kit.width()));
        if (kit.choice("idea." + idea.id, box, look)) {
            scene.ask(AddToBallot{idea.event});
            scene.view.ideas = false;
            scene.view.filter.clear();
        }
        kit.gap(6);
    }
    if (shown == 0) kit.text("Nothing has these words. Try a shorter word.", Type::body, Role::ink);
    if (shown == most_ideas) kit.text("There is more: type a word of it.", Type::small, Role::ink2);
}

void draw_other_ways(ProjectScene& scene, bool with_ranking) {
    Kit& kit = scene.kit;
    const bool vote = scene.page().scene == ProjectPage::Scene::vote;
    const bool cause = scene.page().ballot.asks == classroom::Asks::cause;
    struct Way {
        const char* id;
        const char* label;
        const char* key;
        bool there;
    };
    const std::array ways{
        Way{"ways.cause", cause ? "Ask what next" : "Ask what is wrong", "W",
            vote && !scene.page().boat.right},
        Way{"ways.ranking", scene.view.ranking ? "The question" : "The ranking", "R", vote && with_ranking},
        Way{"ways.boat", "The boat", "V", true}, Way{"ways.leave", "Leave", "Esc", true}};
    kit.gap(8);
    Box row = kit.take(kit.px(48));
    float x = row.x;
    for (const Way& way : ways) {
        if (!way.there) continue;
        const ButtonLook look{.label = way.label, .face = Face::quiet, .key = way.key};
        const float w = kit.button_width(look);
        if (x > row.x && x + w > row.right()) {
            kit.gap(4);
            row = kit.take(kit.px(48));
            x = row.x;
        }
        const bool pressed = kit.button(way.id, {x, row.y, w, row.h}, look);
        x += w + kit.px(6);
        if (!pressed) continue;
        const std::string id = way.id;
        if (id == "ways.cause") scene.ask(PutToClass{cause ? classroom::Asks::step : classroom::Asks::cause});
        if (id == "ways.ranking") scene.view.ranking = !scene.view.ranking;
        if (id == "ways.boat") scene.view.boat = true;
        if (id == "ways.leave") scene.ask(LeaveProjector{});
    }
}

void draw_vote_dock(ProjectScene& scene) {
    Kit& kit = scene.kit;
    ProjectView& view = scene.view;
    Box row = kit.take(kit.px(52));
    const WayOn way = way_on(scene);
    const ButtonLook go{
        .label = way.label, .face = Face::primary, .key = "Enter", .enabled = way.action.has_value()};
    const float w = kit.button_width(go);
    if (kit.button("go", {row.right() - w, row.y, w, row.h}, go)) scene.ask(*way.action);
    row.w -= w + kit.px(8);
    const auto most = majority_now(view);
    if (view.current && most && view.current != most) {
        const std::string label = "Take " + letter_of(*view.current);
        const ButtonLook other{.label = label, .key = "T"};
        const float wide = kit.button_width(other);
        const bool by_key = !kit.typing() && (kit.take_letter(U't') || kit.take_letter(U'T'));
        if (kit.button("go.other", {row.right() - wide, row.y, wide, row.h}, other) || by_key)
            scene.ask(settled(view, *view.current));
        row.w -= wide + kit.px(8);
    }
    if (view.current) {
        const std::string letter = letter_of(*view.current);
        const float side = kit.px(48);
        const ButtonLook less{.label = "\xE2\x88\x92", .name = "One hand less"};
        const ButtonLook more{.label = "+", .name = "One hand more"};
        if (kit.button("hands.less", {row.x, row.y, side, row.h}, less)) view.add_hands(*view.current, -1);
        kit.line_in({row.x + side, row.y, kit.px(36), row.h}, letter, Type::h2, Role::ink, Align::centre);
        if (kit.button("hands.more", {row.x + side + kit.px(36), row.y, side, row.h}, more))
            view.add_hands(*view.current, 1);
        const float used = 2 * side + kit.px(36 + 12);
        row.x += used;
        row.w -= used;
    }
    std::size_t wrong = 0;
    const auto counts = view.counted(wrong);
    const std::string text =
        counts ? scene.desk.count_text(*counts) : "A count of hands is a whole number, at most 999.";
    kit.wrapped_in(row, text, Type::body, Role::ink);
}

}  // namespace hardover::window

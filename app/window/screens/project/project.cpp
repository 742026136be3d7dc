// Puts the projected screen together: boxes, columns, keys.
#include "app/window/screens/project/project.hpp"

#include "app/window/screens/bars.hpp"
#include "app/window/screens/project/project_parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

constexpr float two_columns_from = 860;  // dp
constexpr float header_height = 52;
constexpr float keys_height = 36;
constexpr float dock_height = 72;
constexpr float low_dock_height = 60;
constexpr float low_below = 480;            // dp of height
constexpr float drawing_from_height = 380;  // of the body, for a drawing under the ranking

using Scene = ProjectPage::Scene;

void draw_main(ProjectScene& scene, bool with_ranking) {
    switch (scene.page().scene) {
        case Scene::vote:
            if (with_ranking && scene.view.ranking) {
                draw_customer(scene);
                scene.kit.gap(10);
                draw_ranking(scene);
            } else {
                draw_vote(scene);
            }
            break;
        case Scene::agreed:
            draw_agreed(scene);
            break;
        case Scene::outcome:
            draw_outcome(scene, with_ranking);
            break;
        case Scene::debrief:
            draw_class_debrief(scene);
            break;
        case Scene::none:
            break;
    }
    draw_other_ways(scene, with_ranking);
}

void draw_dock(ProjectScene& scene) {
    if (scene.page().scene == Scene::vote) {
        draw_vote_dock(scene);
        return;
    }
    Kit& kit = scene.kit;
    const WayOn way = way_on(scene);
    const Box row = kit.take(kit.px(52));
    const ButtonLook go{.label = way.label, .face = Face::primary, .key = "Enter"};
    const float w = std::min(row.w, kit.button_width(go));
    if (kit.button("go", {row.right() - w, row.y, w, row.h}, go)) scene.ask(*way.action);
}

// Ranking, and the boat under it where there is room.
void draw_side(ProjectScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    const bool vote_on_cause =
        scene.page().scene == Scene::vote && scene.page().ballot.asks == classroom::Asks::cause;
    const bool drawing = box.h >= kit.px(drawing_from_height);
    const float boat = drawing ? box.h * 0.36F : 0;
    kit.pane("project.side", {box.x, box.y, box.w, box.h - boat},
             {.fill = Role::panel, .pad_x = 16, .pad_y = 14}, [&] {
                 if (vote_on_cause) {
                     draw_customer(scene);
                     kit.gap(10);
                     kit.text("The ranking shows again after the vote.", Type::body, Role::ink2);
                 } else {
                     draw_ranking(scene);
                 }
             });
    if (!drawing) return;
    kit.fill({box.x, box.bottom() - boat, box.w, boat}, Role::panel);
    draw_small_boat(scene, Box{box.x, box.bottom() - boat, box.w, boat}.inset(kit.px(8)));
}

std::vector<KeyHint> keys_of(const ProjectScene& scene) {
    std::vector<KeyHint> keys;
    if (scene.view.boat) {
        keys = {{"B", "back to the question"}, {"Esc", "back"}};
        return keys;
    }
    if (scene.page().scene == Scene::vote) {
        const bool cause = scene.page().ballot.asks == classroom::Asks::cause;
        keys = {{"0-9", "hands"},
                {"Tab", "next count"},
                {"Enter", "take"},
                {"A B C", "choose"},
                {"W", cause ? "what next" : "what is wrong"},
                {"I", "another idea"},
                {"R", "ranking"}};
    } else {
        keys = {{"Enter", "go on"}};
    }
    keys.push_back({"V", "the boat"});
    keys.push_back({"Esc", "leave: it is kept"});
    return keys;
}

void use_keys(ProjectScene& scene) {
    Kit& kit = scene.kit;
    ProjectView& view = scene.view;
    if (kit.typing()) return;
    if (kit.take(Key::escape)) {
        if (view.boat) {
            view.boat = false;
        } else {
            scene.ask(LeaveProjector{});
        }
    }
    if (take_command(kit, 'v') || (view.boat && take_command(kit, 'b'))) view.boat = !view.boat;
    if (view.boat) return;
    if (scene.page().scene == Scene::vote) {
        if (take_command(kit, 'w')) {
            const bool cause = scene.page().ballot.asks == classroom::Asks::cause;
            scene.ask(PutToClass{cause ? classroom::Asks::step : classroom::Asks::cause});
        }
        if (take_command(kit, 'r')) view.ranking = !view.ranking;
        if (take_command(kit, 'i') && !scene.page().ideas.empty()) {
            view.ideas = true;
            kit.open_field("ideas.filter");
        }
    }
    if (kit.take(Key::enter)) {
        if (const WayOn way = way_on(scene); way.action) scene.ask(*way.action);
    }
}

}  // namespace

std::optional<Action> draw_project(Kit& kit, const ProjectDesk& desk, ProjectView& view, bool still) {
    const float w = kit.screen().w / kit.px(1), h = kit.screen().h / kit.px(1);
    ProjectScene scene{kit, desk, view, still, h < low_below, std::nullopt};
    view.follow(desk.page().number, desk.page().ballot.choices.size());
    const classroom::HandsPage& boat = desk.page().boat;
    scene.action = draw_header(kit, kit.placed({0, 0, w, header_height}),
                               {boat.clock, w >= two_columns_from ? boat.customer : "", false});
    const Box body{0, header_height, w, h - header_height - keys_height};
    if (view.boat) {
        draw_projected_boat(scene, kit.placed(body));
    } else {
        const bool wide = w >= two_columns_from;
        const float side = wide ? std::clamp(w * 0.36F, 330.0F, 460.0F) : 0;
        const float dock_h = scene.low ? low_dock_height : dock_height;
        const Box main{0, body.y, w - side, body.h - dock_h};
        const std::string name = "project." + std::to_string(static_cast<int>(desk.page().scene)) + "." +
                                 std::to_string(desk.page().number);
        kit.pane(name.c_str(), kit.placed(main),
                 {.pad_x = 16, .pad_y = scene.low ? 6.0F : 10.0F, .main = true},
                 [&] { draw_main(scene, !wide); });
        const Box dock = kit.placed({0, main.bottom(), main.w, dock_h});
        kit.pane("project.dock", dock,
                 {.fill = Role::panel, .pad_x = 16, .pad_y = scene.low ? 4.0F : 10.0F, .scrolls = false},
                 [&] { draw_dock(scene); });
        kit.hairline({dock.x, dock.y, dock.w, kit.px(1)});
        if (wide) draw_side(scene, kit.placed({main.w, body.y, side, body.h}));
    }
    draw_keys(kit, kit.placed({0, h - keys_height, w, keys_height}), keys_of(scene));
    use_keys(scene);
    return scene.action;
}

}  // namespace hardover::window

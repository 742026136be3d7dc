// Puts the job screen together: boxes, columns, tabs, keys.
#include "app/window/screens/job.hpp"

#include "app/window/screens/bars.hpp"
#include "app/window/screens/job_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

void draw_answers_inside(JobScene& scene) {
    scene.kit.card({.fill = Role::panel, .pad = 14}, [&] { draw_dock(scene); });
    scene.kit.gap(14);
}

// Things to be told about the job itself, before the step.
void draw_notices(JobScene& scene) {
    std::vector<std::string> notices = scene.page.left_out;
    if (!scene.view.notice.empty()) notices.push_back(scene.view.notice);
    if (!scene.page.other_knowledge.empty()) notices.push_back(scene.page.other_knowledge);
    for (const std::string& notice : notices) draw_notice(scene.kit, notice);
}

void draw_now(JobScene& scene) {
    draw_trouble(scene.kit, scene.view.trouble);
    draw_notices(scene);
    draw_sheet_written(scene);
    const bool at_step = scene.view.showing == Showing::step || scene.view.showing == Showing::finding;
    if (!at_step || scene.card.kind == StepCard::Kind::intake) {
        if (scene.view.showing == Showing::look_up) {
            draw_look_up(scene);
        } else if (scene.view.showing == Showing::hand_back) {
            draw_hand_back(scene);
        } else if (scene.view.showing == Showing::time_line) {
            draw_time_line(scene);
        } else {
            draw_intake(scene);
        }
        if (scene.dock_inside) draw_answers_inside(scene);
        return;
    }
    draw_card(scene);
    if (scene.dock_inside) {
        draw_answers_inside(scene);
        draw_outlook(scene);
        draw_card_end(scene);
    }
    draw_questions(scene);
    draw_sheets(scene);
}

struct TabName {
    JobTab tab;
    const char* id;
    std::string label;
};

void draw_tabs(JobScene& scene, const Box& box, JobTab shown, const std::vector<TabName>& tabs) {
    Kit& kit = scene.kit;
    kit.fill(box, Role::panel);
    kit.hairline({box.x, box.bottom() - kit.px(1), box.w, kit.px(1)});
    const float w = box.w / static_cast<float>(tabs.size());
    float x = box.x;
    for (const TabName& tab : tabs) {
        const bool open = shown == tab.tab;
        const Box at{x, box.y, w, box.h};
        if (kit.button(tab.id, at.inset(kit.px(2)), {.label = tab.label, .face = Face::quiet})) {
            scene.view.tab = tab.tab;
        }
        if (open) kit.fill({x, box.bottom() - kit.px(4), w, kit.px(4)}, Role::accent, 2);
        x += w;
    }
}

std::string known_label(const JobPage& page) {
    return page.answers.empty() ? "Known" : "Known " + std::to_string(page.answers.size());
}

// The step and its answers are never wider than can be read at a glance: 980 dp.
float spare_side(float width_dp) {
    return std::max(0.0F, width_dp - 1012) / 2;
}

void draw_now_panes(JobScene& scene, const ScreenBoxes& boxes) {
    Kit& kit = scene.kit;
    const float pad = 16 + spare_side(boxes.now.w / kit.px(1));
    // A pane of its own for each step, so that a new one is read from its top.
    const std::string name = "now." + std::to_string(static_cast<int>(scene.view.showing)) + scene.card.id;
    kit.pane(name.c_str(), boxes.now, {.fill = Role::ground, .pad_x = pad, .main = true},
             [&] { draw_now(scene); });
    kit.pane("dock", boxes.dock, {.fill = Role::panel, .pad_x = pad, .pad_y = 14}, [&] { draw_dock(scene); });
    kit.hairline({boxes.dock.x, boxes.dock.y, boxes.dock.w, boxes.dock.empty() ? 0 : kit.px(1)});
}

// The ways to elsewhere stay in sight under the answers, or stand above them where there is little height.
void draw_known_panes(JobScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    const PaneLook look{.fill = Role::panel, .pad_x = 14};
    if (box.h < kit.px(600)) {
        kit.pane("known", box, look, [&] {
            draw_ways(scene);
            kit.gap(6);
            draw_known(scene);
        });
        return;
    }
    const float ways = kit.px(296);
    kit.pane("known", {box.x, box.y, box.w, box.h - ways}, look, [&] { draw_known(scene); });
    kit.pane("ways", {box.x, box.bottom() - ways, box.w, ways},
             {.fill = Role::panel, .pad_x = 14, .pad_y = 10, .scrolls = false}, [&] { draw_ways(scene); });
    kit.hairline({box.x, box.bottom() - ways, box.w, kit.px(1)});
}

void draw_columns(JobScene& scene, const ScreenBoxes& boxes) {
    Kit& kit = scene.kit;
    const auto known = [&] { draw_known_panes(scene, boxes.known); };
    const auto ahead = [&] {
        kit.pane("ahead", boxes.ahead, {.fill = Role::panel, .pad_x = 14}, [&] { draw_ahead(scene); });
    };
    const JobTab tab = scene.view.tab;
    // The step has a pane of its own here; the tab stays `now` for a screen that narrows further.
    const JobTab beside = tab == JobTab::now ? JobTab::ahead : tab;
    switch (boxes.form) {
        case Form::wide:
            known();
            draw_now_panes(scene, boxes);
            ahead();
            kit.hairline({boxes.now.x, boxes.known.y, kit.px(1), boxes.known.h});
            kit.hairline({boxes.ahead.x, boxes.ahead.y, kit.px(1), boxes.ahead.h});
            break;
        case Form::medium:
            draw_now_panes(scene, boxes);
            draw_tabs(scene, boxes.tabs, beside,
                      {{JobTab::ahead, "tab.ahead", "Causes"},
                       {JobTab::known, "tab.known", known_label(scene.page)}});
            if (beside == JobTab::known) {
                known();
            } else {
                ahead();
            }
            kit.hairline({boxes.ahead.x, boxes.tabs.y, kit.px(1), boxes.ahead.bottom() - boxes.tabs.y});
            break;
        case Form::compact:
            draw_tabs(scene, boxes.tabs, tab,
                      {{JobTab::now, "tab.now", "Now"},
                       {JobTab::ahead, "tab.ahead", "Causes"},
                       {JobTab::known, "tab.known", known_label(scene.page)}});
            if (tab == JobTab::known) {
                known();
            } else if (tab == JobTab::ahead) {
                ahead();
            } else {
                draw_now_panes(scene, boxes);
            }
            break;
    }
}

void place(const Kit& kit, ScreenBoxes& boxes) {
    for (Box* box : {&boxes.header, &boxes.track, &boxes.stops, &boxes.tabs, &boxes.known, &boxes.now,
                     &boxes.dock, &boxes.ahead, &boxes.keys}) {
        if (!box->empty()) *box = kit.placed(*box);
    }
}

void use_keys(JobScene& scene) {
    Kit& kit = scene.kit;
    if (kit.take(Key::backspace)) scene.action = UndoLast{};
    if (kit.take_letter(U'/')) {
        scene.action = Show{Showing::look_up, ""};
        kit.open_field("look_up.filter");
    }
    if (kit.take_letter(U'b') || kit.take_letter(U'B')) scene.action = Show{Showing::intake, ""};
    if (kit.take_letter(U'l') || kit.take_letter(U'L')) scene.action = Show{Showing::time_line, ""};
    if (kit.take_letter(U's') || kit.take_letter(U'S')) scene.action = WriteSheet{};
    use_why_keys(scene);
    if (kit.take_letter(U'h') || kit.take_letter(U'H')) scene.action = Show{Showing::hand_back, ""};
    if (kit.take(Key::escape)) {
        if (scene.view.showing == Showing::step) {
            scene.action = GoTo{Place::bench};
        } else {
            scene.action = Show{Showing::step, ""};
        }
    }
}

}  // namespace

std::optional<Action> draw_job(Kit& kit, const JobScreen& screen, JobView& view) {
    const bool looking = view.showing == Showing::finding && screen.looked_at != nullptr;
    JobScene scene{kit,
                   screen.page,
                   looking ? *screen.looked_at : screen.page.card,
                   screen.look_up,
                   screen.outlook,
                   screen.turning,
                   view,
                   false,
                   false,
                   std::nullopt,
                   screen.turning_in_work};
    const float scale = kit.px(1);
    const float w = kit.screen().w / scale, h = kit.screen().h / scale;
    const float stops = stops_height(kit, screen.page, kit.screen().w) / scale;
    // The dock's height depends on the width of its column, which does not depend on the dock.
    ScreenBoxes boxes = job_boxes(w, h, stops, 0);
    const float dock =
        dock_height(scene, (boxes.now.w - 32 - 2 * spare_side(boxes.now.w)) * scale) / scale + 28;
    boxes = job_boxes(w, h, stops, dock);
    scene.low = boxes.low;
    scene.dock_inside = boxes.dock_inside;
    place(kit, boxes);

    HeaderLook header{screen.page.title, boxes.track.empty() ? screen.page.phase : "", true};
    if (auto pressed = draw_header(kit, boxes.header, header)) scene.action = pressed;
    if (!boxes.track.empty()) draw_track(scene, boxes.track);
    if (!boxes.stops.empty()) draw_stops(scene, boxes.stops);
    draw_columns(scene, boxes);
    std::vector<KeyHint> hints;
    const bool at_now = boxes.form != Form::compact || view.tab == JobTab::now;
    if (at_now) {
        for (const auto& [key, does] : dock_keys(scene)) hints.push_back({key, does});
    }
    for (const KeyHint& hint :
         {KeyHint{"Backspace", "undo"}, KeyHint{"/", "answer something else"}, KeyHint{"B", "the boat"},
          KeyHint{"Esc", "back"}, KeyHint{"H", "hand back"}, KeyHint{"W", "what each answer would tell"},
          KeyHint{"X", "what would turn it"}, KeyHint{"E", "for and against"}, KeyHint{"L", "time line"},
          KeyHint{"S", "job sheet"}}) {
        hints.push_back(hint);
    }
    draw_keys(kit, boxes.keys, hints);
    use_keys(scene);
    return scene.action;
}

}  // namespace hardover::window

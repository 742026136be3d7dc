// Puts the place Study together: boxes, columns, keys.
#include "app/window/screens/study/study.hpp"

#include "app/window/layout.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

constexpr float two_columns_from = 900;  // dp
constexpr float dock_from = 470;         // dp of height of the body
constexpr float most_wide = 980;         // dp, of what is read

float side_pad(const Box& box_dp, float most) {
    return 20 + std::max(0.0F, box_dp.w - most) / 2;
}

void draw_quiz_place(StudyScene& scene, const BenchBoxes& boxes) {
    Kit& kit = scene.kit;
    const float pad = side_pad(boxes.body, most_wide);
    const float dock = quiz_dock_height(scene, kit.px(boxes.body.w - 2 * pad)) / kit.px(1);
    const bool docked = boxes.body.h >= dock_from && dock > 0;
    Box body = boxes.body;
    if (docked) body.h -= dock;
    const bool answered = scene.page.quiz && scene.page.quiz->feedback;
    // A pane of its own for each item and its answer, so that each is read from its top.
    const std::string name =
        "quiz." + (scene.page.quiz ? scene.page.quiz->progress : "") + (answered ? "a" : "q");
    kit.pane(name.c_str(), kit.placed(body), {.pad_x = pad, .pad_y = 18, .main = true}, [&] {
        draw_quiz(scene);
        if (!docked && dock > 0) draw_quiz_dock(scene);
    });
    if (!docked) return;
    const Box at = kit.placed({body.x, body.bottom(), body.w, dock});
    kit.pane("quiz.dock", at, {.fill = Role::panel, .pad_x = pad, .pad_y = 12, .scrolls = false},
             [&] { draw_quiz_dock(scene); });
    kit.hairline({at.x, at.y, at.w, kit.px(1)});
}

// What is known at the left, what can be done at the right; or one of them, where there is little room.
void draw_practice_place(StudyScene& scene, const BenchBoxes& boxes) {
    Kit& kit = scene.kit;
    const std::string step = scene.page.boat ? std::to_string(scene.page.boat->work.size()) : "";
    const std::string name = "practice." + step + (scene.page.work ? "w" : "");
    if (boxes.body.w >= two_columns_from) {
        const float left = std::clamp(boxes.body.w * 0.3F, 300.0F, 460.0F);
        Box known = boxes.body, now = boxes.body;
        known.w = left;
        now.x += left;
        now.w -= left;
        kit.pane("practice.known", kit.placed(known), {.fill = Role::panel, .pad_x = 16, .pad_y = 16},
                 [&] { draw_boat_known(scene); });
        kit.pane(name.c_str(), kit.placed(now),
                 {.pad_x = side_pad(now, most_wide), .pad_y = 16, .main = true},
                 [&] { draw_practice(scene); });
        return;
    }
    kit.pane(name.c_str(), kit.placed(boxes.body), {.pad_x = 16, .pad_y = 14, .main = true}, [&] {
        const bool known = scene.view.known;
        const std::string label = known ? "What is known" : "What is known · " + scene.page.boat->clock;
        if (kit.fold("practice.known", label, known)) scene.view.known = !known;
        if (known) {
            draw_boat_known(scene);
            kit.gap(14);
        }
        draw_practice(scene);
    });
}

void draw_body(StudyScene& scene, const BenchBoxes& boxes) {
    Kit& kit = scene.kit;
    const StudyPage& page = scene.page;
    if (page.working && page.showing == page.working->showing) {
        kit.pane("working", kit.placed(boxes.body),
                 {.pad_x = side_pad(boxes.body, most_wide), .pad_y = 18, .main = true},
                 [&] { draw_working(scene); });
    } else if (page.showing == StudyShowing::quiz && page.quiz) {
        draw_quiz_place(scene, boxes);
    } else if (page.showing == StudyShowing::practice && page.debrief) {
        kit.pane("debrief", kit.placed(boxes.body),
                 {.pad_x = side_pad(boxes.body, most_wide), .pad_y = 18, .main = true},
                 [&] { draw_debrief(scene); });
    } else if (page.showing == StudyShowing::practice && page.boat) {
        draw_practice_place(scene, boxes);
    } else {
        const bool progress = page.showing == StudyShowing::progress;
        kit.pane(progress ? "progress" : "study", kit.placed(boxes.body),
                 {.pad_x = side_pad(boxes.body, 1180), .pad_y = 18, .main = true},
                 [&] { progress ? draw_progress(scene) : draw_study_start(scene); });
    }
}

// Where there is little room the boat's name does without its level.
std::string beside_title(const StudyPage& page, bool roomy) {
    if (page.showing == StudyShowing::practice && page.boat) {
        return roomy ? page.boat->title : page.boat->title.substr(0, page.boat->title.find(" · "));
    }
    if (page.set) return page.set->heading.substr(0, page.set->heading.find(':'));
    return page.learner.empty() ? "Nothing is kept without a learner" : page.learner;
}

std::vector<KeyHint> keys_of(const StudyPage& page) {
    if (page.working && page.showing == page.working->showing) return {{"Esc", "back"}};
    if (page.showing == StudyShowing::quiz && page.quiz) {
        if (page.quiz->feedback || !page.quiz->closing.empty()) return {{"Enter", "go on"}, {"Esc", "stop"}};
        const bool order = page.quiz->way == study::Way::order;
        std::vector<KeyHint> keys{
            {"Enter", "answer"}, {"S", "how sure"}, {"0", "can't tell"}, {"Esc", "stop"}};
        keys.insert(keys.begin(),
                    order ? KeyHint{"1-9", "take up, then U or D"} : KeyHint{"A B C", "choose"});
        return keys;
    }
    if (page.showing == StudyShowing::practice && page.debrief)
        return {{"B", "the next boat"}, {"V", "see it with its faults"}, {"Esc", "back"}};
    if (page.showing == StudyShowing::practice && page.boat) {
        return {{"1-9", "look at"}, {"W", "suspect"}, {"R", "put right"}, {"H", "help"},
                {"L", "look"},      {"M", "sheets"},  {"S", "how sure"},  {"Esc", "leave: it is kept"}};
    }
    if (page.showing == StudyShowing::progress) return {{"Esc", "back"}};
    if (page.set) {
        if (page.set->at_end) return {};
        return {{"Enter", "go on"}};
    }
    std::vector<KeyHint> keys{{"Q", "quiz"}, {"B", "practice boat"}};
    if (!unfinished_boat(page).empty()) keys.push_back({"G", "go on with it"});
    if (!page.learner.empty()) keys.push_back({"H", "how I am doing"});
    return keys;
}

}  // namespace

std::optional<Action> draw_study(Kit& kit, const StudyPage& page, StudyView& view) {
    StudyScene scene{kit, page, view, std::nullopt};
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    scene.action = draw_header(kit, kit.placed(boxes.header),
                               {"Study", beside_title(page, boxes.header.w >= two_columns_from), false});
    draw_body(scene, boxes);
    draw_keys(kit, kit.placed(boxes.keys), keys_of(page));
    if (page.showing != StudyShowing::start && kit.take(Key::escape))
        scene.ask(ShowStudy{StudyShowing::start});
    return scene.action;
}

}  // namespace hardover::window

// Sets: one being made from quizzes and boats, and those that were made, each with its file.
#include "app/study/practice_boat.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

void draw_tasks(ClassScene& scene) {
    Kit& kit = scene.kit;
    const auto& tasks = scene.page().tasks;
    if (tasks.empty()) kit.text("No task yet: add a quiz or a boat.", Type::body, Role::ink2);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        const std::string text = std::to_string(i + 1) + ". " + tasks[i];
        const float button = kit.px(110);
        const float room = kit.width() - button - kit.px(8);
        const Box row = kit.take(std::max(kit.px(48), kit.text_height(text, Type::body, room)));
        kit.wrapped_in({row.x, row.y, room, row.h}, text, Type::body, Role::ink);
        const ButtonLook out{.label = "Take out", .face = Face::quiet};
        if (kit.button("task.drop." + std::to_string(i + 1),
                       {row.right() - button, row.y, button, kit.px(48)}, out))
            scene.ask(DropTask{i});
        kit.gap(4);
    }
    kit.gap(6);
}

// Everything, or one topic; gives the topic pressed. `chosen`: the one that is on; nothing where none is.
std::optional<std::string> draw_topics(ClassScene& scene, const std::string& prefix,
                                       const std::optional<std::string>& chosen) {
    std::vector<std::string> ids{prefix + "all"}, topics{""};
    std::vector<ChoiceLook> looks{{.label = "Everything", .selected = chosen == ""}};
    for (const study::Topic& topic : scene.page().topics) {
        ids.push_back(prefix + topic.id);
        topics.push_back(topic.id);
        looks.push_back({.label = topic.name, .selected = chosen == topic.id});
    }
    const int pressed = draw_choice_cells(scene.kit, ids, looks, 4);
    scene.kit.gap(8);
    if (pressed < 0) return std::nullopt;
    return topics[static_cast<std::size_t>(pressed)];
}

void draw_quiz_choices(ClassScene& scene) {
    scene.kit.text("10 questions about", Type::small, Role::ink);
    scene.kit.gap(4);
    if (const auto topic = draw_topics(scene, "task.quiz.", std::nullopt)) scene.ask(AddQuizTask{*topic, 10});
}

void draw_boat_choices(ClassScene& scene) {
    Kit& kit = scene.kit;
    std::vector<std::string> ids;
    std::vector<ChoiceLook> looks;
    for (const study::PracticeLevel& level : study::practice_levels()) {
        ids.push_back("task.boat." + std::to_string(level.level));
        looks.push_back({.label = level.name});
    }
    kit.text("A practice boat of level", Type::small, Role::ink);
    kit.gap(4);
    const int pressed = draw_choice_cells(kit, ids, looks, 3);
    if (pressed >= 0)
        scene.ask(AddBoatTask{study::practice_levels()[static_cast<std::size_t>(pressed)].level});
    kit.gap(8);
}

void fold(ClassScene& scene, const std::string& id, const std::string& label, void (*content)(ClassScene&)) {
    std::set<std::string>& open = scene.view().open;
    if (scene.kit.fold(id, label, open.contains(id)) && open.erase(id) == 0) open.insert(id);
    if (open.contains(id)) content(scene);
}

void draw_making(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    kit.card({}, [&] {
        kit.text("Make a set", Type::h2, Role::ink);
        kit.text("An ordered list of quizzes and practice boats, the same for every seat of the roster.",
                 Type::small, Role::ink2);
        kit.gap(8);
        draw_columns(
            kit, 0.6F,
            [&] {
                draw_text(scene, view.title, {"set.title", "Title", "", "Week 3: bleeding"});
            },
            [&] {
                draw_text(scene, view.due, {"set.due", "Due on, or empty", "", "2026-12-04"});
            });
        const int pressed = draw_choice_cells(
            kit, {"set.practice", "set.graded"},
            {{.label = "For practice", .note = "Says at once what was right", .selected = !view.graded},
             {.label = "Graded",
              .note = "Sealed until you give out its start code",
              .selected = view.graded}},
            2);
        if (pressed >= 0) view.graded = pressed == 1;
        kit.gap(10);
        draw_tasks(scene);
        fold(scene, "add.quiz", "Add a quiz", draw_quiz_choices);
        fold(scene, "add.boat", "Add a practice boat", draw_boat_choices);
        kit.gap(8);
        const bool whole = !scene.page().tasks.empty() && !view.title.empty();
        if (draw_primary(scene, "set.make", "Make it and write its file", whole))
            scene.ask(MakeSet{view.title, view.due, view.graded});
        draw_told_at(scene, "set");
    });
    kit.gap(14);
}

void draw_set(ClassScene& scene, const SetLine& set) {
    Kit& kit = scene.kit;
    kit.card({.pad = 14}, [&] {
        kit.text(set.id + " · " + set.title, Type::h2, Role::ink);
        kit.text(set.about, Type::small, Role::ink2);
        kit.gap(4);
        for (const std::string& task : set.tasks) kit.text(task, Type::body, Role::ink);
        if (!set.start_code.empty()) {
            kit.gap(6);
            kit.text("Start code, to be given out in the room: " + set.start_code, Type::strong, Role::ink);
        }
        if (!set.file.empty()) {
            kit.gap(4);
            kit.text(set.file, Type::small, Role::ink2);
        }
        kit.gap(8);
        if (draw_small_button(kit, "set.write." + set.id, {.label = "Write its file", .icon = Icon::sheet}))
            scene.ask(WriteSet{set.id});
    });
    kit.gap(10);
}

void draw_topic_choices(ClassScene& scene) {
    if (const auto topic = draw_topics(scene, "out.topic.", scene.view().topic)) scene.view().topic = *topic;
}

// A quiz that leaves the program. It needs no class and no keys.
void draw_quiz_out(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    kit.card({}, [&] {
        kit.text("A quiz on paper, or for another program", Type::h2, Role::ink);
        kit.gap(8);
        std::string about = "everything";
        for (const study::Topic& topic : scene.page().topics) {
            if (topic.id == view.topic) about = topic.name;
        }
        fold(scene, "out.topics", "About: " + about, draw_topic_choices);
        kit.gap(4);
        std::vector<std::string> ids;
        std::vector<ChoiceLook> looks;
        static constexpr const char* labels[] = {"10 questions", "20 questions", "40 questions"};
        static constexpr int counts[] = {10, 20, 40};
        for (std::size_t i = 0; i < std::size(counts); ++i) {
            ids.push_back("out.count." + std::to_string(counts[i]));
            looks.push_back({.label = labels[i], .selected = view.questions == counts[i]});
        }
        const int count = draw_choice_cells(kit, ids, looks, 3);
        if (count >= 0) view.questions = counts[count];
        kit.gap(10);
        const bool free = !scene.page().working;
        const int pressed = draw_button_row(
            kit, {{"out.paper", {.label = "Quiz paper with key (PDF)", .icon = Icon::sheet, .enabled = free}},
                  {"out.questions",
                   {.label = "For other programs (QTI)", .icon = Icon::hand_over, .enabled = free}}});
        const QuizExport what = pressed == 1 ? QuizExport::questions : QuizExport::paper;
        if (pressed >= 0) scene.ask(ExportQuiz{what, view.topic, view.questions});
        draw_told_at(scene, "quiz_out");
    });
    kit.gap(14);
}

}  // namespace

void draw_sets(ClassScene& scene) {
    if (!draw_class_first(scene)) return;
    if (draw_keys_first(scene)) {
        draw_told_at(scene, "sets");
        draw_making(scene);
        if (!scene.page().sets.empty()) {
            scene.kit.text("Sets that were made", Type::h2, Role::ink);
            scene.kit.gap(6);
        }
        for (auto set = scene.page().sets.rbegin(); set != scene.page().sets.rend(); ++set)
            draw_set(scene, *set);
    }
    draw_quiz_out(scene);
}

}  // namespace hardover::window

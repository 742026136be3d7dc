// The records on the bench: jobs found, the jobs of a boat, photos, files going out and coming in.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/records/records_parts.hpp"
#include "app/window/words_here.hpp"

namespace hardover::window {

namespace {

void draw_history(RecordsScene& scene, const BoatHistory& history) {
    Kit& kit = scene.kit;
    kit.card({.pad = 14, .edge = Role::accent}, [&] {
        kit.text(history.title, Type::h2, Role::ink);
        for (const std::string& line : history.compared) {
            kit.gap(4);
            kit.text(line, Type::strong, Role::ink);
        }
        for (const EarlierJob& job : history.jobs) {
            kit.gap(10);
            kit.text(job.title, Type::strong, Role::ink);
            if (!job.words.empty()) kit.text(job.words, Type::body, Role::ink);
            if (!job.complaints.empty()) kit.text(job.complaints, Type::small, Role::ink2);
            for (const std::string& found : job.found) kit.text(found, Type::small, Role::ink);
            for (const std::string& work : job.work) kit.text(work, Type::small, Role::ink);
            if (!job.cause.empty()) kit.text("Cause: " + job.cause, Type::strong, Role::right);
            kit.gap(4);
            if (draw_small_button(kit, "history.open." + std::to_string(job.number), {.label = "Open"}))
                scene.action = Action{OpenJob{job.number}};
        }
        kit.gap(8);
        if (draw_small_button(kit, "history.close", {.label = "Close", .face = Face::quiet}))
            scene.ask(ShowEarlierJobs{""});
    });
    kit.gap(12);
}

void draw_found(RecordsScene& scene, const FoundJobs& found) {
    Kit& kit = scene.kit;
    kit.text(found.told, Type::body, Role::ink);
    kit.gap(8);
    for (const FoundJob& job : found.jobs) {
        const std::string number = std::to_string(job.row.number);
        kit.card({.pad = 12}, [&] {
            kit.text(job.title, Type::strong, Role::ink);
            kit.text(words_here(job.under), Type::small, Role::ink2);
            if (!job.match.empty()) kit.text(words_here(job.match), Type::small, Role::ink);
            kit.gap(6);
            const Box row = kit.take(kit.px(48));
            const ButtonLook open{.label = "Open"};
            const ButtonLook all{.label = "All jobs of this boat", .face = Face::quiet};
            const float w = kit.button_width(open);
            if (kit.button("found.open." + number, {row.x, row.y, w, row.h}, open))
                scene.action = Action{OpenJob{job.row.number}};
            const float wide = std::min(kit.button_width(all), row.w - w - kit.px(8));
            if (kit.button("found.boat." + number, {row.x + w + kit.px(8), row.y, wide, row.h}, all))
                scene.ask(ShowEarlierJobs{job.row.summary.boat});
        });
        kit.gap(6);
    }
}

void draw_find(RecordsScene& scene) {
    Kit& kit = scene.kit;
    RecordsDesk::View& view = scene.view();
    if (kit.fold("records.find", "Find among all jobs", view.find_open)) view.find_open = !view.find_open;
    if (!view.find_open) return;
    bool entered =
        draw_records_field(kit, "find.words", "Words in the job", view.words, "bracket, groans, bleed");
    entered |= draw_records_field(kit, "find.boat", "Name of the boat", view.boat, "Grey Heron");
    const int state = draw_choice_cells(kit, {"find.any", "find.in_hand", "find.handed_back"},
                                        {{.label = "Any", .selected = view.state.empty()},
                                         {.label = "In hand", .selected = view.state == "in hand"},
                                         {.label = "Handed back", .selected = view.state == "handed back"}},
                                        3);
    if (state >= 0) view.state = state == 0 ? "" : state == 1 ? "in hand" : "handed back";
    kit.gap(8);
    if (draw_small_button(kit, "find.go", {.label = "Find", .icon = Icon::search, .face = Face::primary}) ||
        entered || state >= 0)
        scene.ask(FindJobs{view.state, view.boat, view.words});
    kit.gap(8);
    draw_records_told(scene, "find");
    if (scene.page().history) draw_history(scene, *scene.page().history);
    if (scene.page().found) draw_found(scene, *scene.page().found);
    kit.gap(10);
}

void draw_photos(RecordsScene& scene) {
    Kit& kit = scene.kit;
    RecordsDesk::View& view = scene.view();
    if (!scene.state.job) return;
    const std::string title = "Photos of job " + std::to_string(scene.state.job->number);
    if (kit.fold("records.photos", title, view.photos_open)) view.photos_open = !view.photos_open;
    if (!view.photos_open) return;
    kit.text("Let files fall on the window, or give their path. They are kept beside the records.",
             Type::small, Role::ink2);
    kit.gap(6);
    draw_records_field(kit, "photo.caption", "What it shows", view.caption, "Crack at the aft bolt");
    const bool entered =
        draw_records_field(kit, "photo.path", "Its file", view.photo_path, "/media/camera/IMG_0012.jpg");
    if (draw_small_button(kit, "photo.attach",
                          {.label = "Keep with the job", .enabled = !view.photo_path.empty()}) ||
        (entered && !view.photo_path.empty()))
        scene.ask(AttachPhoto{view.photo_path});
    kit.gap(6);
    draw_records_told(scene, "photo");
    for (std::size_t i = 0; i < scene.page().photos.size(); ++i) {
        const PhotoLine& photo = scene.page().photos[i];
        const bool whole = photo.state == PhotoState::whole;
        const float button = kit.px(100), room = kit.width() - button - kit.px(8);
        const Box row = kit.take(std::max(kit.px(48), kit.text_height(photo.text, Type::body, room)));
        kit.wrapped_in({row.x, row.y, room, row.h}, photo.text, Type::body, whole ? Role::ink : Role::wrong);
        if (kit.button("photo.open." + std::to_string(i + 1),
                       {row.right() - button, row.y, button, kit.px(48)},
                       {.label = "Open", .enabled = photo.state != PhotoState::missing}))
            scene.ask(OpenPhoto{photo.path});
        kit.gap(4);
    }
    kit.gap(10);
}

void draw_exchange(RecordsScene& scene) {
    Kit& kit = scene.kit;
    RecordsDesk::View& view = scene.view();
    if (kit.fold("records.exchange", "Take jobs elsewhere, or take them in", view.exchange_open))
        view.exchange_open = !view.exchange_open;
    if (!view.exchange_open) return;
    if (draw_small_button(
            kit, "export.all",
            {.label = "Write all jobs to a file", .icon = Icon::sheet, .enabled = !scene.busy()}))
        scene.ask(ExportJobs{0});
    kit.gap(6);
    if (scene.state.job) {
        const std::string label = "Write job " + std::to_string(scene.state.job->number) + " to a file";
        if (draw_small_button(kit, "export.job",
                              {.label = label, .icon = Icon::sheet, .enabled = !scene.busy()}))
            scene.ask(ExportJobs{scene.state.job->number});
        kit.gap(6);
    }
    draw_records_told(scene, "export");
    const bool entered =
        draw_records_field(kit, "import.path", "A file of jobs (.json), or the records of another PC (.db)",
                           view.import_path, "/media/stick/jobs.json");
    const bool there = !view.import_path.empty() && !scene.busy();
    if (draw_small_button(kit, "import.go", {.label = "Take in", .enabled = there}) || (entered && there))
        scene.ask(ImportJobs{view.import_path});
    kit.gap(6);
    draw_records_told(scene, "import");
}

}  // namespace

bool draw_records_field(Kit& kit, const std::string& id, const std::string& name, std::string& text,
                        const std::string& placeholder) {
    kit.text(name, Type::small, Role::ink);
    kit.gap(4);
    const FieldEvent event =
        kit.field(id, kit.take(kit.px(52)), text, {.name = name, .placeholder = placeholder});
    kit.gap(8);
    return event.entered;
}

void draw_records_told(RecordsScene& scene, const std::string& at) {
    Kit& kit = scene.kit;
    if (scene.busy() && scene.page().working->at == at) {
        if (draw_shown_work(kit, *scene.page().working)) scene.ask(StopRecordsWork{});
        kit.gap(8);
    }
    const RecordsTold& told = scene.page().told;
    if (told.at != at || told.lines.empty()) return;
    if (told.stopped) {
        draw_notice(kit, told.lines.front());
        return;
    }
    if (told.trouble) {
        draw_trouble(kit, told.lines.front());
        return;
    }
    kit.card({.fill = Role::right_tint, .line = Role::right, .pad = 12, .edge = Role::right}, [&] {
        for (const std::string& line : told.lines) kit.text(words_here(line), Type::body, Role::ink);
        if (told.folder.empty()) return;
        kit.gap(6);
        if (draw_small_button(kit, "records.folder", {.label = "Show the folder", .icon = Icon::bench}))
            scene.action = Action{SettingsAction{OpenFolder{told.folder}}};
    });
    kit.gap(8);
}

std::optional<Action> draw_records_on_bench(Kit& kit, AppState& state) {
    RecordsScene scene{kit, state, std::nullopt};
    kit.gap(8);
    draw_find(scene);
    draw_photos(scene);
    draw_exchange(scene);
    return scene.action;
}

}  // namespace hardover::window

// The records in the settings: backups with the way back to one, how many stay, and a look through
// everything.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/records/records_parts.hpp"
#include "app/window/words_here.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t most_shown = 20;
constexpr int keep_choices[] = {5, 10, 30, 100};

void draw_backup(RecordsScene& scene, const Backup& backup) {
    Kit& kit = scene.kit;
    const std::string number = std::to_string(backup.number);
    const bool pressed_once = scene.view().restoring == backup.path;
    const std::string text = "Backup " + number + ", " + backup.at.substr(0, 10) + " " +
                             backup.at.substr(11, 5) + " UTC, " +
                             std::to_string((backup.bytes + 1023) / 1024) + " kB" +
                             (backup.kept_aside ? ", kept aside before a restore" : "");
    const float button = kit.px(110), room = kit.width() - button - kit.px(8);
    const Box row = kit.take(std::max(kit.px(48), kit.text_height(text, Type::body, room)));
    kit.wrapped_in({row.x, row.y, room, row.h}, text, Type::body, Role::ink);
    if (kit.button("restore." + number, {row.right() - button, row.y, button, kit.px(48)},
                   {.label = "Restore", .enabled = !scene.busy(), .selected = pressed_once}))
        scene.ask(RestoreBackup{backup.path, false});
    kit.gap(4);
    if (!pressed_once || scene.busy()) return;
    kit.card({.fill = Role::safety_tint, .line = Role::safety, .pad = 12, .edge = Role::safety}, [&] {
        kit.text("Everything goes back to this moment. What is there now is kept aside first.", Type::body,
                 Role::ink);
        kit.gap(6);
        if (draw_small_button(kit, "restore.sure", {.label = "Go back to it", .face = Face::primary}))
            scene.ask(RestoreBackup{backup.path, true});
        kit.gap(6);
        if (draw_small_button(kit, "restore.leave", {.label = "Leave it", .face = Face::quiet}))
            scene.ask(RestoreBackup{"", false});
    });
    kit.gap(6);
}

void draw_backups(RecordsScene& scene) {
    Kit& kit = scene.kit;
    kit.card({}, [&] {
        kit.text("Backups", Type::h2, Role::ink);
        kit.text("One is made when the program closes after something was written.", Type::small, Role::ink2);
        kit.gap(8);
        std::vector<std::string> ids;
        std::vector<ChoiceLook> looks;
        std::vector<std::string> labels;
        for (const int count : keep_choices) labels.push_back(std::to_string(count));
        for (std::size_t i = 0; i < labels.size(); ++i) {
            ids.push_back("backups.keep." + labels[i]);
            looks.push_back({.label = labels[i], .selected = scene.page().backups_kept == keep_choices[i]});
        }
        kit.text("How many stay", Type::small, Role::ink);
        kit.gap(4);
        const int pressed = draw_choice_cells(kit, ids, looks, 4);
        if (pressed >= 0) scene.ask(KeepBackups{keep_choices[pressed]});
        draw_records_told(scene, "backups");
        kit.gap(8);
        if (scene.page().backups.empty()) kit.text("There is none yet.", Type::body, Role::ink);
        for (std::size_t i = 0; i < scene.page().backups.size() && i < most_shown; ++i)
            draw_backup(scene, scene.page().backups[i]);
        draw_records_told(scene, "restore");
    });
    kit.gap(16);
}

void draw_findings(Kit& kit, const RecordsChecked& checked) {
    for (const RecordsFinding& finding : checked.findings) {
        const Role edge = finding.grave ? Role::wrong : Role::outline;
        kit.card({.fill = Role::panel, .pad = 10, .edge = edge}, [&] {
            kit.text(finding.where, Type::strong, Role::ink);
            kit.text(finding.what, Type::body, Role::ink);
            if (!finding.cure.empty()) kit.text(words_here(finding.cure), Type::small, Role::ink2);
        });
        kit.gap(4);
    }
}

// What mending will do stands before its button.
bool draw_mend_wish(Kit& kit, const std::string& id, const std::string& label, const std::string& caution) {
    bool pressed = false;
    kit.card({.fill = Role::safety_tint, .line = Role::safety, .pad = 12, .edge = Role::safety}, [&] {
        kit.text(caution, Type::body, Role::ink);
        kit.gap(6);
        pressed = draw_small_button(kit, id, {.label = label, .face = Face::primary});
    });
    kit.gap(6);
    return pressed;
}

void draw_mending(RecordsScene& scene) {
    const RecordsPage& page = scene.page();
    if (!scene.busy() && page.checked && !page.checked->damaged.empty() &&
        draw_mend_wish(
            scene.kit, "records.mend", "Mend them",
            "The file as it is now is put aside in the folder of the backups first. Then each damaged row is "
            "brought back, where its checksum proves what it was or a backup has it. Everything "
            "else stays as it is."))
        scene.ask(MendRecords{});
    draw_records_told(scene, "mend");
    if (!scene.busy() && page.mend_as_it_reads &&
        draw_mend_wish(scene.kit, "records.as_it_reads", "Let it count as it reads",
                       "No backup here has what is still damaged. It can count as it reads now, with what "
                       "the damage made of it: read those jobs again before you trust them. To be sure, go "
                       "back to a whole backup instead."))
        scene.ask(MendRecords{true});
}

void draw_check(RecordsScene& scene) {
    Kit& kit = scene.kit;
    kit.card({}, [&] {
        kit.text("Are the records in order?", Type::h2, Role::ink);
        kit.text("Every event, every handed-back job and every photo is looked at.", Type::small, Role::ink2);
        kit.gap(8);
        if (draw_small_button(kit, "records.check", {.label = "Look through them", .enabled = !scene.busy()}))
            scene.ask(CheckRecords{});
        kit.gap(6);
        draw_records_told(scene, "check");
        if (scene.page().checked) draw_findings(kit, *scene.page().checked);
        draw_mending(scene);
    });
    kit.gap(16);
}

}  // namespace

std::optional<Action> draw_records_in_settings(Kit& kit, AppState& state) {
    RecordsScene scene{kit, state, std::nullopt};
    draw_backups(scene);
    draw_check(scene);
    return scene.action;
}

}  // namespace hardover::window

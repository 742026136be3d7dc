// The cards of the place Settings, one under the other, or in two columns.
#include "app/window/screens/settings.hpp"

#include "app/window/layout.hpp"
#include "app/window/records_held.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

struct Scene {
    Kit& kit;
    const SettingsPage& page;
    SettingsView& view;
    std::optional<Action> action;
};

// Choices in a card of their own; gives the place of the one pressed, or -1.
int draw_card_of(Scene& scene, const char* title, const char* about, const std::string& prefix,
                 const std::vector<ChoiceText>& choices, std::size_t most_across) {
    Kit& kit = scene.kit;
    int pressed = -1;
    kit.card({}, [&] {
        kit.text(title, Type::h2, Role::ink);
        if (about[0] != 0) kit.text(about, Type::small, Role::ink2);
        kit.gap(10);
        std::vector<std::string> ids;
        std::vector<ChoiceLook> looks;
        for (const ChoiceText& choice : choices) {
            ids.push_back(prefix + (choice.id.empty() ? "open" : choice.id));
            looks.push_back({.label = choice.text, .selected = choice.chosen});
        }
        pressed = draw_choice_cells(kit, ids, looks, most_across);
    });
    kit.gap(16);
    return pressed;
}

void set(Scene& scene, const std::function<void(ShopSettings&)>& change) {
    ShopSettings shop = scene.page.shop;
    change(shop);
    scene.action = SetShop{shop};
}

void draw_units(Scene& scene) {
    const bool metric = scene.page.shop.ways.units == UnitSystem::metric;
    const int pressed = draw_card_of(
        scene, "Units", "Of figures on every page and on the job sheet. Any unit may be typed.", "units.",
        {{"us", "US: in, lbf, psi", !metric}, {"metric", "Metric: mm, N, bar", metric}}, 2);
    if (pressed >= 0) {
        set(scene, [&](ShopSettings& shop) {
            shop.ways.units = pressed == 1 ? UnitSystem::metric : UnitSystem::us;
        });
    }
}

void draw_look(Scene& scene) {
    std::vector<ChoiceText> choices;
    for (const LookRow& row : looks()) {
        choices.push_back(
            {std::string(row.id), std::string(row.label), row.look == scene.page.preferences.look});
    }
    const int pressed = draw_card_of(scene, "Theme", "", "look.", choices, 3);
    if (pressed >= 0) scene.action = ChooseLook{looks()[static_cast<std::size_t>(pressed)].look};
}

void draw_motion(Scene& scene) {
    const bool still = scene.page.preferences.still;
    const std::vector<ChoiceText> choices{{"moves", "Bars move to their place", !still},
                                          {"still", "Nothing moves by itself", still}};
    const int pressed =
        draw_card_of(scene, "Motion", "Only the ranking of a boat that is projected to a class moves.",
                     "motion.", choices, 2);
    if (pressed >= 0) scene.action = KeepStill{pressed == 1};
}

void draw_text_size(Scene& scene) {
    std::vector<ChoiceText> choices;
    for (int percent = least_text; percent <= most_text; percent += 25) {
        choices.push_back({std::to_string(percent), std::to_string(percent) + " %",
                           percent == scene.page.preferences.text_percent});
    }
    const int pressed = draw_card_of(scene, "Text size", "A small window keeps it smaller, so that all fits.",
                                     "text.", choices, 4);
    if (pressed >= 0) scene.action = ChooseTextSize{least_text + 25 * pressed};
}

// A field with its name over it and what is wrong, or a hint, under it.
FieldEvent draw_field(Scene& scene, const std::string& id, const char* name, const std::string& accepted,
                      const std::string& hint) {
    Kit& kit = scene.kit;
    Draft& draft = scene.view.drafts.of(id, accepted);
    kit.text(name, Type::small, Role::ink);
    kit.gap(4);
    const FieldEvent event = kit.field("settings." + id, kit.take(kit.px(52)), draft.text,
                                       {.name = name, .wrong = !draft.error.empty()});
    if (event.edited) {
        draft.changed = true;
        draft.error.clear();
    }
    kit.gap(4);
    if (draft.error.empty()) {
        kit.text(hint, Type::small, Role::ink2);
    } else {
        kit.text(draft.error, Type::small, Role::wrong);
    }
    kit.gap(10);
    return event;
}

void draw_shop(Scene& scene) {
    Kit& kit = scene.kit;
    kit.card({}, [&] {
        kit.text("The shop", Type::h2, Role::ink);
        kit.gap(10);
        const FieldEvent name =
            draw_field(scene, "name", "Name", scene.page.shop.name, "Stands at the head of the job sheet.");
        Draft& typed = scene.view.drafts.of("name", scene.page.shop.name);
        if (name.committed && typed.changed) {
            set(scene, [&](ShopSettings& shop) { shop.name = typed.text; });
            typed.changed = false;
        }
        if (name.cancelled) scene.view.drafts.drop("name");
        const FieldEvent rate =
            draw_field(scene, "rate", "Price of an hour", rate_text(scene.page.shop.ways.rate),
                       "Turns the price of a part into minutes. Empty: " + scene.page.usual_rate +
                           ", as the knowledge has it.");
        const Draft& price = scene.view.drafts.of("rate", rate_text(scene.page.shop.ways.rate));
        if (rate.committed && price.changed) scene.action = SetRate{price.text};
        if (rate.cancelled) scene.view.drafts.drop("rate");
        kit.text("Paper of the job sheet", Type::small, Role::ink);
        kit.gap(4);
        const bool a4 = scene.page.shop.a4;
        const int paper =
            draw_choice_cells(kit, {"paper.letter", "paper.a4"},
                              {{.label = "Letter", .selected = !a4}, {.label = "A4", .selected = a4}}, 2);
        if (paper >= 0) set(scene, [&](ShopSettings& shop) { shop.a4 = paper == 1; });
    });
    kit.gap(16);
}

void draw_new_jobs(Scene& scene) {
    if (scene.page.waters.empty() && scene.page.uses.empty()) return;
    const int waters =
        draw_card_of(scene, "Where the boats lie", "For new jobs: whose rules are named on the page.",
                     "waters.", scene.page.waters, 2);
    if (waters >= 0) {
        set(scene, [&](ShopSettings& shop) {
            shop.waters = scene.page.waters[static_cast<std::size_t>(waters)].id;
        });
    }
    const int use = draw_card_of(scene, "What the boats are used for",
                                 "For new jobs. Each job can say otherwise.", "use.", scene.page.uses, 2);
    if (use >= 0) {
        set(scene,
            [&](ShopSettings& shop) { shop.vessel_use = scene.page.uses[static_cast<std::size_t>(use)].id; });
    }
}

void draw_records(Scene& scene) {
    Kit& kit = scene.kit;
    kit.card({}, [&] {
        kit.text("Records", Type::h2, Role::ink);
        kit.text("All jobs are in one file on this computer. Nothing is sent anywhere.", Type::small,
                 Role::ink2);
        kit.gap(6);
        kit.text(scene.page.records_file, Type::body, Role::ink);
        kit.gap(10);
        const bool free = !scene.page.working;
        const ButtonLook backup{.label = "Backup now", .icon = Icon::sheet, .key = "K", .enabled = free};
        if (kit.button("settings.backup", kit.take(kit.px(52)), backup) ||
            (free && (kit.take_letter(U'k') || kit.take_letter(U'K')))) {
            scene.action = RecordsAction{BackUpRecords{}};
        }
        kit.gap(8);
        if (!free && scene.page.working->at == "backup") {
            if (draw_shown_work(kit, *scene.page.working)) scene.action = RecordsAction{StopRecordsWork{}};
            kit.gap(8);
        }
        draw_notice(kit, scene.page.backup_stopped);
        if (!scene.view.backup.empty()) {
            kit.card({.fill = Role::right_tint, .line = Role::right, .pad = 12, .edge = Role::right}, [&] {
                kit.text("A copy is made, read back and found whole", Type::strong, Role::ink);
                kit.text(scene.view.backup, Type::small, Role::ink);
            });
            kit.gap(8);
        }
        if (!scene.view.backup_trouble.empty()) {
            kit.text(scene.view.backup_trouble, Type::body, Role::wrong);
            kit.gap(8);
        }
        const ButtonLook open{.label = "Show the folder", .icon = Icon::bench};
        if (kit.button("settings.folder", kit.take(kit.px(52)), open)) {
            scene.action = OpenFolder{scene.page.records_folder};
        }
        if (!scene.view.folder_trouble.empty()) {
            kit.gap(6);
            kit.text(scene.view.folder_trouble, Type::small, Role::wrong);
        }
    });
    kit.gap(16);
}

void draw_left(Scene& scene) {
    scene.kit.tab_starts_here();
    draw_units(scene);
    draw_look(scene);
    draw_motion(scene);
    draw_text_size(scene);
    draw_records(scene);
}

void draw_right(Scene& scene) {
    draw_shop(scene);
    draw_new_jobs(scene);
}

}  // namespace

std::optional<Action> draw_settings(Kit& kit, const SettingsPage& page, SettingsView& view,
                                    const std::function<void()>& below) {
    Scene scene{kit, page, view, std::nullopt};
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    const auto bar =
        draw_header(kit, kit.placed(boxes.header), {"Settings", "Kept as soon as chosen", false});
    const float spare = std::max(0.0F, boxes.body.w - 1180) / 2;
    kit.pane("settings", kit.placed(boxes.body), {.pad_x = 20 + spare, .pad_y = 20, .main = true}, [&] {
        if (!view.trouble.empty()) {
            kit.card({.fill = Role::wrong_tint, .line = Role::wrong, .pad = 14, .edge = Role::wrong},
                     [&] { kit.text(view.trouble, Type::body, Role::ink); });
            kit.gap(12);
        }
        if (kit.width() < kit.px(820)) {
            draw_left(scene);
            draw_right(scene);
            if (below) below();
            return;
        }
        const Box start = kit.take(0);
        const float gap = kit.px(20), w = (start.w - gap) / 2;
        const float left = kit.inside({start.x, start.y, w, 0}, [&] { draw_left(scene); });
        const float right = kit.inside({start.x + w + gap, start.y, w, 0}, [&] {
            draw_right(scene);
            if (below) below();
        });
        kit.take(std::max(left, right));
    });
    std::vector<KeyHint> keys{{"K", "backup now"}};
    if (page.working) keys.clear();
    if (page.working && page.working->can_stop && shown_at(*page.working) == Place::settings)
        keys = {{"Esc", "stop the work"}};
    draw_keys(kit, kit.placed(boxes.keys), keys);
    return scene.action ? scene.action : bar;
}

}  // namespace hardover::window

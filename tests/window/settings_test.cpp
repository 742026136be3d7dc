// What can be settled, that it is kept at once in the right file, and that it reaches the job in hand.
#include <catch2/catch.hpp>

#include "marks_check.hpp"
#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

using Where = hardover::window::Place;

void go_to_settings(Shop& shop) {
    carry_out(*shop.state, GoTo{Where::settings});
    shop.harness->frames(4);
}

// Scrolls until it is in sight, then presses it.
void press(Shop& shop, const std::string& id) {
    for (int i = 0; i < 30 && shop.harness->get(id).visible.h < 20; ++i) shop.harness->press(Key::page_down);
    shop.harness->click(id);
}

}  // namespace

TEST_CASE("Units chosen in the settings are kept, and the job in hand shows its figures in them") {
    Shop shop;
    shop.start_job("Grey Heron", "");
    carry_out(*shop.state, GiveNumber{"ram_stroke", "9 in", true});
    const auto stroke = [&] {
        for (const RigLine& line : shop.state->page.rig) {
            if (line.id == "ram_stroke") return line;
        }
        return RigLine{};
    };
    CHECK(stroke().value == "9 in");
    CHECK(stroke().field.unit == "in");
    go_to_settings(shop);
    press(shop, "units.metric");
    CHECK(stroke().value == "229 mm");
    CHECK(stroke().field.unit == "mm");
    CHECK(stroke().field.text == "228.6 mm");  // to the last digit, so that confirming it changes nothing
    shop.start_again();
    carry_out(*shop.state, OpenJob{1});
    CHECK(stroke().value == "229 mm");
}

TEST_CASE(
    "The shop's price of an hour is kept and taken by the reasoning, nonsense is refused beside the field") {
    Shop shop;
    shop.start_job("Grey Heron", "");
    go_to_settings(shop);
    carry_out(*shop.state, SetRate{"ninety"});
    shop.harness->frames(4);
    CHECK(shop.harness->shows("'ninety' is no price of an hour"));
    CHECK(shop.state->shop.ways.rate == 0);
    carry_out(*shop.state, SetRate{"95.50"});
    CHECK(shop.state->job->facts.shop_rate == Approx(95.5));
    shop.start_again();
    carry_out(*shop.state, OpenJob{1});
    CHECK(shop.state->job->facts.shop_rate == Approx(95.5));
    carry_out(*shop.state, SetRate{""});
    CHECK(shop.state->job->facts.shop_rate == 0);
}

TEST_CASE("The shop's name is typed in, kept, and stands on the job sheet") {
    Shop shop;
    shop.state->fonts_folder = source_path("assets/fonts");
    shop.start_job("Grey Heron", "");
    go_to_settings(shop);
    shop.harness->click("settings.name");
    shop.harness->type("Invented Yard");
    shop.harness->press(Key::enter);
    CHECK(shop.state->shop.name == "Invented Yard");
    carry_out(*shop.state, WriteSheet{});
    CHECK(shop.state->view.sheet.trouble.empty());
    CHECK(shop.state->view.sheet.path == shop.folder.file("job sheets/Job 1 Grey Heron.pdf"));
    CHECK(file_text(shop.state->view.sheet.path).starts_with("%PDF"));
}

TEST_CASE("A job sheet that cannot be written says why where the job is") {
    Shop shop;
    shop.state->fonts_folder = source_path("assets/fonts");
    shop.start_job("Grey Heron", "");
    std::ofstream(shop.folder.file("job sheets")) << "in the way";
    shop.harness->type("s");
    CHECK(shop.harness->shows("the folder for the job sheets cannot be made"));
    CHECK_FALSE(shop.harness->has("sheet.open"));
}

TEST_CASE("Region and use settled for new jobs are told of the next job, not of the one in hand") {
    Shop shop;
    shop.start_job("Grey Heron", "");
    go_to_settings(shop);
    press(shop, "waters.canada");
    press(shop, "use.inspected_passenger");
    CHECK(shop.state->job->facts.rig.empty());
    const auto next = hardover::start_job(*shop.store, shipped(), {"Little Auk", "", ""}, shop.state->now());
    REQUIRE_OK(next);
    const auto value = [&](const char* field) {
        return next.value().facts.rig.at(find(shipped().rig_fields, field));
    };
    CHECK(value("waters") == RigValue(std::in_place_type<std::string>, "canada"));
    CHECK(value("vessel_use") == RigValue(std::in_place_type<std::string>, "inspected_passenger"));
    const bool deferred =
        std::any_of(next.value().assessment.deferrals.begin(), next.value().assessment.deferrals.end(),
                    [](Index at) { return shipped().deferrals[at].id == "commercial_vessel"; });
    CHECK(deferred);
}

TEST_CASE("Theme and text size are chosen by hand") {
    Shop shop;
    go_to_settings(shop);
    press(shop, "look.high_contrast");
    CHECK(shop.state->preferences.look == Look::high_contrast);
    press(shop, "text.175");
    CHECK(shop.state->preferences.text_percent == 175);
}

TEST_CASE("Backup now makes a copy that opens and holds every job, and says where it is") {
    Shop shop;
    shop.start_job("Grey Heron", "");
    go_to_settings(shop);
    shop.harness->type("k");
    const std::string path = shop.state->settings_view.backup;
    CHECK(shop.harness->shows(path));
    const auto copy = Store::open(path);
    REQUIRE_OK(copy);
    REQUIRE_OK(copy.value().jobs());
    CHECK(copy.value().jobs().value().size() == 1);
    SECTION("A second one in the same second is another file") {
        shop.harness->type("k");
        CHECK(shop.state->settings_view.backup != path);
        CHECK(shop.state->settings_view.backup_trouble.empty());
    }
}

TEST_CASE("Nothing is cut, covered or too small in the settings, at any size") {
    for (const auto& [w, h, text] :
         {std::tuple{1024.0F, 640.0F, 1.0F}, std::tuple{1280.0F, 800.0F, 1.0F},
          std::tuple{1280.0F, 800.0F, 2.0F}, std::tuple{800.0F, 1280.0F, 1.0F},
          std::tuple{1920.0F, 1080.0F, 2.5F}, std::tuple{3840.0F, 2160.0F, 1.0F}}) {
        Shop shop(w, h);
        go_to_settings(shop);
        shop.state->settings_view.backup = "/home/bench/hardover/records-2026-11-25-150313.db";
        shop.state->settings_view.drafts.refuse("rate", "ninety", "'ninety' is no price of an hour");
        shop.harness.reset();
        const float scale = scale_for(text, w, h);
        Harness harness(w, h, scale, Look::light, [&](Kit& kit) { draw_app(kit, *shop.state); });
        INFO(w << " x " << h << ", text " << text);
        check_marks(harness.marks(), scale);
    }
}

TEST_CASE("A preferences file that cannot be read is put aside, not written over") {
    ScratchFolder folder;
    const std::string path = folder.file("window.json");
    std::ofstream(path) << "[1, 2";
    const auto read = read_preferences(path);
    REQUIRE_FALSE(read.ok());
    CHECK(read.error().text().find("window.json.unreadable") != std::string::npos);
    CHECK(read.error().where == path + ":1:6");
    REQUIRE_OK(write_preferences(path, {Look::high_contrast, 150}));
    CHECK(file_text(path + ".unreadable") == "[1, 2");
    REQUIRE_OK(read_preferences(path));
    CHECK(read_preferences(path).value() == Preferences{Look::high_contrast, 150});
}

TEST_CASE(
    "Preferences that do not fit are refused at their line and column, and a text size is never another") {
    CHECK(preferences_of("{\n \"theme\": 3}", "window.json").error().where == "window.json:2:11");
    CHECK(preferences_of("{\"text_percent\": 1.5}", "window.json").error().where == "window.json:1:18");
    CHECK(preferences_of("[]", "window.json").error().where == "window.json:1:1");
    for (const char* number : {"4294967396", "18446744073709551615"}) {
        const auto read = preferences_of(std::string("{\"text_percent\": ") + number + "}", "window.json");
        REQUIRE_OK(read);
        CHECK(read.value().text_percent == most_text);
    }
}

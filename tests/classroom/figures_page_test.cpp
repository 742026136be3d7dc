// The page of a class's figures, its text and its JSON.
#include "app/classroom/figures_page.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/study/authored.hpp"
#include "classroom/class_support.hpp"
#include "shipped.hpp"
#include "study/learning_checks.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

ClassResults class24() {
    ClassResults results = class_of(matrix_of(learning_checks("ctt")["class24"]["matrix"], 12));
    results.seats[3].name = "Invented Name";
    for (std::size_t n = 0; n < 24; ++n) {
        results.boats.push_back(worked(seat_code(n), 20500, 20, 5));
        results.boats.push_back(worked(seat_code(n), 20540, 8, -5));
    }
    return results;
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the page names the item whose marking looks wrong, and on what the reliability rests") {
    const FiguresPage page = make_figures_page(make_figures(class24(), Knowledge{}), false);
    CHECK(page.headline == "Invented: 24 learners with results, 288 answers, 48 practice boats.");
    REQUIRE(page.to_look_at.size() == 3);
    CHECK(holds(page.to_look_at[0], "Item 12"));
    CHECK(holds(page.to_look_at[0], "look whether the marking is right"));
    const std::string text = figures_text(page);
    CHECK(holds(text, "24 learners by 12 items: reliability (KR-20) 0.56 ± 0.14, 95 % from 0.19 to 0.76."));
    CHECK(holds(text, "fewer than 30 learners (J. M. Linacre 1994). Do not rank by them."));
    CHECK(holds(text, "a boat took 74 minutes, 14 lost by choices and 0"));
    CHECK(page.items.rows.size() == 12);
    CHECK(page.items.rows[11].look_at);
    CHECK_FALSE(page.items.rows[2].look_at);
}

TEST_CASE("names stand on the page and in the JSON only where they are wanted") {
    const ClassFigures figures = make_figures(class24(), Knowledge{});
    CHECK_FALSE(holds(figures_text(make_figures_page(figures, false)), "Invented Name"));
    CHECK(holds(figures_text(make_figures_page(figures, true)), "A04 Invented Name"));
    CHECK_FALSE(holds(figures_json(figures, false), "Invented Name"));
    CHECK(holds(figures_json(figures, true), "Invented Name"));
}

TEST_CASE("the plots hold one mark an item and a learner, ringed where something is wrong") {
    const FiguresPage page = make_figures_page(make_figures(class24(), Knowledge{}), false);
    REQUIRE(page.item_map.plot.marks.size() == 12);
    CHECK(page.item_map.plot.marks[11].ringed);
    CHECK(page.item_map.plot.marks[11].text == "12");
    CHECK(page.item_map.plot.marks[11].y == Approx(-0.5833333333));
    for (const PlotMark& mark : page.item_map.plot.marks) {
        CHECK(mark.x >= page.item_map.plot.x.low);
        CHECK(mark.x <= page.item_map.plot.x.high);
    }
    REQUIRE(page.abilities.plot.marks.size() == 24);
    for (const PlotMark& mark : page.abilities.plot.marks) {
        CHECK(mark.spread > 0);
        CHECK(mark.y + mark.spread <= page.abilities.plot.y.high);
        CHECK(mark.y - mark.spread >= page.abilities.plot.y.low);
    }
    REQUIRE(page.over_best.plot.bars.size() == 4);
    CHECK(page.over_best.plot.bars[0].high == Approx(20));
    CHECK(page.over_best.plot.bars[3].high == Approx(-5));
    CHECK(page.over_best.plot.y.low <= -5);
    CHECK(page.term.rows.size() == 2);
}

TEST_CASE("a class without results says so instead of drawing nothing") {
    const FiguresPage page = make_figures_page(make_figures(ClassResults{}, Knowledge{}), false);
    for (const FigurePlot* plot : {&page.item_map, &page.abilities, &page.over_best}) {
        CHECK_FALSE(plot->empty.empty());
    }
    CHECK(holds(figures_text(page), "Nobody has handed in anything yet."));
    CHECK(nlohmann::json::parse(figures_json(make_figures(ClassResults{}, Knowledge{}), false))["share_right"]
              .is_null());
}

TEST_CASE("items and causes are named in words, and unknown ids stay as they are") {
    const Knowledge& all = shipped();
    ItemNames names(all);
    CHECK(names.of("proof/air_in_oil") ==
          "Check that proves: " + all.causes[static_cast<std::size_t>(find(all.causes, "air_in_oil"))].name);
    CHECK(names.of("signs/no_such_cause/no_such_complaint") ==
          "Cause from signs: no_such_cause, no_such_complaint");
    CHECK(names.of("of_the_future/x") == "of_the_future/x");
    CHECK(names.of("odd") == "odd");
    CHECK(names.of("caution/check") == "Missing caution");
}

TEST_CASE("an item written by hand is named by its question, a long one by its start") {
    ItemNames names(shipped());
    CHECK(names.of("deciding/no_such_item") == "Which paper decides: no_such_item");
    std::size_t shortened = 0;
    for (const study::AuthoredItem& item : study::read_authored(shipped()).items) {
        const std::string form = study::form_id(item.form);
        const std::string name = names.of(form + "/" + item.id);
        INFO(name);
        CHECK_FALSE(holds(name, item.id));
        const std::string asked = name.substr(name.find(": ") + 2);
        if (!asked.ends_with(" …")) {
            CHECK(asked == item.ask);
            continue;
        }
        ++shortened;
        CHECK(asked.size() > 20);
        CHECK(item.ask.starts_with(asked.substr(0, asked.size() - std::string(" …").size())));
    }
    CHECK(shortened > 0);
}

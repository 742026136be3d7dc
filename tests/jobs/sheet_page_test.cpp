// A worksheet as a page: what is typed, what the job has, what comes out, and what the job takes over.
#include "app/jobs/sheet_page.hpp"

#include <algorithm>
#include <cmath>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

Index sheet(const std::string& id) {
    const Index index = find(shipped().worksheets, id);
    REQUIRE(index != none);
    return index;
}

const SheetField& field(const SheetPage& page, const std::string& id) {
    const auto at = std::find_if(page.fields.begin(), page.fields.end(),
                                 [&](const SheetField& each) { return each.id == id; });
    REQUIRE(at != page.fields.end());
    return *at;
}

std::string result(const SheetPage& page, const std::string& name) {
    for (const SheetLine& line : page.results) {
        if (line.name == name) return line.value;
    }
    FAIL("no result " << name);
    return "";
}

SheetInputs examples_of(const Worksheet& worksheet) {
    SheetInputs inputs;
    for (const WorksheetInput& input : worksheet.inputs) {
        inputs[input.id] = input.example ? show(*input.example, input.unit) : input.example_choice;
    }
    return inputs;
}

bool any_holds(const std::vector<std::string>& texts, const std::string& part) {
    return std::any_of(texts.begin(), texts.end(),
                       [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("A worksheet alone asks for every input with its unit and an example, and says what it needs") {
    const SheetPage page = make_sheet_page(shipped(), sheet("rim_force"), {}, nullptr);
    CHECK(page.topic == "Finding the fault");
    REQUIRE(page.fields.size() == 2);
    CHECK(page.fields[0].name == "Rim force to port");
    CHECK(page.fields[0].unit == "lbf");
    CHECK(page.fields[0].hint == "for example 14 lbf");
    CHECK(page.fields[0].text.empty());
    CHECK(page.waits == "Still needs: rim force to port and rim force to starboard.");
    CHECK(page.take_over.empty());
}

TEST_CASE("A bare number is taken in the unit that stands behind the field, with the spread of the tool") {
    const SheetPage page =
        make_sheet_page(shipped(), sheet("rim_force"), {{"port", "14"}, {"starboard", "6 lbf"}}, nullptr);
    CHECK(result(page, "Difference").rfind("8 lbf", 0) == 0);
    CHECK(result(page, "Difference").find("±") != std::string::npos);
    CHECK(page.waits.empty());
    CHECK(any_holds(page.advice, "Clearly heavier one way"));
}

TEST_CASE("A field takes a decimal comma as it takes a point") {
    const SheetPage page =
        make_sheet_page(shipped(), sheet("rim_force"), {{"port", "14,5"}, {"starboard", "6,5 lbf"}}, nullptr);
    CHECK(result(page, "Difference").rfind("8 lbf", 0) == 0);
    SheetInputs typed{{"stroke", "9,5"}};
    write_units(shipped(), sheet("ram_centring"), UnitSystem::us, typed);
    CHECK(typed["stroke"] == "9,5 in");
    const SheetPage unsure =
        make_sheet_page(shipped(), sheet("rim_force"), {{"port", "1,450"}, {"starboard", "6"}}, nullptr);
    CHECK(field(unsure, "port").error.find("a point, not a comma") != std::string::npos);
}

TEST_CASE("What cannot be read is refused at its own field, and the others stay") {
    const SheetPage page =
        make_sheet_page(shipped(), sheet("rim_force"), {{"port", "14 psi"}, {"starboard", "6"}}, nullptr);
    CHECK_FALSE(field(page, "port").error.empty());
    CHECK(field(page, "port").error.find("lbf") != std::string::npos);
    CHECK(field(page, "port").text == "14 psi");
    CHECK(field(page, "starboard").error.empty());
    CHECK(result(page, "Difference").find("still needs") == 0);
}

TEST_CASE("A sheet that does not hold says what would be right") {
    const SheetPage page =
        make_sheet_page(shipped(), sheet("rim_force"), {{"port", "0"}, {"starboard", "6"}}, nullptr);
    CHECK(page.refused == "Both pulls must be more than nothing.");
    CHECK(any_holds(page.holds, "Both pulls must be more than nothing."));
}

TEST_CASE("What the job has stands in the sheet as the job's, and can be overruled") {
    Bench bench(shipped());
    bench.tell(RigSet{"ram_stroke", "8 in"}).answer("rim_force_port", "12 lbf");
    const SheetPage force = make_sheet_page(shipped(), sheet("rim_force"), {}, &bench.job());
    CHECK(field(force, "port").text.rfind("12 lbf", 0) == 0);
    CHECK(field(force, "port").from == "From job 1, measured.");
    const SheetPage taken = make_sheet_page(shipped(), sheet("ram_centring"), {}, &bench.job());
    CHECK(field(taken, "stroke").text == "8 in");
    CHECK(field(taken, "stroke").from == "From job 1, the rig.");
    const SheetPage ruled =
        make_sheet_page(shipped(), sheet("ram_centring"), {{"stroke", "9"}}, &bench.job());
    CHECK(field(ruled, "stroke").text == "9");
    CHECK(field(ruled, "stroke").from == "Entered here. Job 1 has 8 in.");
    CHECK(result(ruled, "Half travel") == "4 1/2 in");
}

TEST_CASE("An assumed figure of the rig is marked as assumed") {
    Bench bench(shipped());
    const SheetPage page = make_sheet_page(shipped(), sheet("ram_centring"), {}, &bench.job());
    CHECK(field(page, "stroke").assumed);
    CHECK(field(page, "stroke").from == "Assumed in job 1, not measured on this boat.");
}

TEST_CASE("Using a sheet in the job gives it the rig's figures and the measurements, each once") {
    Bench bench(shipped());
    const SheetInputs typed{{"stroke", "8"}, {"mark_port", "4 3/4 in"}};
    const Index index = sheet("ram_centring");
    const SheetPage page = make_sheet_page(shipped(), index, typed, &bench.job());
    CHECK(page.take_over == "Use in job 1");
    CHECK(page.taken.size() == 2);
    CHECK(any_holds(page.taken, "Ram stroke: 8 in"));
    for (const Event& event : sheet_events(shipped(), index, typed, bench.job())) bench.tell(event);
    CHECK(bench.job().facts.rig.contains(find(shipped().rig_fields, "ram_stroke")));
    CHECK(bench.job().facts.answers.contains(find(shipped().findings, "ram_mark_port")));
    CHECK(sheet_events(shipped(), index, typed, bench.job()).empty());
}

TEST_CASE("What no job asks for stays on the sheet and is named") {
    Bench bench(shipped());
    const SheetPage page = make_sheet_page(
        shipped(), sheet("drive_square"),
        {{"diagonal_port", "31 3/8"}, {"diagonal_starboard", "30 3/4"}, {"apart", "40"}}, &bench.job());
    CHECK(page.taken.size() == 2);
    CHECK(any_holds(page.beside, "distance between the two marks"));
}

TEST_CASE("A figure no rig has is refused at its field before the job is asked") {
    Bench bench(shipped());
    const SheetPage page =
        make_sheet_page(shipped(), sheet("ram_centring"), {{"stroke", "900 in"}}, &bench.job());
    CHECK(field(page, "stroke").error.find("at most") != std::string::npos);
    CHECK(page.taken.empty());
}

TEST_CASE("Every shipped worksheet works out from its examples on the page") {
    for (std::size_t i = 0; i < shipped().worksheets.size(); ++i) {
        const Worksheet& worksheet = shipped().worksheets[i];
        INFO(worksheet.id);
        const SheetPage page =
            make_sheet_page(shipped(), static_cast<Index>(i), examples_of(worksheet), nullptr);
        CHECK(page.refused.empty());
        CHECK(page.waits.empty());
        CHECK_FALSE(page.source.empty());
        for (const SheetField& each : page.fields) CHECK(each.error.empty());
    }
}

TEST_CASE("The list finds a worksheet by its name, what it is about and what it asks for") {
    const auto rows = make_sheet_list(shipped(), nullptr);
    REQUIRE(rows.size() == shipped().worksheets.size());
    const auto row = std::find_if(rows.begin(), rows.end(),
                                  [](const SheetRow& each) { return each.id == "turns_lock_to_lock"; });
    REQUIRE(row != rows.end());
    CHECK(row->words.find("Helm displacement") != std::string::npos);
    CHECK(row->words.find("Inequality") != std::string::npos);
    std::vector<std::string> topics;
    for (const SheetRow& each : rows) {
        if (topics.empty() || topics.back() != each.topic) topics.push_back(each.topic);
    }
    std::vector<std::string> once = topics;
    std::sort(once.begin(), once.end());
    CHECK(std::unique(once.begin(), once.end()) == once.end());  // a topic's sheets stand together
    CHECK(topics.front() == "Finding the fault");
}

TEST_CASE("A sheet in a metric shop shows and takes metric figures, and comes to the same") {
    const SheetPage us =
        make_sheet_page(shipped(), sheet("ram_centring"), {{"stroke", "9"}}, nullptr, UnitSystem::us);
    const SheetPage metric =
        make_sheet_page(shipped(), sheet("ram_centring"), {{"stroke", "228.6"}}, nullptr, UnitSystem::metric);
    CHECK(field(us, "stroke").unit == "in");
    CHECK(field(metric, "stroke").unit == "mm");
    CHECK(field(metric, "stroke").hint.find(" mm") != std::string::npos);
    CHECK(result(us, "Half travel") == "4 1/2 in");
    CHECK(result(metric, "Half travel") == "114 mm");
    const SheetPlot plot =
        make_sheet_plot(shipped(), sheet("ram_centring"), {}, nullptr, "", "stroke", UnitSystem::metric);
    REQUIRE(plot.plot);
    CHECK(plot.plot->x.unit == "mm");
    CHECK(plot.plot->in_words.find(" mm") != std::string::npos);
}

TEST_CASE("A bare number that was typed keeps its unit when figures are shown otherwise") {
    SheetInputs typed{{"stroke", "9"}};
    write_units(shipped(), sheet("ram_centring"), UnitSystem::us, typed);
    CHECK(typed["stroke"] == "9 in");
    write_units(shipped(), sheet("ram_centring"), UnitSystem::metric, typed);
    CHECK(typed["stroke"] == "9 in");
    const SheetPage page =
        make_sheet_page(shipped(), sheet("ram_centring"), typed, nullptr, UnitSystem::metric);
    CHECK(result(page, "Half travel") == "114 mm");
    SheetInputs wrong{{"stroke", "nine"}};
    write_units(shipped(), sheet("ram_centring"), UnitSystem::us, wrong);
    CHECK(wrong["stroke"] == "nine");
}

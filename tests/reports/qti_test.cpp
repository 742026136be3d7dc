// Quiz items written as QTI 2.2: form, what an answer is worth, pictures, and the package as folder and zip.
#include "app/reports/qti.hpp"

#include <fmt/format.h>

#include <numeric>

#include "app/study/marking.hpp"
#include "outside/process.hpp"
#include "reports/qti_reader.hpp"
#include "scratch_folder.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using study::Form;
using study::Item;
using study::Way;

namespace {

// Some of every form.
const std::vector<Item>& all_forms() {
    static const std::vector<Item> items = [] {
        std::vector<Item> all;
        for (int form = 0; form < study::form_count; ++form) {
            for (Item& item : items_of(static_cast<Form>(form), 3)) all.push_back(std::move(item));
        }
        return all;
    }();
    return items;
}

const std::vector<PackageFile>& package() {
    static const std::vector<PackageFile> files = [] {
        auto made =
            qti_package(shipped(), all_forms(), {"Invented set -- with dashes", source_path("assets/fonts")});
        REQUIRE_OK(made);
        return made.value();
    }();
    return files;
}

const std::string& xml_of(std::size_t item) {
    std::size_t at = 0;
    for (const PackageFile& file : package()) {
        if (file.name.rfind("items/", 0) != 0 || file.name.find(".xml") == std::string::npos) continue;
        if (at++ == item) return file.bytes;
    }
    FAIL("no item " << item);
    return package()[0].bytes;
}

// "a c b" as identifiers of choices.
std::vector<std::string> choices_of(const std::vector<int>& options) {
    std::vector<std::string> values;
    for (const int option : options) values.push_back(std::string(1, static_cast<char>('A' + option)));
    return values;
}

std::string typed(const std::vector<int>& options) {
    std::string text;
    for (const int option : options) text += std::string(1, static_cast<char>('a' + option)) + " ";
    return text;
}

void check_single(const Item& item, const QtiReader& reader) {
    for (int option = 0; option < static_cast<int>(item.options.size()); ++option) {
        std::string feedback;
        const auto marked = study::mark_answer(item, typed({option}));
        CHECK(reader.score(choices_of({option}), &feedback) == Approx(marked.value().mark));
        const std::string said = reader.said(feedback);
        CHECK(said.rfind(marked.value().mark >= 1 ? "Right." : "Not right.", 0) == 0);
        CHECK(said.find(marked.value().why_not) != std::string::npos);
        CHECK(said.find(item.source) != std::string::npos);
    }
}

void check_several(const Item& item, const QtiReader& reader) {
    for (unsigned ticks = 1; ticks < 1U << item.options.size(); ++ticks) {
        std::vector<int> ticked;
        for (int option = 0; option < static_cast<int>(item.options.size()); ++option) {
            if ((ticks >> static_cast<unsigned>(option) & 1U) != 0) ticked.push_back(option);
        }
        CHECK(reader.score(choices_of(ticked)) ==
              Approx(study::mark_answer(item, typed(ticked)).value().mark).margin(1e-6));
    }
    CHECK(reader.score({}) == 0);
}

// An order that keeps every rule is worth all, any other nothing.
void check_order(const Item& item, const QtiReader& reader) {
    std::vector<int> order(item.options.size());
    std::iota(order.begin(), order.end(), 0);
    int right = 0;
    do {
        const bool kept = study::mark_answer(item, typed(order)).value().mark >= 1;
        CHECK(reader.score(choices_of(order)) == (kept ? 1 : 0));
        right += kept ? 1 : 0;
    } while (std::next_permutation(order.begin(), order.end()));
    CHECK(right >= 1);
}

void check_figure(const Item& item, const QtiReader& reader) {
    const study::Figure& figure = *item.figure;
    const auto in_asked_unit = [&](double value) {
        return in_unit({value, figure.unit.dimension, 0}, figure.unit);
    };
    std::vector<double> values{figure.right, figure.right + 0.9 * figure.tolerance,
                               figure.right - 1.1 * figure.tolerance};
    for (const study::Slip& slip : figure.slips) values.push_back(slip.value);
    for (const double value : values) {
        const std::string number = fmt::format("{}", in_asked_unit(value));
        const auto marked =
            study::mark_answer(item, number + " " + (figure.unit.name == "count" ? "" : figure.unit.name));
        REQUIRE_OK(marked);
        INFO(number << " " << figure.unit.name);
        std::string feedback;
        CHECK(reader.score({number}, &feedback) == Approx(marked.value().mark));
        CHECK(reader.said(feedback).find(marked.value().why_not) != std::string::npos);
    }
}

// The middle of each part's line: worth all where the part is right; nothing where no right part is near.
void check_place(const Item& item, const QtiReader& reader) {
    CHECK(reader.score(reader.right()) == 1);
    CHECK(reader.score({"1 1"}) == 0);
    CHECK(reader.said("RIGHT").find(item.reason) != std::string::npos);
    const auto picture = reader.item().child("itemBody").child("selectPointInteraction").child("object");
    CHECK(picture.attribute("width").as_int() == 800);
    CHECK(picture.attribute("height").as_int() == 600);
}

}  // namespace

TEST_CASE("an item written as QTI is worth for every answer what the program gives for it") {
    const auto& items = all_forms();
    REQUIRE(items.size() > 20);
    for (std::size_t i = 0; i < items.size(); ++i) {
        INFO(items[i].stem.id);
        const QtiReader reader(xml_of(i));
        switch (way_of(items[i].stem.form)) {
            case Way::single:
                items[i].stem.form == Form::place ? check_place(items[i], reader)
                                                  : check_single(items[i], reader);
                break;
            case Way::several:
                check_several(items[i], reader);
                break;
            case Way::order:
                check_order(items[i], reader);
                break;
            case Way::figure:
                check_figure(items[i], reader);
                break;
        }
    }
}

TEST_CASE("items and manifest hold what QTI's published information model lets them hold") {
    const ScratchFolder folder;
    REQUIRE_OK(write_package(folder.file("set"), package()));
    std::vector<std::string> words{"xmllint", "--nonet", "--noout", "--relaxng",
                                   source_path("tests/outside/qti_subset.rng")};
    std::vector<std::string> published{source_path("tests/outside/qti_schema")};
    for (const PackageFile& file : package()) {
        if (file.name.find(".xml") == std::string::npos) continue;
        words.push_back(folder.file("set/" + file.name));
        published.push_back(words.back());
    }
    CHECK(run_process(words).code == 0);
    const int judged = run_process(published).code;
    if (judged == 77) {
        WARN("not judged by 1EdTech's own schemas: HARDOVER_QTI_SCHEMAS names no folder that holds them");
    } else {
        CHECK(judged == 0);
    }

    // The rules can refuse: an item with its parts in the wrong order, one with a choice without identifier.
    pugi::xml_document document;
    REQUIRE(document.load_string(xml_of(0).c_str()));
    auto item = document.child("assessmentItem");
    item.append_move(item.child("itemBody"));
    document.save_file(folder.file("moved.xml").c_str());
    REQUIRE(document.load_string(xml_of(0).c_str()));
    document.child("assessmentItem")
        .child("itemBody")
        .first_element_by_path("choiceInteraction/simpleChoice")
        .remove_attribute("identifier");
    document.save_file(folder.file("unnamed.xml").c_str());
    for (const char* name : {"moved.xml", "unnamed.xml"}) {
        INFO(name);
        CHECK(run_process({"xmllint", "--nonet", "--noout", "--relaxng",
                           source_path("tests/outside/qti_subset.rng"), folder.file(name)})
                  .code != 0);
    }
}

TEST_CASE("the manifest names every file of a QTI package once, and no other") {
    pugi::xml_document manifest;
    REQUIRE(package()[0].name == "imsmanifest.xml");
    REQUIRE(manifest.load_string(package()[0].bytes.c_str()));
    std::vector<std::string> named;
    std::vector<std::string> identifiers;
    for (const auto& resource : manifest.child("manifest").child("resources").children("resource")) {
        CHECK(std::string(resource.attribute("href").value()) ==
              resource.child("file").attribute("href").value());
        identifiers.push_back(resource.attribute("identifier").value());
        for (const auto& file : resource.children("file")) named.push_back(file.attribute("href").value());
    }
    std::vector<std::string> there;
    for (std::size_t f = 1; f < package().size(); ++f) there.push_back(package()[f].name);
    CHECK(named == there);
    REQUIRE(identifiers.size() == all_forms().size());
    for (std::size_t i = 0; i < identifiers.size(); ++i) {
        CHECK(identifiers[i] == QtiReader(xml_of(i)).item().attribute("identifier").value());
    }
}

TEST_CASE("a place item carries its drawing as a picture, and every place that is right can be pointed at") {
    int places = 0;
    for (std::size_t i = 0; i < all_forms().size(); ++i) {
        const Item& item = all_forms()[i];
        if (item.stem.form != Form::place) continue;
        ++places;
        const QtiReader reader(xml_of(i));
        const std::string name = reader.item()
                                     .child("itemBody")
                                     .child("selectPointInteraction")
                                     .child("object")
                                     .attribute("data")
                                     .value();
        const auto file = std::find_if(package().begin(), package().end(),
                                       [&](const PackageFile& one) { return one.name == "items/" + name; });
        REQUIRE(file != package().end());
        CHECK(file->bytes.rfind("\x89PNG", 0) == 0);
        // Width in the picture's own head, 16 bytes in.
        CHECK(static_cast<unsigned char>(file->bytes[18]) * 256 +
                  static_cast<unsigned char>(file->bytes[19]) ==
              800);
    }
    CHECK(places >= 2);
}

TEST_CASE("a QTI package has the same bytes each time, as a folder and as a zip") {
    const auto again =
        qti_package(shipped(), all_forms(), {"Invented set -- with dashes", source_path("assets/fonts")});
    REQUIRE_OK(again);
    REQUIRE(again.value().size() == package().size());
    for (std::size_t f = 0; f < package().size(); ++f) CHECK(again.value()[f].bytes == package()[f].bytes);

    const ScratchFolder folder;
    REQUIRE_OK(write_package(folder.file("one.zip"), package()));
    REQUIRE_OK(write_package(folder.file("two.zip"), package()));
    CHECK(file_text(folder.file("one.zip")) == file_text(folder.file("two.zip")));
    REQUIRE_OK(write_package(folder.file("folder"), package()));
    REQUIRE(
        run_process({"python3", "-m", "zipfile", "-e", folder.file("one.zip"), folder.file("out")}).code ==
        0);
    CHECK(run_process({"diff", "-r", folder.file("folder"), folder.file("out")}).code == 0);
}

TEST_CASE("a package that cannot be written is refused with its place") {
    const ScratchFolder folder;
    std::ofstream(folder.file("file")) << "in the way";
    const auto refused = write_package(folder.file("file"), package());
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().text().find(folder.file("file")) != std::string::npos);
    CHECK_FALSE(write_package(folder.file("none/there.zip"), package()).ok());
    CHECK_FALSE(write_package(folder.file("none/there"), package()).ok());
    CHECK_FALSE(std::filesystem::exists(folder.file("none")));
    REQUIRE_OK(write_package(folder.file("CAPITALS.ZIP"), package()));
    CHECK(std::filesystem::is_regular_file(folder.file("CAPITALS.ZIP")));
}

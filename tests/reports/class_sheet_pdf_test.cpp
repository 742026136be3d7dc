// The class sheet and the quiz on paper, as other programs read them.
#include "app/reports/class_sheet_pdf.hpp"

#include <random>

#include "app/reports/quiz_paper_pdf.hpp"
#include "app/reports/sheet_pages.hpp"
#include "app/study/item_text.hpp"
#include "classroom/class_support.hpp"
#include "reports/sheet_support.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using classroom::ClassResults;
using study::Form;
using study::Item;

namespace {

// Words in order with single blanks.
std::string flat_text(const std::string& file, const std::string& options = "") {
    std::istringstream words(printed("pdftotext " + options + " '" + file + "' -"));
    std::string all;
    for (std::string word; words >> word;) all += word + " ";
    return all;
}

int pages_of(const std::string& file) {
    const std::string info = printed("pdfinfo '" + file + "'");
    return std::stoi(info.substr(info.find("Pages:") + 6));
}

// An invented class: answers as the Rasch model makes them to items of the shipped knowledge, boats through
// ten weeks, causes mixed up.
ClassResults invented_class(std::size_t learners, std::size_t items) {
    std::mt19937 chance(3);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> even;
    const auto stems = study::list_stems(portraits());
    ClassResults results;
    results.name = "Harbour Street, invented";
    std::vector<double> difficulty(items);
    for (double& value : difficulty) value = normal(chance);
    for (std::size_t n = 0; n < learners; ++n) {
        const std::string seat = seat_code(n);
        results.seats.push_back({seat, "Learner with the invented name " + std::to_string(n), ""});
        const double ability = normal(chance);
        for (std::size_t i = 0; i < items; ++i) {
            const study::Stem& stem = stems[i * stems.size() / items];
            ItemResult result =
                answered(seat, stem.id, even(chance) < 1 / (1 + std::exp(difficulty[i] - ability)),
                         static_cast<int>(i) + 1);
            result.review.sure = 0.7;
            if (stem.part != none)
                result.review.part = shipped().parts[static_cast<std::size_t>(stem.part)].id;
            if (stem.form == Form::signs) {
                const auto cause = static_cast<std::size_t>(stem.first);
                result.right_cause = shipped().causes[cause].id;
                result.chosen_cause = shipped().causes[result.review.mark > 0.5 ? cause : cause / 2].id;
            }
            results.items.push_back(std::move(result));
        }
        for (int week = 0; week < 10; ++week) {
            results.boats.push_back(
                worked(seat, 20502 + 7 * week, 30 - 2 * week + 5 * normal(chance), 8 * normal(chance)));
        }
    }
    return results;
}

const ClassSheet& sheet_of_20() {
    static const ClassSheet sheet = [] {
        const ClassResults results = invented_class(20, 40);
        return make_class_sheet(results, make_figures(results, shipped()), false);
    }();
    return sheet;
}

std::vector<Item> items_of_every_form() {
    std::vector<Item> all;
    for (const Form form : {Form::signs, Form::shows, Form::order, Form::next, Form::figure, Form::place,
                            Form::remedy, Form::caution}) {
        for (Item& item : items_of(form, 1)) all.push_back(std::move(item));
    }
    return all;
}

}  // namespace

TEST_CASE("a class sheet has one to three pages of the paper asked for, with figures and plots") {
    const PdfFolder folder;
    for (const Paper paper : {Paper::letter, Paper::a4}) {
        const auto made = write_class_sheet_pdf(sheet_of_20(), folder.file("class.pdf"), bundled_font(paper));
        REQUIRE_OK(made);
        CHECK(made.value().pages <= 3);
        CHECK(pages_of(folder.file("class.pdf")) == made.value().pages);
        const std::string text = flat_text(folder.file("class.pdf"));
        CHECK(holds(text,
                    "Harbour Street, invented: 20 learners with results, 800 answers, 200 practice boats."));
        CHECK(holds(text, "reliability (KR-20)"));
        CHECK(holds(text, "results up to 2026-04-22"));
        CHECK(holds(text, "Items: how hard, and how well they tell strong from weak"));
        CHECK(holds(text, "Learners: ability with its error"));
        CHECK(holds(text, "Practice boats: minutes over the best"));
        for (const char* seat : {"A01", "A20"}) CHECK(holds(text, seat));
        CHECK_FALSE(holds(text, "invented name"));
    }
}

TEST_CASE("a class sheet of a large class is cut to three pages and says what is left out") {
    const PdfFolder folder;
    const ClassResults results = invented_class(60, 200);
    const auto made = write_class_sheet_pdf(make_class_sheet(results, make_figures(results, shipped()), true),
                                            folder.file("class.pdf"), bundled_font());
    REQUIRE_OK(made);
    CHECK(made.value().pages == 3);
    const std::string text = flat_text(folder.file("class.pdf"));
    CHECK(holds(text, "more: hardover class figures"));
    CHECK(holds(text, "A01 Learner with the invented name"));
}

TEST_CASE("a class sheet lists every topic that the quizzes name, however large the class") {
    const PdfFolder folder;
    ClassResults results = invented_class(60, 200);
    const auto text_with = [&](std::set<std::string> topics) {
        results.topics = std::move(topics);
        const auto made =
            write_class_sheet_pdf(make_class_sheet(results, make_figures(results, shipped()), true),
                                  folder.file("class.pdf"), bundled_font());
        REQUIRE_OK(made);
        CHECK(made.value().pages == 3);
        return flat_text(folder.file("class.pdf"));
    };
    // Half of them, from the end, where a table that is cut would be.
    const auto by_topic = make_figures(results, shipped()).by_topic;
    std::set<std::string> named;
    for (std::size_t i = by_topic.size() / 2; i < by_topic.size(); ++i) named.insert(by_topic[i].id);
    named.erase("");
    const std::string text = text_with(named);
    const std::size_t table = text.find("First answers of all learners");
    REQUIRE(table != std::string::npos);
    for (const auto& topic : by_topic) {
        INFO(topic.name);
        if (named.contains(topic.id)) CHECK(text.find(topic.name.substr(0, 20), table) != std::string::npos);
    }
    CHECK(holds(text, "Every topic that a quiz is about stands here"));
    CHECK(holds(text_with({""}), "The quizzes ask about every topic of the knowledge"));
}

TEST_CASE(
    "what may wait leaves the rest of its page to what follows, and comes at the head of the next one") {
    using namespace hardover::reports_detail;
    const auto piece = [](double height, bool may_wait) {
        Piece one;
        one.height = height;
        one.may_wait = may_wait;
        return one;
    };
    // 100 points a page: a text, two plots, lines of a table.
    const std::vector<Piece> pieces = {piece(50, false), piece(60, true),  piece(60, true),
                                       piece(20, false), piece(20, false), piece(20, false)};
    const auto pages = on_pages(pieces, 100);
    const auto on = [&](std::size_t page) {
        std::vector<std::size_t> order;
        for (const PlacedPiece& placed : pages[page]) order.push_back(placed.piece);
        return order;
    };
    REQUIRE(pages.size() == 3);
    CHECK(on(0) == std::vector<std::size_t>{0, 3, 4});
    CHECK(on(1) == std::vector<std::size_t>{1, 5});
    CHECK(on(2) == std::vector<std::size_t>{2});
}

TEST_CASE("a class without results gives a sheet that says so") {
    const PdfFolder folder;
    const ClassResults none;
    REQUIRE_OK(write_class_sheet_pdf(make_class_sheet(none, make_figures(none, shipped()), false),
                                     folder.file("class.pdf"), bundled_font()));
    CHECK(holds(flat_text(folder.file("class.pdf")), "Nobody has handed in anything yet."));
}

TEST_CASE("a quiz on paper asks on its first pages and holds the key on pages of its own") {
    const PdfFolder folder;
    const std::vector<Item> items = items_of_every_form();
    REQUIRE(items.size() == 8);
    const QuizPaper paper{"Quiz: invented mix", "seed 1", items};
    const auto made = write_quiz_paper_pdf(shipped(), paper, folder.file("quiz.pdf"), bundled_font());
    REQUIRE_OK(made);
    int key = 0;
    std::string questions, answers;
    for (int page = 1; page <= made.value().pages; ++page) {
        const std::string number = std::to_string(page);
        const std::string text = flat_text(folder.file("quiz.pdf"), "-f " + number + " -l " + number);
        if (key == 0 && holds(text, "Key to Quiz")) key = page;
        (key > 0 ? answers : questions) += text;
    }
    REQUIRE(key > 1);
    CHECK(holds(questions, "Name or seat"));
    CHECK(holds(questions, "Mark the place with a cross."));
    CHECK(holds(questions, "Write all letters, the first thing first."));
    CHECK_FALSE(holds(questions, "Right is"));
    CHECK_FALSE(holds(questions, "order is"));
    const auto flat = [](std::string text) {
        std::istringstream words(text);
        std::string all;
        for (std::string word; words >> word;) all += word + " ";
        return all.substr(0, all.size() - 1);
    };
    for (const Item& item : items) {
        INFO(item.stem.id);
        CHECK(holds(questions, flat(item.question)));
        CHECK(holds(answers, flat(item.source)));
        for (const std::string& caution : item.cautions) CHECK(holds(answers, flat(caution)));
        if (item.stem.form != Form::place) CHECK(holds(answers, flat(study::right_line(item))));
    }
}

TEST_CASE("class sheet and quiz have the same bytes each time") {
    const PdfFolder folder;
    const QuizPaper paper{"Quiz: invented mix", "seed 1", items_of_every_form()};
    for (const char* run : {"one", "two"}) {
        REQUIRE_OK(write_class_sheet_pdf(sheet_of_20(), folder.file(std::string(run) + "-class.pdf"),
                                         bundled_font()));
        REQUIRE_OK(write_quiz_paper_pdf(shipped(), paper, folder.file(std::string(run) + "-quiz.pdf"),
                                        bundled_font()));
    }
    CHECK(file_text(folder.file("one-class.pdf")) == file_text(folder.file("two-class.pdf")));
    CHECK(file_text(folder.file("one-quiz.pdf")) == file_text(folder.file("two-quiz.pdf")));
}

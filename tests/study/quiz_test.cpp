// Marking what a learner typed, the schedule that comes of it, which items a quiz takes, and mastery.
#include "app/study/quiz.hpp"

#include <cctype>
#include <set>

#include "app/study/item_text.hpp"
#include "app/study/mastery.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

// An invented item: the force of a ram, with two slips.
Item force_item() {
    Item item;
    item.stem.form = Form::figure;
    Figure figure;
    figure.unit = find_unit("lbf").value();
    figure.right = 1000 * figure.unit.factor;
    figure.tolerance = 20 * figure.unit.factor;
    figure.slips = {{"the diameter taken for the radius", 4000 * figure.unit.factor, false},
                    {"newtons and pounds of force mixed up", 4448.222 * figure.unit.factor, true}};
    item.figure = figure;
    return item;
}

Item choice_item(Form form, const std::vector<bool>& right) {
    Item item;
    item.stem.form = form;
    for (const bool is_right : right) {
        item.options.push_back({"choice " + std::to_string(item.options.size()), is_right, "because", none});
    }
    return item;
}

Review answered(const std::string& statement, int day, Grade grade) {
    Review review;
    review.item = review.statement = statement;
    review.form = "signs";
    review.day = day;
    review.grade = grade;
    review.mark = grade == Grade::again ? 0 : 1;
    return review;
}

std::vector<std::string> ids_of(const std::vector<Item>& items) {
    std::vector<std::string> ids;
    for (const Item& item : items) ids.push_back(item.stem.id);
    return ids;
}

}  // namespace

TEST_CASE("A figure is right within its tolerance, in any unit of its kind") {
    const Item item = force_item();
    CHECK(mark_answer(item, "1000 lbf").value().mark == 1);
    CHECK(mark_answer(item, " 4448 N ").value().mark == 1);
    CHECK(mark_answer(item, "1015 lbf").value().right);
    CHECK_FALSE(mark_answer(item, "1040 lbf").value().right);
}

TEST_CASE("A figure without its unit, with another unit's number or by a known mistake is told so") {
    const Item item = force_item();
    const Marked bare = mark_answer(item, "1000").value();
    CHECK(bare.mark == 0.8);
    CHECK(bare.why_not == "The unit is missing.");
    const Marked radius = mark_answer(item, "4000 lbf").value();
    CHECK(radius.mark == 0.25);
    CHECK(radius.why_not == "That looks like the diameter taken for the radius.");
    const Marked newtons = mark_answer(item, "4448 lbf").value();
    CHECK(newtons.mark == 0.5);
    CHECK(newtons.why_not == "That looks like newtons and pounds of force mixed up.");
    const Marked pressure = mark_answer(item, "1000 psi").value();
    CHECK(pressure.mark == 0);
    CHECK(pressure.why_not == "That is a pressure; a force was asked for.");
    CHECK_FALSE(mark_answer(item, "a lot").ok());
}

TEST_CASE("Choices are taken by letter or number, and what cannot be read is asked again") {
    const Item one = choice_item(Form::signs, {false, true, false});
    CHECK(mark_answer(one, "b").value().right);
    CHECK(mark_answer(one, "B)").value().right);
    CHECK(mark_answer(one, "2").value().right);
    CHECK(mark_answer(one, "a").value().why_not == "because");
    CHECK(mark_answer(one, "?").value().mark == 0);
    for (const char* typed : {"", "d", "0", "a b", "b b", "what"}) CHECK_FALSE(mark_answer(one, typed).ok());
    const Item several = choice_item(Form::shows, {true, false, true, false});
    CHECK(mark_answer(several, "a, c").value().mark == 1);
    CHECK(mark_answer(several, "ac").value().mark == 1);
    CHECK(mark_answer(several, "a").value().mark == 0.5);
    CHECK(mark_answer(several, "a b c d").value().mark == 0);
    CHECK(mark_answer(several, "a b c d").value().why_not == "B) because D) because");
    Item order = choice_item(Form::order, {false, false, false});
    order.rules = {{2, 0, false}, {0, 1, false}};
    CHECK(mark_answer(order, "c a b").value().mark == 1);
    CHECK(mark_answer(order, "c b a").value().mark == Approx(1.0 / 3));
    CHECK_FALSE(mark_answer(order, "c a").ok());
    order.options[2].text = "Engine off.";
    order.options[0].text = "Turn the wheel.";
    CHECK(mark_answer(order, "a c b").value().why_not == "“Engine off” must come before “Turn the wheel”.");
}

TEST_CASE("Sureness is read as people write a chance") {
    CHECK(read_sureness("70").value() == Approx(0.7));
    CHECK(read_sureness(" 70 % ").value() == Approx(0.7));
    CHECK(read_sureness("0.7").value() == Approx(0.7));
    CHECK(read_sureness("7 in 10").value() == Approx(0.7));
    CHECK(read_sureness("100").value() == 0.99);
    CHECK(read_sureness("0").value() == 0.01);
    for (const char* typed : {"", "very", "130", "-5", "70 apples"}) CHECK_FALSE(read_sureness(typed).ok());
}

TEST_CASE("Wrong is graded again, half right or unsure hard, right good") {
    CHECK(grade_of(0.25, std::nullopt) == Grade::again);
    CHECK(grade_of(0.5, 0.9) == Grade::hard);
    CHECK(grade_of(1, 0.3) == Grade::hard);
    CHECK(grade_of(1, std::nullopt) == Grade::good);
    CHECK(grade_of(0.8, 0.8) == Grade::good);
}

TEST_CASE("A review survives its record word for word, and what is none is refused") {
    Review review = answered("signs/air_in_oil", 20000, Grade::hard);
    review.complaints = {"wander"};
    review.part = "oil";
    review.answer = "“b”";
    review.sure = 0.35;
    review.seed = 18446744073709551615ULL;
    const Result<Review> read = read_review(review_body(review));
    REQUIRE_OK(read);
    CHECK(review_body(read.value()) == review_body(review));
    CHECK(read.value().sure == 0.35);
    for (const char* body : {"", "[]", "{}", "{\"item\": 3}"}) CHECK_FALSE(read_review(body).ok());
}

TEST_CASE("A right answer comes back in two days, then in eleven, and a wrong one tomorrow") {
    LearnerState learner;
    learner.take(answered("a", 100, Grade::good));
    CHECK(learner.statements.at("a").due_day() == 102);
    CHECK(learner.due(101).empty());
    CHECK(learner.due(102) == std::vector<std::string>{"a"});
    learner.take(answered("a", 102, Grade::good));
    CHECK(learner.statements.at("a").due_day() == 113);  // FSRS-6: 3@0 3@2 gives 11 days
    learner.take(answered("b", 102, Grade::again));
    CHECK(learner.statements.at("b").due_day() == 103);
    CHECK(learner.due(200).front() == "b");  // the less remembered first
}

TEST_CASE("The days until the next review are said plainly") {
    CHECK(days_in_words(0) == "today");
    CHECK(days_in_words(1) == "tomorrow");
    CHECK(days_in_words(5) == "in 5 days");
    CHECK(days_in_words(22) == "in about 3 weeks");
    CHECK(days_in_words(120) == "in about 4 months");
}

TEST_CASE("The same seed chooses the same quiz, another seed another, no statement twice") {
    QuizWish wish;
    wish.count = 20;
    wish.seed = 3;
    const auto first = choose_items(portraits(), {}, wish);
    const auto second = choose_items(portraits(), {}, wish);
    REQUIRE_OK(first);
    CHECK(first.value().size() == 20);
    CHECK(ids_of(first.value()) == ids_of(second.value()));
    std::set<std::string> statements;
    std::set<Form> forms;
    for (const Item& item : first.value()) {
        CHECK(statements.insert(item.stem.statement).second);
        forms.insert(item.stem.form);
    }
    CHECK(forms.size() >= 6);
    wish.seed = 4;
    CHECK(ids_of(choose_items(portraits(), {}, wish).value()) != ids_of(first.value()));
}

TEST_CASE("A quiz about a topic asks only about it, and an unknown topic is named with the nearest") {
    QuizWish wish;
    wish.topic = "proof";
    const auto proofs = choose_items(portraits(), {}, wish);
    REQUIRE_OK(proofs);
    for (const Item& item : proofs.value()) CHECK(item.stem.form == Form::proof);
    wish.topic = shipped().complaints.front().id;
    const auto about = choose_items(portraits(), {}, wish);
    REQUIRE_OK(about);
    for (const Item& item : about.value()) {
        CHECK(std::count(item.stem.complaints.begin(), item.stem.complaints.end(), 0) == 1);
    }
    wish.topic = "prof";
    const auto unknown = choose_items(portraits(), {}, wish);
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().cure.find("proof") != std::string::npos);
}

TEST_CASE("What is due is asked first, and what was answered and is not due is not asked") {
    QuizWish wish;
    wish.topic = "proof";
    wish.count = 100000;
    const auto all = choose_items(portraits(), {}, wish);
    REQUIRE_OK(all);
    LearnerState learner;
    for (std::size_t i = 0; i < all.value().size(); ++i) {
        const std::string& statement = all.value()[i].stem.statement;
        if (i == 5) learner.take(answered(statement, 100, Grade::good));
        if (i == 7) learner.take(answered(statement, 108, Grade::good));
    }
    wish.day = 109;
    const auto then = choose_items(portraits(), learner, wish);
    REQUIRE_OK(then);
    CHECK(then.value().size() == all.value().size() - 1);
    CHECK(then.value().front().stem.statement == all.value()[5].stem.statement);
    for (const Item& item : then.value()) CHECK(item.stem.statement != all.value()[7].stem.statement);
}

TEST_CASE("The feedback says what was right, why, by which source, and when it comes back") {
    const Item item = items_of(Form::proof, 1).front();
    const FeedbackText text = feedback_text(item, Marked{0, false, "because"}, 0.9, 1);
    CHECK(text.verdict == "Not right.");
    std::string all;
    for (const std::string& line : text.lines) all += line + "\n";
    const auto letter =
        static_cast<char>(std::toupper(right_answer(item).front()));  // as choices are lettered
    CHECK(all.find(std::string("because\nRight is ") + letter + ")") == 0);
    CHECK(all.find(item.reason) != std::string::npos);
    CHECK(all.find(item.source) != std::string::npos);
    CHECK(all.find("You were 90 in 100 sure: penalty 81 of 100") != std::string::npos);
    CHECK(all.find("Next review: tomorrow.") != std::string::npos);
    for (const std::string& caution : item.cautions) {
        CHECK(all.find(caution) < all.find(item.reason));
    }
}

TEST_CASE("Mastery counts by complaint and part, and an abler learner is rated abler") {
    const Item item = items_of(Form::proof, 1).front();
    const auto review = [&](double mark) {
        Review taken = answered(item.stem.statement, 100, mark > 0 ? Grade::good : Grade::again);
        taken.mark = mark;
        taken.complaints = {shipped().complaints.front().id};
        taken.part = shipped().parts[static_cast<std::size_t>(item.stem.part)].id;
        return taken;
    };
    std::vector<LearnerState> everyone(2);
    everyone[0].take(review(1));
    everyone[1].take(review(0));
    const LearnerSummary good = summarise(shipped(), askable(), everyone, 0, 100);
    const LearnerSummary bad = summarise(shipped(), askable(), everyone, 1, 100);
    CHECK(good.all.answers == 1);
    CHECK(good.all.statements == count_items(portraits(), askable()).statements);
    CHECK(good.all.right == 1);
    CHECK(good.by_complaint.front().met == 1);
    CHECK(good.by_part[static_cast<std::size_t>(item.stem.part)].met == 1);
    CHECK(good.by_complaint.front().statements > 10);
    // Of tomorrow: today's answers are a night old then. 2.3065 and 0.212 days are the model's first
    // stabilities.
    CHECK(good.all.remembered == Approx(chance_of_remembering({}, 2.3065, 1)));
    CHECK(bad.all.remembered == Approx(chance_of_remembering({}, 0.212, 1)));
    CHECK(good.all.ability.value > bad.all.ability.value);
    CHECK(good.all.ability.error > 0.5);
    CHECK(good.rough);
    CHECK(bad.due == 0);
    CHECK(summarise(shipped(), askable(), everyone, 1, 101).due == 1);
}

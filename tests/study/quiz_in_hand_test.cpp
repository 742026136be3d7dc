// A quiz being answered: what is taken in, what the page tells before and after an answer, how it closes.
#include "app/study/quiz_in_hand.hpp"

#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

QuizInHand quiz_of(Form form, std::size_t most) {
    QuizWish wish;
    wish.seed = 1;
    wish.day = 20000;
    return {shipped(), items_of(form, most), {}, wish};
}

}  // namespace

TEST_CASE("What an answer comes to is told before anything is taken in") {
    const QuizInHand quiz = quiz_of(Form::proof, 3);
    const auto weighed = quiz.weigh(right_answer(quiz.item()), 0.8);
    REQUIRE_OK(weighed);
    CHECK(weighed.value().marked.right);
    CHECK(weighed.value().review.statement == quiz.item().stem.statement);
    CHECK(weighed.value().review.mark == 1);
    CHECK(weighed.value().review.day == 20000);
    CHECK(quiz.answers() == 0);
    CHECK_FALSE(quiz.feedback().has_value());
    CHECK_FALSE(quiz.weigh("z", std::nullopt).ok());
}

TEST_CASE(
    "The page hides what is right until the answer is in, then says what was chosen and what was right") {
    QuizInHand quiz = quiz_of(Form::proof, 3);
    const auto any_right = [](const QuizPage& page) {
        return std::any_of(page.options.begin(), page.options.end(),
                           [](const QuizOption& option) { return option.right; });
    };
    CHECK_FALSE(any_right(make_quiz_page(shipped(), quiz)));
    std::size_t wrong = 0;
    while (quiz.item().options[wrong].right) ++wrong;
    const std::string typed(1, static_cast<char>('a' + wrong));
    quiz.take(quiz.weigh(typed, std::nullopt).value());
    const QuizPage page = make_quiz_page(shipped(), quiz);
    CHECK(any_right(page));
    CHECK(page.options[wrong].chosen);
    CHECK_FALSE(page.options[wrong].right);
    CHECK_FALSE(page.right);
    REQUIRE(page.feedback.has_value());
    CHECK(page.feedback->verdict == "Not right.");
}

TEST_CASE("A quiz goes on item by item and closes with marks and sureness") {
    QuizInHand quiz = quiz_of(Form::remedy, 3);
    REQUIRE(quiz.count() >= 2);
    while (!quiz.at_end()) {
        quiz.take(quiz.weigh(right_answer(quiz.item()), 0.8).value());
        quiz.go_on();
    }
    const std::vector<std::string> closing = make_quiz_page(shipped(), quiz).closing;
    REQUIRE(closing.size() == 2);
    const std::string count = std::to_string(quiz.count());
    CHECK(closing[0] == "Answered " + count + " of " + count + ", marks " + count + ".00 of " + count + ".");
    CHECK(closing[1].find("on average 80 in 100, right 100 in 100, Brier 0.040") != std::string::npos);
}

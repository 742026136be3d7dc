// Quiz items written by hand: the shipped ones are sound, and every fault is found at its place.
#include "app/study/authored.hpp"

#include <algorithm>
#include <set>

#include "app/study/marking.hpp"
#include "app/study/quiz.hpp"
#include "reading/snippets.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

const std::string good =
    "- item: first\n"
    "  form: method\n"
    "  complaints: [wander]\n"
    "  part: oil\n"
    "  ask: What is done first?\n"
    "  options:\n"
    "    - right: Look\n"
    "    - wrong: Guess\n"
    "      why: A guess is no look.\n"
    "    - wrong: Wait\n"
    "      why: It does not get better.\n"
    "  reason: Looking is free.\n"
    "  source: common_practice\n";

std::string with(const std::string& old, const std::string& now) {
    std::string text = good;
    const std::size_t at = text.find(old);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old.size(), now);
}

// The faults that are no warnings, one a line.
std::string faults_of(const std::string& text) {
    const AuthoredRead read = read_authored({{"quiz_test.yaml", text}}, shipped());
    std::string all;
    for (const Fault& fault : read.faults) {
        if (!fault.warning) all += fault.text() + "\n";
    }
    return all;
}

}  // namespace

TEST_CASE("At least 48 items written by hand are shipped, without a fault or a warning") {
    const AuthoredRead read = read_authored(shipped());
    for (const Fault& fault : read.faults) UNSCOPED_INFO(fault.text());
    CHECK(read.faults.empty());
    CHECK(read.items.size() >= 48);
    std::set<Form> forms;
    for (const AuthoredItem& item : read.items) forms.insert(item.form);
    CHECK(forms.size() == 4);
}

TEST_CASE("An item written by hand comes in the quiz with its reason, its source and why others are wrong") {
    int asked = 0;
    for (const Stem& stem : list_stems(portraits())) {
        if (stem.authored < 0) continue;
        const auto item = make_item(portraits(), stem, 5);
        INFO(stem.id);
        REQUIRE(item);
        CHECK_FALSE(item->reason.empty());
        CHECK(item->source.find("Source: ") == 0);
        for (std::size_t i = 0; i < item->options.size(); ++i) {
            const auto marked = mark_answer(*item, std::string(1, static_cast<char>('a' + i)));
            REQUIRE_OK(marked);
            CHECK(marked.value().right == item->options[i].right);
            CHECK(marked.value().why_not.empty() == item->options[i].right);
        }
        ++asked;
    }
    CHECK(asked >= 48);
    QuizWish wish;
    wish.topic = "telling";
    wish.count = 5;
    const auto quiz = choose_items(portraits(), {}, wish);
    REQUIRE_OK(quiz);
    CHECK(quiz.value().size() == 5);
}

TEST_CASE("The right option does not give itself away by its place or its length") {
    int longest = 0, shortest = 0, count = 0;
    std::set<std::size_t> places;
    for (const Stem& stem : list_stems(portraits())) {
        if (stem.authored < 0) continue;
        const auto item = make_item(portraits(), stem, 1);
        REQUIRE(item);
        std::size_t most = 0, least = 1000, right = 0;
        for (std::size_t i = 0; i < item->options.size(); ++i) {
            const std::size_t size = item->options[i].text.size();
            if (item->options[i].right) {
                right = size;
                places.insert(i);
            } else {
                most = std::max(most, size);
                least = std::min(least, size);
            }
        }
        INFO(stem.id << ": " << right << " letters, the others " << least << " to " << most);
        CHECK(static_cast<double>(right) <= 1.15 * static_cast<double>(most));
        CHECK(static_cast<double>(right) >= 0.8 * static_cast<double>(least));
        longest += right > most ? 1 : 0;
        shortest += right < least ? 1 : 0;
        ++count;
    }
    CHECK(places.size() >= 3);
    // With four options alike, a quarter of the right ones would be the longest, and a quarter the shortest.
    CHECK(longest <= 0.25 * count);
    CHECK(shortest <= 0.25 * count);
}

TEST_CASE("Broken items are refused at a place in their file, odd ones are taken") {
    const std::vector<Snippet> broken = snippets_of("items_broken.txt");
    const std::vector<Snippet> odd = snippets_of("items_odd.txt");
    CHECK(broken.size() >= 35);
    CHECK(odd.size() >= 15);
    for (const Snippet& snippet : broken) {
        INFO(snippet.name);
        const std::string faults = faults_of(snippet.text);
        CHECK(faults.find("quiz_test.yaml:") == 0);
        CHECK(read_authored({{"quiz_test.yaml", snippet.text}}, shipped()).items.empty());
    }
    for (const Snippet& snippet : odd) {
        INFO(snippet.name);
        CHECK(faults_of(snippet.text).empty());
        CHECK_FALSE(read_authored({{"quiz_test.yaml", snippet.text}}, shipped()).items.empty());
    }
}

TEST_CASE("A good item is read whole") {
    CHECK(faults_of(good).empty());
    const AuthoredRead read = read_authored({{"quiz_test.yaml", good}}, shipped());
    REQUIRE(read.items.size() == 1);
    CHECK(read.items.front().options.size() == 3);
    CHECK(read.items.front().options.front().right);
    CHECK(read.items.front().place.line == 1);
}

TEST_CASE("Faults of an item are told at line and column with what would be right") {
    const auto says = [](const std::string& text, const std::string& wanted) {
        const std::string faults = faults_of(text);
        INFO(faults);
        CHECK(faults.find(wanted) != std::string::npos);
        CHECK(read_authored({{"quiz_test.yaml", text}}, shipped()).items.size() <= 1);
    };
    says(with("wander", "wandr"), "quiz_test.yaml:3:16: unknown complaint 'wandr' (did you mean 'wander'?)");
    says(with("part: oil", "part: oill"), "quiz_test.yaml:4:9: unknown part 'oill'");
    says(with("form: method", "form: metod"),
         "quiz_test.yaml:2:9: unknown form 'metod' (did you mean 'method'?)");
    says(with("- wrong: Guess\n      why: A guess is no look.", "- right: Guess"), "has 2 right options");
    says(with("wrong: Guess", "wrong: Wait"), "is there twice");
    says(with("\n      why: A guess is no look.", ""), "why");
    says(with("  reason: Looking is free.\n", ""), "reason");
    says(with("common_practice", "commn_practice"), "did you mean 'common_practice'?");
    says(with("- item: first", "- item: First"), "is not written as an id");
    says(with("  part: oil\n", "  part: oil\n  points: 3\n"), "points");
    says(good + good, "there already");
    says("- cause: air\n", "expected an item");
}

// Files of counts: what comes back, what is refused and where, and that putting files together is a matter of
// what is in them, not of order, grouping or repetition.
#include "app/jobs/count_file.hpp"

#include "reasoning/chance.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// What shop `shop` counted at its export `number`: the same every time it is asked.
ShopCounts counted(int shop, int number) {
    Chance chance(static_cast<unsigned>(1000 * shop + number));
    ShopCounts counts;
    counts.number = number;
    for (int i = 1 + chance.upto(5); i > 0; --i) {
        const std::string cause = "cause_" + std::to_string(chance.upto(4));
        counts.jobs.causes[chance.one_in(3) ? history_not_known : "in_use"][cause] += 1 + chance.upto(30);
        counts.jobs.readings[cause]["flow"]["weak"] += 1 + chance.upto(9);
    }
    return counts;
}

// A file with some exports of some of five shops.
Shops random_shops(Chance& chance) {
    Shops shops;
    for (int i = chance.upto(4); i > 0; --i) {
        const int shop = chance.upto(4);
        shops["ab" + std::to_string(shop)] = counted(shop, 1 + chance.upto(3));
    }
    return shops;
}

Shops together(const Shops& a, const Shops& b) {
    const auto all = merged(a, b);
    REQUIRE_OK(all);
    return all.value();
}

const char* small_file = R"({
  "hardover_counts": 1,
  "shops": [
    {
      "shop": "a1",
      "number": 3,
      "jobs": {"in_use": {"fuse_blown": 2}},
      "readings": {"fuse_blown": {"fuse": {"blown": 2}}}
    }
  ]
})";

std::string with(const std::string& from, const std::string& to) {
    std::string text = small_file;
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string refusal(const std::string& text) {
    const auto read = read_count_file(text, "north.json");
    REQUIRE_FALSE(read.ok());
    CHECK_FALSE(read.error().cure.empty());
    return read.error().where + ": " + read.error().what;
}

}  // namespace

TEST_CASE("A file of counts gives back what was written, in one form") {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        INFO("seed " << seed);
        Chance chance(seed);
        const Shops shops = random_shops(chance);
        const std::string text = count_file_text(shops);
        const auto read = read_count_file(text, "north.json");
        REQUIRE_OK(read);
        CHECK(read.value() == shops);
        CHECK(count_file_text(read.value()) == text);
    }
}

TEST_CASE("Putting files together: order, grouping and repetition make no difference") {
    for (unsigned seed = 1; seed <= 1000; ++seed) {
        INFO("seed " << seed);
        Chance chance(seed);
        const Shops a = random_shops(chance);
        const Shops b = random_shops(chance);
        const Shops c = random_shops(chance);
        CHECK(together(a, a) == a);
        CHECK(together(a, b) == together(b, a));
        CHECK(together(together(a, b), c) == together(a, together(b, c)));
        CHECK(together(together(a, b), b) == together(a, b));
        CHECK(together(a, {}) == a);
    }
}

TEST_CASE("A shop's later export takes the place of its earlier one") {
    const Shops first = {{"ab", counted(1, 1)}};
    const Shops later = {{"ab", counted(1, 2)}};
    CHECK(together(first, later) == later);
    CHECK(together(later, first) == later);
    CHECK(sum_of(together(first, later)) == later.at("ab").jobs);
    const Shops other = {{"cd", counted(2, 1)}};
    CHECK(sum_of(together(later, other)).in_all() ==
          later.at("ab").jobs.in_all() + other.at("cd").jobs.in_all());
}

TEST_CASE("One number with two different counts is refused, not guessed at") {
    Shops first = {{"ab", counted(1, 4)}};
    Shops second = first;
    second["ab"].jobs.causes["in_use"]["cause_0"] += 1;
    const auto all = merged(first, second);
    REQUIRE_FALSE(all.ok());
    CHECK(all.error().what == "there are two different counts with number 4 of shop ab");
}

TEST_CASE("A count file that is damaged is refused at its line and column") {
    REQUIRE_OK(read_count_file(small_file, "north.json"));
    const std::string text = small_file;
    for (std::size_t cut = 1; cut < text.size(); ++cut) {
        INFO("cut after " << cut);
        CHECK(refusal(text.substr(0, cut)).find("north.json") == 0);
    }
    CHECK(refusal("").find("north.json:1:1: ") == 0);
    CHECK(refusal("shopping list") ==
          "north.json:1:1: this is not a whole file of counts: its JSON breaks off or is wrong");
    CHECK(refusal(with("\"number\": 3", "\"number\": three")).find("north.json:6:18: ") == 0);
    CHECK(refusal(with("fuse_blown", "fuse\xff")).find("north.json:7:") == 0);
    CHECK(refusal(std::string(200000, '[')).find("north.json:1:") == 0);
}

TEST_CASE("A file that is something else is refused at the field that is wrong") {
    CHECK(refusal("{}") == "north.json:1:1: this is not a file of counts");
    CHECK(refusal("[1, 2]") == "north.json:1:1: this is not a file of counts");
    CHECK(refusal("{\"dark\": true}") == "north.json:1:1: this is not a file of counts");
    CHECK(refusal(with("\"hardover_counts\": 1", "\"hardover_counts\": 2")) ==
          "north.json:2:22: a newer version of Hardover made this file of counts");
    CHECK(refusal(with("\"hardover_counts\": 1", "\"hardover_counts\": \"x\"")) ==
          "north.json:2:22, at hardover_counts: there is no such form of counts");
    CHECK(refusal(with("\"number\": 3,", "")) ==
          "north.json:4:5, at shops[0]: the field 'number' is missing");
    CHECK(refusal(with("\"number\": 3", "\"number\": 3, \"boats\": 4")) ==
          "north.json:4:5, at shops[0]: there is no field 'boats'");
    CHECK(refusal(with("\"number\": 3", "\"number\": 3, \"number\": 4")) ==
          "north.json:6:20: the field 'number' is given twice");
    CHECK(refusal(with("\"fuse_blown\": 2", "\"fuse_blown\": -2")) ==
          "north.json:7:41, at shops[0].jobs.in_use.fuse_blown: this is not a whole number from 0 to a "
          "thousand "
          "million");
    CHECK(refusal(with("\"blown\": 2", "\"blown\": 2.5"))
              .find("north.json:8:53, at shops[0].readings.fuse_blown.fuse.blown: ") == 0);
    CHECK(refusal(with("\"number\": 3", "\"number\": 99999999999999999999")).find("at shops[0].number") !=
          std::string::npos);
    CHECK(refusal(with("{\"fuse_blown\": 2}", "7")) ==
          "north.json:7:26, at shops[0].jobs.in_use: this is not an object");
    CHECK(refusal(with("in_use", "In use!")) == "north.json:7:15, at shops[0].jobs: 'In use!' is not an id");
    CHECK(refusal(with("\"a1\"", "\"North Yard\"")) ==
          "north.json:5:15, at shops[0].shop: this is not a shop's id");
    CHECK(refusal(with("\"shops\": [", "\"shops\": [7, ")) ==
          "north.json:3:13, at shops[0]: this is not an object");
}

TEST_CASE("Counts of nothing are left out") {
    const auto read = read_count_file(with("\"fuse_blown\": 2}", "\"fuse_blown\": 0}"), "north.json");
    REQUIRE_OK(read);
    CHECK(read.value().at("a1").jobs.causes.empty());
}

// Three-valued logic of conditions.
#include <functional>
#include <random>

#include "scope.hpp"

using namespace hardover_tests;

TEST_CASE("And, or and not follow Kleene's strong tables") {
    // S. C. Kleene, Introduction to Metamathematics, 1952, section 64.
    constexpr Truth f = Truth::no;
    constexpr Truth u = Truth::unknown;
    constexpr Truth t = Truth::yes;
    const std::vector<Truth> all = {f, u, t};
    const Truth and_table[3][3] = {{f, f, f}, {f, u, u}, {f, u, t}};
    const Truth or_table[3][3] = {{f, u, t}, {u, u, t}, {t, t, t}};
    const Truth not_table[3] = {t, u, f};
    for (std::size_t a = 0; a < 3; ++a) {
        CHECK((!all[a]) == not_table[a]);
        for (std::size_t b = 0; b < 3; ++b) {
            CHECK(both(all[a], all[b]) == and_table[a][b]);
            CHECK(either(all[a], all[b]) == or_table[a][b]);
            const Values values = {{"fact.crossed", all[a]}, {"fact.sound", all[b]}};
            CHECK(truth_of("fact.crossed and fact.sound", values) == and_table[a][b]);
            CHECK(truth_of("fact.crossed or fact.sound", values) == or_table[a][b]);
            CHECK(truth_of("not fact.crossed", values) == not_table[a]);
        }
    }
}

TEST_CASE("Not binds tighter than and, and tighter than or") {
    const Values values = {{"fact.crossed", Truth::yes}, {"fact.sound", Truth::no}};
    CHECK(truth_of("fact.crossed or fact.sound and fact.sound", values) == Truth::yes);
    CHECK(truth_of("(fact.crossed or fact.sound) and fact.sound", values) == Truth::no);
    CHECK(truth_of("not fact.crossed or fact.crossed", values) == Truth::yes);
    CHECK(truth_of("not (fact.crossed or fact.crossed)", values) == Truth::no);
    CHECK(truth_of("not 1 < 2 or 1 < 2", values) == Truth::yes);
}

TEST_CASE("A rule's condition holds only when every part of it is known to hold") {
    const std::string rule = "history is just_fitted and rig.rams > 1 and wheel_feel is springy";
    Values values = {{"history", word("just_fitted")}, {"rig.rams", amount("2")}};
    CHECK(truth_of(rule, values) == Truth::unknown);
    values["wheel_feel"] = word("springy");
    CHECK(truth_of(rule, values) == Truth::yes);
    values["rig.rams"] = amount("1");
    CHECK(truth_of(rule, values) == Truth::no);
    values["wheel_feel"] = Unknown{};
    CHECK(truth_of(rule, values) == Truth::no);
}

TEST_CASE("A reading is what it is when no other is possible") {
    const auto feel = [](const std::string& text, const Value& value) {
        return truth_of(text, {{"wheel_sponge", value}});
    };
    const Measured near_limit{amount("2 in ± 1/4 in"), Choice{{"large", "small"}}};
    CHECK(feel("wheel_sponge is large", word("large")) == Truth::yes);
    CHECK(feel("wheel_sponge is not large", word("large")) == Truth::no);
    CHECK(feel("wheel_sponge is large", word("none")) == Truth::no);
    CHECK(feel("wheel_sponge is large", near_limit) == Truth::unknown);
    CHECK(feel("wheel_sponge is none", near_limit) == Truth::no);
    CHECK(feel("wheel_sponge is not none", near_limit) == Truth::yes);
    CHECK(feel("wheel_sponge is large", Unknown{}) == Truth::unknown);
    CHECK(feel("wheel_sponge is large", amount("3 in")) == Truth::unknown);  // measured, not yet judged
    CHECK(feel("wheel_sponge is large", Choice{}) == Truth::unknown);
}

TEST_CASE("One of several words is enough, and settles a doubt between them") {
    const Value doubtful = Choice{{"large", "small"}};
    CHECK(truth_of("wheel_sponge is one of (large, small)", {{"wheel_sponge", doubtful}}) == Truth::yes);
    CHECK(truth_of("wheel_sponge is not one of (large, small)", {{"wheel_sponge", doubtful}}) == Truth::no);
    CHECK(truth_of("wheel_sponge is one of (small, none)", {{"wheel_sponge", doubtful}}) == Truth::unknown);
    CHECK(truth_of("wheel_sponge is one of (none)", {{"wheel_sponge", doubtful}}) == Truth::no);
}

TEST_CASE("A customer may complain of several things at once") {
    const Values two = {{"complaint", Choice{{"wander", "weeps"}}}};
    CHECK(truth_of("complaint is wander", two) == Truth::yes);
    CHECK(truth_of("complaint is weeps", two) == Truth::yes);
    CHECK(truth_of("complaint is hard_one_way", two) == Truth::no);
    CHECK(truth_of("complaint is one of (hard_one_way, weeps)", two) == Truth::yes);
    CHECK(truth_of("complaint is not wander", two) == Truth::no);
    CHECK(truth_of("complaint is wander", {}) == Truth::unknown);
    CHECK(truth_of("complaint is wander", {{"complaint", Choice{}}}) == Truth::no);
}

TEST_CASE("Whether something is known is always decided") {
    CHECK(truth_of("bore is known", {}) == Truth::no);
    CHECK(truth_of("bore is unknown", {}) == Truth::yes);
    CHECK(truth_of("bore is not known", {}) == Truth::yes);
    CHECK(truth_of("bore is not unknown", {}) == Truth::no);
    CHECK(truth_of("bore is known", {{"bore", amount("1.5 in")}}) == Truth::yes);
    CHECK(truth_of("fact.crossed is known", {{"fact.crossed", Truth::no}}) == Truth::yes);
    CHECK(truth_of("fact.crossed is known", {{"fact.crossed", Truth::unknown}}) == Truth::no);
    CHECK(truth_of("complaint is known", {{"complaint", Choice{}}}) == Truth::no);
    CHECK(truth_of("wheel_sponge is known", {{"wheel_sponge", Measured{amount("2 in"), {}}}}) == Truth::yes);
}

TEST_CASE("A measurement nearer to a limit than its spread decides nothing") {
    const auto sponge = [](const std::string& text, const std::string& measured) {
        return truth_of(text, {{"wheel_sponge", amount(measured)}});
    };
    CHECK(sponge("wheel_sponge > 2 in", "2 1/8 in ± 1/4 in") == Truth::unknown);
    CHECK(sponge("wheel_sponge > 2 in", "2 1/2 in ± 1/4 in") == Truth::yes);
    CHECK(sponge("wheel_sponge > 2 in", "1 1/2 in ± 1/4 in") == Truth::no);
    CHECK(sponge("wheel_sponge < 2 in", "1 7/8 in ± 1/4 in") == Truth::unknown);
    CHECK(sponge("wheel_sponge > 2 in", "2 1/4 in ± 1/4 in") == Truth::yes);  // just its spread away
    CHECK(sponge("wheel_sponge = 2 in", "2 in ± 1/4 in") == Truth::unknown);
    CHECK(sponge("wheel_sponge = 2 in", "3 in ± 1/4 in") == Truth::no);
    CHECK(sponge("wheel_sponge != 2 in", "3 in ± 1/4 in") == Truth::yes);
    CHECK(sponge("wheel_sponge > 2 in", "2 1/8 in") == Truth::yes);
}

TEST_CASE("The spreads of both sides are combined in quadrature") {
    // 3 and 4 make 5: a difference of 4.9 is in doubt, one of 5.1 is not.
    const auto exceeds = [](const std::string& left) {
        return truth_of("bore > rod", {{"bore", amount(left)}, {"rod", amount("100 mm ± 4 mm")}});
    };
    CHECK(exceeds("104.9 mm ± 3 mm") == Truth::unknown);
    CHECK(exceeds("105.1 mm ± 3 mm") == Truth::yes);
    CHECK(exceeds("94.9 mm ± 3 mm") == Truth::no);
}

TEST_CASE("A name on both sides of a comparison is one and the same measurement") {
    const Values values = {{"bore", amount("2 in ± 1/4 in")}};
    CHECK(truth_of("2 * bore > bore", values) == Truth::yes);
    CHECK(truth_of("bore + 0.1 in > bore", values) == Truth::yes);
    CHECK(truth_of("bore = bore", values) == Truth::yes);
}

TEST_CASE("Two inches are 50.8 mm, whatever the rounding of the conversion") {
    for (int i = 1; i < 400; ++i) {
        const Values values = {{"bore", amount(std::to_string(25.4 * i / 16) + " mm")}};
        const std::string limit = std::to_string(i) + "/16 in";
        INFO(limit);
        CHECK(truth_of("bore = " + limit, values) == Truth::yes);
        CHECK(truth_of("bore >= " + limit, values) == Truth::yes);
        CHECK(truth_of("bore <= " + limit, values) == Truth::yes);
        CHECK(truth_of("bore > " + limit, values) == Truth::no);
        CHECK(truth_of("bore < " + limit, values) == Truth::no);
        CHECK(truth_of("bore != " + limit, values) == Truth::no);
    }
}

TEST_CASE("An empty expression is no condition at all: yes") {
    CHECK(Expression().empty());
    CHECK(Expression().condition({}) == Truth::yes);
    CHECK(std::holds_alternative<Unknown>(Expression().quantity({})));
}

TEST_CASE("What is decided while something is unknown stays so whatever the unknown turns out to be") {
    std::mt19937 random(1952);
    NamedScope scope;
    const std::vector<std::string> names = {"a", "b", "c", "d"};
    for (const std::string& name : names) scope.truth(name);
    const std::function<std::string(int)> sentence = [&](int depth) -> std::string {
        if (depth == 0 || random() % 5 == 0) return names[random() % names.size()];
        if (random() % 3 == 0) return "not (" + sentence(depth - 1) + ")";
        const std::string join = random() % 2 ? " and " : " or ";
        return "(" + sentence(depth - 1) + join + sentence(depth - 1) + ")";
    };
    int decided = 0;
    for (int i = 0; i < 600; ++i) {
        const std::string text = sentence(4);
        const Result<Expression> condition = read_condition(text, scope, Functions(), {});
        REQUIRE_OK(condition);
        Values values;
        for (const std::string& name : names) values[name] = static_cast<Truth>(random() % 3);
        const Truth partial = condition.value().condition(from(values));
        if (partial == Truth::unknown) continue;
        ++decided;
        for (int completion = 0; completion < 16; ++completion) {
            Values whole = values;
            for (std::size_t n = 0; n < names.size(); ++n) {
                if (std::get<Truth>(whole[names[n]]) != Truth::unknown) continue;
                whole[names[n]] = (completion >> n) & 1 ? Truth::yes : Truth::no;
            }
            INFO(text);
            CHECK(condition.value().condition(from(whole)) == partial);
        }
    }
    CHECK(decided > 100);
}

TEST_CASE("Without a name that it needs a condition is not yes, whatever the others are") {
    using Names = std::vector<std::string>;
    const auto needed = [](const std::string& text) {
        const Result<Expression> condition = read_condition(text, job_scope(), Functions(), {});
        REQUIRE_OK(condition);
        Names names;
        for (int at : condition.value().needed_names()) {
            names.push_back(condition.value().names()[static_cast<std::size_t>(at)]);
        }
        return names;
    };
    CHECK(needed("wheel_feel is springy") == Names{"wheel_feel"});
    CHECK(needed("wheel_feel is springy and pressure > 900 psi") == Names{"wheel_feel", "pressure"});
    CHECK(needed("not wheel_feel is springy") == Names{"wheel_feel"});
    CHECK(needed("not 900 psi > pressure") == Names{"pressure"});
    CHECK(needed("wheel_feel is known") == Names{"wheel_feel"});
    // Yes while it is unknown.
    CHECK(needed("wheel_feel is unknown").empty());
    CHECK(needed("not (wheel_feel is springy and fact.crossed)").empty());
    // One of them is enough, or can be.
    CHECK(needed("fact.crossed or wheel_feel is springy").empty());
    CHECK(needed("fact.crossed and wheel_feel is firm or fact.crossed and bore > 1 in") ==
          Names{"fact.crossed"});
    CHECK(needed("greatest_known(bore, rod) > 1 in").empty());
}

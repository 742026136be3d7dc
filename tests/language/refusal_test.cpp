// What is refused, at which letter, and what is said to it.
#include <random>

#include "scope.hpp"

using namespace hardover_tests;

namespace {

Functions test_functions() {
    Functions functions;
    functions.add({"ram_area",
                   {{.length = 1}, {.length = 1}},
                   {.length = 2},
                   [](const std::vector<double>& x) { return x[0] * x[1]; },
                   "made up"});
    return functions;
}

// The whole message for a condition that stands at column 9 of line 7.
std::string refusal(const std::string& text) {
    const Result<Expression> condition =
        read_condition(text, job_scope(), test_functions(), {"rules.yaml", 7, 9});
    return condition.ok() ? "was read" : condition.error().text();
}

// The same for a formula of a length, whose text is its own place.
std::string formula_refusal(const std::string& text) {
    const Result<Expression> formula = read_formula(text, job_scope(), test_functions(), {.length = 1}, {});
    return formula.ok() ? "was read" : formula.error().text();
}

}  // namespace

TEST_CASE("A misspelt name or word is refused with the right spelling") {
    CHECK(refusal("whel_feel is springy") ==
          "rules.yaml:7:9: unknown name 'whel_feel' (did you mean 'wheel_feel'?)");
    CHECK(refusal("rig.rams > 1 and wheel_feel is sprngy") ==
          "rules.yaml:7:40: 'wheel_feel' is never 'sprngy' (did you mean 'springy'?)");
    CHECK(refusal("history is one of (just_fitted, yesterday)") ==
          "rules.yaml:7:41: 'history' is never 'yesterday' (it can be just_fitted, after_other_work, "
          "in_service)");
    CHECK(refusal("ram_aera(bore, rod) > 2 in^2") ==
          "rules.yaml:7:9: unknown function 'ram_aera' (did you mean 'ram_area'?)");
    CHECK(refusal("bore > 2 inn") == "rules.yaml:7:18: unknown unit 'inn' (did you mean 'in'?)");
}

TEST_CASE("Sides of different kinds are refused, saying what each is") {
    CHECK(refusal("bore > 50 psi") ==
          "rules.yaml:7:14: compares a length with a pressure (both sides must be of one kind)");
    CHECK(refusal("bore > 2") ==
          "rules.yaml:7:14: compares a length with a plain number (write the number with its unit, such as 2 "
          "in)");
    CHECK(refusal("bore + pressure > 2 in") ==
          "rules.yaml:7:14: adds a length and a pressure (both sides must be of one kind)");
    CHECK(
        refusal("bore > 17-3/4 in") ==
        "rules.yaml:7:18: takes a length from a plain number (write a mixed number with a blank: 17 3/4 in)");
    CHECK(refusal("min(bore, pressure) > 2 in") ==
          "rules.yaml:7:19: min() of a length and a pressure (all its arguments must be of one kind)");
    CHECK(refusal("turned * bore > 2 in") ==
          "rules.yaml:7:23: compares a quantity in m·rad with a length (both sides must be of one kind)");
    CHECK(refusal("oil_temperature + air_temperature > 20 F") ==
          "rules.yaml:7:25: calculates with the thermometer reading 'air_temperature' (take the difference "
          "of two "
          "temperatures first, or write it in K)");
    CHECK(refusal("oil_temperature - air_temperature > 20 F") ==
          "rules.yaml:7:43: compares a difference of temperatures with a temperature (write a difference of "
          "temperatures in K (1.8 F are 1 K))");
    CHECK(refusal("2 * oil_temperature > 20 F") ==
          "rules.yaml:7:11: calculates with the thermometer reading 'oil_temperature' (take the difference "
          "of two "
          "temperatures first, or write it in K)");
}

TEST_CASE("Words, quantities and yes-or-no are not taken for each other") {
    CHECK(refusal("bore") ==
          "rules.yaml:7:9: 'bore' is a length, not a condition (compare it with a limit, as in 'x > 2 in')");
    CHECK(refusal("history and fact.sound") ==
          "rules.yaml:7:9: 'history' is a word, not a condition (write 'history is just_fitted')");
    CHECK(
        refusal("history = just_fitted") ==
        "rules.yaml:7:17: 'history' is a word and is not compared with '=' (write 'history is just_fitted')");
    CHECK(refusal("bore is large") ==
          "rules.yaml:7:14: 'bore' is a length and has no words to be (compare it with a limit, as in 'x > 2 "
          "in')");
    CHECK(refusal("fact.sound is yes") ==
          "rules.yaml:7:20: 'fact.sound' is yes or no and has no words to be (write 'fact.sound' or 'not "
          "fact.sound')");
    CHECK(refusal("fact.sound > 1") ==
          "rules.yaml:7:9: 'fact.sound' is yes or no, not a quantity (use it with 'and', 'or' and 'not')");
    CHECK(refusal("not bore") ==
          "rules.yaml:7:13: 'bore' is a length, not a condition (compare it with a limit, as in 'x > 2 in')");
    CHECK(refusal("bore + 1 in is known") ==
          "rules.yaml:7:21: 'is' follows 'bore + 1 in', which is no name (write a name before 'is', and "
          "compare "
          "quantities with < > =)");
}

TEST_CASE("Broken sentences are refused at the letter where they break") {
    CHECK(refusal("") ==
          "rules.yaml:7:9: nothing is written here (write a condition or formula, or leave it out)");
    CHECK(refusal("bore >") ==
          "rules.yaml:7:15: expected a name, a number or '(', the text ends (write something to compare or "
          "calculate "
          "with)");
    CHECK(refusal("fact.sound fact.crossed") ==
          "rules.yaml:7:20: expected an operator or the end, found 'fact.crossed' (join two conditions with "
          "'and' or "
          "'or')");
    CHECK(refusal("(bore > 2 in") ==
          "rules.yaml:7:21: expected ')', the text ends (close the bracket, or join with an operator)");
    CHECK(refusal("bore > 2 in)") == "rules.yaml:7:20: a ')' without its '(' (leave it out)");
    CHECK(refusal("1 in < bore < 2 in") ==
          "rules.yaml:7:21: two comparisons in a row (write 'a < b and b < c')");
    CHECK(refusal("bore > 4,5 in") ==
          "rules.yaml:7:17: expected a point, not a comma, found ',' (write 4.5, not 4,5)");
    CHECK(refusal("2 bore > 4 in") == "rules.yaml:7:11: expected an operator, found 'bore' (write 2 * bore)");
    CHECK(refusal("history is") ==
          "rules.yaml:7:19: expected a word, the text ends (write it like 'x is y' or 'x is one of (y, z)')");
    CHECK(refusal("history is one of just_fitted") ==
          "rules.yaml:7:27: expected '(', found 'just_fitted' (write it like 'x is one of (a, b)')");
    CHECK(refusal("history is one of (just_fitted") ==
          "rules.yaml:7:39: expected ',' or ')', the text ends (write it like 'x is one of (a, b)')");
    CHECK(refusal("bore ? 2 in") ==
          "rules.yaml:7:14: '?' means nothing here (conditions are made of names, numbers with units, words "
          "such as "
          "'and' and 'is', and the signs < <= > >= = != + - * / ^ ( ))");
    CHECK(refusal("and fact.sound") ==
          "rules.yaml:7:9: expected a name, a number or '(', found 'and' (write something to compare or "
          "calculate "
          "with)");
    CHECK(refusal("bore(2 in) > 1 in") ==
          "rules.yaml:7:9: 'bore' is a name, not a function (put an operator before the '(')");
    CHECK(refusal("bore > 1e999 in") ==
          "rules.yaml:7:16: a number beyond all measure (write a number of ordinary size)");
}

TEST_CASE("Letters are counted, not bytes") {
    CHECK(refusal("bore > 17¾″ and whel_feel is springy") ==
          "rules.yaml:7:25: unknown name 'whel_feel' (did you mean 'wheel_feel'?)");
    CHECK(formula_refusal("½ in + x").find("letter 8: unknown name 'x'") == 0);
}

TEST_CASE("Wrong calls of functions are refused with the right form") {
    CHECK(formula_refusal("sqrt(ram_area(bore))") ==
          "letter 6: ram_area() is given 1 argument (write it as ram_area(length, length))");
    CHECK(formula_refusal("sqrt(ram_area(bore, pressure))") ==
          "letter 21: argument 2 of ram_area() is a pressure, not a length (write it as ram_area(length, "
          "length))");
    CHECK(formula_refusal("abs()") == "letter 1: abs() is given 0 arguments (it takes 1 argument)");
    CHECK(formula_refusal("abs(bore, rod)") ==
          "letter 1: abs() is given 2 arguments (it takes at most 1 argument)");
    CHECK(formula_refusal("max(bore)") ==
          "letter 1: max() is given 1 argument (it takes at least 2 arguments)");
    CHECK(formula_refusal("sin(bore)") == "letter 5: sin() of a length (give it an angle, such as 12 deg)");
    CHECK(formula_refusal("atan(bore) * bore") ==
          "letter 6: atan() of a length (give it a plain number, such as rise / run)");
    CHECK(formula_refusal("sqrt(bore)") ==
          "letter 6: sqrt() of a length (give it a plain number, an area or another square)");
    CHECK(formula_refusal("round(bore)") ==
          "letter 7: round() of a length (say to what step, as in round(x, 1/16 in))");
    CHECK(formula_refusal("min(bore, rod,)") ==
          "letter 15: expected another argument, found ')' (leave the last comma out)");
    CHECK(formula_refusal("min(bore rod)") ==
          "letter 10: expected ',' or ')', found 'rod' (write it like min(a, b))");
}

TEST_CASE("Exponents that would make no unit are refused") {
    CHECK(formula_refusal("bore ^ 0.5") ==
          "letter 8: a length can only be raised to a whole number up to 9 (write it like x^2, or use "
          "sqrt(x))");
    CHECK(formula_refusal("bore ^ rig.rams") ==
          "letter 8: a length can only be raised to a whole number up to 9 (write it like x^2, or use "
          "sqrt(x))");
    CHECK(formula_refusal("2 ^ bore") ==
          "letter 5: the exponent is a length (an exponent is a plain number)");
    CHECK(formula_refusal("bore ^ 3 * bore ^ -2") == "was read");
}

TEST_CASE("A formula must give what its result is measured in") {
    CHECK(formula_refusal("bore * rod") ==
          "letter 1: the formula gives an area, not a length (check the formula against the unit of its "
          "result)");
    CHECK(formula_refusal("bore > rod") ==
          "letter 1: 'bore > rod' is yes or no, not a quantity (use it with 'and', 'or' and 'not')");
    CHECK(formula_refusal("in_radians(turned) * bore") == "was read");
}

TEST_CASE("A unit that could as well be a name is refused rather than guessed") {
    NamedScope scope = job_scope();
    scope.quantity("s", "in");
    const Result<Expression> doubtful = read_formula("2 in*s / bore", scope, Functions(), {.length = 1}, {});
    REQUIRE_FALSE(doubtful.ok());
    CHECK(doubtful.error().text() ==
          "letter 6: 's' can be the unit or the name here (put blanks round the sign before it to mean the "
          "name)");
    REQUIRE_OK(read_formula("2 in * s / bore", scope, Functions(), {.length = 1}, {}));
}

TEST_CASE("Endless brackets, signs and sums are refused, not followed") {
    const std::string many(100000, '(');
    CHECK(refusal(many) ==
          "rules.yaml:7:109: more than 100 brackets or signs within each other (split it and give each part "
          "a name of "
          "its own)");
    for (const std::string piece : {"not ", "-", "2^", "abs(", "(-"}) {
        std::string text;
        for (int i = 0; i < 100000; ++i) text += piece;
        INFO(piece);
        CHECK(refusal(text).find("more than 100 brackets or signs within each other") != std::string::npos);
    }
    std::string sum = "1";
    for (int i = 0; i < 50000; ++i) sum += "+1";
    CHECK(refusal(sum + " > 2").find("more than 400 steps in one expression") != std::string::npos);
    std::string conditions = "fact.sound";
    for (int i = 0; i < 5000; ++i) conditions += " and fact.sound";
    CHECK(refusal(conditions) == "was read");
}

namespace {

const std::vector<std::string> pieces = {"bore",      "rod",        "history",  "wheel_feel", "wheel_sponge",
                                         "complaint", "fact.sound", "rig.rams", "springy",    "large",
                                         "nothing",   "and",        "or",       "not",        "just_fitted",
                                         "is",        "is not",     "one of",   "known",      "unknown",
                                         "(",         ")",          "(",        ")",          ",",
                                         "<",         "<=",         ">",        ">=",         "=",
                                         "!=",        "+",          "-",        "*",          "/",
                                         "^",         "2",          "2 in",     "3/4 in",     "17 3/4",
                                         "50 psi",    "68 F",       "1.2 deg",  "abs(",       "min(",
                                         "sqrt(",     "ram_area(",  "sin(",     "\xc3",       "½",
                                         "°",         "\"",         ".",        "5e",         "1e3",
                                         "%"};

const std::vector<std::vector<std::string>> sentences = {
    {"history", "is", "just_fitted", "and", "rig.rams", ">", "1", "and", "fact.sound"},
    {"wheel_sponge", "is", "one of", "(", "large", ",", "none", ")", "or", "not", "fact.sound"},
    {"min(", "bore", ",", "rod", ")", "*", "2", "+", "3/4 in", "<=", "17 3/4", "in"},
    {"sqrt(", "ram_area(", "bore", ",", "rod", ")", ")", "!=", "-", "bore", "/", "2"},
};

// A sentence with some of its tokens replaced, doubled or left out; or nothing but random tokens.
std::string token_soup(std::mt19937& random) {
    std::vector<std::string> tokens;
    if (random() % 2 == 0) {
        tokens = sentences[random() % sentences.size()];
        for (std::size_t change = random() % 3; change > 0; --change) {
            const std::size_t at = random() % tokens.size();
            const auto place = tokens.begin() + static_cast<std::ptrdiff_t>(at);
            if (random() % 3 == 0) {
                tokens.erase(place);
            } else if (random() % 2 == 0) {
                tokens[at] = pieces[random() % pieces.size()];
            } else {
                tokens.insert(place, tokens[random() % tokens.size()]);
            }
        }
    } else {
        for (std::size_t count = 1 + random() % 9; count > 0; --count) {
            tokens.push_back(pieces[random() % pieces.size()]);
        }
    }
    std::string text;
    for (const std::string& token : tokens) text += token + (random() % 8 == 0 ? "" : " ");
    return text;
}

}  // namespace

TEST_CASE("No soup of tokens brings the parser down, and every refusal says where") {
    std::mt19937 random(42);
    const NamedScope scope = job_scope();
    const Functions functions = test_functions();
    const Values values = {
        {"bore", amount("2 in ± 1/16 in")}, {"history", word("just_fitted")}, {"rig.rams", amount("2")}};
    int read = 0;
    for (int i = 0; i < 6000; ++i) {
        const std::string text = token_soup(random);
        INFO(text);
        const Result<Expression> condition = read_condition(text, scope, functions, {"soup.yaml", 1, 1});
        if (condition.ok()) {
            ++read;
            (void)condition.value().condition(from(values));
        } else {
            CHECK(condition.error().where.find("soup.yaml:1:") == 0);
            CHECK_FALSE(condition.error().what.empty());
        }
    }
    CHECK(read > 500);
    CHECK(read < 5000);
}

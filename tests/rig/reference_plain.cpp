// Check values that need no physics: unit factors as the program knows them, and sums and products as its
// formulas work them out.
#include "reference_checks.hpp"
#include "rules/language/language.hpp"
#include "support.hpp"

namespace hardover_tests {

namespace {

using Check = ReferenceCheck;

// The numbers of a check as names of plain numbers, in SI.
class NumbersOf : public hardover::Scope {
  public:
    explicit NumbersOf(const Check& check) : check_(check) {
        plain_.is_quantity = true;
        const auto count = hardover::find_unit("count");
        REQUIRE_OK(count);
        plain_.unit = count.value();
    }
    const hardover::NameKind* kind_of(const std::string& name) const override {
        return check_.numbers.contains(name) ? &plain_ : nullptr;
    }
    std::vector<std::string> names() const override { return {}; }

  private:
    const Check& check_;
    hardover::NameKind plain_;
};

// The check's numbers put into a formula of the knowledge base's language.
ReferenceFormula formula(const char* text) {
    return [text](const Check& check) {
        const NumbersOf scope(check);
        const auto read = hardover::read_formula(text, scope, {}, {}, {});
        REQUIRE_OK(read);
        const hardover::Value value = read.value().quantity([&](const std::string& name) {
            return hardover::Value(hardover::Quantity{check(name), {}, 0});
        });
        const auto* quantity = std::get_if<hardover::Quantity>(&value);
        REQUIRE(quantity != nullptr);
        return quantity->value;
    };
}

}  // namespace

ReferenceFormulas plain_formulas() {
    return {
        {"1 ",
         [](const Check& c) { return c("x"); }},  // units: both sides come to SI by the program's factors
        {"UNI-034", [](const Check& c) { return c("t"); }},
        {"UNI-035", [](const Check& c) { return c("p"); }},
        {"UNI-036", [](const Check& c) { return c("p"); }},
        {"SQR-011", formula("ls + d")},
        {"SQR-014", formula("V / I * cos(phi * 1 rad)")},
        {"VIS-008", formula("L - (L - H) * VI / 100")},
        {"VIS-024", formula("t * C")},
        {"VIS-026", formula("(F / A) / (v / y)")},
        {"LEK-021", formula("mass_of_50 / 50")},
        {"LEK-022", formula("mass_of_50 / 50")},
        {"STR-002", formula("Fn * lever")},
    };
}

}  // namespace hardover_tests

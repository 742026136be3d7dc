// A small scope for the tests of the language: names of a steering job and their values.
#pragma once

#include <map>

#include "rules/language/language.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover;

class NamedScope : public Scope {
  public:
    NamedScope& quantity(const std::string& name, const std::string& unit) {
        NameKind& kind = kinds_[name];
        kind.is_quantity = true;
        kind.unit = find_unit(unit).value();
        return *this;
    }
    // A unit that is not written as text, such as 1/K.
    NamedScope& quantity(const std::string& name, const Unit& unit) {
        kinds_[name].is_quantity = true;
        kinds_[name].unit = unit;
        return *this;
    }
    NamedScope& words(const std::string& name, std::vector<std::string> words) {
        kinds_[name].words = std::move(words);
        return *this;
    }
    NamedScope& several(const std::string& name, std::vector<std::string> words) {
        kinds_[name].several = true;
        return this->words(name, std::move(words));
    }
    NamedScope& truth(const std::string& name) {
        kinds_[name].is_truth = true;
        return *this;
    }

    const NameKind* kind_of(const std::string& name) const override {
        const auto place = kinds_.find(name);
        return place == kinds_.end() ? nullptr : &place->second;
    }
    std::vector<std::string> names() const override {
        std::vector<std::string> all;
        for (const auto& [name, kind] : kinds_) all.push_back(name);
        return all;
    }

  private:
    std::map<std::string, NameKind> kinds_;
};

// A job's names: what the examples of the knowledge files use.
inline NamedScope job_scope() {
    NamedScope scope;
    scope.words("history", {"just_fitted", "after_other_work", "in_service"})
        .several("complaint", {"wander", "hard_one_way", "weeps"})
        .words("wheel_feel", {"springy", "firm"})
        .words("wheel_sponge", {"large", "small", "none"})
        .quantity("wheel_sponge", "in")
        .quantity("rig.rams", "count")
        .quantity("bore", "in")
        .quantity("rod", "in")
        .quantity("stroke", "in")
        .quantity("pressure", "psi")
        .quantity("turned", "turns")
        .quantity("rate", "in^3/turn")
        .quantity("oil_temperature", "F")
        .quantity("air_temperature", "F")
        .quantity("rise", "K")
        .truth("fact.crossed")
        .truth("fact.sound");
    return scope;
}

using Values = std::map<std::string, Value>;

inline Lookup from(const Values& values) {
    return [values](const std::string& name) {
        const auto place = values.find(name);
        return place == values.end() ? Value(Unknown{}) : place->second;
    };
}

inline Quantity amount(const std::string& text) {
    const Result<Quantity> quantity = read_quantity(text);
    REQUIRE_OK(quantity);
    return quantity.value();
}

inline Choice word(const std::string& one) {
    return Choice{{one}};
}

inline Truth truth_of(const std::string& text, const Values& values, const Scope& scope = job_scope()) {
    INFO(text);
    const Result<Expression> condition = read_condition(text, scope, Functions(), {});
    REQUIRE_OK(condition);
    return condition.value().condition(from(values));
}

// The quantity a formula gives; fails where it gives none.
inline Quantity value_of(const std::string& text, const Values& values, const std::string& unit,
                         const Scope& scope = job_scope(), const Functions& functions = Functions()) {
    INFO(text);
    const Result<Expression> formula =
        read_formula(text, scope, functions, find_unit(unit).value().dimension, {});
    REQUIRE_OK(formula);
    const Value value = formula.value().quantity(from(values));
    REQUIRE(std::holds_alternative<Quantity>(value));
    return std::get<Quantity>(value);
}

inline double number_of(const std::string& text, const Values& values = {},
                        const std::string& unit = "count") {
    return in_unit(value_of(text, values, unit), find_unit(unit).value());
}

}  // namespace hardover_tests

// How Catch prints a Truth when a check fails.
namespace Catch {
template <>
struct StringMaker<hardover::Truth> {
    static std::string convert(hardover::Truth truth) {
        return truth == hardover::Truth::yes ? "yes" : truth == hardover::Truth::no ? "no" : "unknown";
    }
};
}  // namespace Catch

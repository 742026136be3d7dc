// The names of a steering job as a scope for tests of the language: what each is, without values. Knows no
// test library.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "rules/language/language.hpp"

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

}  // namespace hardover_tests

// What the tests of drawings share: a boat's sketch, and the shapes of one of its parts.
#pragma once

#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "app/drawing/rig_sketch.hpp"
#include "support.hpp"

namespace hardover_tests {

template <typename Form>
std::vector<Form> forms_of(const hardover::drawing::Drawing& drawing, const std::string& part) {
    std::vector<Form> forms;
    for (const hardover::drawing::Shape& shape : drawing.shapes) {
        const Form* form = std::get_if<Form>(&shape.form);
        if (form != nullptr && shape.part == part) forms.push_back(*form);
    }
    return forms;
}

inline bool hatched(const hardover::drawing::Drawing& drawing, const std::string& part) {
    using namespace hardover::drawing;
    for (const Outline& outline : forms_of<Outline>(drawing, part)) {
        if (outline.fill == Fill::hatched) return true;
    }
    for (const Circle& circle : forms_of<Circle>(drawing, part)) {
        if (circle.fill == Fill::hatched) return true;
    }
    return false;
}

inline bool says(const hardover::drawing::Drawing& drawing, const std::string& part,
                 const std::string& letter) {
    for (const hardover::drawing::Text& text : forms_of<hardover::drawing::Text>(drawing, part)) {
        if (text.text.find(letter) != std::string::npos) return true;
    }
    return false;
}

inline hardover::drawing::RigSketch sketch(const hardover::rig::Boat& boat,
                                           const hardover::drawing::Pose& pose) {
    const auto plan = hardover::drawing::plan_of(boat);
    REQUIRE_OK(plan);
    const auto drawn = hardover::drawing::rig_sketch(plan.value(), pose);
    REQUIRE_OK(drawn);
    return drawn.value();
}

inline hardover::drawing::RigSketch sketch(const hardover::rig::Boat& boat, double steer) {
    return sketch(boat, hardover::drawing::Pose{.steer = steer});
}

inline hardover::drawing::DimensionLine pin_to_pin(const hardover::drawing::Drawing& drawing,
                                                   const std::string& ram) {
    const auto all = forms_of<hardover::drawing::DimensionLine>(drawing, ram);
    REQUIRE(all.size() == 1);
    return all.front();
}

inline double length(const hardover::drawing::DimensionLine& dimension) {
    return std::hypot(dimension.to.x - dimension.from.x, dimension.to.y - dimension.from.y);
}

}  // namespace hardover_tests

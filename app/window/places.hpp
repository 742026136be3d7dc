// The places of the program, in the order of the rail, and how one gets there. Knows no screen.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/window/icons.hpp"

namespace hardover::window {

enum class Place { bench, job, boat, worksheets, knowledge, study, classroom, settings };

struct PlaceRow {
    Place place = Place::bench;
    std::string id;     // "bench": of its button
    std::string label;  // on the rail
    Icon icon = Icon::none;
};

// The place at N - 1 opens with Ctrl N.
const std::vector<PlaceRow>& places();

const PlaceRow& row_of(Place place);

}  // namespace hardover::window

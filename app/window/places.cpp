// The list of places.
#include "app/window/places.hpp"

#include <algorithm>

namespace hardover::window {

const std::vector<PlaceRow>& places() {
    static const std::vector<PlaceRow> rows{
        {Place::bench, "bench", "Bench", Icon::bench},
        {Place::job, "job", "Job", Icon::pencil},
        {Place::boat, "boat", "Boat", Icon::boat},
        {Place::worksheets, "worksheets", "Worksheets", Icon::plot},
        {Place::knowledge, "knowledge", "Knowledge", Icon::book},
        {Place::study, "study", "Study", Icon::study},
        {Place::classroom, "class", "Class", Icon::people},
        {Place::settings, "settings", "Settings", Icon::gear},
    };
    return rows;
}

const PlaceRow& row_of(Place place) {
    const auto& rows = places();
    return *std::find_if(rows.begin(), rows.end(), [&](const PlaceRow& row) { return row.place == place; });
}

}  // namespace hardover::window

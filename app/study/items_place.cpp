// Items that point at the drawing: where on this rig does the cause sit? Every drawn part of the boat is a
// choice but those of the same part of the system that the cause does not name: they might be called right
// too.
#include "app/drawing/rig_sketch.hpp"
#include "app/jobs/boat_view.hpp"
#include "app/jobs/page.hpp"
#include "app/jobs/rig_boat.hpp"
#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

constexpr const char* scale_bar = "scale";  // of the drawing, and no part of the boat

}  // namespace

bool make_place(const Portraits& portraits, Item& item) {
    const Knowledge& all = portraits.knowledge();
    const Cause& cause = at(all.causes, item.stem.first);
    const std::optional<Facts> boat = portraits.boat_for(item.stem.first);
    if (!boat || cause.part == none) return false;
    const auto plan = drawing::plan_of(boat_of_rig(all, *boat, rig::Boat{}));
    if (!plan) return false;
    auto sketch = drawing::rig_sketch(plan.value(), {});
    if (!sketch) return false;
    item.drawing = std::move(sketch.value().above);
    const std::vector<std::string> places = parts_of_cause(all, *item.drawing, cause.id);
    const std::string& system = at(all.parts, cause.part).id;
    for (const drawing::Part& part : item.drawing->parts) {
        if (part.id == scale_bar) continue;
        const bool right = std::find(places.begin(), places.end(), part.id) != places.end();
        if (!right && part.place == system) continue;
        Option option{part.words, right, right ? "" : "That is another part: " + part.words};
        option.drawn = part.id;
        add_option(item, std::move(option));
    }
    item.question = "Point at the place: " + cause.name + ". Where on this boat, seen from above?";
    item.reason = cause.about;
    item.source = source_text(all, cause.sources);
    return true;
}

}  // namespace hardover::study

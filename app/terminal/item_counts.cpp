#include "app/terminal/item_counts.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <ostream>

#include "app/terminal/words.hpp"

namespace hardover {

using namespace study;
using nlohmann::ordered_json;

namespace {

ordered_json json_of(const std::vector<ItemFigure>& figures) {
    ordered_json list = ordered_json::array();
    for (const ItemFigure& figure : figures) {
        list.push_back(
            {{"id", figure.id}, {"name", figure.name}, {"listed", figure.listed}, {"items", figure.made}});
    }
    return list;
}

void print_figures(std::ostream& out, const std::string& title, const std::vector<ItemFigure>& figures) {
    out << "\n" << title << "\n";
    for (const ItemFigure& figure : figures) {
        out << fmt::format("  {:<44} {:>6} of {:>5}\n", figure.name, figure.made, figure.listed);
    }
}

}  // namespace

ItemCounts counted_items(const Knowledge& knowledge, std::uint64_t seed) {
    const Portraits portraits(knowledge);
    return count_items(portraits, *askable_stems(portraits, seed));  // nobody tells it to stop
}

ordered_json json_of(const ItemCounts& counts) {
    return {{"items", counts.made},
            {"listed", counts.listed},
            {"statements", counts.statements},
            {"by_form", json_of(counts.by_form)},
            {"by_complaint", json_of(counts.by_complaint)},
            {"by_part", json_of(counts.by_part)}};
}

void print_item_counts(std::ostream& out, const ItemCounts& counts) {
    say_wrapped(out,
                fmt::format("{} items on {} statements (of {} that may be asked; the others would not be "
                            "fair). A figure counts once, whatever its numbers.",
                            counts.made, counts.statements, counts.listed));
    print_figures(out, "By form", counts.by_form);
    print_figures(out, "By complaint (an item may belong to several)", counts.by_complaint);
    print_figures(out, "By part", counts.by_part);
}

}  // namespace hardover

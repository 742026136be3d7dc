// The table of simple units and the scanner for units built from them ("in^3/turn"). Inner header: used by
// the readers of quantities and of conditions only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/quantity/plain_text.hpp"
#include "rules/quantity/quantity.hpp"

namespace hardover::quantity_detail {

struct SimpleUnit {
    std::string name;    // of one: "turn"
    std::string plural;  // of several: "turns"; mostly the same as the name
    Dimension dimension;
    double factor = 1;
    double offset = 0;
    std::string metric;                  // the unit shown instead in the metric system; may be itself
    std::vector<std::string> spellings;  // besides name and plural, in plain letters
};

const std::vector<SimpleUnit>& simple_units();

// "lbf·ft" as {lbf, 1}, {ft, 1}; "in^3/turn" as {in, 3}, {turn, -1}.
struct UnitPart {
    const SimpleUnit* unit = nullptr;
    int exponent = 1;
};

struct ScannedUnit {
    Unit unit;
    std::vector<UnitPart> parts;
    std::vector<std::size_t> starts;  // where the text of each simple unit begins
    std::size_t end = 0;              // behind the last byte used
};

// `tight`: simple units are joined only where no blank stands about the * or /, as conditions need it, where
// "2 in / rate" is a division. `loose`: "lbf · ft" and "drops per minute" too.
enum class Joining { tight, loose };

// The longest unit that starts at `from`; none when there is no known unit there.
std::optional<ScannedUnit> scan_unit(const PlainText& text, std::size_t from, Joining joining);

// The error for a text that is no known unit, with the nearest right spelling.
Error unknown_unit(const std::string& word);

// The unit shown instead of this one in the metric system; the same where it is one of its own.
Unit metric_partner(const Unit& unit);

}  // namespace hardover::quantity_detail

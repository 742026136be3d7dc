// Reads units from text, simple ones by all their spellings and compound ones by * / ^, and names them one
// way.
#include <algorithm>
#include <cmath>
#include <map>

#include "rules/quantity/units.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {
namespace quantity_detail {
namespace {

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

// Whether the text starts with these letters, in whatever case.
bool starts_alike(std::string_view text, std::string_view letters) {
    return text.size() >= letters.size() && std::equal(letters.begin(), letters.end(), text.begin(),
                                                       [](char a, char b) { return lower(a) == lower(b); });
}

struct Spelling {
    std::string text;
    std::vector<UnitPart> parts;
};

const SimpleUnit* simple(std::string_view name) {
    for (const SimpleUnit& unit : simple_units()) {
        if (unit.name == name) return &unit;
    }
    return nullptr;
}

// Every spelling, longest first, so that "inches" is not read as "in". Torques are said with a dash or a
// blank and with "lb" for the force; they stand here because neither is a multiplication sign elsewhere.
std::vector<Spelling> all_spellings() {
    std::vector<Spelling> all;
    for (const SimpleUnit& unit : simple_units()) {
        all.push_back({unit.name, {{&unit, 1}}});
        if (unit.plural != unit.name) all.push_back({unit.plural, {{&unit, 1}}});
        for (const std::string& text : unit.spellings) all.push_back({text, {{&unit, 1}}});
    }
    const std::vector<UnitPart> pound_feet = {{simple("lbf"), 1}, {simple("ft"), 1}};
    const std::vector<UnitPart> pound_inches = {{simple("lbf"), 1}, {simple("in"), 1}};
    const std::vector<UnitPart> newton_metres = {{simple("N"), 1}, {simple("m"), 1}};
    for (const std::string join : {"-", " "}) {
        for (const std::string pound : {"lb", "lbf", "lbs"}) {
            all.push_back({pound + join + "ft", pound_feet});
            all.push_back({"ft" + join + pound, pound_feet});
            all.push_back({pound + join + "in", pound_inches});
            all.push_back({"in" + join + pound, pound_inches});
        }
        all.push_back({"foot" + join + "pounds", pound_feet});
        all.push_back({"pound" + join + "feet", pound_feet});
        all.push_back({"inch" + join + "pounds", pound_inches});
        all.push_back({"N" + join + "m", newton_metres});
    }
    all.push_back({"Nm", newton_metres});
    all.push_back({"gpm", {{simple("gal"), 1}, {simple("min"), -1}}});
    all.push_back({"fps", {{simple("ft"), 1}, {simple("s"), -1}}});
    for (const std::string text : {"cu in", "cu. in", "cu. in.", "cubic inch", "cubic inches"}) {
        all.push_back({text, {{simple("in"), 3}}});
    }
    for (const std::string text : {"sq in", "sq. in", "sq. in.", "square inch", "square inches"}) {
        all.push_back({text, {{simple("in"), 2}}});
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Spelling& a, const Spelling& b) { return a.text.size() > b.text.size(); });
    return all;
}

const std::vector<Spelling>& spellings() {
    static const std::vector<Spelling> all = all_spellings();
    return all;
}

// A unit ends where no letter goes on: "in" does not start "into", nor "rig.in" inside a name.
bool ends_word(const PlainText& text, std::size_t end) {
    const char last = text.at(end - 1);
    if (!is_letter(last)) return true;
    const char next = text.at(end);
    if (next == '.') return !is_letter(text.at(end + 1));
    return !is_letter(next) && next != '_';
}

// The longest spelling that starts here. Among equally long ones the one exactly as written ("kN" is not
// "kn"); in another case only where it can mean one unit ("PSI").
const Spelling* spelling_at(const PlainText& text, std::size_t from) {
    const std::string_view rest = std::string_view(text.text).substr(std::min(from, text.text.size()));
    const Spelling* found = nullptr;
    bool doubtful = false;
    for (const Spelling& spelling : spellings()) {
        const std::size_t size = spelling.text.size();
        if (found && size < found->text.size()) break;
        if (!starts_alike(rest, spelling.text) || !ends_word(text, from + size)) continue;
        if (rest.starts_with(spelling.text)) return &spelling;
        doubtful = found && found->parts.front().unit != spelling.parts.front().unit;
        found = &spelling;
    }
    return doubtful ? nullptr : found;
}

// "^3", or the bare 2 or 3 of "in3"; 1 and no step where there is none. 0 for "^" without a whole number.
int exponent_at(const PlainText& text, std::size_t& at, const Spelling& spelling) {
    const bool simple_unit = spelling.parts.size() == 1 && spelling.parts.front().exponent == 1;
    if (!simple_unit) return 1;
    const bool caret = text.at(at) == '^';
    const std::size_t digit = caret ? at + 1 : at;
    if (!is_digit(text.at(digit)) || is_digit(text.at(digit + 1))) return caret ? 0 : 1;
    const int exponent = text.at(digit) - '0';
    if (!caret) {
        const bool is_length = spelling.parts.front().unit->dimension == Dimension{.length = 1};
        const bool follows_letter = is_letter(text.at(at - 1));
        const bool ends = !is_letter(text.at(digit + 1)) && text.at(digit + 1) != '.';
        if (!is_length || !follows_letter || !ends || exponent < 2 || exponent > 3) return 1;
    }
    at = digit + 1;
    return exponent;
}

void add_part(std::vector<UnitPart>& parts, UnitPart part) {
    const auto same = std::find_if(parts.begin(), parts.end(),
                                   [&](const UnitPart& other) { return other.unit == part.unit; });
    if (same == parts.end()) {
        parts.push_back(part);
        return;
    }
    same->exponent += part.exponent;
    if (same->exponent == 0) parts.erase(same);
}

// Torque is written force first; "lb·ft" means pound-force: a mass times a length is not met in this trade.
void put_in_trade_order(std::vector<UnitPart>& parts) {
    if (parts.size() != 2 || parts[0].exponent != 1 || parts[1].exponent != 1) return;
    const auto is_length = [](const UnitPart& part) {
        return part.unit->dimension == Dimension{.length = 1};
    };
    if (is_length(parts[0])) std::swap(parts[0], parts[1]);
    if (is_length(parts[1]) && parts[0].unit->name == "lb") parts[0].unit = simple("lbf");
}

Unit unit_of(const std::vector<UnitPart>& parts) {
    Unit unit;
    std::string above;
    std::string below;
    for (const UnitPart& part : parts) {
        unit.dimension = unit.dimension * power(part.unit->dimension, part.exponent);
        unit.factor *= std::pow(part.unit->factor, part.exponent);
        const int size = std::abs(part.exponent);
        const bool leads = above.empty() && part.exponent == 1;
        std::string name = leads ? part.unit->plural : part.unit->name;
        if (size != 1) name.append("^").append(std::to_string(size));
        if (part.exponent < 0) {
            below.append("/").append(name);
        } else {
            above.append(above.empty() ? "" : "·").append(name);
        }
    }
    const bool plain = parts.size() == 1 && parts.front().exponent == 1;
    if (plain) {
        unit.factor = parts.front().unit->factor;  // exactly, not through pow
        unit.offset = parts.front().unit->offset;
    }
    unit.name = above + below;
    return unit;
}

// The sign that joins the next simple unit and where that one starts; '\0' when none follows.
char joint_at(const PlainText& text, std::size_t at, Joining joining, std::size_t& next) {
    std::size_t sign = joining == Joining::loose ? text.skip_spaces(at) : at;
    if (joining == Joining::loose && word_at(text, sign) == "per") {
        next = text.skip_spaces(sign + 3);
        return '/';
    }
    const char joint = text.at(sign);
    if (joint != '*' && joint != '/') return '\0';
    next = joining == Joining::loose ? text.skip_spaces(sign + 1) : sign + 1;
    return joint;
}

}  // namespace

std::optional<ScannedUnit> scan_unit(const PlainText& text, std::size_t from, Joining joining) {
    ScannedUnit scanned;
    std::size_t at = from;
    int sign = 1;
    bool below = false;
    while (const Spelling* spelling = spelling_at(text, at)) {
        std::size_t end = at + spelling->text.size();
        const int exponent = exponent_at(text, end, *spelling);
        if (exponent == 0) break;
        scanned.starts.push_back(at);
        scanned.end = end;
        for (const UnitPart& part : spelling->parts) {
            add_part(scanned.parts, {part.unit, sign * exponent * part.exponent});
        }
        std::size_t next = 0;
        const char joint = joint_at(text, end, joining, next);
        // "kg/m·s" is read one way by some and another way by others: it ends after the "m".
        if (joint == '\0' || (below && joint == '*')) break;
        below = joint == '/';
        sign = below ? -1 : 1;
        at = next;
    }
    if (scanned.starts.empty()) return std::nullopt;
    put_in_trade_order(scanned.parts);
    scanned.unit = unit_of(scanned.parts);
    if (scanned.unit.name.empty()) scanned.unit.name = "count";
    return scanned;
}

Error unknown_unit(const std::string& word) {
    std::vector<std::string> known;
    std::string only_case_differs;
    for (const Spelling& spelling : spellings()) {
        known.push_back(spelling.text);
        if (spelling.text.size() != word.size() || !starts_alike(word, spelling.text)) continue;
        only_case_differs.append(only_case_differs.empty() ? "'" : " or '").append(spelling.text + "'");
    }
    Error error{Error::Kind::bad_input, "unknown unit '" + word + "'", "", ""};
    // In a short word every letter may be wrong and a unit still be near: that is no advice.
    const std::string near = nearest_spelling(word, known);
    if (!only_case_differs.empty()) {
        error.cure = "did you mean " + only_case_differs + "?";
    } else if (!near.empty() && spelling_distance(word, near) < static_cast<int>(word.size())) {
        error.cure = "did you mean '" + near + "'?";
    } else {
        error.cure =
            "units are written like in, ft, mm, deg, turns, lbf, lbf·ft, psi, bar, mL, floz, gal/min, "
            "in^3/turn, s, min, F, count";
    }
    return error;
}

Unit metric_partner(const Unit& unit) {
    static const std::map<std::string, std::string> as_a_whole = {
        {"lbf·in", "N·m"}, {"lbf/in", "N/mm"}, {"in^2", "cm^2"}, {"in/s", "mm/s"}};
    if (const auto whole = as_a_whole.find(unit.name); whole != as_a_whole.end()) {
        return find_unit(whole->second).value();
    }
    const PlainText text = plain_text(unit.name);
    const std::optional<ScannedUnit> scanned = scan_unit(text, 0, Joining::tight);
    if (!scanned || scanned->end != text.text.size()) return unit;
    if (scanned->parts.size() == 1 && scanned->parts.front().exponent == 1) {
        return find_unit(scanned->parts.front().unit->metric).value();
    }
    std::vector<UnitPart> parts;
    for (UnitPart part : scanned->parts) {
        const SimpleUnit* metric = simple(part.unit->metric);
        if (part.unit->name == "in" && std::abs(part.exponent) == 3) {
            part = {simple("mL"), part.exponent / 3};  // oil is measured in mL, not in mm^3
        } else if (metric) {
            part.unit = metric;
        }
        add_part(parts, part);
    }
    return unit_of(parts);
}

}  // namespace quantity_detail

Result<Unit> find_unit(std::string_view text) {
    using namespace quantity_detail;
    const PlainText plain = plain_text(text);
    const std::size_t from = plain.skip_spaces(0);
    if (plain.ends_at(from)) {
        return Error{Error::Kind::bad_input, "no unit given", "", "write one such as in, psi or turns"};
    }
    const std::optional<ScannedUnit> scanned = scan_unit(plain, from, Joining::loose);
    if (!scanned || !plain.ends_at(plain.skip_spaces(scanned->end))) return unknown_unit(std::string(text));
    return scanned->unit;
}

std::vector<std::string> unit_names() {
    std::vector<std::string> names;
    for (const quantity_detail::SimpleUnit& unit : quantity_detail::simple_units()) {
        names.push_back(unit.name);
    }
    return names;
}

}  // namespace hardover

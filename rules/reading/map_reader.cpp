#include "rules/reading/map_reader.hpp"

#include <algorithm>
#include <charconv>
#include <tuple>
#include <unordered_map>

#include "rules/reading/letters.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::reading_detail {
namespace {

std::string in_quotes(std::string_view word) {
    return "'" + std::string(word) + "'";
}

std::string listed(const std::vector<std::string>& words) {
    std::string line;
    for (const std::string& word : words) line += (line.empty() ? "" : ", ") + word;
    return line;
}

// Takes the last ":number" off `where`; nothing when there is none.
std::optional<int> take_last_number(std::string& where) {
    const std::size_t colon = where.rfind(':');
    if (colon == std::string::npos) return std::nullopt;
    int number = 0;
    const char* const end = where.data() + where.size();
    const auto [stop, error] = std::from_chars(where.data() + colon + 1, end, number);
    if (error != std::errc() || stop != end) return std::nullopt;
    where.resize(colon);
    return number;
}

}  // namespace

void add_fault(Faults& faults, const YamlNode& at, std::string what, std::string cure) {
    faults.push_back({at.place(), std::move(what), std::move(cure)});
}

void add_warning(Faults& faults, const YamlNode& at, std::string what, std::string cure) {
    faults.push_back({at.place(), std::move(what), std::move(cure), true});
}

void add_error(Faults& faults, const YamlNode& at, const Error& error) {
    Place place = at.place();
    if (at.text_column > 0) {
        std::string where = error.where;
        const std::optional<int> column = take_last_number(where);
        const std::optional<int> line = column ? take_last_number(where) : std::nullopt;
        if (line && where == place.file) {
            place.line = *line;
            place.column = *column;
        }
    }
    faults.push_back({place, error.what, error.cure});
}

void put_in_order(Faults& faults) {
    const auto key = [](const Fault& f) { return std::tie(f.place.file, f.place.line, f.place.column); };
    std::stable_sort(faults.begin(), faults.end(),
                     [&](const Fault& a, const Fault& b) { return key(a) < key(b); });
    const auto same = [&](const Fault& a, const Fault& b) { return key(a) == key(b) && a.what == b.what; };
    faults.erase(std::unique(faults.begin(), faults.end(), same), faults.end());
}

std::optional<std::string> text_of(const YamlNode& node, const std::string& what, Faults& faults) {
    if (!node.is(YamlNode::Kind::text)) {
        add_fault(faults, node, what + " must be a text", "put a text that holds ': ' or '#' in quotes");
        return std::nullopt;
    }
    if (node.text.find_first_not_of(" \t\r\n") == std::string::npos) {
        add_fault(faults, node, what + " is empty");
        return std::nullopt;
    }
    return node.text;
}

std::optional<double> number_of(const YamlNode& node, const std::string& what, Faults& faults) {
    if (node.is(YamlNode::Kind::text)) {
        if (const std::optional<double> number = plain_number(node.text)) return number;
    }
    const bool comma = node.text.find(',') != std::string::npos;
    const std::string found = node.is(YamlNode::Kind::text) ? ", not " + in_quotes(node.text) : "";
    add_fault(faults, node, what + " must be a number" + found, comma ? "write a decimal point" : "");
    return std::nullopt;
}

std::optional<Quantity> quantity_of(const YamlNode& node, const Unit& unit, Faults& faults) {
    const std::optional<std::string> text = text_of(node, "a quantity", faults);
    if (!text) return std::nullopt;
    const Result<Quantity> read = read_quantity_of(*text, unit);
    if (!read) {
        add_error(faults, node, read.error());
        return std::nullopt;
    }
    return read.value();
}

std::optional<Unit> unit_of(const YamlNode& node, Faults& faults) {
    const std::optional<std::string> text = text_of(node, "'unit'", faults);
    if (!text) return std::nullopt;
    const Result<Unit> unit = find_unit(*text);
    if (!unit) {
        add_error(faults, node, unit.error());
        return std::nullopt;
    }
    return unit.value();
}

std::optional<double> minutes_of(const YamlNode& node, const std::string& what, Faults& faults) {
    const std::optional<std::string> text = text_of(node, what, faults);
    if (!text) return std::nullopt;
    std::optional<double> minutes = plain_number(*text);
    if (!minutes) {
        const Unit minute{"min", Dimension{.time = 1}, 60, 0};
        const Result<Quantity> time = read_quantity_of(*text, minute);
        if (!time) {
            add_fault(faults, node, what + " must be a number of minutes, not " + in_quotes(*text),
                      "or a time with its unit, such as 2 h");
            return std::nullopt;
        }
        minutes = time.value().value / minute.factor;
    }
    if (*minutes < 0) {
        add_fault(faults, node, what + " must not be less than 0");
        return std::nullopt;
    }
    return minutes;
}

std::optional<double> spread_of(const YamlNode& node, const Unit& unit, Faults& faults) {
    std::optional<Quantity> spread = quantity_of(node, unit, faults);
    if (!spread) return std::nullopt;
    if (unit.offset != 0) {
        const std::size_t digits = node.text.find_first_not_of("0123456789. ");
        const Result<Unit> written = find_unit(digits == std::string::npos ? "" : node.text.substr(digits));
        if (!written) {
            add_fault(faults, node, "a spread of a temperature must be a number and a unit, such as 2 F");
            return std::nullopt;
        }
        spread->value -= written.value().offset;
    }
    if (spread->value < 0) {
        add_fault(faults, node, "'spread' must not be less than 0");
        return std::nullopt;
    }
    return spread->value;
}

std::vector<const YamlNode*> list_of(const YamlNode& node, const std::string& what, Faults& faults) {
    std::vector<const YamlNode*> items;
    if (!node.is(YamlNode::Kind::list)) {
        add_fault(faults, node, what + " must be a list",
                  "write [a, b], or each on a line of its own after '- '");
        return items;
    }
    for (const YamlNode& item : node.items) items.push_back(&item);
    return items;
}

std::vector<Pair> pairs_of(const YamlNode& node, const std::string& what, Faults& faults) {
    std::vector<Pair> pairs;
    if (!node.is(YamlNode::Kind::map)) {
        add_fault(faults, node, what + " must be made of 'key: value'");
        return pairs;
    }
    std::unordered_map<std::string_view, int> first_line;
    for (std::size_t i = 0; i < node.keys.size(); ++i) {
        const YamlNode& key = node.keys[i];
        if (!key.is(YamlNode::Kind::text)) continue;  // reported when the tree was built
        const auto [first, is_new] = first_line.emplace(key.text, key.line);
        if (!is_new) {
            add_fault(faults, key, "key " + in_quotes(key.text) + " is given twice in " + what,
                      "the first is in line " + std::to_string(first->second));
        } else if (node.items[i].is(YamlNode::Kind::nothing)) {
            add_fault(faults, key, in_quotes(key.text) + " has no value in " + what);
        } else {
            pairs.push_back({&key, &node.items[i]});
        }
    }
    return pairs;
}

const YamlNode* value_in(const YamlNode& map, std::string_view key) {
    for (std::size_t i = 0; i < map.keys.size(); ++i) {
        const bool there = map.keys[i].is(YamlNode::Kind::text) && map.keys[i].text == key;
        if (there) return map.items[i].is(YamlNode::Kind::nothing) ? nullptr : &map.items[i];
    }
    return nullptr;
}

MapReader::MapReader(const YamlNode& node, std::string owner, Faults& faults)
    : node_(node), owner_(std::move(owner)), faults_(faults) {
    pairs_of(node_, owner_, faults_);  // for its faults
}

bool MapReader::has(std::string_view key) const {
    return std::any_of(node_.keys.begin(), node_.keys.end(),
                       [&](const YamlNode& k) { return k.text == key; });
}

const YamlNode* MapReader::get(std::string_view key) {
    asked_.emplace_back(key);
    return value_in(node_, key);
}

const YamlNode* MapReader::need(std::string_view key) {
    const YamlNode* value = get(key);
    const bool is_missing = value == nullptr && !has(key) && node_.is(YamlNode::Kind::map);
    if (is_missing) missing_.emplace_back(key);
    return value;
}

std::string MapReader::text(std::string_view key) {
    const YamlNode* value = need(key);
    return value == nullptr ? "" : text_of(*value, in_quotes(key), faults_).value_or("");
}

std::string MapReader::optional_text(std::string_view key) {
    const YamlNode* value = get(key);
    return value == nullptr ? "" : text_of(*value, in_quotes(key), faults_).value_or("");
}

std::vector<std::string> MapReader::texts(std::string_view key, std::size_t at_least) {
    const YamlNode* value = need(key);
    if (value == nullptr) return {};
    std::vector<std::string> found;
    const auto items = list_of(*value, in_quotes(key), faults_);
    for (const YamlNode* item : items) {
        const auto text = text_of(*item, "each of " + in_quotes(key), faults_);
        if (text) found.push_back(*text);
    }
    if (value->is(YamlNode::Kind::list) && items.size() < at_least) {
        add_fault(faults_, *value, in_quotes(key) + " of " + owner_ + " is empty", "give at least one");
    }
    return found;
}

std::vector<std::string> MapReader::optional_texts(std::string_view key) {
    if (has(key)) return texts(key, 0);
    asked_.emplace_back(key);
    return {};
}

double MapReader::minutes(std::string_view key) {
    const YamlNode* value = need(key);
    return value == nullptr ? 0 : minutes_of(*value, in_quotes(key), faults_).value_or(0);
}

void MapReader::refuse_other_keys() {
    for (const YamlNode& key : node_.keys) {
        if (!key.is(YamlNode::Kind::text)) continue;
        if (std::find(asked_.begin(), asked_.end(), key.text) != asked_.end()) continue;
        const std::string near = nearest_spelling(key.text, asked_);
        add_fault(
            faults_, key, "unknown key " + in_quotes(key.text) + " in " + owner_,
            near.empty() ? "possible here: " + listed(asked_) : "did you mean " + in_quotes(near) + "?");
        missing_.erase(std::remove(missing_.begin(), missing_.end(), near), missing_.end());
    }
    for (const std::string& key : missing_) {
        add_fault(faults_, node_, owner_ + " has no " + in_quotes(key));
    }
}

}  // namespace hardover::reading_detail

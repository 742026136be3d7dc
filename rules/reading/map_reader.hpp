// Reads the values of one YAML map by key and notes everything wrong with it: missing, doubled and unknown
// keys, values of the wrong sort. Knows no kinds of entries.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/quantity/quantity.hpp"
#include "rules/reading/yaml_reader.hpp"

namespace hardover::reading_detail {

using Faults = std::vector<Fault>;

void add_fault(Faults& faults, const YamlNode& at, std::string what, std::string cure = "");

// A fault that does not keep the knowledge from being used.
void add_warning(Faults& faults, const YamlNode& at, std::string what, std::string cure = "");

// An Error about a text of the file: at the letter it names when the text stands there letter for letter,
// else where the text begins.
void add_error(Faults& faults, const YamlNode& at, const Error& error);

// By file, line and column; the same fault at the same place only once.
void put_in_order(Faults& faults);

// Each gives nothing (or "") after adding a fault when the node is not of that sort. `what` names the value
// in the message: "'minutes'".
std::optional<std::string> text_of(const YamlNode& node, const std::string& what, Faults& faults);
std::optional<double> number_of(const YamlNode& node, const std::string& what, Faults& faults);
std::optional<Quantity> quantity_of(const YamlNode& node, const Unit& unit, Faults& faults);
std::optional<Unit> unit_of(const YamlNode& node, Faults& faults);
// Minutes: a plain number, or a time with its unit ("2 h"). Not less than 0.
std::optional<double> minutes_of(const YamlNode& node, const std::string& what, Faults& faults);
// A spread in SI: how far off, so that "2 F" is two steps of the scale and not a temperature.
std::optional<double> spread_of(const YamlNode& node, const Unit& unit, Faults& faults);

// The value of a map's key, nullptr when it is missing or has no value. Notes nothing.
const YamlNode* value_in(const YamlNode& map, std::string_view key);

class MapReader {
  public:
    // `owner` names the map in messages: "finding 'wheel_feel'". A node that is no map is a fault and reads
    // as empty.
    MapReader(const YamlNode& node, std::string owner, Faults& faults);

    // The value of a key, nullptr when it is not there. A key without a value is a fault and not there.
    const YamlNode* get(std::string_view key);
    // The same, and a fault when it is missing: added by refuse_other_keys, so that a key that is only
    // misspelt is reported once.
    const YamlNode* need(std::string_view key);

    std::string text(std::string_view key);                                      // required, not empty
    std::string optional_text(std::string_view key);                             // "" when missing
    std::vector<std::string> texts(std::string_view key, std::size_t at_least);  // required list
    std::vector<std::string> optional_texts(std::string_view key);
    double minutes(std::string_view key);  // required

    // Call last: every key that nobody asked for is a fault, and every needed one that is missing.
    void refuse_other_keys();

    const std::string& owner() const { return owner_; }
    const YamlNode& node() const { return node_; }
    Faults& faults() { return faults_; }
    // Whether the file gives the key at all, even without a value.
    bool has(std::string_view key) const;

  private:
    const YamlNode& node_;
    std::string owner_;
    Faults& faults_;
    std::vector<std::string> asked_;
    std::vector<std::string> missing_;
};

// The nodes of a list, empty with a fault when it is no list.
std::vector<const YamlNode*> list_of(const YamlNode& node, const std::string& what, Faults& faults);

// The pairs of a map whose keys are words of the author's own ("springy: usually"). Doubled and valueless
// keys are faults and left out.
struct Pair {
    const YamlNode* key;
    const YamlNode* value;
};
std::vector<Pair> pairs_of(const YamlNode& node, const std::string& what, Faults& faults);

}  // namespace hardover::reading_detail

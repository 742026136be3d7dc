// YAML text -> a plain tree that remembers where everything stands. The only file that knows the YAML
// library. Knows nothing of knowledge: what keys and values mean is for those who walk the tree.
#pragma once

#include <string>
#include <vector>

#include "rules/reading/reading.hpp"

namespace hardover::reading_detail {

struct YamlNode {
    enum class Kind { nothing, text, list, map };
    Kind kind = Kind::nothing;
    std::string text;             // of a text
    std::vector<YamlNode> items;  // of a list; of a map: the values
    std::vector<YamlNode> keys;   // of a map, as many as items, as written
    const std::string* file = nullptr;
    int line = 0;    // from 1
    int column = 0;  // in letters, from 1
    // Column of the text's first letter when the text stands in one line letter for letter; 0 when it is
    // folded over lines or holds escapes, so that a place inside it is not a place in the file.
    int text_column = 0;

    Place place() const { return {*file, line, column}; }
    bool is(Kind wanted) const { return kind == wanted; }
};

// An entry that could not be read as YAML, but whose first line still says what it is.
struct BrokenEntry {
    std::string kind;
    std::string id;
};

struct EntriesRead {
    std::vector<YamlNode> entries;
    std::vector<BrokenEntry> broken;
};

// Reads one document. Gives a node of kind nothing when it cannot be read or is empty; faults say why.
// `file.name` must outlive the tree.
YamlNode read_document(const KnowledgeFile& file, std::vector<Fault>& faults);

// Reads a list of entries. When the file as a whole is not YAML, each entry (from a line starting with "- "
// to the next) is read by itself, so that one bad entry does not hide the faults of the others.
EntriesRead read_entries(const KnowledgeFile& file, std::vector<Fault>& faults);

}  // namespace hardover::reading_detail

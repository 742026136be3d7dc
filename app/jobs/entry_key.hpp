// Names an entry of the knowledge: its kind by the word in the files, and its id.
#pragma once

#include <string>

namespace hardover {

struct EntryKey {
    std::string kind;  // "cause", "finding", ...; empty: none
    std::string id;
    friend bool operator==(const EntryKey&, const EntryKey&) = default;
};

// "cause" -> "Cause", "rig_field" -> "Field of the rig".
std::string kind_name(const std::string& kind);

}  // namespace hardover

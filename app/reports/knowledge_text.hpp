// Entries of the knowledge as plain text, for reading up. Pure.
#pragma once

#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct EntryLine {
    std::string id;
    std::string name;
};

// The kinds `hardover knowledge list` takes, as it takes them: "complaints", "findings", ...
const std::vector<std::string>& entry_kinds();

// Error not_found for a kind that is none of entry_kinds(), with the nearest.
Result<std::vector<EntryLine>> entries_of_kind(const Knowledge& knowledge, const std::string& kind);

// Everything known about an entry, of whatever kind; an id used in several kinds shows all of them.
// Error not_found with the nearest id.
// `units`: in which examples are shown.
Result<std::string> entry_text(const Knowledge& knowledge, const std::string& id,
                               UnitSystem units = UnitSystem::us);

}  // namespace hardover

// The knowledge while it is being read: what has been read so far, who is who by id, and every fault.
// The readers of the single kinds (entries_*.cpp) work on it one after the other.
#pragma once

#include <array>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "rules/reading/map_reader.hpp"

namespace hardover::reading_detail {

enum class EntryKind {
    source,
    scale,
    setting,
    history,
    need,
    part,
    rig_field,
    complaint,
    same_words,
    finding,
    check,
    cause,
    same_cure,
    remedy,
    rule,
    caution,
    deferral,
    stop,
    worksheet
};
inline constexpr std::size_t kind_count = 19;

// The words of the files, in the order of EntryKind.
const std::vector<std::string>& kind_names();
const std::string& name_of(EntryKind kind);

// One entry as it stands in a file. Its place in the list of its kind is its Index.
struct RawEntry {
    std::string id;
    const YamlNode* node = nullptr;  // nullptr: not readable, only its id is known
    Place place;
};

// A condition to be read once all names are known.
struct PendingCondition {
    const YamlNode* node;
    Expression* into;
};

struct Draft {
    explicit Draft(const Functions& given) : functions(given) {}

    const Functions& functions;
    Knowledge knowledge;
    Faults faults;
    std::array<std::vector<RawEntry>, kind_count> raw;
    std::array<std::unordered_map<std::string, Index>, kind_count> index;
    std::unordered_map<std::string, double> scale;  // "how_often.usually" -> 0.75
    std::vector<PendingCondition> pending;
    // Ids of entries that could not be read well enough to judge the words others use of them.
    std::unordered_set<std::string> doubtful;

    const std::vector<RawEntry>& entries(EntryKind kind) const { return raw[static_cast<std::size_t>(kind)]; }
    std::vector<std::string> ids(EntryKind kind) const;
    bool is_doubtful(const std::string& id) const { return doubtful.count(id) > 0; }
};

// Index of the entry a text names; none with a fault "unknown finding 'x'" when there is no such entry.
Index resolve(Draft& draft, EntryKind kind, const YamlNode& node);

// A list of ids (or, where `or_one`, a single id). Unknown ones are faults and left out.
std::vector<Index> resolve_list(Draft& draft, EntryKind kind, const YamlNode& node, const std::string& what);
std::vector<Index> optional_list(Draft& draft, EntryKind kind, MapReader& map, std::string_view key);

// The map reader of an entry, and what every entry has: its sources.
enum class SourceRule { required, optional };
MapReader open_entry(Draft& draft, EntryKind kind, std::size_t at);
void read_sources(Draft& draft, MapReader& map, Entry& entry, SourceRule rule);

// A source, or a list of at least one.
std::vector<Index> sources_in(Draft& draft, const YamlNode& node);

// Calls read(map, entry) for each readable entry of a kind, and refuses the keys it did not ask for.
template <typename E, typename Read>
void each_entry(Draft& draft, EntryKind kind, std::vector<E>& entries, Read read) {
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (draft.entries(kind)[i].node == nullptr) continue;
        MapReader map = open_entry(draft, kind, i);
        read(map, entries[i]);
        map.refuse_other_keys();
    }
}

// Reads a condition later, when all names are known. The expression must not move until then.
void read_later(Draft& draft, const YamlNode* node, Expression& into);

// The place of a text inside its file, for the language's own messages.
TextPlace text_place(const YamlNode& node);

// Reads an expression now. A fault that only comes from a doubtful entry is not reported again.
Expression read_condition_at(Draft& draft, const YamlNode& node, const Scope& scope);
Expression read_formula_at(Draft& draft, const YamlNode& node, const Scope& scope, const Dimension& expected);

// A number or a word of a scale. Nothing with a fault when it is neither.
std::optional<double> scale_value(Draft& draft, const std::string& scale, const YamlNode& node);

// Whether a word may stand in conditions as a name or reading; a fault when it is none of the author's.
bool check_word(Draft& draft, const YamlNode& word, const std::string& what);

// The words of a choice with their texts, at least two. A word that cannot stand in conditions makes `owner`
// doubtful.
std::vector<Word> read_choices(Draft& draft, const YamlNode& node,
                               const std::string& owner);  // entries_rig.cpp

// The parameter or gauge of the numeric model that a text names; nullptr with a fault "unknown gauge 'x'".
const ModelName* resolve_model_name(Draft& draft, const std::vector<ModelName>& names,
                                    const std::string& kind,
                                    const YamlNode& node);         // entries_model.cpp
void read_gauge(Draft& draft, MapReader& map, Finding& finding);   // entries_model.cpp: gauge, felt
void read_on_the_rig(Draft& draft, MapReader& map, Cause& cause);  // entries_model.cpp: on_the_rig, differs

// Index of a reading within a finding; -1 with a fault when it has none of that name.
int resolve_reading(Draft& draft, const Finding& finding, const YamlNode& node);  // entries_findings.cpp

// The readers, in the order in which they may run.
void read_scales_and_settings(Draft& draft);  // entries_basic.cpp
void read_basic_entries(Draft& draft);
void read_rig_fields(Draft& draft);           // entries_rig.cpp
void read_worksheet_names(Draft& draft);      // entries_worksheets.cpp: inputs and results, no formulas
void read_findings(Draft& draft);             // entries_findings.cpp
void read_complaints(Draft& draft);           // entries_findings.cpp
void read_same_words(Draft& draft);           // entries_words.cpp
void read_checks(Draft& draft);               // entries_work.cpp
void read_remedies(Draft& draft);             // entries_work.cpp
void read_causes(Draft& draft);               // entries_causes.cpp
void read_same_cures(Draft& draft);           // entries_causes.cpp
void read_rules(Draft& draft);                // entries_rules.cpp
void read_pending_conditions(Draft& draft);   // draft.cpp
void read_worksheet_formulas(Draft& draft);   // entries_worksheets.cpp
void check_origins(Draft& draft);             // entries_causes.cpp
void check_proofs(Draft& draft);              // entries_causes.cpp
void put_rules_in_layers(Draft& draft);       // layers.cpp
void refuse_worksheet_circles(Draft& draft);  // layers.cpp

}  // namespace hardover::reading_detail

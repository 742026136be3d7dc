// The knowledge in memory: plain structs, ids as text, references as indices into the vectors of Knowledge.
// Knows no YAML, no files, no reasoning, and no boats: what a cause or finding is about stands only in its
// texts.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "rules/language/language.hpp"
#include "rules/quantity/quantity.hpp"

namespace hardover {

// Index into one of Knowledge's vectors. Only compared and looked up, never calculated with.
using Index = int;
inline constexpr Index none = -1;

// Where an entry stands, for messages: file as given, line and column from 1.
struct Place {
    std::string file;
    int line = 0;
    int column = 0;
};

// What every entry has.
struct Entry {
    std::string id;
    std::string name;
    Place place;
    std::vector<Index> sources;
};

struct Source : Entry {
    enum class Kind { published, common_practice, from_memory, invented };
    Kind kind = Kind::published;
    std::string where;  // chapter, table, page
};

// A circumstance that must be given for a check ("boat in the water"); may be marked not available now.
struct Need : Entry {
    Expression possible_when;  // empty: always
    // Needs that it cannot be had without, where `takes_when` is so; empty: always.
    std::vector<Index> takes;
    Expression takes_when;
};
struct Part : Entry {};

struct History : Entry {
    double share = 0;  // of all comebacks; the shares of all histories add to 1
};

struct Word {
    std::string id;
    std::string text;
};

// How this boat is built: one field. A choice has `choices`, a quantity has `unit`.
struct RigField : Entry {
    std::string ask;
    std::vector<Word> choices;
    std::optional<Unit> unit;
    std::optional<Quantity> least;
    std::optional<Quantity> most;
    std::variant<Unknown, Quantity, std::string> assumed;  // std::string: id of a choice
};

struct Reading {
    std::string id;
    std::string text;
    std::optional<Quantity>
        limit;  // measured findings: this reading lies beyond it (above or below, see Finding)
};

// A felt reading in the numeric model: it shows when the gauge lies beyond the limit.
struct GaugeLimit {
    std::string gauge;
    Quantity limit;
    bool is_above = true;
};

struct WorksheetResultRef {
    Index worksheet = none;
    int result = -1;
};

struct Finding : Entry {
    std::string ask;
    std::vector<std::string> look;
    std::vector<Reading>
        readings;              // worst first, the last one is how a sound boat is; empty: a plain measurement
    std::optional<Unit> unit;  // measured
    double spread = 0;         // of the measurement, SI, about 95 % half width
    bool limits_are_lower_ends = true;       // true: a reading lies above its limit; false: below it
    std::optional<WorksheetResultRef> from;  // measured by a worksheet
    double minutes = 1;
    Index check = none;
    std::vector<Index> needs;  // beside those of its check
    Index part = none;
    Expression possible_when;
    std::vector<double> stray;  // per reading: share of boats with none of the causes that show it; adds to 1
    std::string gauge;          // measured: the numeric model's gauge of it; may be empty
    // Felt: per reading but the last, how the numeric model tells it; empty where it cannot.
    std::vector<std::optional<GaugeLimit>> felt;
};

struct Check : Entry {
    std::string why;
    std::vector<std::string> steps;
    std::vector<std::string> tools;
    double minutes = 0;
    std::vector<Index> needs;
    std::vector<Index> cautions;
    std::vector<Index> gets;  // the findings that name this check, in knowledge order
};

// What one cause alone does to one finding: how often it gives each reading; adds to 1.
struct Shows {
    Index finding = none;
    std::vector<double> how_often;
};

// One size of the numeric model as the cause leaves it; the value's spread tells how much it varies.
struct ModelChange {
    std::string parameter;
    Quantity value;
};

// Why table and numeric model may differ about one finding.
struct Differs {
    Index finding = none;
    std::string reason;
};

// Who says that a cause comes from this one.
struct OriginSource {
    Index cause = none;
    std::vector<Index> sources;
};

struct Cause : Entry {
    std::string about;
    Index part = none;
    std::vector<double> odds;  // per history, per 1000 comebacks of that history
    Expression possible_when;
    std::vector<Shows> shows;
    Index proof = none;  // a check
    Expression proved_when;
    Index remedy = none;
    std::vector<Index> comes_from;  // causes that bring this one about, and bring it back if left in place
    std::vector<OriginSource> origin_sources;  // of those that have sources of their own
    std::vector<ModelChange> on_the_rig;       // the same fault in the numeric model; empty: it has none
    std::vector<Differs> differs;
};

// Causes that no check can tell apart, and why that does not matter: one remedy cures them all.
struct SameCure : Entry {
    std::vector<Index> causes;
    std::string why;
};

struct PricedPart {
    std::string part;
    double price = 0;  // in the shop's currency
};

struct Remedy : Entry {
    std::vector<std::string> steps;
    std::vector<std::string> tools;
    double minutes = 0;
    std::vector<PricedPart> parts;
    std::vector<std::string> figures;
    std::vector<Index> worksheets;
    std::vector<Index> cautions;
    std::vector<std::string> after;
    std::vector<Index> also_cures;  // causes that have another remedy and are put right by this work as well
};

struct Caution : Entry {
    std::string hurts;
    std::string avoid;
    Index comes_with = none;  // need without which there is no such danger in a check
};

struct Deferral : Entry {
    std::string text;
    std::string to;
    Expression when;  // empty: always
};

struct Stop : Entry {
    std::string text;
    std::vector<Index> bars;  // needs that are not to be had while it stands
};

struct Complaint : Entry {
    std::vector<std::string> words;           // the customer's words
    std::vector<std::pair<Index, int>> says;  // finding, reading
};

// Words that customers and the trade use for one and the same thing, for finding entries by any of them.
struct SameWords : Entry {
    std::vector<std::string> words;  // each one word, or a few that belong together ("hard over")
};

struct Action {
    enum class Kind { favour, rule_out, derive, run, ask, caution, defer, stop };
    Kind kind = Kind::favour;
    Index target = none;  // cause, worksheet, finding, caution, deferral or stop by kind; none for derive
    double by = 1;        // favour: Bayes factor
    std::string fact;     // derive
};

struct Rule : Entry {
    Expression when;
    std::vector<Action> then;
    std::string why;
    int layer = 0;  // rules of a layer use only facts derived in lower layers
};

// A number in its unit, or, where `choices` are given, one word of them.
struct WorksheetInput {
    std::string id;
    std::string name;
    Unit unit;
    Index rig_field = none;  // where its value comes from in a job, if from anywhere
    Index finding = none;
    double spread = 0;  // SI; taken when the value has none of its own
    std::optional<Quantity> example;
    std::vector<Word> choices{};
    std::string example_choice{};  // id of a choice
};

struct WorksheetOutput {
    std::string id;
    std::string name;
    Unit unit;
    Expression formula;
};

struct WorksheetGuard {
    Expression condition;
    std::string otherwise;
};

struct WorksheetAdvice {
    Expression when;
    std::string say;
};

struct Worksheet : Entry {
    std::string about;
    std::vector<WorksheetInput> inputs;
    std::vector<WorksheetOutput> results;
    std::vector<WorksheetGuard> holds_when;
    std::vector<WorksheetAdvice> advice;
};

// Numbers the reasoning needs, each with its meaning and source in the knowledge files.
struct Setting : Entry {
    double value = 0;
};

struct Settings {
    double stray = 0.02;             // share of boats showing a bad reading with none of the listed causes
    double not_listed_odds = 40;     // per 1000 comebacks
    double not_listed_shows = 0.03;  // least chance that "not on this list" makes a finding bad
    double misreading = 0.02;        // share of measurements that are simply wrong
    double call_for_help = 240;      // minutes, when nothing on the list cures it
    double try_out = 10;             // minutes to try the boat after a remedy
    double shop_rate = 120;          // price of an hour
};

struct Knowledge {
    std::string folder;
    std::vector<Source> sources;
    std::vector<Need> needs;
    std::vector<Part> parts;
    std::vector<History> histories;
    std::vector<RigField> rig_fields;
    std::vector<Complaint> complaints;
    std::vector<SameWords> same_words;
    std::vector<Finding> findings;
    std::vector<Check> checks;
    std::vector<Cause> causes;
    std::vector<SameCure> same_cures;
    std::vector<Remedy> remedies;
    std::vector<Rule> rules;  // sorted by layer, then as written
    std::vector<Worksheet> worksheets;
    std::vector<Caution> cautions;
    std::vector<Deferral> deferrals;
    std::vector<Stop> stops;
    std::vector<Setting> setting_entries;
    Settings settings;
    std::vector<Word> scale_words;  // "how_often.usually" -> "0.75", for display
    std::string fingerprint;        // hash of all files, names the knowledge a job was made with
};

// Index of the entry with this id, or none.
template <typename E>
Index find(const std::vector<E>& entries, std::string_view id) {
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (entries[i].id == id) return static_cast<Index>(i);
    }
    return none;
}

// Whether the remedy's work puts the cause right: it is the cause's own, or does its work too.
bool puts_right(const Knowledge& knowledge, Index remedy, Index cause);

// The sources of a cause's coming from another one that are told beside it; empty: those of the cause.
std::vector<Index> sources_of_origin(const Cause& cause, Index origin);

// Index of the reading with this id within a finding, or -1.
int find_reading(const Finding& finding, std::string_view id);

}  // namespace hardover

#include "rules/reading/draft.hpp"

#include "rules/reading/letters.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::reading_detail {
namespace {

bool mentions_doubtful(const Draft& draft, const std::string& text) {
    std::string word;
    for (const char c : text + " ") {
        const bool in_word = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
        if (in_word) {
            word += c;
        } else {
            if (draft.is_doubtful(word)) return true;
            word.clear();
        }
    }
    return false;
}

Expression keep(Draft& draft, const YamlNode& node, Result<Expression> read) {
    if (read) return std::move(read).value();
    if (!mentions_doubtful(draft, node.text)) add_error(draft.faults, node, read.error());
    return {};
}

}  // namespace

const std::vector<std::string>& kind_names() {
    static const std::vector<std::string> names = {
        "source",    "scale",      "setting",  "history", "need",     "part",      "rig_field",
        "complaint", "same_words", "finding",  "check",   "cause",    "same_cure", "remedy",
        "rule",      "caution",    "deferral", "stop",    "worksheet"};
    return names;
}

const std::string& name_of(EntryKind kind) {
    return kind_names()[static_cast<std::size_t>(kind)];
}

std::vector<std::string> Draft::ids(EntryKind kind) const {
    std::vector<std::string> all;
    for (const RawEntry& entry : entries(kind)) all.push_back(entry.id);
    return all;
}

Index resolve(Draft& draft, EntryKind kind, const YamlNode& node) {
    const auto id = text_of(node, "the id of a " + name_of(kind), draft.faults);
    if (!id) return none;
    const auto& known = draft.index[static_cast<std::size_t>(kind)];
    const auto found = known.find(*id);
    if (found != known.end()) return found->second;
    add_fault(draft.faults, node, "unknown " + name_of(kind) + " '" + *id + "'",
              did_you_mean(*id, draft.ids(kind)));
    return none;
}

std::vector<Index> resolve_list(Draft& draft, EntryKind kind, const YamlNode& node, const std::string& what) {
    std::vector<Index> found;
    std::unordered_set<Index> seen;
    for (const YamlNode* item : list_of(node, what, draft.faults)) {
        const Index index = resolve(draft, kind, *item);
        if (index == none) continue;
        if (seen.insert(index).second) {
            found.push_back(index);
        } else {
            add_fault(draft.faults, *item, "'" + item->text + "' is given twice in " + what);
        }
    }
    return found;
}

std::vector<Index> optional_list(Draft& draft, EntryKind kind, MapReader& map, std::string_view key) {
    const YamlNode* node = map.get(key);
    if (node == nullptr) return {};
    return resolve_list(draft, kind, *node, "'" + std::string(key) + "'");
}

MapReader open_entry(Draft& draft, EntryKind kind, std::size_t at) {
    const RawEntry& raw = draft.entries(kind)[at];
    MapReader map(*raw.node, name_of(kind) + " '" + raw.id + "'", draft.faults);
    map.get(name_of(kind));  // its id, read when the entries were collected
    return map;
}

void read_sources(Draft& draft, MapReader& map, Entry& entry, SourceRule rule) {
    const YamlNode* node = rule == SourceRule::required ? map.need("source") : map.get("source");
    if (node != nullptr) entry.sources = sources_in(draft, *node);
}

std::vector<Index> sources_in(Draft& draft, const YamlNode& node) {
    if (node.is(YamlNode::Kind::list)) {
        if (node.items.empty()) add_fault(draft.faults, node, "'source' is empty", "give at least one");
        return resolve_list(draft, EntryKind::source, node, "'source'");
    }
    const Index source = resolve(draft, EntryKind::source, node);
    if (source == none) return {};
    return {source};
}

void read_later(Draft& draft, const YamlNode* node, Expression& into) {
    if (node != nullptr && text_of(*node, "a condition", draft.faults))
        draft.pending.push_back({node, &into});
}

void read_pending_conditions(Draft& draft) {
    const std::unique_ptr<Scope> scope = scope_of(draft.knowledge);
    for (const PendingCondition& condition : draft.pending) {
        *condition.into = read_condition_at(draft, *condition.node, *scope);
    }
    draft.pending.clear();
}

TextPlace text_place(const YamlNode& node) {
    return {*node.file, node.line, node.text_column > 0 ? node.text_column : node.column};
}

Expression read_condition_at(Draft& draft, const YamlNode& node, const Scope& scope) {
    if (!text_of(node, "a condition", draft.faults)) return {};
    return keep(draft, node, read_condition(node.text, scope, draft.functions, text_place(node)));
}

Expression read_formula_at(Draft& draft, const YamlNode& node, const Scope& scope,
                           const Dimension& expected) {
    if (!text_of(node, "a formula", draft.faults)) return {};
    return keep(draft, node, read_formula(node.text, scope, draft.functions, expected, text_place(node)));
}

std::optional<double> scale_value(Draft& draft, const std::string& scale, const YamlNode& node) {
    const auto text = text_of(node, "a word of the scale '" + scale + "'", draft.faults);
    if (!text) return std::nullopt;
    if (const auto number = plain_number(*text)) return number;
    const auto word = draft.scale.find(scale + "." + *text);
    if (word != draft.scale.end()) return word->second;

    std::vector<std::string> words;
    const std::string prefix = scale + ".";
    for (const Word& known : draft.knowledge.scale_words) {
        if (known.id.compare(0, prefix.size(), prefix) == 0) words.push_back(known.id.substr(prefix.size()));
    }
    add_fault(draft.faults, node,
              "'" + *text + "' is neither a number nor a word of the scale '" + scale + "'",
              did_you_mean(*text, words));
    return std::nullopt;
}

bool check_word(Draft& draft, const YamlNode& word, const std::string& what) {
    static const std::unordered_set<std::string> kept_by_the_language = {
        "and", "or", "not", "is", "one", "of", "known", "unknown", "history", "complaint", "rig", "fact"};
    if (!word.is(YamlNode::Kind::text) || !is_id(word.text)) {
        add_fault(draft.faults, word, what + " '" + word.text + "' is not written as an id",
                  "small letters, digits and underscores, such as wheel_feel");
        return false;
    }
    if (kept_by_the_language.count(word.text) > 0) {
        add_fault(draft.faults, word, what + " '" + word.text + "' is a word of the rule language",
                  "choose another");
        return false;
    }
    return true;
}

}  // namespace hardover::reading_detail

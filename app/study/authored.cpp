#include "app/study/authored.hpp"

#include <algorithm>
#include <limits>
#include <map>

#include "rules/reading/elsewhere.hpp"
#include "rules/reading/letters.hpp"
#include "rules/reading/map_reader.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::study {

namespace {

using namespace reading_detail;

constexpr std::size_t fewest_wrong_options = 2;
constexpr std::size_t most_options = 6;
constexpr Form authored_forms[] = {Form::method, Form::stopping, Form::telling, Form::deciding};

std::vector<std::string> form_ids() {
    std::vector<std::string> ids;
    for (const Form form : authored_forms) ids.emplace_back(form_id(form));
    return ids;
}

class ItemReader {
  public:
    ItemReader(const Knowledge& knowledge, AuthoredRead& read) : knowledge_(knowledge), read_(read) {}

    void take(const YamlNode& node) {
        const std::size_t before = count_faults();
        AuthoredItem item;
        if (!take_id(node, item)) return;
        MapReader map(node, "item '" + item.id + "'", read_.faults);
        map.get("item");
        item.place = node.place();
        take_form(map, item);
        take_topics(map, item);
        item.ask = map.text("ask");
        take_options(map, item);
        item.reason = map.text("reason");
        take_sources(map, item);
        map.refuse_other_keys();
        refuse_twice("id", item.id, node);
        if (!item.ask.empty()) refuse_twice("question", item.ask, node);
        if (count_faults() > before) return;
        check_texts_of(item);
        read_.items.push_back(std::move(item));
    }

  private:
    std::size_t count_faults() const {
        return static_cast<std::size_t>(std::count_if(read_.faults.begin(), read_.faults.end(),
                                                      [](const Fault& fault) { return !fault.warning; }));
    }

    bool take_id(const YamlNode& node, AuthoredItem& item) {
        const bool is_item =
            node.is(YamlNode::Kind::map) && !node.keys.empty() && node.keys[0].text == "item";
        if (!is_item) {
            add_fault(read_.faults, node, "expected an item", "begin it as '- item: bleed_which_end_first'");
            return false;
        }
        const YamlNode& id = node.items[0];
        if (!id.is(YamlNode::Kind::text) || !is_id(id.text)) {
            add_fault(read_.faults, id, "item '" + id.text + "' is not written as an id",
                      "small letters, digits and underscores, such as bleed_which_end_first");
            return false;
        }
        item.id = id.text;
        return true;
    }

    void refuse_twice(const std::string& what, const std::string& text, const YamlNode& node) {
        const auto [first, is_new] = seen_.try_emplace(what + " " + text, node.place());
        if (is_new) return;
        add_fault(read_.faults, node, "the " + what + " of this item is there already",
                  "the first is at " + first->second.file + ":" + std::to_string(first->second.line));
    }

    void take_form(MapReader& map, AuthoredItem& item) {
        const YamlNode* node = map.need("form");
        if (node == nullptr) return;
        for (const Form form : authored_forms) {
            if (node->text != form_id(form)) continue;
            item.form = form;
            return;
        }
        const std::vector<std::string> ids = form_ids();
        const std::string near = did_you_mean(node->text, ids);
        std::string all;
        for (const std::string& id : ids) all += (all.empty() ? "" : ", ") + id;
        add_fault(read_.faults, *node, "unknown form '" + node->text + "'",
                  near.empty() ? "forms written by hand: " + all : near);
    }

    template <typename E>
    Index named(const std::vector<E>& entries, const char* kind, const YamlNode& node) {
        const Index index = find(entries, node.text);
        if (index != none) return index;
        std::vector<std::string> ids;
        for (const E& entry : entries) ids.push_back(entry.id);
        add_fault(read_.faults, node, "unknown " + std::string(kind) + " '" + node.text + "'",
                  did_you_mean(node.text, ids));
        return none;
    }

    // The entries of a list, each named once.
    template <typename E>
    std::vector<Index> all_named(const std::vector<E>& entries, const char* kind,
                                 const std::vector<const YamlNode*>& nodes) {
        std::vector<Index> found;
        for (const YamlNode* node : nodes) {
            const Index index = named(entries, kind, *node);
            if (index == none) continue;
            if (std::find(found.begin(), found.end(), index) != found.end()) {
                add_fault(read_.faults, *node, "'" + node->text + "' is there twice");
                continue;
            }
            found.push_back(index);
        }
        return found;
    }

    void take_topics(MapReader& map, AuthoredItem& item) {
        const YamlNode* complaints = map.need("complaints");
        if (complaints != nullptr) {
            item.complaints = all_named(knowledge_.complaints, "complaint",
                                        list_of(*complaints, "'complaints'", read_.faults));
        }
        const YamlNode* part = map.need("part");
        if (part != nullptr) item.part = named(knowledge_.parts, "part", *part);
    }

    void take_option(const YamlNode& node, AuthoredItem& item) {
        MapReader map(node, "an option of item '" + item.id + "'", read_.faults);
        Option option;
        option.right = map.has("right");
        option.text = map.text(option.right ? "right" : "wrong");
        if (!option.right) option.why = map.text("why");
        map.refuse_other_keys();
        const bool there = std::any_of(item.options.begin(), item.options.end(),
                                       [&](const Option& other) { return other.text == option.text; });
        if (there) add_fault(read_.faults, node, "this option of '" + item.id + "' is there twice");
        item.options.push_back(std::move(option));
    }

    void take_options(MapReader& map, AuthoredItem& item) {
        const YamlNode* options = map.need("options");
        if (options == nullptr) return;
        for (const YamlNode* node : list_of(*options, "'options'", read_.faults)) take_option(*node, item);
        const auto right = std::count_if(item.options.begin(), item.options.end(),
                                         [](const Option& option) { return option.right; });
        if (right != 1) {
            add_fault(read_.faults, *options,
                      "item '" + item.id + "' has " + std::to_string(right) + " right options",
                      "exactly one is right");
        }
        if (item.options.size() < fewest_wrong_options + 1 || item.options.size() > most_options) {
            add_fault(read_.faults, *options,
                      "item '" + item.id + "' has " + std::to_string(item.options.size()) + " options",
                      "three to six");
        }
        std::stable_partition(item.options.begin(), item.options.end(),
                              [](const Option& option) { return option.right; });
    }

    void take_sources(MapReader& map, AuthoredItem& item) {
        const YamlNode* source = map.need("source");
        if (source == nullptr) return;
        std::vector<const YamlNode*> nodes{source};
        if (source->is(YamlNode::Kind::list)) nodes = list_of(*source, "'source'", read_.faults);
        item.sources = all_named(knowledge_.sources, "source", nodes);
        if (nodes.empty()) add_fault(read_.faults, *source, "'source' is empty", "give at least one");
    }

    void check_texts_of(const AuthoredItem& item) {
        check_prose(knowledge_, item, "ask", {item.ask}, read_.faults);
        check_prose(knowledge_, item, "reason", {item.reason}, read_.faults);
        std::vector<std::string> options, reasons;
        for (const Option& option : item.options) {
            options.push_back(option.text);
            if (!option.why.empty()) reasons.push_back(option.why);
        }
        check_prose(knowledge_, item, "options", options, read_.faults);
        check_prose(knowledge_, item, "why", reasons, read_.faults);
    }

    const Knowledge& knowledge_;
    AuthoredRead& read_;
    std::map<std::string, Place> seen_;  // "id x", "question y"
};

}  // namespace

AuthoredRead read_authored(const std::vector<KnowledgeFile>& files, const Knowledge& knowledge) {
    AuthoredRead read;
    ItemReader reader(knowledge, read);
    for (const KnowledgeFile& file : files) {
        std::vector<Fault> of_form;  // what YAML itself takes amiss, such as a bare yes
        const EntriesRead entries = read_entries(file, of_form);
        for (std::size_t i = 0; i < entries.entries.size(); ++i) {
            const int from = entries.entries[i].place().line;
            const bool is_last = i + 1 == entries.entries.size();
            const int to = is_last ? std::numeric_limits<int>::max() : entries.entries[i + 1].place().line;
            const bool broken = std::any_of(of_form.begin(), of_form.end(), [&](const Fault& fault) {
                return fault.place.line >= from && fault.place.line < to;
            });
            if (!broken) reader.take(entries.entries[i]);
        }
        read.faults.insert(read.faults.end(), of_form.begin(), of_form.end());
    }
    put_in_order(read.faults);
    return read;
}

AuthoredRead read_authored(const Knowledge& knowledge) {
    if (knowledge.folder.empty()) return {};
    const Result<std::vector<KnowledgeFile>> files = files_read_elsewhere(knowledge.folder);
    if (files) return read_authored(files.value(), knowledge);
    AuthoredRead refused;
    refused.faults.push_back({Place{files.error().where, 0, 0}, files.error().what, files.error().cure});
    return refused;
}

}  // namespace hardover::study

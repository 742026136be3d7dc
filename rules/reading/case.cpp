// Reads a case file: a rig, complaints and answers written down, with what is expected to come of it.
#include "rules/reading/map_reader.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {
namespace {

using namespace reading_detail;

template <typename E>
Index resolve(const std::vector<E>& entries, const char* kind, const YamlNode& node, Faults& faults) {
    const auto id = text_of(node, std::string("the id of a ") + kind, faults);
    if (!id) return none;
    const Index index = find(entries, *id);
    if (index != none) return index;
    std::vector<std::string> ids;
    for (const E& entry : entries) ids.push_back(entry.id);
    add_fault(faults, node, std::string("unknown ") + kind + " '" + *id + "'", did_you_mean(*id, ids));
    return none;
}

void read_rig(const YamlNode& node, const Knowledge& knowledge, Facts& facts, Faults& faults) {
    for (const Pair& pair : pairs_of(node, "'rig'", faults)) {
        const Index field = resolve(knowledge.rig_fields, "rig_field", *pair.key, faults);
        const auto text = text_of(*pair.value, "'" + pair.key->text + "'", faults);
        if (field == none || !text) continue;
        const Result<RigValue> value = read_rig_value(knowledge.rig_fields[field], *text);
        if (value) {
            facts.rig[field] = value.value();
        } else {
            add_error(faults, *pair.value, value.error());
        }
    }
}

void read_answers(const YamlNode& node, const Knowledge& knowledge, Facts& facts, Faults& faults) {
    for (const Pair& pair : pairs_of(node, "'answers'", faults)) {
        const Index finding = resolve(knowledge.findings, "finding", *pair.key, faults);
        const auto text = text_of(*pair.value, "'" + pair.key->text + "'", faults);
        if (finding == none || !text) continue;
        const Result<Answer> answer = read_answer(knowledge.findings[finding], *text);
        if (answer) {
            facts.answers[finding] = answer.value();
        } else {
            add_error(faults, *pair.value, answer.error());
        }
    }
}

void read_tried(const YamlNode& node, const Knowledge& knowledge, Facts& facts, Faults& faults) {
    static const std::vector<std::string> outcomes = {"cured", "better", "not_cured"};
    for (const Pair& pair : pairs_of(node, "'tried'", faults)) {
        const Index remedy = resolve(knowledge.remedies, "remedy", *pair.key, faults);
        const auto text = text_of(*pair.value, "'" + pair.key->text + "'", faults);
        if (remedy == none || !text) continue;
        bool is_known = false;
        for (std::size_t i = 0; i < outcomes.size(); ++i) {
            if (*text != outcomes[i]) continue;
            facts.tried[remedy] = static_cast<Outcome>(i);
            is_known = true;
        }
        if (is_known) continue;
        std::string cure = did_you_mean(*text, outcomes);
        if (cure.empty()) cure = "cured, better or not_cured";
        add_fault(faults, *pair.value, "unknown outcome '" + *text + "'", cure);
    }
}

template <typename E>
std::set<Index> read_set(const YamlNode* node, const std::string& key, const std::vector<E>& entries,
                         const char* kind, Faults& faults) {
    std::set<Index> found;
    if (node == nullptr) return found;
    for (const YamlNode* item : list_of(*node, "'" + key + "'", faults)) {
        const Index index = resolve(entries, kind, *item, faults);
        if (index != none) found.insert(index);
    }
    return found;
}

void read_expectation(const YamlNode& node, const Knowledge& knowledge, CaseExpectation& expect,
                      Faults& faults) {
    MapReader map(node, "'expect'", faults);
    if (const YamlNode* first = map.get("first")) {
        if (resolve(knowledge.causes, "cause", *first, faults) != none) expect.first = first->text;
    }
    if (const YamlNode* among = map.get("among_first_three")) {
        for (const YamlNode* item : list_of(*among, "'among_first_three'", faults)) {
            if (resolve(knowledge.causes, "cause", *item, faults) != none) {
                expect.among_first_three.push_back(item->text);
            }
        }
    }
    map.refuse_other_keys();
}

void read_body(MapReader& map, const Knowledge& knowledge, Case& found, Faults& faults) {
    found.story = map.optional_text("story");
    Facts& facts = found.facts;
    if (const YamlNode* rig = map.get("rig")) read_rig(*rig, knowledge, facts, faults);
    if (const YamlNode* history = map.get("history")) {
        facts.history = resolve(knowledge.histories, "history", *history, faults);
    }
    facts.complaints =
        read_set(map.get("complaints"), "complaints", knowledge.complaints, "complaint", faults);
    if (const YamlNode* answers = map.get("answers")) read_answers(*answers, knowledge, facts, faults);
    if (const YamlNode* tried = map.get("tried")) read_tried(*tried, knowledge, facts, faults);
    facts.unavailable = read_set(map.get("not_available"), "not_available", knowledge.needs, "need", faults);
    if (const YamlNode* rate = map.get("shop_rate")) {
        facts.shop_rate = number_of(*rate, "'shop_rate'", faults).value_or(0);
        if (facts.shop_rate < 0) add_fault(faults, *rate, "'shop_rate' must not be less than 0");
    }
    if (const YamlNode* expect = map.get("expect"))
        read_expectation(*expect, knowledge, found.expect, faults);
}

}  // namespace

CaseRead read_case(const KnowledgeFile& file, const Knowledge& knowledge) {
    CaseRead read;
    const YamlNode root = read_document(file, read.faults);
    if (root.is(YamlNode::Kind::nothing)) {
        if (read.faults.empty()) add_fault(read.faults, root, "the case file is empty");
        return read;
    }
    Case found;
    MapReader map(root, "the case", read.faults);
    read_body(map, knowledge, found, read.faults);
    map.refuse_other_keys();
    put_in_order(read.faults);
    if (read.faults.empty()) read.found = std::move(found);
    return read;
}

}  // namespace hardover

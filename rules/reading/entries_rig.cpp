// Reads the rig fields: how a boat (or whatever the base is about) is built.
#include "rules/reading/draft.hpp"

namespace hardover::reading_detail {

std::vector<Word> read_choices(Draft& draft, const YamlNode& node, const std::string& owner) {
    std::vector<Word> choices;
    for (const Pair& choice : pairs_of(node, "'choices'", draft.faults)) {
        if (!check_word(draft, *choice.key, "choice")) draft.doubtful.insert(owner);
        const auto text = text_of(*choice.value, "'" + choice.key->text + "'", draft.faults);
        choices.push_back({choice.key->text, text.value_or("")});
    }
    if (node.is(YamlNode::Kind::map) && choices.size() < 2) {
        add_fault(draft.faults, node, "'choices' needs at least two");
    }
    return choices;
}

namespace {

void read_limits(Draft& draft, MapReader& map, RigField& field) {
    const YamlNode* least = map.get("least");
    const YamlNode* most = map.get("most");
    if (!field.unit) {
        for (const YamlNode* limit : {least, most}) {
            const bool is_fault = limit != nullptr && !draft.is_doubtful(field.id);
            if (is_fault) add_fault(draft.faults, *limit, "a limit needs a field with 'unit'");
        }
        return;
    }
    if (least != nullptr) field.least = quantity_of(*least, *field.unit, draft.faults);
    if (most != nullptr) field.most = quantity_of(*most, *field.unit, draft.faults);
    if (field.least && field.most && field.least->value > field.most->value) {
        add_fault(draft.faults, *most, "'most' is smaller than 'least'");
        field.least.reset();  // so that the assumption is not measured against them
        field.most.reset();
    }
}

void read_assumed(Draft& draft, MapReader& map, RigField& field) {
    const YamlNode* node = map.get("assumed");
    if (node == nullptr || !text_of(*node, "'assumed'", draft.faults)) return;
    const Result<RigValue> value = read_rig_value(field, node->text);
    if (!value) {
        if (!draft.is_doubtful(field.id)) add_error(draft.faults, *node, value.error());
        return;
    }
    std::visit([&](const auto& given) { field.assumed = given; }, value.value());
}

}  // namespace

void read_rig_fields(Draft& draft) {
    each_entry(draft, EntryKind::rig_field, draft.knowledge.rig_fields, [&](MapReader& map, RigField& field) {
        field.name = map.text("name");
        field.ask = map.text("ask");
        const YamlNode* choices = map.get("choices");
        const YamlNode* unit = map.get("unit");
        if ((choices == nullptr) == (unit == nullptr)) {
            add_fault(draft.faults, map.node(), map.owner() + " must have either 'choices' or 'unit'");
            draft.doubtful.insert(field.id);
        }
        if (choices != nullptr) field.choices = read_choices(draft, *choices, field.id);
        if (unit != nullptr) {
            field.unit = unit_of(*unit, draft.faults);
            if (!field.unit) draft.doubtful.insert(field.id);
        }
        read_limits(draft, map, field);
        read_assumed(draft, map, field);
        read_sources(draft, map, field, SourceRule::required);
    });
}

}  // namespace hardover::reading_detail

#include "rules/reading/scopes.hpp"

#include "rules/reading/reading.hpp"

namespace hardover {
namespace reading_detail {
namespace {

NameKind quantity_kind(const Unit& unit) {
    NameKind kind;
    kind.is_quantity = true;
    kind.unit = unit;
    return kind;
}

template <typename Words>
std::vector<std::string> ids_of(const Words& words) {
    std::vector<std::string> ids;
    for (const auto& word : words) ids.push_back(word.id);
    return ids;
}

}  // namespace

const NameKind* NameTable::kind_of(const std::string& name) const {
    const auto found = kinds_.find(name);
    return found == kinds_.end() ? nullptr : &found->second;
}

void NameTable::add(const std::string& name, NameKind kind) {
    if (kinds_.emplace(name, std::move(kind)).second) names_.push_back(name);
}

NameTable outer_names(const Knowledge& knowledge) {
    NameTable table;
    NameKind history;
    history.words = ids_of(knowledge.histories);
    table.add("history", history);
    NameKind complaint;
    complaint.words = ids_of(knowledge.complaints);
    complaint.several = true;
    table.add("complaint", complaint);
    for (const RigField& field : knowledge.rig_fields) {
        NameKind kind = field.unit ? quantity_kind(*field.unit) : NameKind{};
        kind.words = ids_of(field.choices);
        table.add("rig." + field.id, kind);
    }
    for (const Finding& finding : knowledge.findings) {
        NameKind kind = finding.unit ? quantity_kind(*finding.unit) : NameKind{};
        kind.words = ids_of(finding.readings);
        table.add(finding.id, kind);
    }
    for (const Worksheet& worksheet : knowledge.worksheets) {
        for (const WorksheetOutput& result : worksheet.results) {
            table.add(worksheet.id + "." + result.id, quantity_kind(result.unit));
        }
    }
    for (const Rule& rule : knowledge.rules) {
        for (const Action& action : rule.then) {
            if (action.kind != Action::Kind::derive) continue;
            NameKind fact;
            fact.is_truth = true;
            table.add("fact." + action.fact, fact);
        }
    }
    return table;
}

NameTable inner_names(const Worksheet& worksheet, std::size_t results) {
    NameTable table;
    for (const WorksheetInput& input : worksheet.inputs) {
        NameKind kind = input.choices.empty() ? quantity_kind(input.unit) : NameKind{};
        kind.words = ids_of(input.choices);
        table.add(input.id, std::move(kind));
    }
    for (std::size_t i = 0; i < results; ++i) {
        table.add(worksheet.results[i].id, quantity_kind(worksheet.results[i].unit));
    }
    return table;
}

}  // namespace reading_detail

std::unique_ptr<Scope> scope_of(const Knowledge& knowledge, Index inside) {
    using namespace reading_detail;
    if (inside == none) return std::make_unique<NameTable>(outer_names(knowledge));
    const Worksheet& worksheet = knowledge.worksheets[inside];
    return std::make_unique<NameTable>(inner_names(worksheet, worksheet.results.size()));
}

}  // namespace hardover

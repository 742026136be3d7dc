// Reads checks and remedies: what is done, with what, for how long, and the cautions before it.
#include "rules/reading/draft.hpp"

namespace hardover::reading_detail {
namespace {

void read_parts(Draft& draft, MapReader& map, Remedy& remedy) {
    const YamlNode* parts = map.need("parts");
    if (parts == nullptr) return;
    for (const YamlNode* node : list_of(*parts, "'parts'", draft.faults)) {
        MapReader part(*node, "a part of " + map.owner(), draft.faults);
        PricedPart priced;
        priced.part = part.text("part");
        if (const YamlNode* price = part.need("price")) {
            priced.price = number_of(*price, "'price'", draft.faults).value_or(0);
            if (priced.price < 0) add_fault(draft.faults, *price, "'price' must not be less than 0");
        }
        part.refuse_other_keys();
        remedy.parts.push_back(std::move(priced));
    }
}

}  // namespace

void read_checks(Draft& draft) {
    each_entry(draft, EntryKind::check, draft.knowledge.checks, [&](MapReader& map, Check& check) {
        check.name = map.text("name");
        check.why = map.text("why");
        check.steps = map.texts("steps", 1);
        check.tools = map.texts("tools", 0);
        check.minutes = map.minutes("minutes");
        check.needs = optional_list(draft, EntryKind::need, map, "needs");
        check.cautions = optional_list(draft, EntryKind::caution, map, "cautions");
        read_sources(draft, map, check, SourceRule::required);
    });
    const auto& findings = draft.knowledge.findings;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Index check = findings[i].check;
        if (check != none) draft.knowledge.checks[check].gets.push_back(static_cast<Index>(i));
    }
}

void read_remedies(Draft& draft) {
    each_entry(draft, EntryKind::remedy, draft.knowledge.remedies, [&](MapReader& map, Remedy& remedy) {
        remedy.name = map.text("name");
        remedy.steps = map.texts("steps", 1);
        remedy.tools = map.texts("tools", 0);
        remedy.minutes = map.minutes("minutes");
        read_parts(draft, map, remedy);
        remedy.figures = map.texts("figures", 0);
        remedy.worksheets = optional_list(draft, EntryKind::worksheet, map, "worksheets");
        remedy.cautions = optional_list(draft, EntryKind::caution, map, "cautions");
        remedy.after = map.texts("after", 1);
        remedy.also_cures = optional_list(draft, EntryKind::cause, map, "also_cures");
        read_sources(draft, map, remedy, SourceRule::required);
    });
}

}  // namespace hardover::reading_detail

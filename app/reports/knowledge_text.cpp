#include "app/reports/knowledge_text.hpp"

#include <cstdio>

#include "app/jobs/page.hpp"
#include "app/reports/job_report.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {

namespace {

constexpr int width = 80;

// Visits every list of entries with its plural name; the one place that knows all kinds.
template <typename Visit>
void each_kind(const Knowledge& knowledge, Visit&& visit) {
    visit("complaints", knowledge.complaints);
    visit("same_words", knowledge.same_words);
    visit("findings", knowledge.findings);
    visit("checks", knowledge.checks);
    visit("causes", knowledge.causes);
    visit("remedies", knowledge.remedies);
    visit("rules", knowledge.rules);
    visit("same_cures", knowledge.same_cures);
    visit("worksheets", knowledge.worksheets);
    visit("cautions", knowledge.cautions);
    visit("deferrals", knowledge.deferrals);
    visit("stops", knowledge.stops);
    visit("rig", knowledge.rig_fields);
    visit("histories", knowledge.histories);
    visit("needs", knowledge.needs);
    visit("parts", knowledge.parts);
    visit("sources", knowledge.sources);
    visit("settings", knowledge.setting_entries);
}

std::string line(const std::string& label, const std::string& text) {
    if (text.empty()) return "";
    return wrapped(label + ": " + text, width, 2) + "\n";
}

std::string items(const std::string& label, const std::vector<std::string>& texts) {
    if (texts.empty()) return "";
    std::string result = label + ":\n";
    for (const std::string& text : texts) result += "  - " + wrapped(text, width - 4, 4) + "\n";
    return result;
}

std::string number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.3g", value);
    return text;
}

template <typename E>
std::vector<std::string> names_of(const std::vector<E>& entries, const std::vector<Index>& chosen) {
    std::vector<std::string> names;
    for (const Index index : chosen) names.push_back(entries[index].name + " [" + entries[index].id + "]");
    return names;
}

template <typename E>
std::string name_at(const std::vector<E>& entries, Index index) {
    return index == none ? "" : entries[index].name + " [" + entries[index].id + "]";
}

// The overloads below show what is particular to each kind; name and sources are added by entry_text.
std::string details(const Knowledge& knowledge, const Complaint& complaint, UnitSystem) {
    std::vector<std::string> says;
    for (const auto& [finding, reading] : complaint.says) {
        says.push_back(knowledge.findings[finding].name + ": " +
                       knowledge.findings[finding].readings[reading].text);
    }
    return items("In the customer's words", complaint.words) + items("Says", says);
}

std::string details(const Knowledge&, const SameWords& same, UnitSystem) {
    return items("Taken as one word", same.words);
}

std::string details(const Knowledge& knowledge, const Finding& finding, UnitSystem) {
    std::vector<std::string> readings;
    for (const Reading& reading : finding.readings)
        readings.push_back(reading.text + " [" + reading.id + "]");
    return line("Asks", finding.ask) + items("Look", finding.look) +
           items("Readings, worst first", readings) +
           line("Measured in", finding.unit.has_value() ? finding.unit->name : "") +
           line("Got by", name_at(knowledge.checks, finding.check)) +
           line("Part", name_at(knowledge.parts, finding.part)) + line("Minutes", number(finding.minutes)) +
           line("Makes sense when", finding.possible_when.text());
}

std::string details(const Knowledge& knowledge, const Check& check, UnitSystem) {
    std::vector<std::string> cautions;
    for (const Index index : check.cautions) {
        const Caution& caution = knowledge.cautions[index];
        cautions.push_back(caution.name + ": " + caution.hurts + " " + caution.avoid);
    }
    return line("Why", check.why) + items("Cautions", cautions) + items("Steps", check.steps) +
           items("Tools", check.tools) + items("Needs", names_of(knowledge.needs, check.needs)) +
           line("Minutes", number(check.minutes)) + items("Gives", names_of(knowledge.findings, check.gets));
}

std::vector<std::string> origins(const Knowledge& knowledge, const Cause& cause) {
    std::vector<std::string> texts = names_of(knowledge.causes, cause.comes_from);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const std::vector<Index> sources = sources_of_origin(cause, cause.comes_from[i]);
        if (!sources.empty()) texts[i] += " (" + source_text(knowledge, sources) + ")";
    }
    return texts;
}

std::string details(const Knowledge& knowledge, const Cause& cause, UnitSystem) {
    std::vector<std::string> odds;
    for (std::size_t i = 0; i < cause.odds.size(); ++i) {
        odds.push_back(knowledge.histories[i].name + ": " + number(cause.odds[i]) + " of 1000 comebacks");
    }
    std::vector<std::string> shows;
    for (const Shows& shown : cause.shows) {
        const Finding& finding = knowledge.findings[shown.finding];
        for (std::size_t i = 0; i + 1 < finding.readings.size(); ++i) {
            if (shown.how_often[i] <= 0) continue;
            shows.push_back(finding.name + ": " + finding.readings[i].text + ", " +
                            number(100 * shown.how_often[i]) + " of 100");
        }
    }
    return line("About", cause.about) + line("Part", name_at(knowledge.parts, cause.part)) +
           items("Odds", odds) + line("Possible when", cause.possible_when.text()) + items("Shows", shows) +
           line("Proved by", name_at(knowledge.checks, cause.proof)) +
           line("Proved when", cause.proved_when.text()) +
           line("Remedy", name_at(knowledge.remedies, cause.remedy)) +
           items("Comes from, which is put right first", origins(knowledge, cause));
}

std::string details(const Knowledge& knowledge, const SameCure& same, UnitSystem) {
    return items("Causes that nothing tells apart", names_of(knowledge.causes, same.causes)) +
           line("Why", same.why);
}

std::string details(const Knowledge& knowledge, const Remedy& remedy, UnitSystem) {
    std::vector<std::string> cautions;
    for (const Index index : remedy.cautions) {
        const Caution& caution = knowledge.cautions[index];
        cautions.push_back(caution.name + ": " + caution.hurts + " " + caution.avoid);
    }
    std::vector<std::string> parts;
    for (const PricedPart& part : remedy.parts) parts.push_back(part.part + ", " + number(part.price));
    return items("Cautions", cautions) + items("Steps", remedy.steps) + items("Tools", remedy.tools) +
           items("Parts and prices", parts) + items("Figures", remedy.figures) +
           items("Afterwards", remedy.after) +
           items("Its work also cures", names_of(knowledge.causes, remedy.also_cures)) +
           line("Minutes", number(remedy.minutes));
}

std::string details(const Knowledge&, const Rule& rule, UnitSystem) {
    return line("When", rule.when.text()) + line("Why", rule.why);
}

std::string details(const Knowledge& knowledge, const Worksheet& worksheet, UnitSystem units) {
    std::vector<std::string> inputs;
    for (const WorksheetInput& input : worksheet.inputs) {
        std::string kind = shown_unit(input.unit, units).name;
        for (const Word& choice : input.choices) kind += (kind.empty() ? "" : " | ") + choice.id;
        std::string text = input.id + " (" + input.name + ", " + kind + ")";
        if (input.example.has_value()) text += ", for example " + show(*input.example, input.unit, units);
        if (!input.example_choice.empty()) text += ", for example " + input.example_choice;
        if (input.rig_field != none) text += "; from the rig";
        if (input.finding != none) text += "; from " + knowledge.findings[input.finding].name;
        inputs.push_back(text);
    }
    std::vector<std::string> results;
    for (const WorksheetOutput& result : worksheet.results) {
        results.push_back(result.id + " (" + result.name + ", " + shown_unit(result.unit, units).name +
                          ") = " + result.formula.text());
    }
    return line("About", worksheet.about) + items("Inputs", inputs) + items("Results", results);
}

std::string details(const Knowledge& knowledge, const Need& need, UnitSystem) {
    return line("Possible when", need.possible_when.text()) +
           items("Not without", names_of(knowledge.needs, need.takes)) +
           line("That is so when", need.takes_when.text());
}

std::string details(const Knowledge& knowledge, const Caution& caution, UnitSystem) {
    return line("Hurts", caution.hurts) + line("Avoid", caution.avoid) +
           line("Comes with", name_at(knowledge.needs, caution.comes_with));
}

std::string details(const Knowledge&, const Deferral& deferral, UnitSystem) {
    return line("Text", deferral.text) + line("Decided by", deferral.to) + line("When", deferral.when.text());
}

std::string details(const Knowledge& knowledge, const Stop& stop, UnitSystem) {
    return line("Text", stop.text) + items("Bars checks that need", names_of(knowledge.needs, stop.bars));
}

std::string details(const Knowledge&, const RigField& field, UnitSystem) {
    std::vector<std::string> choices;
    for (const Word& choice : field.choices) choices.push_back(choice.id + ": " + choice.text);
    return line("Asks", field.ask) + items("Choices", choices) +
           line("Unit", field.unit.has_value() ? field.unit->name : "");
}

std::string details(const Knowledge&, const History& history, UnitSystem) {
    return line("Share of comebacks", number(100 * history.share) + " of 100");
}

std::string details(const Knowledge&, const Source& source, UnitSystem) {
    return line("Place", source.where);
}

std::string details(const Knowledge&, const Setting& setting, UnitSystem) {
    return line("Value", number(setting.value));
}

std::string details(const Knowledge&, const Entry&, UnitSystem) {
    return "";
}

}  // namespace

const std::vector<std::string>& entry_kinds() {
    static const std::vector<std::string> kinds = [] {
        std::vector<std::string> names;
        each_kind(Knowledge{}, [&](const char* kind, const auto&) { names.push_back(kind); });
        return names;
    }();
    return kinds;
}

Result<std::vector<EntryLine>> entries_of_kind(const Knowledge& knowledge, const std::string& kind) {
    std::vector<EntryLine> lines;
    bool known = false;
    each_kind(knowledge, [&](const char* name, const auto& entries) {
        if (kind != name) return;
        known = true;
        for (const auto& entry : entries) lines.push_back({entry.id, entry.name});
    });
    if (known) return lines;
    std::string all;
    for (const std::string& name : entry_kinds()) all += (all.empty() ? "" : ", ") + name;
    const std::string near = did_you_mean(kind, entry_kinds());
    return Error{Error::Kind::not_found, "there is no kind of entry '" + kind + "'", "",
                 near.empty() ? "kinds are: " + all : near};
}

Result<std::string> entry_text(const Knowledge& knowledge, const std::string& id, UnitSystem units) {
    std::string text;
    std::vector<std::string> ids;
    each_kind(knowledge, [&](const char* kind, const auto& entries) {
        for (const auto& entry : entries) {
            ids.push_back(entry.id);
            if (entry.id != id) continue;
            text += (text.empty() ? "" : "\n") + entry.name + " [" + entry.id + "], in " + kind + "\n";
            text += details(knowledge, entry, units);
            if (!entry.sources.empty())
                text += wrapped(source_text(knowledge, entry.sources), width, 2) + "\n";
        }
    });
    if (!text.empty()) return text;
    return Error{Error::Kind::not_found, "nothing is known under '" + id + "'", "", did_you_mean(id, ids)};
}

}  // namespace hardover

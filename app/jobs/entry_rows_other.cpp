// The kinds that are looked up: worksheets, cautions, deferrals, stops, the rig, histories, sources.
#include <fmt/format.h>

#include "app/jobs/entry_parts.hpp"

namespace hardover::jobs_detail {

namespace {

EntryText input_text(const Book& book, const WorksheetInput& input) {
    std::string kind = shown_unit(input.unit, book.units).name;
    for (const Word& choice : input.choices) kind += (kind.empty() ? "" : " or ") + choice.text;
    EntryText text = code(input.id) + fmt::format(" {} ({})", input.name, kind);
    if (input.example) text += ", for example " + show(*input.example, input.unit, book.units);
    if (!input.example_choice.empty()) text += ", for example " + input.example_choice;
    if (input.rig_field != none) {
        text += EntryText(", from ") +
                link_to("rig_field", book.knowledge.rig_fields[static_cast<std::size_t>(input.rig_field)]);
    }
    if (input.finding != none) {
        text += EntryText(", from ") +
                link_to("finding", book.knowledge.findings[static_cast<std::size_t>(input.finding)]);
    }
    return text;
}

EntryText assumed_text(const RigField& field, UnitSystem units) {
    if (const auto* choice = std::get_if<std::string>(&field.assumed)) return EntryText(*choice);
    const auto* quantity = std::get_if<Quantity>(&field.assumed);
    return quantity != nullptr && field.unit ? EntryText(show(*quantity, *field.unit, units)) : "";
}

EntryText range_text(const RigField& field, UnitSystem units) {
    if (!field.unit || !field.least || !field.most) return "";
    return EntryText(show(*field.least, *field.unit, units) + " to " + show(*field.most, *field.unit, units));
}

}  // namespace

Rows rows_of(const Book& book, const SameWords& entry, Index index) {
    return row("Taken as one word", EntryText(fmt::format("{}", fmt::join(entry.words, ", ")))) +
           back_row(book, "Said in", "same_words", "said in", index);
}

Rows rows_of(const Book& book, const Worksheet& entry, Index index) {
    Items inputs;
    for (const WorksheetInput& input : entry.inputs) inputs.push_back(input_text(book, input));
    Items results;
    for (const WorksheetOutput& result : entry.results) {
        results.push_back(code(result.id) +
                          fmt::format(" {} ({}) = ", result.name, shown_unit(result.unit, book.units).name) +
                          code(result.formula.text()));
    }
    Items guards;
    for (const WorksheetGuard& guard : entry.holds_when) {
        guards.push_back(code(guard.condition.text()) + ("; else: " + guard.otherwise));
    }
    Items advice;
    for (const WorksheetAdvice& each : entry.advice) {
        advice.push_back(EntryText("When ") + code(each.when.text()) + (": " + each.say));
    }
    return row("About", EntryText(entry.about)) + list_row("Inputs", inputs) + list_row("Results", results) +
           list_row("Holds when", guards) + list_row("Advice", advice) +
           back_row(book, "Used by", "worksheet", "used by", index) +
           back_row(book, "In rules", "worksheet", "in rules", index);
}

Rows rows_of(const Book& book, const Caution& entry, Index index) {
    return row("Hurts", EntryText(entry.hurts)) + row("Avoid", EntryText(entry.avoid)) +
           (entry.comes_with == none
                ? Rows()
                : list_row("Comes with", links("need", book.knowledge.needs, {entry.comes_with}))) +
           back_row(book, "Shown before", "caution", "carried by", index) +
           back_row(book, "In rules", "caution", "in rules", index);
}

Rows rows_of(const Book& book, const Deferral& entry, Index index) {
    return row("What is not ours to decide", EntryText(entry.text)) +
           row("Whose it is", EntryText(entry.to)) + row("When", condition_text(book.knowledge, entry.when)) +
           back_row(book, "In rules", "deferral", "in rules", index);
}

Rows rows_of(const Book& book, const Stop& entry, Index index) {
    return row("Stop", EntryText(entry.text)) +
           list_row("Bars checks that need", links("need", book.knowledge.needs, entry.bars)) +
           back_row(book, "Ordered by rules", "stop", "in rules", index);
}

Rows rows_of(const Book& book, const RigField& entry, Index index) {
    Items choices;
    for (const Word& choice : entry.choices) {
        choices.push_back(EntryText(choice.text + " ") + code(choice.id));
    }
    return row("Asks", EntryText(entry.ask)) + list_row("Choices", choices) +
           row("Unit", entry.unit ? EntryText(shown_unit(*entry.unit, book.units).name) : "") +
           row("From least to most", range_text(entry, book.units)) +
           row("Taken as, until it is known", assumed_text(entry, book.units)) +
           back_row(book, "Used by worksheets", "rig_field", "used by", index) +
           back_row(book, "In rules", "rig_field", "in rules", index);
}

Rows rows_of(const Book&, const History& entry, Index) {
    return row("Share of comebacks", fmt::format("{:.0f} of 100", 100 * entry.share));
}

Rows rows_of(const Book& book, const Need& entry, Index index) {
    return row("Possible when", condition_text(book.knowledge, entry.possible_when)) +
           list_row("Not without", links("need", book.knowledge.needs, entry.takes)) +
           row("That is so when", condition_text(book.knowledge, entry.takes_when)) +
           back_row(book, "Needed by", "need", "needed by", index) +
           back_row(book, "Barred by", "need", "barred by", index) +
           back_row(book, "Brings cautions", "need", "brings", index);
}

Rows rows_of(const Book& book, const Part&, Index index) {
    return back_row(book, "Causes", "part", "causes", index) +
           back_row(book, "Findings", "part", "findings", index);
}

Rows rows_of(const Book&, const Setting& entry, Index) {
    return row("Value", fmt::format("{:.4g}", entry.value));
}

Rows rows_of(const Book& book, const Source& entry, Index index) {
    static const char* const kinds[] = {"Published", "Common practice", "From memory", "Invented"};
    return row("Kind", kinds[static_cast<std::size_t>(entry.kind)]) +
           row("Place in it", EntryText(entry.where)) +
           back_row(book, "Cited by", "source", "cited by", index);
}

}  // namespace hardover::jobs_detail

// The kinds that are looked up: worksheets, cautions, deferrals, stops, the rig, histories, sources.
#include <fmt/format.h>

#include "app/reports/book_entries.hpp"
#include "app/reports/html.hpp"

namespace hardover::book {

namespace {

std::string back_row(const Book& book, const std::string& label, const std::string& kind,
                     const std::string& relation, Index index) {
    return html::row(label, html::list(book.backward.to(kind, relation, index)));
}

std::string input_text(const Book& book, const WorksheetInput& input) {
    std::string kind = html::text(input.unit.name);
    for (const Word& choice : input.choices) kind += (kind.empty() ? "" : " or ") + html::text(choice.text);
    std::string text = fmt::format("<code>{}</code> {} ({})", input.id, html::text(input.name), kind);
    if (input.example) text += ", for example " + html::text(show(*input.example, input.unit));
    if (!input.example_choice.empty()) text += ", for example " + html::text(input.example_choice);
    if (input.rig_field != none) {
        text += ", from " +
                link("rig_field", book.knowledge.rig_fields[static_cast<std::size_t>(input.rig_field)]);
    }
    if (input.finding != none) {
        text += ", from " + link("finding", book.knowledge.findings[static_cast<std::size_t>(input.finding)]);
    }
    return text;
}

std::string assumed_text(const RigField& field) {
    if (const auto* choice = std::get_if<std::string>(&field.assumed)) return html::text(*choice);
    const auto* quantity = std::get_if<Quantity>(&field.assumed);
    return quantity != nullptr && field.unit ? html::text(show(*quantity, *field.unit)) : "";
}

std::string range_text(const RigField& field) {
    if (!field.unit || !field.least || !field.most) return "";
    return html::text(show(*field.least, *field.unit) + " to " + show(*field.most, *field.unit));
}

}  // namespace

std::string rows_of(const Book& book, const Worksheet& entry, Index index) {
    std::vector<std::string> inputs;
    for (const WorksheetInput& input : entry.inputs) inputs.push_back(input_text(book, input));
    std::vector<std::string> results;
    for (const WorksheetOutput& result : entry.results) {
        results.push_back(fmt::format("<code>{}</code> {} ({}) = <code>{}</code>", result.id,
                                      html::text(result.name), html::text(result.unit.name),
                                      html::text(result.formula.text())));
    }
    std::vector<std::string> guards;
    for (const WorksheetGuard& guard : entry.holds_when) {
        guards.push_back(fmt::format("<code>{}</code>; else: {}", html::text(guard.condition.text()),
                                     html::text(guard.otherwise)));
    }
    std::vector<std::string> advice;
    for (const WorksheetAdvice& each : entry.advice) {
        advice.push_back(
            fmt::format("When <code>{}</code>: {}", html::text(each.when.text()), html::text(each.say)));
    }
    return html::row("About", html::text(entry.about)) + html::row("Inputs", html::list(inputs)) +
           html::row("Results", html::list(results)) + html::row("Holds when", html::list(guards)) +
           html::row("Advice", html::list(advice)) +
           back_row(book, "Used by", "worksheet", "used by", index) +
           back_row(book, "In rules", "worksheet", "in rules", index);
}

std::string rows_of(const Book& book, const Caution& entry, Index index) {
    return html::row("Hurts", html::text(entry.hurts)) + html::row("Avoid", html::text(entry.avoid)) +
           back_row(book, "Shown before", "caution", "carried by", index) +
           back_row(book, "In rules", "caution", "in rules", index);
}

std::string rows_of(const Book& book, const Deferral& entry, Index index) {
    return html::row("What is not ours to decide", html::text(entry.text)) +
           html::row("Whose it is", html::text(entry.to)) +
           html::row("When", condition(book.knowledge, entry.when)) +
           back_row(book, "In rules", "deferral", "in rules", index);
}

std::string rows_of(const Book& book, const Stop& entry, Index index) {
    return html::row("Stop", html::text(entry.text)) +
           back_row(book, "Ordered by rules", "stop", "in rules", index);
}

std::string rows_of(const Book& book, const RigField& entry, Index index) {
    std::vector<std::string> choices;
    for (const Word& choice : entry.choices) {
        choices.push_back(fmt::format("{} <code>{}</code>", html::text(choice.text), choice.id));
    }
    return html::row("Asks", html::text(entry.ask)) + html::row("Choices", html::list(choices)) +
           html::row("Unit", entry.unit ? html::text(entry.unit->name) : "") +
           html::row("From least to most", range_text(entry)) +
           html::row("Taken as, until it is known", assumed_text(entry)) +
           back_row(book, "Used by worksheets", "rig_field", "used by", index) +
           back_row(book, "In rules", "rig_field", "in rules", index);
}

std::string rows_of(const Book&, const History& entry, Index) {
    return html::row("Share of comebacks", fmt::format("{:.0f} of 100", 100 * entry.share));
}

std::string rows_of(const Book& book, const Need&, Index index) {
    return back_row(book, "Needed by", "need", "needed by", index);
}

std::string rows_of(const Book& book, const Part&, Index index) {
    return back_row(book, "Causes", "part", "causes", index) +
           back_row(book, "Findings", "part", "findings", index);
}

std::string rows_of(const Book&, const Setting& entry, Index) {
    return html::row("Value", fmt::format("{:.4g}", entry.value));
}

std::string rows_of(const Book& book, const Source& entry, Index index) {
    static const char* const kinds[] = {"Published", "Common practice", "From memory", "Invented"};
    return html::row("Kind", kinds[static_cast<std::size_t>(entry.kind)]) +
           html::row("Place in it", html::text(entry.where)) +
           back_row(book, "Cited by", "source", "cited by", index);
}

std::string more_words(const Source& entry) {
    return entry.where;
}

}  // namespace hardover::book

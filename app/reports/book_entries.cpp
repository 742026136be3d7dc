// The kinds that are worked with: complaints, findings, checks, causes, remedies, rules.
#include "app/reports/book_entries.hpp"

#include <fmt/format.h>

#include "app/reports/html.hpp"

namespace hardover::book {

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

std::vector<std::string> texts(const std::vector<std::string>& plain) {
    std::vector<std::string> safe;
    for (const std::string& text : plain) safe.push_back(html::text(text));
    return safe;
}

template <typename E>
std::vector<std::string> links(const std::string& kind, const std::vector<E>& entries,
                               const std::vector<Index>& chosen) {
    std::vector<std::string> made;
    for (const Index index : chosen) made.push_back(link(kind, at(entries, index)));
    return made;
}

template <typename E>
std::string link_or_nothing(const std::string& kind, const std::vector<E>& entries, Index index) {
    return index == none ? "" : link(kind, at(entries, index));
}

std::string minutes(double value) {
    return fmt::format("{:.3g}", value);
}

std::string back_row(const Book& book, const std::string& label, const std::string& kind,
                     const std::string& relation, Index index) {
    return html::row(label, html::list(book.backward.to(kind, relation, index)));
}

std::string cautions_row(const Book& book, const std::vector<Index>& cautions) {
    std::vector<std::string> items;
    for (const Index index : cautions) {
        const Caution& caution = at(book.knowledge.cautions, index);
        items.push_back(fmt::format("<span class=\"caution\">{}</span>: {} {}", link("caution", caution),
                                    html::text(caution.hurts), html::text(caution.avoid)));
    }
    return html::row("Cautions before the steps", html::list(items));
}

std::string readings_row(const Finding& finding) {
    std::vector<std::string> items;
    for (const Reading& reading : finding.readings) {
        items.push_back(fmt::format("{} <code>{}</code>", html::text(reading.text), reading.id));
    }
    return html::row("Readings, worst first", html::list(items, true));
}

std::string shows_row(const Book& book, const Cause& cause) {
    std::vector<std::string> items;
    for (const Shows& shows : cause.shows) {
        const Finding& finding = at(book.knowledge.findings, shows.finding);
        std::string readings;
        for (std::size_t r = 0; r + 1 < finding.readings.size(); ++r) {
            if (shows.how_often[r] <= 0) continue;
            readings += fmt::format("{}{} {:.0f} of 100", readings.empty() ? "" : "; ",
                                    html::text(finding.readings[r].text), 100 * shows.how_often[r]);
        }
        items.push_back(link("finding", finding) + ": " +
                        (readings.empty() ? "as on a sound boat" : readings));
    }
    return html::row("Shows", html::list(items));
}

std::string action_text(const Book& book, const Action& action) {
    const Knowledge& k = book.knowledge;
    switch (action.kind) {
        case Action::Kind::favour:
            return fmt::format("{} {} to 1: {}", action.by >= 1 ? "favours" : "speaks against",
                               fmt::format("{:.3g}", action.by >= 1 ? action.by : 1 / action.by),
                               link("cause", at(k.causes, action.target)));
        case Action::Kind::rule_out:
            return "rules out " + link("cause", at(k.causes, action.target));
        case Action::Kind::derive:
            return "derives <code>fact." + html::text(action.fact) + "</code>";
        case Action::Kind::run:
            return "works out " + link("worksheet", at(k.worksheets, action.target));
        case Action::Kind::ask:
            return "asks next: " + link("finding", at(k.findings, action.target));
        case Action::Kind::caution:
            return "warns: " + link("caution", at(k.cautions, action.target));
        case Action::Kind::defer:
            return "leaves to others: " + link("deferral", at(k.deferrals, action.target));
        case Action::Kind::stop:
            return "stops the boat: " + link("stop", at(k.stops, action.target));
    }
    return "";
}

}  // namespace

std::string source_row(const Book& book, const Entry& entry) {
    return html::row("Source", html::list(links("source", book.knowledge.sources, entry.sources)));
}

std::string rows_of(const Book& book, const Complaint& entry, Index) {
    std::vector<std::string> says;
    for (const auto& [finding, reading] : entry.says) {
        const Finding& told = at(book.knowledge.findings, finding);
        says.push_back(link("finding", told) + ": " +
                       html::text(told.readings[static_cast<std::size_t>(reading)].text));
    }
    return html::row("In the customer's words", html::list(texts(entry.words))) +
           html::row("Tells", html::list(says));
}

std::string rows_of(const Book& book, const Finding& entry, Index index) {
    std::string from;
    if (entry.from) from = link("worksheet", at(book.knowledge.worksheets, entry.from->worksheet));
    return html::row("Asks", html::text(entry.ask)) + html::row("Look", html::list(texts(entry.look), true)) +
           readings_row(entry) + html::row("Measured in", entry.unit ? html::text(entry.unit->name) : "") +
           html::row("Worked out by", from) +
           html::row("Got by", link_or_nothing("check", book.knowledge.checks, entry.check)) +
           html::row("Minutes", minutes(entry.minutes)) +
           html::row("Makes sense when", condition(book.knowledge, entry.possible_when)) +
           html::row("Part", link_or_nothing("part", book.knowledge.parts, entry.part)) +
           back_row(book, "Shown by", "finding", "shown by", index) +
           back_row(book, "Told by complaints", "finding", "told by", index) +
           back_row(book, "Feeds worksheets", "finding", "worked into", index) +
           back_row(book, "In rules", "finding", "in rules", index);
}

std::string rows_of(const Book& book, const Check& entry, Index index) {
    const Knowledge& k = book.knowledge;
    return html::row("Why", html::text(entry.why)) + cautions_row(book, entry.cautions) +
           html::row("Steps", html::list(texts(entry.steps), true)) +
           html::row("Tools", html::list(texts(entry.tools))) +
           html::row("Needs", html::list(links("need", k.needs, entry.needs))) +
           html::row("Minutes to set up", minutes(entry.minutes)) +
           html::row("Gives", html::list(links("finding", k.findings, entry.gets))) +
           back_row(book, "Proves", "check", "proves", index);
}

std::string rows_of(const Book& book, const Cause& entry, Index index) {
    const Knowledge& k = book.knowledge;
    std::vector<std::string> odds;
    for (std::size_t h = 0; h < entry.odds.size(); ++h) {
        odds.push_back(
            fmt::format("{}: {:.3g} of 1000 comebacks", link("history", k.histories[h]), entry.odds[h]));
    }
    return html::row("About", html::text(entry.about)) +
           html::row("Part", link_or_nothing("part", k.parts, entry.part)) +
           html::row("Possible when", condition(k, entry.possible_when)) + shows_row(book, entry) +
           html::row("Proved by", link_or_nothing("check", k.checks, entry.proof)) +
           html::row("Proved when", condition(k, entry.proved_when)) +
           html::row("Remedy", link_or_nothing("remedy", k.remedies, entry.remedy)) +
           html::row("Odds", html::list(odds)) + back_row(book, "In rules", "cause", "in rules", index);
}

std::string rows_of(const Book& book, const SameCure& entry, Index) {
    return html::row("Causes that nothing tells apart",
                     html::list(links("cause", book.knowledge.causes, entry.causes))) +
           html::row("Why it does not matter", html::text(entry.why));
}

std::string rows_of(const Book& book, const Remedy& entry, Index index) {
    std::vector<std::string> parts;
    for (const PricedPart& part : entry.parts) {
        parts.push_back(fmt::format("{}, about {:.0f}", html::text(part.part), part.price));
    }
    return cautions_row(book, entry.cautions) + html::row("Steps", html::list(texts(entry.steps), true)) +
           html::row("Tools", html::list(texts(entry.tools))) +
           html::row("Parts and prices", html::list(parts)) +
           html::row("Figures", html::list(texts(entry.figures))) +
           html::row("Worksheets",
                     html::list(links("worksheet", book.knowledge.worksheets, entry.worksheets))) +
           html::row("Checks after", html::list(texts(entry.after))) +
           html::row("Minutes", minutes(entry.minutes)) + back_row(book, "Cures", "remedy", "cures", index);
}

std::string rows_of(const Book& book, const Rule& entry, Index) {
    std::vector<std::string> then;
    for (const Action& action : entry.then) then.push_back(action_text(book, action));
    return html::row("When", condition(book.knowledge, entry.when)) + html::row("Then", html::list(then)) +
           html::row("Why", html::text(entry.why));
}

std::string more_words(const Complaint& entry) {
    std::string words;
    for (const std::string& word : entry.words) words += word + " ";
    return words;
}

std::string more_words(const Finding& entry) {
    return entry.ask;
}

std::string more_words(const Cause& entry) {
    return entry.about;
}

std::string more_words(const Rule& entry) {
    return entry.why;
}

}  // namespace hardover::book

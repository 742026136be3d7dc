// The kinds that are worked with: complaints, findings, checks, causes, remedies, rules.
#include <fmt/format.h>

#include "app/jobs/entry_parts.hpp"

namespace hardover::jobs_detail {

namespace {

std::string minutes(double value) {
    return fmt::format("{:.3g}", value);
}

Rows cautions_row(const Book& book, const std::vector<Index>& cautions) {
    Items items;
    for (const Index index : cautions) {
        const Caution& caution = at(book.knowledge.cautions, index);
        EntryText name = link_to("caution", caution);
        for (EntryPiece& piece : name.pieces) piece.warning = true;
        items.push_back(name + (": " + caution.hurts + " " + caution.avoid));
    }
    return list_row("Cautions before the steps", items);
}

// The texts of readings are written in US units; what is measured otherwise has its limit beside it.
Rows readings_row(const Finding& finding, UnitSystem units) {
    Items items;
    for (const Reading& reading : finding.readings) {
        std::string text = reading.text + " ";
        if (units == UnitSystem::metric && reading.limit && finding.unit) {
            text += fmt::format("({} {}) ", finding.limits_are_lower_ends ? "above" : "below",
                                show(*reading.limit, *finding.unit, units));
        }
        items.push_back(EntryText(text) + code(reading.id));
    }
    return list_row("Readings, worst first", items, true);
}

Rows shows_row(const Book& book, const Cause& cause) {
    Items items;
    for (const Shows& shows : cause.shows) {
        const Finding& finding = at(book.knowledge.findings, shows.finding);
        std::string readings;
        for (std::size_t r = 0; r + 1 < finding.readings.size(); ++r) {
            if (shows.how_often[r] <= 0) continue;
            readings += fmt::format("{}{} ({:.0f} of 100)", readings.empty() ? "" : "; ",
                                    finding.readings[r].text, 100 * shows.how_often[r]);
        }
        items.push_back(link_to("finding", finding) + ": " +
                        EntryText(readings.empty() ? "as on a sound boat" : readings));
    }
    return list_row("Shows", items);
}

EntryText action_text(const Book& book, const Action& action) {
    const Knowledge& k = book.knowledge;
    switch (action.kind) {
        case Action::Kind::favour:
            return fmt::format("{} {:.3g} to 1: ", action.by >= 1 ? "favours" : "speaks against",
                               action.by >= 1 ? action.by : 1 / action.by) +
                   link_to("cause", at(k.causes, action.target));
        case Action::Kind::rule_out:
            return "rules out " + link_to("cause", at(k.causes, action.target));
        case Action::Kind::derive:
            return "derives " + code("fact." + action.fact);
        case Action::Kind::run:
            return "works out " + link_to("worksheet", at(k.worksheets, action.target));
        case Action::Kind::ask:
            return "asks next: " + link_to("finding", at(k.findings, action.target));
        case Action::Kind::caution:
            return "warns: " + link_to("caution", at(k.cautions, action.target));
        case Action::Kind::defer:
            return "leaves to others: " + link_to("deferral", at(k.deferrals, action.target));
        case Action::Kind::stop:
            return "stops the boat: " + link_to("stop", at(k.stops, action.target));
    }
    return "";
}

// What a cause comes from, each with the source of its own where it has one.
Items origins(const Book& book, const Cause& cause) {
    Items rows;
    for (const Index origin : cause.comes_from) {
        EntryText row = link_to("cause", at(book.knowledge.causes, origin));
        const std::vector<Index> sources = sources_of_origin(cause, origin);
        for (std::size_t i = 0; i < sources.size(); ++i)
            row = row + (i == 0 ? ": " : "; ") + link_to("source", at(book.knowledge.sources, sources[i]));
        rows.push_back(row);
    }
    return rows;
}

}  // namespace

Rows source_row(const Book& book, const Entry& entry) {
    return list_row("Source", links("source", book.knowledge.sources, entry.sources));
}

Rows rows_of(const Book& book, const Complaint& entry, Index) {
    Items says;
    for (const auto& [finding, reading] : entry.says) {
        const Finding& told = at(book.knowledge.findings, finding);
        says.push_back(link_to("finding", told) + ": " +
                       EntryText(told.readings[static_cast<std::size_t>(reading)].text));
    }
    return list_row("In the customer's words", texts(entry.words)) + list_row("Tells", says);
}

Rows rows_of(const Book& book, const Finding& entry, Index index) {
    EntryText from;
    if (entry.from) from = link_to("worksheet", at(book.knowledge.worksheets, entry.from->worksheet));
    return row("Asks", EntryText(entry.ask)) + list_row("Look", texts(entry.look), true) +
           readings_row(entry, book.units) +
           row("Measured in", entry.unit ? EntryText(shown_unit(*entry.unit, book.units).name) : "") +
           row("Worked out by", from) +
           row("Got by", link_or_nothing("check", book.knowledge.checks, entry.check)) +
           list_row("Needs", links("need", book.knowledge.needs, entry.needs)) +
           row("Minutes", minutes(entry.minutes)) +
           row("Makes sense when", condition_text(book.knowledge, entry.possible_when)) +
           row("Part", link_or_nothing("part", book.knowledge.parts, entry.part)) +
           back_row(book, "Shown by", "finding", "shown by", index) +
           back_row(book, "Told by complaints", "finding", "told by", index) +
           back_row(book, "Feeds worksheets", "finding", "worked into", index) +
           back_row(book, "In rules", "finding", "in rules", index);
}

Rows rows_of(const Book& book, const Check& entry, Index index) {
    const Knowledge& k = book.knowledge;
    return row("Why", EntryText(entry.why)) + cautions_row(book, entry.cautions) +
           list_row("Steps", texts(entry.steps), true) + list_row("Tools", texts(entry.tools)) +
           list_row("Needs", links("need", k.needs, entry.needs)) +
           row("Minutes to set up", minutes(entry.minutes)) +
           list_row("Gives", links("finding", k.findings, entry.gets)) +
           back_row(book, "Proves", "check", "proves", index);
}

Rows rows_of(const Book& book, const Cause& entry, Index index) {
    const Knowledge& k = book.knowledge;
    Items odds;
    for (std::size_t h = 0; h < entry.odds.size(); ++h) {
        odds.push_back(link_to("history", k.histories[h]) +
                       fmt::format(": {:.3g} of 1000 comebacks", entry.odds[h]));
    }
    return row("About", EntryText(entry.about)) + row("Part", link_or_nothing("part", k.parts, entry.part)) +
           row("Possible when", condition_text(k, entry.possible_when)) +
           row("Proved by", link_or_nothing("check", k.checks, entry.proof)) +
           row("Proved when", condition_text(k, entry.proved_when)) +
           row("Remedy", link_or_nothing("remedy", k.remedies, entry.remedy)) + shows_row(book, entry) +
           list_row("Comes from, which is put right first", origins(book, entry)) +
           back_row(book, "Brings about", "cause", "brings about", index) + list_row("Odds", odds) +
           back_row(book, "Also put right by", "cause", "also cured by", index) +
           back_row(book, "In rules", "cause", "in rules", index);
}

Rows rows_of(const Book& book, const SameCure& entry, Index) {
    return list_row("Causes that nothing tells apart", links("cause", book.knowledge.causes, entry.causes)) +
           row("Why it does not matter", EntryText(entry.why));
}

Rows rows_of(const Book& book, const Remedy& entry, Index index) {
    Items parts;
    for (const PricedPart& part : entry.parts) {
        parts.push_back(fmt::format("{}, about {:.0f}", part.part, part.price));
    }
    return cautions_row(book, entry.cautions) + list_row("Steps", texts(entry.steps), true) +
           list_row("Tools", texts(entry.tools)) + list_row("Parts and prices", parts) +
           list_row("Figures", texts(entry.figures)) +
           list_row("Worksheets", links("worksheet", book.knowledge.worksheets, entry.worksheets)) +
           list_row("Checks after", texts(entry.after)) + row("Minutes", minutes(entry.minutes)) +
           back_row(book, "Cures", "remedy", "cures", index) +
           list_row("Its work also cures", links("cause", book.knowledge.causes, entry.also_cures));
}

Rows rows_of(const Book& book, const Rule& entry, Index) {
    Items then;
    for (const Action& action : entry.then) then.push_back(action_text(book, action));
    return row("When", condition_text(book.knowledge, entry.when)) + list_row("Then", then) +
           row("Why", EntryText(entry.why));
}

}  // namespace hardover::jobs_detail

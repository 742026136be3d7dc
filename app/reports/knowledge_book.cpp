#include "app/reports/knowledge_book.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "app/jobs/word_roots.hpp"
#include "app/reports/book_links.hpp"
#include "app/reports/book_script.hpp"
#include "app/reports/html.hpp"

namespace hardover {

namespace {

using namespace book;

constexpr const char* search_form =
    "<form id=\"form\" class=\"search\" action=\"index.html\">\n"
    "<label for=\"search\">Search complaints, causes, checks, remedies and all the rest, in any "
    "words</label>\n"
    "<input id=\"search\" name=\"find\" type=\"search\" autocomplete=\"off\">\n</form>\n";

// Puts the pages together, entry by entry.
class Pages {
  public:
    Pages(const Knowledge& knowledge, UnitSystem units)
        : knowledge_(knowledge), links_(knowledge), units_(units) {}

    void open(const std::string& file, const std::string& name, const std::string& about) {
        pages_.push_back({file, name, 0, html::paragraph(html::text(about))});
    }

    template <typename E>
    void add(const std::string& kind, const std::string& heading, const std::vector<E>& entries) {
        if (entries.empty()) return;
        BookPage& page = pages_.back();
        page.html += fmt::format("<h2>{}</h2>\n", html::text(heading));
        page.html += contents_of(kind, entries);
        for (std::size_t i = 0; i < entries.size(); ++i) {
            const E& entry = entries[i];
            const std::string name = entry.name.empty() ? entry.id : entry.name;
            page.html +=
                fmt::format("<article id=\"{0}-{1}\">\n<h3>{2}</h3>\n<code>{1}</code>\n{3}</article>\n", kind,
                            entry.id, html::text(name),
                            rows_html(entry_rows(knowledge_, links_, kind, static_cast<Index>(i), units_)));
            search_.push_back(
                {kind_word(kind), address({kind, entry.id}), entry.id, name, more_words(entry)});
        }
        page.entries += entries.size();
    }

    void add_items(const std::vector<study::AuthoredItem>& items) {
        BookPage& page = pages_.back();
        for (const study::AuthoredItem& item : items) {
            page.html +=
                fmt::format("<article id=\"item-{0}\">\n<h3>{1}</h3>\n<code>{0}</code>\n{2}</article>\n",
                            item.id, html::text(item.ask), rows_html(rows_of(item)));
            search_.push_back({"item", "quiz.html#item-" + item.id, item.id, item.ask, item.reason});
        }
        page.entries += items.size();
    }

    std::vector<BookPage> finished() {
        std::vector<html::PageLink> links{{"index.html", "Search"}};
        for (const BookPage& page : pages_) links.push_back({page.file, page.name});
        std::string contents;
        std::size_t entries = 0;
        for (BookPage& page : pages_) {
            contents += fmt::format("<li>{} ({})</li>\n", html::link(page.file, page.name), page.entries);
            entries += page.entries;
            page.html = html::page(page.name, links, page.file, page.html, "", "index.html");
        }
        const std::string body = std::string(search_form) +
                                 "<p id=\"count\" role=\"status\"></p>\n<div id=\"found\"></div>\n"
                                 "<noscript><p>The search needs scripts; the pages do not.</p></noscript>\n"
                                 "<h2>Contents</h2>\n<ul>\n" +
                                 contents + "</ul>\n";
        std::vector<BookPage> all{{"index.html", "Search", entries,
                                   html::page("What is known", links, "index.html", body,
                                              "const entries = " + in_script(search_) + ";\nconst words = " +
                                                  in_script(words_of_search()) + ";" + search_script)}};
        std::move(pages_.begin(), pages_.end(), std::back_inserter(all));
        return all;
    }

  private:
    // The names of all entries as links; those at a part of the system under the part.
    template <typename E>
    std::string contents_of(const std::string& kind, const std::vector<E>& entries) const {
        std::vector<std::string> by_part(knowledge_.parts.size() + 1);  // the last for those at no part
        for (const E& entry : entries) {
            std::size_t part = knowledge_.parts.size();
            if constexpr (requires { entry.part; }) {
                if (entry.part != none) part = static_cast<std::size_t>(entry.part);
            }
            by_part[part] += "<li>" + book::link(kind, entry) + "</li>\n";
        }
        std::string contents;
        for (std::size_t part = 0; part < by_part.size(); ++part) {
            if (by_part[part].empty()) continue;
            if (part < knowledge_.parts.size())
                contents += "<h3 class=\"part\">" + html::text(knowledge_.parts[part].name) + "</h3>\n";
            contents += "<ul class=\"contents\">\n" + by_part[part] + "</ul>\n";
        }
        return contents;
    }

    std::vector<EntryRow> rows_of(const study::AuthoredItem& item) const {
        std::vector<EntryText> about, wrong, sources;
        for (const Index complaint : item.complaints)
            about.push_back(link_to("complaint", knowledge_.complaints[static_cast<std::size_t>(complaint)]));
        about.push_back(link_to("part", knowledge_.parts[static_cast<std::size_t>(item.part)]));
        for (const study::Option& option : item.options)
            if (!option.right) wrong.push_back(EntryText(option.text + ": " + option.why));
        for (const Index source : item.sources)
            sources.push_back(link_to("source", knowledge_.sources[static_cast<std::size_t>(source)]));
        return {{"Form", {EntryText(study::form_name(item.form))}},
                {"About", about, true},
                {"Right", {EntryText(item.options.front().text)}},
                {"Wrong, and why", wrong, true},
                {"Reason", {EntryText(item.reason)}},
                {"Source", sources, true}};
    }

    static std::string kind_word(std::string kind) {
        for (char& c : kind) c = c == '_' ? ' ' : c;
        return kind;
    }

    nlohmann::json words_of_search() const {
        nlohmann::json alike = nlohmann::json::array();
        for (const SameWords& same : knowledge_.same_words) alike.push_back(same.words);
        return {{"alike", alike}, {"small", words_that_tell_nothing()}};
    }

    // JSON that cannot end the script it stands in.
    static std::string in_script(const nlohmann::json& data) {
        std::string text = data.dump();
        for (std::size_t at = text.find('<'); at != std::string::npos; at = text.find('<', at)) {
            text.replace(at, 1, "\\u003c");
        }
        return text;
    }

    const Knowledge& knowledge_;
    EntryLinks links_;
    UnitSystem units_;
    std::vector<BookPage> pages_;
    nlohmann::json search_ = nlohmann::json::array();
};

}  // namespace

std::vector<BookPage> knowledge_book(const Knowledge& knowledge,
                                     const std::vector<study::AuthoredItem>& items, UnitSystem units) {
    Pages pages(knowledge, units);
    pages.open("complaints.html", "Complaints", "What the customer says: the way in.");
    pages.add("complaint", "Complaints", knowledge.complaints);
    pages.open("findings.html", "Findings", "What can be seen, felt or measured, and what it may read.");
    pages.add("finding", "Findings", knowledge.findings);
    pages.open("checks.html", "Checks", "How findings are got. Read the cautions before the steps.");
    pages.add("check", "Checks", knowledge.checks);
    pages.open("causes.html", "Causes", "What may be wrong, what it shows, its proof and its remedy.");
    pages.add("cause", "Causes", knowledge.causes);
    pages.add("same_cure", "Causes with the same cure", knowledge.same_cures);
    pages.open("remedies.html", "Remedies", "How causes are put right. Read the cautions before the steps.");
    pages.add("remedy", "Remedies", knowledge.remedies);
    pages.open("rules.html", "Rules", "What follows from several answers together.");
    pages.add("rule", "Rules", knowledge.rules);
    pages.open("worksheets.html", "Worksheets", "What can be worked out, with its formulas.");
    pages.add("worksheet", "Worksheets", knowledge.worksheets);
    pages.open("cautions.html", "Cautions",
               "What can hurt whom, what is for others to decide, and when a boat is not run.");
    pages.add("caution", "Cautions", knowledge.cautions);
    pages.add("stop", "Stops", knowledge.stops);
    pages.add("deferral", "Left to others", knowledge.deferrals);
    pages.open("rig.html", "The rig",
               "How a boat's steering can be built, and what else the reasoning needs.");
    pages.add("rig_field", "Fields of the rig", knowledge.rig_fields);
    pages.add("history", "Histories", knowledge.histories);
    pages.add("need", "What checks need", knowledge.needs);
    pages.add("part", "Parts", knowledge.parts);
    pages.add("setting", "Numbers of the reasoning", knowledge.setting_entries);
    pages.open("words.html", "Words",
               "Words that customers and the trade use for the same thing. The search takes them as one.");
    pages.add("same_words", "Same words", knowledge.same_words);
    pages.open("sources.html", "Sources", "Where it is written, or who says so.");
    pages.add("source", "Sources", knowledge.sources);
    if (!items.empty()) {
        pages.open("quiz.html", "Questions",
                   "Quiz items written by hand. The quiz makes others from the rest.");
        pages.add_items(items);
    }
    return pages.finished();
}

}  // namespace hardover

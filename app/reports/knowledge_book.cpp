#include "app/reports/knowledge_book.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "app/reports/book_links.hpp"
#include "app/reports/html.hpp"

namespace hardover {

namespace {

using namespace book;

// Looks through the names, ids and words of all entries; works from disk. Rows: kind, address, id, name, more
// words.
constexpr const char* search_script = R"(
const box = document.getElementById('search'), found = document.getElementById('found'),
  count = document.getElementById('count'), most = 80;
function look() {
  const words = box.value.toLowerCase().split(/\s+/).filter(w => w);
  found.replaceChildren();
  if (!words.length) { count.textContent = ''; return; }
  const rank = e => {
    const name = (e[3] + ' ' + e[2]).toLowerCase(), all = name + ' ' + e[4].toLowerCase();
    if (!words.every(w => all.includes(w))) return 0;
    return words.every(w => name.includes(w)) ? 2 : 1;
  };
  const hits = entries.map(e => [rank(e), e]).filter(h => h[0]).sort((a, b) => b[0] - a[0]);
  count.textContent = hits.length + (hits.length === 1 ? ' entry' : ' entries')
    + (hits.length > most ? ', the first ' + most + ' shown' : '');
  for (const [, e] of hits.slice(0, most)) {
    const item = document.createElement('p'), link = document.createElement('a'), kind = document.createElement('span');
    link.href = e[1]; link.textContent = e[3]; kind.textContent = ' ' + e[0];
    item.append(link, kind); found.append(item);
  }
}
box.addEventListener('input', look);
box.value = new URLSearchParams(location.search).get('find') || '';
look();
)";

constexpr const char* search_form =
    "<form class=\"search\" action=\"index.html\">\n"
    "<label for=\"search\">Search complaints, causes, checks, remedies and all the rest</label>\n"
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
        std::string contents;
        for (const E& entry : entries) contents += "<li>" + book::link(kind, entry) + "</li>\n";
        page.html += "<ul class=\"contents\">\n" + contents + "</ul>\n";
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
            page.html = html::page(page.name, links, page.file, page.html);
        }
        const std::string body = std::string(search_form) +
                                 "<p id=\"count\" aria-live=\"polite\"></p>\n<div id=\"found\"></div>\n"
                                 "<noscript><p>The search needs scripts; the pages do not.</p></noscript>\n"
                                 "<h2>Contents</h2>\n<ul>\n" +
                                 contents + "</ul>\n";
        std::vector<BookPage> all{{"index.html", "Search", entries,
                                   html::page("What is known", links, "index.html", body,
                                              "const entries = " + script_data() + ";" + search_script)}};
        std::move(pages_.begin(), pages_.end(), std::back_inserter(all));
        return all;
    }

  private:
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

    // JSON that cannot end the script it stands in.
    std::string script_data() const {
        std::string text = search_.dump();
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

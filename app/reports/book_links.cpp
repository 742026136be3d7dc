#include "app/reports/book_links.hpp"

#include <fmt/format.h>

#include "app/reports/html.hpp"

namespace hardover::book {

namespace {

// The page each kind stands on.
const char* page_of(const std::string& kind) {
    if (kind == "complaint") return "complaints.html";
    if (kind == "same_words") return "words.html";
    if (kind == "finding") return "findings.html";
    if (kind == "check") return "checks.html";
    if (kind == "cause" || kind == "same_cure") return "causes.html";
    if (kind == "remedy") return "remedies.html";
    if (kind == "rule") return "rules.html";
    if (kind == "worksheet") return "worksheets.html";
    if (kind == "caution" || kind == "deferral" || kind == "stop") return "cautions.html";
    if (kind == "source") return "sources.html";
    return "rig.html";  // rig_field, history, need, part, setting
}

// Pieces of the rule language that follow each other share one <code>.
std::string text_html(const EntryText& text) {
    std::string html;
    bool in_code = false;
    for (const EntryPiece& piece : text.pieces) {
        if (piece.code != in_code) html += piece.code ? "<code>" : "</code>";
        in_code = piece.code;
        const std::string shown =
            piece.to.kind.empty() ? html::text(piece.text) : html::link(address(piece.to), piece.text);
        html += piece.warning ? "<span class=\"caution\">" + shown + "</span>" : shown;
    }
    return html + (in_code ? "</code>" : "");
}

}  // namespace

std::string address(const EntryKey& key) {
    return fmt::format("{}#{}-{}", page_of(key.kind), key.kind, key.id);
}

std::string link(const std::string& kind, const Entry& entry) {
    return html::link(address({kind, entry.id}), entry.name.empty() ? entry.id : entry.name);
}

std::string rows_html(const std::vector<EntryRow>& rows) {
    std::string all;
    for (const EntryRow& row : rows) {
        std::vector<std::string> items;
        for (const EntryText& item : row.items) items.push_back(text_html(item));
        all += html::row(row.label, row.list ? html::list(items, row.numbered) : items.front());
    }
    return html::rows(all);
}

std::string more_words(const Complaint& entry) {
    std::string words;
    for (const std::string& word : entry.words) words += word + " ";
    return words;
}

std::string more_words(const SameWords& entry) {
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

std::string more_words(const Source& entry) {
    return entry.where;
}

}  // namespace hardover::book

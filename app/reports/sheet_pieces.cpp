// What stands on the job sheet, from top to bottom: stops first, then what the customer said, the cause, the
// work, what was found, what to check, cautions, what is not ours to decide, the rig with its sketch,
// signatures.
#include <algorithm>

#include "app/reports/sheet_composer.hpp"
#include "app/reports/sheet_pages.hpp"

namespace hardover::reports_detail {

using typeset::Block;
using typeset::bold;
using typeset::plain;
using typeset::shortened;

namespace {

std::string joined(const std::vector<std::string>& texts, const std::string& between) {
    std::string all;
    for (const std::string& text : texts) all += (all.empty() ? "" : between) + text;
    return all;
}

void box(cairo_t* cairo, double x, double y, double width, double height, double line, double grey) {
    cairo_rectangle(cairo, x, y, width, height);
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_fill_preserve(cairo);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, line);
    cairo_stroke(cairo);
}

// What a person wrote, as long as there is room for.
std::string written(const Composer& page, const std::string& text) {
    return plain(shortened(text, page.room().letters));
}

void add_head(Composer& page, const JobSheet& sheet) {
    const double half = page.width() / 2;
    const bool named = !sheet.shop.empty();
    const Block shop = page.set(bold(named ? shortened(sheet.shop, 120) : "Shop"), half, named ? 15 : 9);
    const Block title =
        page.set(bold("Job sheet " + std::to_string(sheet.number)), half, 15, PANGO_ALIGN_RIGHT);
    const Block day = page.set(plain(sheet.day), half, 0, PANGO_ALIGN_RIGHT);
    const Block boat = page.set(bold(shortened(sheet.boat.empty() ? "Boat not named" : sheet.boat, 120)),
                                page.width() - 150, 13);
    const Block state = page.set(bold(sheet.state), 130, 0, PANGO_ALIGN_CENTER);
    const double top = std::max(shop.height(), title.height() + day.height()) + 5;
    const double width = page.width();
    page.piece({0, top + 8 + std::max(boat.height(), 18.0), true, [=](cairo_t* cairo, double x, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    shop.draw(cairo, x, y);
                    title.draw(cairo, x + width - half, y);
                    day.draw(cairo, x + width - half, y + title.height());
                    cairo_set_line_width(cairo, 1.4);
                    cairo_move_to(cairo, x, y + top);
                    cairo_line_to(cairo, x + width, y + top);
                    if (!named) {
                        cairo_move_to(cairo, x + 26, y + top - 14);
                        cairo_line_to(cairo, x + half - 10, y + top - 14);
                    }
                    cairo_stroke(cairo);
                    boat.draw(cairo, x, y + top + 8);
                    box(cairo, x + width - 130, y + top + 8, 130, 17, 0.8, 1);
                    state.draw(cairo, x + width - 130, y + top + 8 + (17 - state.height()) / 2);
                }});
}

void add_stops(Composer& page, const JobSheet& sheet) {
    if (sheet.stops.empty()) return;
    constexpr double label = 62;
    constexpr double pad = 6;
    std::string texts;
    for (const SheetNote& stop : sheet.stops) {
        texts += (texts.empty() ? "" : "\n") + bold(stop.name) + ". " + plain(stop.text);
    }
    const Block text = page.set(texts, page.width() - label - 2 * pad, page.room().size + 0.5);
    const Block stop =
        page.set("<span foreground=\"white\">" + bold("STOP") + "</span>", label, 15, PANGO_ALIGN_CENTER);
    const double height = std::max(text.height(), stop.height()) + 2 * pad;
    const double width = page.width();
    page.piece({8, height, false, [=](cairo_t* cairo, double x, double y) {
                    box(cairo, x, y, width, height, 2, 1);
                    box(cairo, x, y, label, height, 2, 0);
                    stop.draw(cairo, x, y + (height - stop.height()) / 2);
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    text.draw(cairo, x + label + pad, y + pad);
                }});
}

void add_complaint(Composer& page, const JobSheet& sheet) {
    page.section("Complaint", sheet.opened.empty() ? "" : "opened " + sheet.opened);
    if (!sheet.words.empty()) page.paragraph("“" + written(page, sheet.words) + "”");
    std::string line = plain(joined(sheet.complaints, "; "));
    if (!sheet.history.empty()) line += (line.empty() ? "" : ". ") + plain("History: " + sheet.history);
    page.paragraph(line.empty() ? "None recorded." : line + ".");
}

void add_cause(Composer& page, const std::string& heading, const SheetCause& cause) {
    constexpr double pad = 6;
    std::vector<std::string> lines;
    if (!cause.proof.empty()) lines.push_back(bold("Proof: ") + plain(cause.proof));
    if (!cause.speaks_for.empty())
        lines.push_back(bold("For it: ") + plain(joined(cause.speaks_for, "; ") + "."));
    if (!cause.speaks_against.empty())
        lines.push_back(bold("Against it: ") + plain(joined(cause.speaks_against, "; ") + "."));
    if (!cause.also_possible.empty())
        lines.push_back(bold("Also possible: ") + plain(joined(cause.also_possible, "; ") + "."));
    if (!cause.note.empty()) lines.push_back(bold("Note: ") + written(page, cause.note));
    const double inner = page.width() - Composer::gutter - pad;
    const Block label = page.set(bold(heading), Composer::gutter - pad);
    const Block name = page.set(bold(cause.name), inner * 0.66, page.room().size + 3);
    const Block certainty = page.set(bold(cause.certainty), inner * 0.34 - pad, 0, PANGO_ALIGN_RIGHT);
    const Block text = page.set(joined(lines, "\n"), inner - pad);
    const double first = std::max(name.height(), certainty.height());
    const double height = first + (lines.empty() ? 0 : text.height() + 3) + 2 * pad;
    const double width = page.width();
    const bool more = !lines.empty();
    page.piece({8, height, false, [=](cairo_t* cairo, double x, double y) {
                    box(cairo, x, y, width, height, 1.2, 0.94);
                    label.draw(cairo, x + pad, y + pad + 2);
                    name.draw(cairo, x + Composer::gutter, y + pad);
                    certainty.draw(cairo, x + width - inner * 0.34, y + pad + 2);
                    if (more) text.draw(cairo, x + Composer::gutter, y + pad + first + 3);
                }});
}

void add_work(Composer& page, const JobSheet& sheet) {
    page.section("What was done");
    if (sheet.work.empty()) page.paragraph("No remedy has been tried yet.");
    std::size_t shown = 0;
    for (const SheetWork& work : sheet.work) {
        if (shown++ == page.room().lines) break;
        std::string text = bold(work.remedy) + plain(": " + work.outcome + " (" + work.day + ").");
        if (!work.parts.empty()) text += plain(" Parts foreseen: " + joined(work.parts, "; ") + ".");
        page.item(text);
    }
    page.more(sheet.work.size() - std::min(sheet.work.size(), page.room().lines));
}

void add_findings(Composer& page, const JobSheet& sheet) {
    if (sheet.findings.empty()) return;
    page.section("What was found", "in bold: not as on a sound boat");
    const double small = page.room().size - 1;
    page.row({{"<i>Looked at</i>", 0.27},
              {"<i>Found</i>", 0.29},
              {"<i>Sound boat</i>", 0.23},
              {"<i>How known</i>", 0.21}},
             small);
    std::size_t shown = 0;
    for (const SheetFinding& finding : sheet.findings) {
        if (shown++ == page.room().findings) break;
        page.rule();
        page.row({{plain(finding.name), 0.27},
                  {finding.off ? bold(finding.found) : plain(finding.found), 0.29},
                  {plain(finding.sound), 0.23},
                  {plain(finding.origin), 0.21}},
                 page.room().size - 0.5);
    }
    page.more(sheet.findings.size() - std::min(sheet.findings.size(), page.room().findings));
}

void add_list(Composer& page, const std::string& heading, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    page.section(heading);
    for (std::size_t i = 0; i < texts.size() && i < page.room().lines; ++i)
        page.item(written(page, texts[i]));
    page.more(texts.size() - std::min(texts.size(), page.room().lines));
}

void add_figures(Composer& page, const JobSheet& sheet) {
    if (sheet.figures.empty()) return;
    add_list(page, "Figures to go by", sheet.figures);
    if (!sheet.figure_sources.empty()) page.paragraph("<i>" + written(page, sheet.figure_sources) + "</i>");
}

void add_after(Composer& page, const JobSheet& sheet) {
    if (sheet.after.empty()) return;
    page.section("Checks after", "tick when done");
    const std::size_t shown = std::min(sheet.after.size(), 2 * page.room().lines);
    for (std::size_t i = 0; i < shown; ++i) page.to_tick(plain(sheet.after[i]));
    page.more(sheet.after.size() - shown);
}

// Cautions and deferrals: all of them, by name at least.
void add_notes(Composer& page, const std::string& heading, const std::string& note,
               const std::vector<SheetNote>& notes) {
    if (notes.empty()) return;
    page.section(heading, note);
    if (page.room().short_cautions) {
        std::vector<std::string> names;
        for (const SheetNote& one : notes) names.push_back(one.name);
        page.paragraph(plain(joined(names, "; ") + ". Their full words are in the record."));
        return;
    }
    for (const SheetNote& one : notes) page.item(bold(one.name) + plain(": " + one.text));
}

void add_sketch(Composer& page, const JobSheet& sheet, const typeset::Typesetter& typesetter) {
    const drawing::RigSketch sketch = *sheet.sketch;
    const double half = page.width() / 2;
    const double height = page.room().sketch;
    const double scale = std::min(typeset::scale_to_fit(sketch.behind, half, height),
                                  typeset::scale_to_fit(sketch.above, half, height));
    page.piece({6, height, true, [=, &typesetter](cairo_t* cairo, double x, double y) {
                    typeset::paint(cairo, typesetter, sketch.behind, {x, y}, half, height, scale);
                    typeset::paint(cairo, typesetter, sketch.above, {x + half, y}, half, height, scale);
                }});
}

void add_rig(Composer& page, const JobSheet& sheet, const typeset::Typesetter& typesetter) {
    page.section("Boat and rig");
    std::vector<std::string> lines;
    for (const SheetNote& field : sheet.rig) lines.push_back(bold(field.name) + plain(": " + field.text));
    page.paragraph(lines.empty() ? "Nothing is known of the rig." : joined(lines, "; ") + ".");
    if (sheet.sketch) add_sketch(page, sheet, typesetter);
    const Block note = page.set(plain(sheet.sketch_note), page.width(), page.room().size - 1.5);
    page.piece(
        {2, note.height(), false, [note](cairo_t* cairo, double x, double y) { note.draw(cairo, x, y); }});
}

void add_signatures(Composer& page, const JobSheet& sheet) {
    const double half = (page.width() - 24) / 2;
    const Block done = page.set("Technician, date", half, 7.5);
    const Block got =
        page.set(sheet.stops.empty() ? "Owner or skipper, date: boat and cautions received"
                                     : "Owner or skipper, date: I know the boat is not to be run",
                 half, 7.5);
    page.piece({12, 42, false, [=](cairo_t* cairo, double x, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    cairo_set_line_width(cairo, 0.7);
                    for (const double left : {x, x + half + 24}) {
                        cairo_move_to(cairo, left, y + 28);
                        cairo_line_to(cairo, left + half, y + 28);
                    }
                    cairo_stroke(cairo);
                    done.draw(cairo, x, y + 30);
                    got.draw(cairo, x + half + 24, y + 30);
                }});
}

}  // namespace

std::vector<Piece> sheet_pieces(const JobSheet& sheet, const typeset::Typesetter& typesetter, double width,
                                const Room& room) {
    Composer page(typesetter, width, room);
    add_head(page, sheet);
    add_stops(page, sheet);
    add_complaint(page, sheet);
    add_cause(page, "Cause", sheet.cause);
    for (const SheetCause& cause : sheet.further_causes) add_cause(page, "Further cause", cause);
    add_work(page, sheet);
    add_findings(page, sheet);
    // Cautions before the checks they belong to.
    add_notes(page, "Take care", "for whoever runs or works on this boat", sheet.cautions);
    add_after(page, sheet);
    add_notes(page, "Not ours to decide", "", sheet.deferrals);
    add_figures(page, sheet);
    add_rig(page, sheet, typesetter);
    add_list(page, "Assumed", sheet.assumptions);
    add_list(page, "Notes", sheet.notes);
    add_list(page, "Photos on file", sheet.photos);
    add_signatures(page, sheet);
    return std::move(page).pieces();
}

}  // namespace hardover::reports_detail

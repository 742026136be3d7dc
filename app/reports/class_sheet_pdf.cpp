#include "app/reports/class_sheet_pdf.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "app/classroom/set.hpp"
#include "app/records/whole_file.hpp"
#include "app/reports/paint_plot.hpp"
#include "app/reports/pdf_pages.hpp"
#include "app/reports/sheet_composer.hpp"
#include "app/reports/sheet_table.hpp"

namespace hardover {

using namespace reports_detail;
using classroom::FigurePlot;
using classroom::FigureTable;
using typeset::bold;
using typeset::plain;

namespace {

constexpr std::size_t most_pages = 3;
constexpr double plot_height = 205;  // points, of two side by side
constexpr double wide_plot_height = 140;
constexpr double between_plots = 16;
struct LaidOut {
    std::vector<Piece> pieces;
    std::vector<std::vector<PlacedPiece>> pages;
};
// Rows of learners, of items and of topics, from all to few.
struct Rows {
    std::size_t learners;
    std::size_t items;
    std::size_t topics;
};
constexpr Rows rooms[] = {{1000, 1000, 1000}, {60, 60, 60}, {45, 40, 30}, {40, 30, 24}, {40, 24, 20},
                          {40, 20, 16},       {40, 16, 12}, {36, 12, 10}, {30, 10, 8},  {20, 7, 6}};

void add_head(Composer& page, const ClassSheet& sheet) {
    const typeset::Block title = page.set(bold("Class sheet"), page.width() * 0.6, 15);
    const std::string until = sheet.day.empty() ? "" : "results up to " + sheet.day;
    const typeset::Block day = page.set(plain(until), page.width() * 0.4, 0, PANGO_ALIGN_RIGHT);
    const typeset::Block line = page.set(bold(sheet.page.headline), page.width(), 10.5);
    const double width = page.width();
    const double top = title.height() + 4;
    page.piece({0, top + 6 + line.height(), true, [=](cairo_t* cairo, double x, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    title.draw(cairo, x, y);
                    day.draw(cairo, x + width * 0.6, y + 6);
                    cairo_set_line_width(cairo, 1.4);
                    cairo_move_to(cairo, x, y + top);
                    cairo_line_to(cairo, x + width, y + top);
                    cairo_stroke(cairo);
                    line.draw(cairo, x, y + top + 6);
                }});
}

// Up to two side by side.
void add_plots(Composer& page, const typeset::Typesetter& typesetter, std::vector<FigurePlot> plots) {
    std::erase_if(plots, [](const FigurePlot& plot) { return !plot.empty.empty(); });
    if (plots.empty()) return;
    const bool one = plots.size() == 1;
    const double width = one ? page.width() : (page.width() - between_plots) / 2;
    const double height = one ? wide_plot_height : plot_height;
    page.piece({10, height, false,
                [&typesetter, plots, width, height](cairo_t* cairo, double x, double y) {
                    double left = x;
                    for (const FigurePlot& plot : plots) {
                        paint_plot(cairo, typesetter, plot.name, plot.plot, {left, y}, width, height);
                        left += width + between_plots;
                    }
                },
                true});
}

std::vector<Piece> pieces_of(const ClassSheet& sheet, const typeset::Typesetter& typesetter, Paper paper,
                             const Rows& rows) {
    const classroom::FiguresPage& figures = sheet.page;
    Composer page(typesetter, text_width(paper), Room{8.5});
    add_head(page, sheet);
    page.section("In short");
    for (const std::string& line : figures.summary) page.item(plain(line));
    if (!figures.to_look_at.empty()) page.section("To look at");
    for (const std::string& line : figures.to_look_at) page.item(plain(line));
    add_plots(page, typesetter, {figures.item_map, figures.abilities});
    add_plots(page, typesetter, {figures.over_best});
    add_table(page, figures.learners, rows.learners);
    add_table(page, figures.confusions, rows.topics);
    if (!figures.causes.rows.empty()) add_table(page, figures.causes, figures.causes.rows.size());
    add_table(page, figures.items, rows.items);
    add_table(page, figures.topics, rows.topics);
    return std::move(page).pieces();
}

// The most rows that the pages take: the first of `rooms` that fits, and then what goes in beside.
template <typename LayOut>
Rows rows_that_fit(const ClassSheet& sheet, const LayOut& laid_out) {
    const auto fits = [&](const Rows& rows) { return laid_out(rows).pages.size() <= most_pages; };
    Rows rows = *std::find_if(std::begin(rooms), std::prev(std::end(rooms)), fits);
    const auto grow = [&](std::size_t Rows::*count, std::size_t all) {
        std::size_t most = all;
        while (rows.*count < most) {
            Rows more = rows;
            more.*count = (rows.*count + most + 1) / 2;
            if (fits(more)) {
                rows = more;
            } else {
                most = more.*count - 1;
            }
        }
    };
    grow(&Rows::topics, sheet.page.topics.rows.size());
    grow(&Rows::items, sheet.page.items.rows.size());
    return rows;
}

}  // namespace

ClassSheet make_class_sheet(const classroom::ClassResults& results, const classroom::ClassFigures& figures,
                            bool with_names) {
    ClassSheet sheet{classroom::make_figures_page(figures, with_names), figures.name, ""};
    std::optional<int> last;
    for (const auto& item : results.items) last = std::max(last.value_or(item.origin.day), item.origin.day);
    for (const auto& boat : results.boats) last = std::max(last.value_or(boat.origin.day), boat.origin.day);
    if (last) sheet.day = classroom::day_text(*last);
    return sheet;
}

Result<PdfMade> write_class_sheet_pdf(const ClassSheet& sheet, const std::string& path, const PdfWish& wish) {
    const Result<typeset::Typesetter> typesetter = typeset::Typesetter::open(wish.fonts_folder);
    if (!typesetter) return typesetter.error();
    const auto laid_out = [&](const Rows& rows) {
        std::vector<Piece> pieces = pieces_of(sheet, typesetter.value(), wish.paper, rows);
        auto pages = on_pages(pieces, text_height(wish.paper));
        return LaidOut{std::move(pieces), std::move(pages)};
    };
    const auto [pieces, pages] = laid_out(rows_that_fit(sheet, laid_out));
    const std::string name = sheet.class_name.empty() ? "Class" : sheet.class_name;
    const PdfLook look{wish.paper, "Class sheet, " + name,
                       (sheet.day.empty() ? "2000-01-01" : sheet.day) + "T00:00:00Z",
                       typeset::shortened(name, 60) + (sheet.day.empty() ? "" : " · " + sheet.day)};
    const Result<std::string> bytes = pdf_of(pieces, pages, typesetter.value(), look);
    if (!bytes) return bytes.error();
    if (const auto written = write_whole_file(path, bytes.value()); !written) return written.error();
    return PdfMade{static_cast<int>(pages.size()), typesetter.value().remark()};
}

}  // namespace hardover

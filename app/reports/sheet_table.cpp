#include "app/reports/sheet_table.hpp"

#include <algorithm>

namespace hardover::reports_detail {

using classroom::FigureRow;
using classroom::FigureTable;
using typeset::bold;
using typeset::plain;

namespace {

constexpr double between = 6;           // columns, points
constexpr std::size_t kept_whole = 10;  // a table with so few rows is not torn apart

// A row of cells in columns; numbers to the right.
void add_cells(Composer& page, const FigureTable& table, const std::vector<std::string>& markup, double size,
               double before, bool with_next) {
    struct Placed {
        typeset::Block block;
        double x;
    };
    std::vector<Placed> cells;
    double x = 0;
    double height = 0;
    for (std::size_t c = 0; c < markup.size(); ++c) {
        const double width = table.columns[c].share * page.width();
        const bool right = table.columns[c].number;
        cells.push_back(
            {page.set(markup[c], width - between, size, right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT), x});
        height = std::max(height, cells.back().block.height());
        x += width;
    }
    page.piece({before, height, with_next, [cells](cairo_t* cairo, double left, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    for (const Placed& cell : cells) cell.block.draw(cairo, left + cell.x, y);
                }});
}

void add_line(Composer& page, double thick, bool with_next) {
    const double width = page.width();
    page.piece({1.5, thick, with_next, [width, thick](cairo_t* cairo, double x, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    cairo_set_line_width(cairo, thick);
                    cairo_move_to(cairo, x, y);
                    cairo_line_to(cairo, x + width, y);
                    cairo_stroke(cairo);
                }});
}

void add_text(Composer& page, const std::string& markup, double size, double before, double indent,
              bool with_next) {
    const typeset::Block text = page.set(markup, page.width() - indent, size);
    page.piece({before, text.height(), with_next, [text, indent](cairo_t* cairo, double x, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    text.draw(cairo, x + indent, y);
                }});
}

// The rows shown, in their order; those that want looking at have first claim.
std::vector<const FigureRow*> shown_rows(const FigureTable& table, std::size_t most) {
    std::vector<const FigureRow*> rows;
    for (const bool look_at : {true, false}) {
        for (const FigureRow& row : table.rows) {
            if (row.look_at == look_at && rows.size() < most) rows.push_back(&row);
        }
    }
    std::sort(rows.begin(), rows.end());  // pointers into one list: its order
    return rows;
}

}  // namespace

void add_table(Composer& page, const FigureTable& table, std::size_t most) {
    const double size = page.room().size - 0.7;
    const bool any = !table.rows.empty();
    add_text(page, bold(table.name), page.room().size + 1.5, 12, 0, true);
    add_text(page, plain(any ? table.note : table.empty), size - 0.6, 0.5, 0, any);
    if (!any) return;
    std::vector<std::string> heads;
    for (const auto& column : table.columns) heads.push_back("<i>" + plain(column.name) + "</i>");
    add_cells(page, table, heads, size - 0.4, 4, true);
    add_line(page, 0.6, true);
    const std::vector<const FigureRow*> rows = shown_rows(table, std::max(most, table.whole));
    const bool whole = rows.size() <= kept_whole;
    for (const FigureRow* row : rows) {
        const bool held = whole && row != rows.back();
        std::vector<std::string> cells;
        for (const std::string& cell : row->cells) cells.push_back(row->look_at ? bold(cell) : plain(cell));
        add_cells(page, table, cells, size, 1.5, held || (row->look_at && !row->note.empty()));
        if (row->look_at && !row->note.empty()) add_text(page, plain(row->note), size - 0.6, 0, 34, held);
    }
    const std::size_t left_out = table.rows.size() - rows.size();
    if (left_out > 0) {
        const std::string said =
            table.others.empty() ? "and " + std::to_string(left_out) + " more" : table.others;
        add_text(page, "<i>" + plain(said) + ": hardover class figures</i>", size, 2, 0, false);
    }
}

}  // namespace hardover::reports_detail

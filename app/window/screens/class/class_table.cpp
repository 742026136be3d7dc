// A table of the class's figures: names of the columns over it, numbers under each other at the right, words
// wrapped; where there is no room for columns, one row under the other.
#include <algorithm>

#include "app/window/screens/class/class_parts.hpp"

namespace hardover::window {

using classroom::FigureColumn;
using classroom::FigureRow;
using classroom::FigureTable;

namespace {

constexpr float column_gap = 14;    // dp
constexpr float least_words = 150;  // dp of width, for a column of words
constexpr float mark_width = 4;     // dp, of the bar beside a row that wants looking at

float longest_word(const Kit& kit, std::string_view text, Type type) {
    float widest = 0;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        widest = std::max(widest, kit.text_width(text.substr(0, end), type));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return widest;
}

// Of the cell with most letters: near enough, and a large class has thousands of them.
float widest_cell(const Kit& kit, const FigureTable& table, std::size_t column) {
    const std::string* longest = nullptr;
    for (const FigureRow& row : table.rows) {
        if (column < row.cells.size() && (longest == nullptr || row.cells[column].size() > longest->size()))
            longest = &row.cells[column];
    }
    return longest == nullptr ? 0 : kit.text_width(*longest, Type::small) * 1.08F;
}

// Numbers take what they need, words share the rest. Empty: there is no room for columns.
std::vector<float> widths_of(const Kit& kit, const FigureTable& table, float room) {
    std::vector<float> widths;
    float taken = 0;
    double shares = 0;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const FigureColumn& column = table.columns[i];
        const float head = longest_word(kit, column.name, Type::small);
        widths.push_back(std::max(head, column.number ? widest_cell(kit, table, i) : 0) + kit.px(column_gap));
        if (column.number) taken += widths.back();
        if (!column.number) shares += column.share;
    }
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].number) continue;
        const float share = (room - taken) * static_cast<float>(table.columns[i].share / shares);
        if (share < std::max(widths[i], kit.px(least_words))) return {};
        widths[i] = share;
    }
    return widths;
}

class Columns {
  public:
    Columns(Kit& kit, const FigureTable& table, std::vector<float> widths)
        : kit_(kit), table_(table), widths_(std::move(widths)) {}

    void head() {
        float h = 0;
        for (std::size_t i = 0; i < widths_.size(); ++i)
            h = std::max(h, kit_.text_height(table_.columns[i].name, Type::small, room(i)));
        const Box line = kit_.take(h);
        float x = line.x;
        for (std::size_t i = 0; i < widths_.size(); ++i) {
            const std::string& name = table_.columns[i].name;
            const float below = h - kit_.text_height(name, Type::small, room(i));
            cell(i, {x, line.y + below, room(i), 0}, name, Type::small, Role::ink2);
            x += widths_[i];
        }
        kit_.gap(3);
        kit_.fill(kit_.take(kit_.px(1.5F)), Role::outline);
        kit_.gap(4);
    }

    void row(const FigureRow& row) {
        float h = kit_.theme().line_height(Type::small);
        for (std::size_t i = 0; i < widths_.size() && i < row.cells.size(); ++i) {
            if (!table_.columns[i].number)
                h = std::max(h, kit_.text_height(row.cells[i], type_of(row, i), room(i)));
        }
        const Box line = kit_.take(h);
        float x = line.x;
        for (std::size_t i = 0; i < widths_.size() && i < row.cells.size(); ++i) {
            cell(i, {x, line.y, room(i), 0}, row.cells[i], type_of(row, i), Role::ink);
            x += widths_[i];
        }
    }

  private:
    float room(std::size_t column) const { return widths_[column] - kit_.px(column_gap); }
    // The row that wants looking at is told from the others by more than its colour.
    static Type type_of(const FigureRow& row, std::size_t column) {
        return row.look_at && column < 2 ? Type::strong : Type::small;
    }
    void cell(std::size_t column, const Box& box, const std::string& text, Type type, Role role) {
        const bool number = table_.columns[column].number;
        kit_.inside(box, [&] {
            kit_.text(text, number ? Type::small : type, role, number ? Align::right : Align::left);
        });
    }

    Kit& kit_;
    const FigureTable& table_;
    std::vector<float> widths_;
};

void stacked(Kit& kit, const FigureTable& table, const FigureRow& row) {
    for (std::size_t i = 0; i < row.cells.size() && i < table.columns.size(); ++i) {
        const std::string& name = table.columns[i].name;
        if (!table.columns[i].number) {
            kit.text(row.cells[i], i == 0 ? Type::strong : Type::small, Role::ink);
            continue;
        }
        const float value = kit.text_width(row.cells[i], Type::small) + 1;
        const float room = kit.width() - value - kit.px(column_gap);
        const Box line = kit.take(
            std::max(kit.text_height(name, Type::small, room), kit.theme().line_height(Type::small)));
        kit.wrapped_in({line.x, line.y, room, line.h}, name, Type::small, Role::ink2);
        kit.line_in({line.right() - value, line.y, value, line.h}, row.cells[i], Type::small, Role::ink,
                    Align::right);
    }
}

}  // namespace

void draw_figure_table(Kit& kit, const FigureTable& table) {
    if (!table.note.empty()) {
        kit.text(table.note, Type::small, Role::ink2);
        kit.gap(10);
    }
    if (table.rows.empty()) {
        kit.text(table.empty, Type::body, Role::ink);
        return;
    }
    const std::vector<float> widths = widths_of(kit, table, kit.width() - kit.px(2 * mark_width + 6));
    Columns columns(kit, table, widths);
    const float indent = kit.px(2 * mark_width + 6);
    const auto indented = [&](const std::function<void()>& content) {
        const Box start = kit.take(0);
        const float h = kit.inside({start.x + indent, start.y, start.w - indent, 0}, content);
        kit.take(h);
        return Box{start.x, start.y, start.w, h};
    };
    if (!widths.empty()) indented([&] { columns.head(); });
    for (const FigureRow& row : table.rows) {
        const Box drawn = indented([&] {
            if (widths.empty()) {
                stacked(kit, table, row);
            } else {
                columns.row(row);
            }
            if (!row.note.empty()) kit.text(row.note, Type::small, Role::weigh_against);
        });
        if (row.look_at) kit.fill({drawn.x, drawn.y, kit.px(mark_width), drawn.h}, Role::weigh_against, 2);
        kit.gap(4);
        kit.hairline(kit.take(kit.px(1)));
        kit.gap(4);
    }
}

}  // namespace hardover::window

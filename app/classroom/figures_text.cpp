// The page of a class's figures as lines for the terminal.
#include <algorithm>

#include "app/classroom/figures_page.hpp"

namespace hardover::classroom {

namespace {

constexpr std::size_t widest = 52;  // letters of a column; longer cells end in "…"

// Letters, not bytes: what is no beginning of a letter in UTF-8 does not count.
std::size_t letters(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xc0) != 0x80;
    }));
}

std::string cut(const std::string& text) {
    if (letters(text) <= widest) return text;
    std::size_t end = 0;
    for (std::size_t seen = 0; end < text.size(); ++end) {
        if ((static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) continue;
        if (seen++ == widest - 1) break;
    }
    return text.substr(0, end) + "…";
}

std::string line_of(const FigureTable& table, const std::vector<std::string>& cells,
                    const std::vector<std::size_t>& widths) {
    std::string line;
    for (std::size_t c = 0; c < cells.size(); ++c) {
        const std::string text = cut(cells[c]);
        const std::string room(widths[c] - letters(text), ' ');
        line += "  ";
        line += table.columns[c].number ? room + text : text + room;
    }
    line.erase(line.find_last_not_of(' ') + 1);
    return line + "\n";
}

std::string text_of(const FigureTable& table) {
    std::string text = "\n" + table.name + "\n";
    if (table.rows.empty()) return text + "  " + table.empty + "\n";
    text += "  " + table.note + "\n";
    std::vector<std::string> heads;
    std::vector<std::size_t> widths;
    for (const FigureColumn& column : table.columns) {
        heads.push_back(column.name);
        widths.push_back(letters(column.name));
    }
    for (const FigureRow& row : table.rows) {
        for (std::size_t c = 0; c < row.cells.size(); ++c) {
            widths[c] = std::max(widths[c], letters(cut(row.cells[c])));
        }
    }
    text += line_of(table, heads, widths);
    for (const FigureRow& row : table.rows) {
        text += line_of(table, row.cells, widths);
        if (!row.note.empty()) text += "      " + row.note + "\n";
    }
    return text;
}

std::string text_of(const FigurePlot& plot) {
    return plot.name + ": " + (plot.empty.empty() ? plot.plot.in_words : plot.empty) + "\n";
}

}  // namespace

std::string figures_text(const FiguresPage& page) {
    std::string text = page.headline + "\n";
    for (const std::string& line : page.summary) text += line + "\n";
    if (!page.to_look_at.empty()) text += "\nTo look at\n";
    for (const std::string& line : page.to_look_at) text += "  - " + line + "\n";
    for (const FigureTable* table :
         {&page.learners, &page.items, &page.topics, &page.confusions, &page.causes, &page.term}) {
        text += text_of(*table);
    }
    text += "\n" + text_of(page.item_map) + text_of(page.abilities) + text_of(page.over_best);
    return text;
}

}  // namespace hardover::classroom

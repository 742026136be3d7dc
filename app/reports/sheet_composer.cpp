#include "app/reports/sheet_composer.hpp"

#include <algorithm>

namespace hardover::reports_detail {

namespace {

constexpr double between_lines = 2.5;
constexpr double above_section = 7;
constexpr double below_rule = 4;
constexpr double kept_whole = 130;  // a section up to this height is not torn apart
constexpr double indent = 12;

void draw_rule(cairo_t* cairo, double x, double y, double width, double thick) {
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, thick);
    cairo_move_to(cairo, x, y);
    cairo_line_to(cairo, x + width, y);
    cairo_stroke(cairo);
}

}  // namespace

typeset::Block Composer::set(const std::string& markup, double width, double size,
                             PangoAlignment align) const {
    return typesetter_.set(markup, width, {size > 0 ? size : room_.size, align});
}

void Composer::section(const std::string& heading, const std::string& note) {
    close_section();
    heading_ = heading;
    note_ = note;
    section_start_ = pieces_.size();
}

void Composer::close_section() {
    if (beside_left_ > 0) pieces_.back().height += beside_left_;
    beside_left_ = 0;
    double height = 0;
    for (std::size_t i = section_start_; i < pieces_.size(); ++i)
        height += pieces_[i].before + pieces_[i].height;
    if (height > kept_whole) return;
    for (std::size_t i = section_start_; i + 1 < pieces_.size(); ++i) pieces_[i].with_next = true;
}

void Composer::add(double before, double height, std::function<void(cairo_t*, double x, double y)> draw) {
    if (heading_.empty()) {
        beside_left_ -= before + height;
        pieces_.push_back({before, height, false, std::move(draw)});
        return;
    }
    const typeset::Block heading = set(typeset::bold(heading_), gutter - 8);
    const typeset::Block note = set(typeset::plain(note_), gutter - 10, room_.size - 1.5);
    const double beside = heading.height() + (note_.empty() ? 0 : note.height());
    const double width = width_;
    const bool noted = !note_.empty();
    pieces_.push_back({above_section, below_rule + height, true, [=](cairo_t* cairo, double x, double y) {
                           draw_rule(cairo, x, y, width, 0.5);
                           heading.draw(cairo, x, y + below_rule);
                           if (noted) note.draw(cairo, x, y + below_rule + heading.height());
                           draw(cairo, x, y + below_rule);
                       }});
    beside_left_ = beside - height;
    heading_.clear();
}

void Composer::paragraph(const std::string& markup) {
    const typeset::Block text = set(markup, content_width());
    add(between_lines, text.height(),
        [text](cairo_t* cairo, double x, double y) { text.draw(cairo, x + gutter, y); });
}

void Composer::item(const std::string& markup) {
    const typeset::Block dash = set("–", indent);
    const typeset::Block text = set(markup, content_width() - indent);
    add(between_lines, text.height(), [=](cairo_t* cairo, double x, double y) {
        dash.draw(cairo, x + gutter, y);
        text.draw(cairo, x + gutter + indent, y);
    });
}

void Composer::to_tick(const std::string& markup) {
    const typeset::Block text = set(markup, content_width() - indent - 2);
    const double box = room_.size * 0.85;
    add(between_lines + 1, text.height(), [=](cairo_t* cairo, double x, double y) {
        cairo_set_source_rgb(cairo, 0, 0, 0);
        cairo_set_line_width(cairo, 0.7);
        cairo_rectangle(cairo, x + gutter + 0.5, y + box * 0.2, box, box);
        cairo_stroke(cairo);
        text.draw(cairo, x + gutter + indent + 2, y);
    });
}

void Composer::row(const std::vector<std::pair<std::string, double>>& cells, double size) {
    std::vector<std::pair<typeset::Block, double>> blocks;
    double x = gutter;
    double height = 0;
    for (const auto& [markup, share] : cells) {
        const double cell = share * content_width();
        blocks.emplace_back(set(markup, cell - 6, size), x);
        height = std::max(height, blocks.back().first.height());
        x += cell;
    }
    add(between_lines - 0.5, height, [blocks](cairo_t* cairo, double left, double y) {
        for (const auto& [block, at] : blocks) block.draw(cairo, left + at, y);
    });
}

void Composer::rule() {
    const double width = content_width();
    add(1.5, 0.5,
        [width](cairo_t* cairo, double x, double y) { draw_rule(cairo, x + gutter, y, width, 0.25); });
}

void Composer::piece(Piece piece) {
    close_section();
    pieces_.push_back(std::move(piece));
    section_start_ = pieces_.size();
}

void Composer::more(std::size_t left_out) {
    if (left_out > 0) paragraph("<i>and " + std::to_string(left_out) + " more in the record</i>");
}

std::vector<Piece> Composer::pieces() && {
    close_section();
    return std::move(pieces_);
}

}  // namespace hardover::reports_detail

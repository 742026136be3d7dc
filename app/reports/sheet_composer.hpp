// Puts pieces of the sheet together: headings in a column of their own on the left, content beside them.
// Inner part of app/reports; knows the form of the page and nothing of what stands on it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "app/reports/sheet_pages.hpp"

namespace hardover::reports_detail {

class Composer {
  public:
    Composer(const typeset::Typesetter& typesetter, double width, const Room& room)
        : typesetter_(typesetter), width_(width), room_(room) {}

    double width() const { return width_; }
    double content_width() const { return width_ - gutter; }
    const Room& room() const { return room_; }
    typeset::Block set(const std::string& markup, double width, double size = 0,
                       PangoAlignment align = PANGO_ALIGN_LEFT) const;

    // The next piece has the heading beside it and a rule above. `note` stands small below the heading.
    void section(const std::string& heading, const std::string& note = "");
    void paragraph(const std::string& markup);
    void item(const std::string& markup);     // with a dash
    void to_tick(const std::string& markup);  // with an empty box
    // Cells of one row; widths are shares of the content's.
    void row(const std::vector<std::pair<std::string, double>>& cells, double size = 0);
    void rule();  // a fine line between rows
    // A piece over the whole width.
    void piece(Piece piece);
    // "and N more in the record" when something was left out.
    void more(std::size_t left_out);

    std::vector<Piece> pieces() &&;

    static constexpr double gutter = 92;

  private:
    void add(double before, double height, std::function<void(cairo_t*, double x, double y)> draw);
    void close_section();

    const typeset::Typesetter& typesetter_;
    double width_;
    Room room_;
    std::vector<Piece> pieces_;
    std::string heading_;
    std::string note_;
    double beside_left_ = 0;  // how far the heading's column still reaches below the last piece
    std::size_t section_start_ = 0;
};

}  // namespace hardover::reports_detail

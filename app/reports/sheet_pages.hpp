// The job sheet laid out: pieces one below the other, over as many pages as they take. Inner part of
// app/reports.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/reports/job_sheet.hpp"
#include "app/reports/typeset.hpp"

namespace hardover::reports_detail {

// How much of the sheet is printed. What is left out is counted on the sheet.
struct Room {
    double size = 9;              // of the letters, points
    std::size_t findings = 1000;  // rows
    std::size_t lines = 1000;    // of every other list but stops, cautions and deferrals, which are never cut
    std::size_t letters = 5000;  // of a text that a person wrote
    bool short_cautions = false;  // their names only
    double sketch = 245;          // height, points
};

// Something that is not torn apart between pages.
struct Piece {
    double before = 0;  // space above, left out at the top of a page
    double height = 0;
    bool with_next = false;  // not left alone at the foot of a page
    std::function<void(cairo_t*, double x, double y)> draw;
    bool may_wait = false;  // where it does not fit, it goes to the head of the next page, others before it
};

struct PlacedPiece {
    std::size_t piece = 0;
    double y = 0;  // from the top of the text area
};

std::vector<Piece> sheet_pieces(const JobSheet& sheet, const typeset::Typesetter& typesetter, double width,
                                const Room& room);

// The pieces on pages of a height; a piece higher than a page has a page of its own.
std::vector<std::vector<PlacedPiece>> on_pages(const std::vector<Piece>& pieces, double height);

}  // namespace hardover::reports_detail

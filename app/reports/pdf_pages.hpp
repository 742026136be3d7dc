// Pages of pieces as a PDF with a line at their foot. Inner part of app/reports; knows nothing of what stands
// on them.
#pragma once

#include <string>
#include <vector>

#include "app/reports/pdf_wish.hpp"
#include "app/reports/sheet_pages.hpp"

namespace hardover::reports_detail {

struct PdfLook {
    Paper paper = Paper::letter;
    std::string title;  // of the file
    std::string
        created;  // a moment such as 2026-11-25T12:00:00Z; never the clock's, so that equal sheets are equal
    std::string foot;  // left, on every page
};

// Of the text area, in points.
double text_width(Paper paper);
double text_height(Paper paper);

// Error: cairo's own.
Result<std::string> pdf_of(const std::vector<Piece>& pieces,
                           const std::vector<std::vector<PlacedPiece>>& pages,
                           const typeset::Typesetter& typesetter, const PdfLook& look);

}  // namespace hardover::reports_detail

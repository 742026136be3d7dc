// From pieces to pages.
#include "app/reports/sheet_pages.hpp"

namespace hardover::reports_detail {

namespace {

// The height of a piece with those that may not be parted from it.
double kept_together(const std::vector<Piece>& pieces, std::size_t first) {
    double height = pieces[first].height;
    for (std::size_t i = first; pieces[i].with_next && i + 1 < pieces.size(); ++i) {
        height += pieces[i + 1].before + pieces[i + 1].height;
    }
    return height;
}

}  // namespace

std::vector<std::vector<PlacedPiece>> on_pages(const std::vector<Piece>& pieces, double height) {
    std::vector<std::vector<PlacedPiece>> pages(1);
    double y = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const bool top = pages.back().empty();
        const double before = top ? 0 : pieces[i].before;
        const bool held = i > 0 && pieces[i - 1].with_next && !top;
        if (!top && !held && y + before + kept_together(pieces, i) > height) {
            pages.emplace_back();
            y = 0;
        } else {
            y += before;
        }
        pages.back().push_back({i, y});
        y += pieces[i].height;
    }
    return pages;
}

}  // namespace hardover::reports_detail

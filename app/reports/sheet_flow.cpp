// From pieces to pages.
#include "app/reports/sheet_pages.hpp"

#include <utility>

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

class Pages {
  public:
    Pages(const std::vector<Piece>& pieces, double height) : pieces_(pieces), height_(height) {}

    std::vector<std::vector<PlacedPiece>> laid_out() && {
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            const bool held = i > 0 && pieces_[i - 1].with_next;
            if (!held && !fits(i)) {
                if (pieces_[i].may_wait) {
                    waiting_.push_back(i);
                    continue;
                }
                turn_over();
                if (!fits(i)) turn_over();
            }
            put(i);
        }
        while (!waiting_.empty()) turn_over();
        return std::move(pages_);
    }

  private:
    bool fits(std::size_t piece) const {
        return pages_.back().empty() || y_ + pieces_[piece].before + kept_together(pieces_, piece) <= height_;
    }
    void put(std::size_t piece) {
        if (!pages_.back().empty()) y_ += pieces_[piece].before;
        pages_.back().push_back({piece, y_});
        y_ += pieces_[piece].height;
    }
    // A new page, with what has waited for it as far as it goes.
    void turn_over() {
        pages_.emplace_back();
        y_ = 0;
        std::size_t put_there = 0;
        for (; put_there < waiting_.size() && fits(waiting_[put_there]); ++put_there)
            put(waiting_[put_there]);
        waiting_.erase(waiting_.begin(), waiting_.begin() + static_cast<std::ptrdiff_t>(put_there));
    }

    const std::vector<Piece>& pieces_;
    double height_;
    double y_ = 0;
    std::vector<std::vector<PlacedPiece>> pages_{1};
    std::vector<std::size_t> waiting_;
};

}  // namespace

std::vector<std::vector<PlacedPiece>> on_pages(const std::vector<Piece>& pieces, double height) {
    return Pages(pieces, height).laid_out();
}

}  // namespace hardover::reports_detail

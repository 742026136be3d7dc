// Tab order and arrow keys over the boxes of the frame before.
#include "app/window/focus.hpp"

#include <cmath>
#include <limits>

namespace hardover::window {

namespace {

// How far a box lies from another one in a direction: along it, plus twice the way aside, so that the control
// straight ahead wins over a nearer one off to the side. Infinite when it is not that way at all.
float distance(const Box& from, const Box& to, Direction direction) {
    const bool sideways = direction == Direction::left || direction == Direction::right;
    float ahead = 0;
    switch (direction) {
        case Direction::left:
            ahead = from.x - to.right();
            break;
        case Direction::right:
            ahead = to.x - from.right();
            break;
        case Direction::up:
            ahead = from.y - to.bottom();
            break;
        case Direction::down:
            ahead = to.y - from.bottom();
            break;
    }
    if (ahead < -2) return std::numeric_limits<float>::infinity();
    const float gap = sideways ? std::max(to.y - from.bottom(), from.y - to.bottom())
                               : std::max(to.x - from.right(), from.x - to.right());
    const float off = sideways ? std::abs(to.middle_y() - from.middle_y()) : std::abs(to.x - from.x);
    return ahead + 2 * std::max(0.0F, gap) + 0.1F * off;
}

}  // namespace

void FocusOrder::begin_frame() {
    before_ = std::move(drawn_);
    drawn_.clear();
    const bool there =
        std::any_of(before_.begin(), before_.end(), [&](const Stop& stop) { return stop.id == focused_; });
    if (!there) focused_.clear();
}

void FocusOrder::add(const std::string& id, const Box& box, bool enabled) {
    if (enabled) drawn_.push_back({id, box});
}

void FocusOrder::next() {
    step(1);
}

void FocusOrder::previous() {
    step(-1);
}

void FocusOrder::step(int by) {
    if (before_.empty()) return;
    const int count = static_cast<int>(before_.size());
    int at = by > 0 ? -1 : count;
    for (int i = 0; i < count; ++i) {
        const std::string& id = before_[static_cast<std::size_t>(i)].id;
        if (focused_.empty() && by > 0 && id == start_) at = i - 1;
        if (!focused_.empty() && id == focused_) at = i;
    }
    focused_ = before_[static_cast<std::size_t>((at + by + count) % count)].id;
}

bool FocusOrder::toward(Direction direction) {
    const Stop* from = nullptr;
    for (const Stop& stop : before_) {
        if (stop.id == focused_) from = &stop;
    }
    if (from == nullptr) return false;
    const Stop* best = nullptr;
    float least = std::numeric_limits<float>::infinity();
    for (const Stop& stop : before_) {
        if (&stop == from) continue;
        const float far = distance(from->box, stop.box, direction);
        if (far < least) {
            least = far;
            best = &stop;
        }
    }
    if (best == nullptr) return false;
    focused_ = best->id;
    return true;
}

}  // namespace hardover::window

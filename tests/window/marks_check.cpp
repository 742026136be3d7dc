// The checks on what a screen has left in its marks.
#include "marks_check.hpp"

#include <catch2/catch.hpp>

namespace hardover_tests {

using namespace hardover::window;

namespace {

bool overlap(const Box& a, const Box& b) {
    const Box both = a.meet(b);
    return both.w > 1 && both.h > 1;
}

}  // namespace

void check_marks(const Marks& marks, float scale) {
    std::vector<Mark> controls, texts;
    for (const Mark& mark : marks) (mark.control ? controls : texts).push_back(mark);
    for (const Mark& text : texts) {
        INFO("text: " << text.text);
        CHECK_FALSE(text.cut);
        if (!text.visible.empty()) CHECK(text.visible.w >= text.box.w - 1);
    }
    for (std::size_t i = 0; i < controls.size(); ++i) {
        const Mark& control = controls[i];
        INFO("control: " << control.id);
        CHECK(control.box.w >= 44 * scale - 1);
        CHECK(control.box.h >= 44 * scale - 1);
        if (!control.visible.empty()) CHECK(control.visible.w >= control.box.w - 1);
        for (std::size_t k = i + 1; k < controls.size(); ++k) {
            INFO("and: " << controls[k].id);
            CHECK(control.id != controls[k].id);
            CHECK_FALSE(overlap(control.visible, controls[k].visible));
        }
    }
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t k = i + 1; k < texts.size(); ++k) {
            if (!overlap(texts[i].visible, texts[k].visible)) continue;
            FAIL_CHECK("one on the other: " << texts[i].text << " | " << texts[k].text);
        }
    }
}

}  // namespace hardover_tests

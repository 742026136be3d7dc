// The bench's two parts: the form for a boat that comes in, and the list of jobs.
#include "app/window/screens/bench.hpp"

#include "app/window/layout.hpp"
#include "app/window/screens/bars.hpp"

namespace hardover::window {

namespace {

void draw_new_job(Kit& kit, BenchView& view, std::optional<Action>& action) {
    kit.card({.pad = 20, .edge = Role::accent}, [&] {
        kit.text("A BOAT COMES IN", Type::caps, Role::accent);
        kit.gap(4);
        kit.text("New job", Type::h1, Role::ink);
        kit.gap(10);
        kit.text("Boat", Type::small, Role::ink);
        kit.gap(4);
        kit.tab_starts_here();
        kit.field("new.boat", kit.take(kit.px(52)), view.boat,
                  {.name = "Boat", .placeholder = "Name or number"});
        kit.gap(10);
        kit.text("What the customer says", Type::small, Role::ink);
        kit.gap(4);
        kit.field("new.words", kit.take(kit.px(52)), view.words,
                  {.name = "What the customer says", .placeholder = "In the customer's own words"});
        kit.gap(4);
        kit.text("A name or a number is needed, the words are not.", Type::small, Role::ink2);
        kit.gap(14);
        const ButtonLook start{.label = "Start the job", .face = Face::primary, .key = "N"};
        const bool by_key = kit.take_letter(U'n') || kit.take_letter(U'N');
        if (kit.button("new.start", kit.take(kit.px(56)), start) || by_key) {
            action = StartJob{view.boat, view.words};
        }
        if (!view.trouble.empty()) {
            kit.gap(8);
            kit.text(view.trouble, Type::small, Role::wrong);
        }
    });
    kit.gap(16);
}

void draw_job_row(Kit& kit, const BenchRow& row, const std::string& cap, std::optional<Action>& action) {
    const float pad = kit.px(14), cap_w = cap.empty() ? 0 : kit.px(44);
    const float side = kit.text_width(row.title, Type::strong) + kit.px(8);
    const float room = kit.width() - 2 * pad - cap_w - side;
    const float boat = kit.text_height(row.boat, Type::h2, room);
    const float complaint = kit.text_height(row.complaint, Type::body, room + side);
    const float small = kit.theme().line_height(Type::small);
    const Box box = kit.take(boat + complaint + small + 2 * pad + kit.px(4));
    const Kit::Touch t = kit.touch("job." + std::to_string(row.number), box, row.boat);
    kit.fill(box, t.over ? Role::raised_over : Role::card, 8);
    kit.outline(box, t.focused ? Role::accent : Role::hairline, t.focused ? 3 : 1.5F, 8);
    if (!cap.empty()) kit.key_cap({box.x + pad, box.middle_y() - kit.px(15), kit.px(30), kit.px(30)}, cap);
    const bool by_key = !cap.empty() && kit.take_letter(static_cast<char32_t>(cap.front()));
    kit.line_in({box.right() - pad - side, box.y + pad, side, boat}, row.title, Type::strong, Role::ink2,
                Align::right);
    kit.inside({box.x + pad + cap_w, box.y + pad, room, 0}, [&] { kit.text(row.boat, Type::h2, Role::ink); });
    kit.inside({box.x + pad + cap_w, box.y + pad + boat + kit.px(2), room + side, 0}, [&] {
        kit.text(row.complaint, Type::body, Role::ink);
        kit.gap(2);
        kit.text(row.changed, Type::small, Role::ink2);
    });
    if (t.pressed || by_key) action = OpenJob{row.number};
    kit.gap(10);
}

void draw_jobs(Kit& kit, const BenchPage& page, BenchView& view, std::optional<Action>& action) {
    if (!view.notice.empty()) {
        kit.card({.fill = Role::panel, .pad = 12, .edge = Role::outline},
                 [&] { kit.text(view.notice, Type::small, Role::ink); });
        kit.gap(8);
    }
    kit.text("Jobs in hand", Type::h1, Role::ink);
    kit.gap(10);
    if (!page.trouble.empty()) kit.text(page.trouble, Type::body, Role::wrong);
    if (page.in_hand.empty() && page.trouble.empty()) {
        kit.text("The bench is clear. Start a job when a boat comes in.", Type::body, Role::ink2);
        kit.gap(10);
    }
    for (std::size_t i = 0; i < page.in_hand.size(); ++i) {
        draw_job_row(kit, page.in_hand[i], i < 9 ? std::to_string(i + 1) : "", action);
    }
    if (!page.handed_back.empty()) {
        const std::string label = "Handed back (" + std::to_string(page.handed_back.size()) + ")";
        if (kit.fold("bench.handed_back", label, view.handed_back_open))
            view.handed_back_open = !view.handed_back_open;
        if (view.handed_back_open) {
            for (const BenchRow& row : page.handed_back) draw_job_row(kit, row, "", action);
        }
    }
    kit.gap(14);
    kit.text(page.knowledge, Type::small, Role::ink2);
    kit.text("Records: " + page.records, Type::small, Role::ink2);
}

}  // namespace

std::optional<Action> draw_bench(Kit& kit, const BenchPage& page, BenchView& view) {
    std::optional<Action> action;
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    action =
        draw_header(kit, kit.placed(boxes.header), {"Hardover", "Hydraulic steering on small craft", false});
    const float spare = std::max(0.0F, boxes.body.w - 1180) / 2;
    kit.pane("bench", kit.placed(boxes.body), {.pad_x = 20 + spare, .pad_y = 20, .main = true}, [&] {
        if (kit.width() < kit.px(820)) {
            draw_new_job(kit, view, action);
            draw_jobs(kit, page, view, action);
            return;
        }
        const Box start = kit.take(0);
        const float left = kit.px(400), gap = kit.px(28);
        const float form = kit.inside({start.x, start.y, left, 0}, [&] { draw_new_job(kit, view, action); });
        const float jobs = kit.inside({start.x + left + gap, start.y, start.w - left - gap, 0},
                                      [&] { draw_jobs(kit, page, view, action); });
        kit.take(std::max(form, jobs));
    });
    draw_keys(kit, kit.placed(boxes.keys), {{"N", "start a job"}, {"1-9", "open a job"}});
    return action;
}

}  // namespace hardover::window

// The bench's two parts: the form for a boat that comes in, and the list of jobs.
#include "app/window/screens/bench.hpp"

#include <cstdlib>

#include "app/window/layout.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

// The complaint that was found before the boat had a name.
void draw_chosen_complaint(Kit& kit, BenchView& view) {
    if (view.complaint.empty()) return;
    kit.gap(10);
    kit.text("Complaint chosen", Type::small, Role::ink2);
    kit.gap(4);
    const ChoiceLook look{.label = view.complaint_name, .selected = true};
    const float h = kit.choice_height(look, kit.width());
    if (kit.choice("new.complaint", kit.take(h), look)) view.complaint = view.complaint_name = "";
}

void draw_new_job(Kit& kit, BenchView& view, std::optional<Action>& action) {
    kit.card({.pad = 20, .edge = Role::accent}, [&] {
        kit.text("A BOAT COMES IN", Type::caps, Role::accent);
        kit.gap(4);
        kit.text("New job", Type::h1, Role::ink);
        kit.gap(10);
        kit.text("Boat", Type::small, Role::ink);
        kit.gap(4);
        kit.tab_starts_here();
        const FieldEvent boat = kit.field("new.boat", kit.take(kit.px(52)), view.boat,
                                          {.name = "Boat", .placeholder = "Name or number"});
        if (boat.entered && !view.boat.empty()) kit.open_field("new.words");
        kit.gap(10);
        kit.text("What the customer says", Type::small, Role::ink);
        kit.gap(4);
        const FieldEvent words =
            kit.field("new.words", kit.take(kit.px(52)), view.words,
                      {.name = "What the customer says", .placeholder = "In the customer's own words"});
        kit.gap(4);
        kit.text("A name or a number is needed, the words are not.", Type::small, Role::ink2);
        draw_chosen_complaint(kit, view);
        kit.gap(14);
        const ButtonLook start{.label = "Start the job", .face = Face::primary, .key = "N"};
        const bool by_key = kit.take_letter(U'n') || kit.take_letter(U'N');
        const bool by_enter = words.entered && !view.boat.empty();
        const bool by_hand = kit.button("new.start", kit.take(kit.px(56)), start);
        if ((by_hand || by_key) && view.boat.empty()) {
            kit.open_field("new.boat");
        } else if (by_hand || by_key || by_enter) {
            action = StartJob{view.boat, view.words, view.complaint};
        }
        if (!view.trouble.empty()) {
            kit.gap(8);
            kit.text(view.trouble, Type::small, Role::wrong);
        }
    });
    kit.gap(16);
}

// Boat and job, how far it has come, what is next, what it is about.
void draw_job_row(Kit& kit, const BenchRow& row, const std::string& cap, std::optional<Action>& action) {
    const float pad = kit.px(14), cap_w = cap.empty() ? 0 : kit.px(44);
    const std::string title = row.ago.empty() ? row.title : row.title + " · " + row.ago;
    const float room = kit.width() - 2 * pad - cap_w;
    const float side = std::min(room * 0.6F, kit.text_width(title, Type::small) + kit.px(8));
    const float boat = kit.text_height(row.boat, Type::h2, room - side);
    const float complaint = kit.text_height(row.complaint, Type::body, room);
    const float phase = row.phase.empty() ? 0 : kit.text_height(row.phase, Type::strong, room) + kit.px(3);
    const float next = row.next.empty() ? 0 : kit.text_height(row.next, Type::small, room);
    const std::string changed = "Last changed " + row.changed;
    const float small = kit.text_height(changed, Type::small, room);
    const Box box = kit.take(boat + complaint + phase + next + small + 2 * pad + kit.px(6));
    const Kit::Touch t = kit.touch("job." + std::to_string(row.number), box, row.boat);
    kit.fill(box, t.over ? Role::raised_over : Role::card, 8);
    kit.outline(box, t.focused ? Role::accent : Role::hairline, t.focused ? 3 : 1.5F, 8);
    if (!cap.empty()) kit.key_cap({box.x + pad, box.middle_y() - kit.px(15), kit.px(30), kit.px(30)}, cap);
    const bool by_key = !cap.empty() && kit.take_letter(static_cast<char32_t>(cap.front()));
    kit.line_in({box.right() - pad - side, box.y + pad, side, kit.theme().line_height(Type::h2)}, title,
                Type::small, Role::ink2, Align::right);
    const float x = box.x + pad + cap_w;
    kit.inside({x, box.y + pad, room - side, 0}, [&] { kit.text(row.boat, Type::h2, Role::ink); });
    kit.inside({x, box.y + pad + boat + kit.px(2), room, 0}, [&] {
        if (!row.phase.empty()) {
            kit.text(row.phase, Type::strong, Role::accent);
            kit.text(row.next, Type::small, Role::ink);
            kit.gap(3);
        }
        kit.text(row.complaint, Type::body, Role::ink);
        kit.gap(2);
        kit.text(changed, Type::small, Role::ink2);
    });
    if (t.pressed || by_key) action = OpenJob{row.number};
    kit.gap(10);
}

// Where a hit leads. A complaint starts the job once the boat has a name; until then it is kept.
std::optional<Action> follow(Kit& kit, const SearchHit& hit, BenchView& view) {
    if (hit.to.kind == "job") return OpenJob{std::atoll(hit.to.id.c_str())};
    if (hit.to.kind == "worksheet") return SheetAction{ShowSheet{hit.to.id}};
    if (hit.to.kind != "complaint") return KnowledgeAction{ShowKnowledge{hit.to}};
    if (view.words.empty()) view.words = view.search;
    if (!view.boat.empty()) return StartJob{view.boat, view.words, hit.to.id};
    view.complaint = hit.to.id;
    view.complaint_name = hit.title;
    kit.open_field("new.boat");
    return SearchBench{""};
}

void draw_hits(Kit& kit, const BenchPage& page, BenchView& view, std::optional<Action>& action) {
    if (page.hits.empty()) {
        kit.text("Nothing has these words. Try one of them alone, or say it in another way.", Type::body,
                 Role::ink2);
        return;
    }
    for (const SearchHit& hit : page.hits) {
        if (draw_hit_row(kit, "hit." + hit.to.kind + "." + hit.to.id, hit)) action = follow(kit, hit, view);
    }
}

void draw_jobs(Kit& kit, const BenchPage& page, BenchView& view, std::optional<Action>& action) {
    if (!view.notice.empty()) {
        kit.card({.fill = Role::panel, .pad = 12, .edge = Role::outline},
                 [&] { kit.text(view.notice, Type::small, Role::ink); });
        kit.gap(8);
    }
    if (draw_search_field(kit, "bench.search", view.search, "Search",
                          "Search: groans, tight to starboard, a boat, a cause ..."))
        action = SearchBench{view.search};
    kit.gap(14);
    if (!view.search.empty()) return draw_hits(kit, page, view, action);
    kit.text("Jobs in hand", Type::h1, Role::ink);
    kit.gap(10);
    if (!page.trouble.empty()) kit.text(page.trouble, Type::body, Role::wrong);
    if (page.in_hand.empty() && page.trouble.empty()) {
        kit.text("The bench is clear. Start a job when a boat comes in.", Type::body, Role::ink2);
        kit.gap(10);
    }
    for (std::size_t i = 0; i < page.in_hand.size(); ++i) {
        if (page.in_hand[i].phase.empty() && !action) action = ReadJobState{page.in_hand[i].number};
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
    kit.gap(4);
}

// What the program knows and where its records lie: after everything that is to be done.
void draw_footer(Kit& kit, const BenchPage& page) {
    kit.gap(14);
    kit.text(page.knowledge, Type::small, Role::ink2);
    kit.text("Records: " + page.records, Type::small, Role::ink2);
}

}  // namespace

std::optional<Action> draw_bench(Kit& kit, const BenchPage& page, BenchView& view,
                                 const std::function<void()>& below) {
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
            if (below) below();
            draw_footer(kit, page);
            return;
        }
        const Box start = kit.take(0);
        const float left = kit.px(400), gap = kit.px(28);
        const float form = kit.inside({start.x, start.y, left, 0}, [&] { draw_new_job(kit, view, action); });
        const float jobs = kit.inside({start.x + left + gap, start.y, start.w - left - gap, 0}, [&] {
            draw_jobs(kit, page, view, action);
            if (below) below();
            draw_footer(kit, page);
        });
        kit.take(std::max(form, jobs));
    });
    draw_keys(kit, kit.placed(boxes.keys), {{"N", "start a job"}, {"/", "search"}, {"1-9", "open a job"}});
    if (kit.take_letter(U'/')) kit.open_field("bench.search");
    if (kit.take(Key::escape) && !view.search.empty()) action = SearchBench{""};
    return action;
}

}  // namespace hardover::window

// The parts screens are made of, and the only code that reads the pointer and the keys.
// Knows nothing of jobs: a screen says what stands where and is told what was pressed.
//
// Index: panes and flow | text | surfaces | controls | keys | marks
#pragma once

#include <imgui.h>

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/window/focus.hpp"
#include "app/window/geometry.hpp"
#include "app/window/icons.hpp"
#include "app/window/input.hpp"
#include "app/window/theme.hpp"

namespace hardover::window {

struct KeyHint {
    std::string key;
    std::string does;
};

// What the kit keeps from one frame to the next.
struct KitMemory {
    FocusOrder focus;
    InputQueue input;
    Marks marks;                     // of the last whole frame
    bool typing = false;             // a text field is open
    std::string open_field;          // the field to be opened as soon as it is drawn
    std::string scroll_to;           // the control that has to come into sight
    float floating_height = 0;       // of the floating card of the last frame
    bool dragging = false;           // a pane is being pulled by hand: letting go presses nothing
    bool holding = false;            // a grip is held: no pane is pulled
    bool moving = false;             // something on the screen moves by itself: another frame is wanted
    std::vector<std::string> grips;  // of the last whole frame; the first takes the arrows without focus
    std::vector<KeyHint> hints;      // of the screen last drawn
};

enum class Align { left, centre, right };

enum class Face {
    plain,    // raised, with an outline
    primary,  // the one thing to do next
    quiet,    // no face until the pointer is over it
    bridge    // on the dark bar
};

struct ButtonLook {
    std::string_view label = {};
    Icon icon = Icon::none;
    Face face = Face::plain;
    std::string_view key = {};  // shown as a key cap behind the label
    bool enabled = true;
    bool selected = false;
    bool spread = false;         // label at the left end, key at the right end
    std::string_view name = {};  // read out instead of the label where there is only an icon
};

struct ChoiceLook {
    std::string_view label = {};
    std::string_view note = {};  // second line, smaller
    std::string_view cap = {};   // "1"; empty: no key
    bool selected = false;
    bool quiet = false;  // less important than the others
    char side = 0;       // 'P' or 'S': a red or green letter before the label
};

struct FieldLook {
    std::string_view name = {};         // read out
    std::string_view placeholder = {};  // shown while empty
    std::string_view unit = {};         // at its right end
    bool wrong = false;
    Icon icon = Icon::none;
    bool hidden = false;  // what is typed does not show
};

struct FieldEvent {
    bool committed = false;  // Enter, Tab or a press elsewhere after a change
    bool entered = false;    // Enter alone, also without a change
    bool edited = false;     // the text changed in this frame
    bool cancelled = false;  // Esc
};

struct PaneLook {
    Role fill = Role::ground;
    float pad_x = 16;  // dp
    float pad_y = 16;
    bool scrolls = true;
    bool main = false;  // Page up, Page down and the arrows move this one
};

struct SurfaceLook {
    Role fill = Role::card;
    Role line = Role::hairline;
    float pad = 18;           // dp
    float line_width = 1;     // dp
    Role edge = Role::count;  // a coloured left edge, or none
    float round = 8;          // dp
};

class Kit {
  public:
    Kit(const Theme& theme, KitMemory& memory) : theme_(theme), memory_(memory) {}

    // Takes the keys, starts and ends a frame of the drawing library.
    void begin_frame(float width_px, float height_px);
    void end_frame();

    const Theme& theme() const { return theme_; }
    float px(float dp) const { return theme_.px(dp); }
    // What the place in hand may use: the window, or what the rail leaves of it.
    Box screen() const { return screen_; }
    void leave_room_for_rail(float width_px);
    void leave_room_at_top(float height_px);
    // A box of a layout, in dp from the corner of screen(), in pixels.
    Box placed(const Box& dp) const;

    // Panes and flow. Inside a pane things follow each other downwards over its whole width.
    void pane(const char* id, const Box& box, const PaneLook& look, const std::function<void()>& content);
    float width() const { return flow_.w; }
    Box take(float height_px);
    void gap(float dp) { flow_.y += px(dp); }
    // Narrows the flow to a box for some content; gives the height it used.
    float inside(const Box& box, const std::function<void()>& content);

    // Text.
    // Wraps, takes its height from the flow.
    void text(std::string_view text, Type type, Role role, Align align = Align::left);
    float text_height(std::string_view text, Type type, float width_px) const;
    float text_width(std::string_view text, Type type) const;
    void line_in(const Box& box, std::string_view text, Type type, Role role, Align align = Align::left);
    void wrapped_in(const Box& box, std::string_view text, Type type, Role role);  // centred up and down

    // Surfaces.
    void card(const SurfaceLook& look, const std::function<void()>& content);
    // A card over everything else, at the left of a box, for as long as it is asked for. Cannot be pressed.
    // The content is drawn at the end of the frame: it holds what it needs by value.
    void floating_card(const Box& beside, float width_px, std::function<void()> content);
    void fill(const Box& box, Role role, float round_dp = 0);
    void outline(const Box& box, Role role, float width_dp = 1, float round_dp = 0);
    void icon(const Box& box, Icon icon, Role role);
    void hatch(const Box& box, float stripe_dp, Role role);
    void bar(const Box& box, double share, Role role);
    void key_cap(const Box& box, std::string_view text, bool on_accent = false);
    float key_cap_width(std::string_view text) const;
    void side_letter(const Box& box, char letter);  // 'P' on red or 'S' on green
    void hairline(const Box& box) { fill(box, Role::hairline); }
    // A line through points in pixels.
    void stroke(const std::vector<ImVec2>& points, Role role, float width_dp);
    // A filled shape without a dent.
    void shape(const std::vector<ImVec2>& points, Role role);
    void disc(ImVec2 centre, float radius_dp, Role role);
    // Draws nothing outside the box.
    void within(const Box& box, const std::function<void()>& content);

    // Controls. Each gives true when it was pressed.
    bool button(const std::string& id, const Box& box, const ButtonLook& look);
    float button_width(const ButtonLook& look) const;
    bool choice(const std::string& id, const Box& box, const ChoiceLook& look);
    float choice_height(const ChoiceLook& look, float width_px) const;
    bool fold(const std::string& id, std::string_view label, bool open);  // a heading that opens and shuts
    // Something drawn by the caller on a box that can be pressed as a whole. The caller is told how it is.
    struct Touch {
        bool pressed = false;
        bool over = false;
        bool focused = false;
    };
    Touch touch(const std::string& id, const Box& box, std::string_view text, bool enabled = true,
                bool selected = false);
    // Something drawn by the caller that is turned or pulled: while it is held no pane scrolls under it, and
    // left and right go to it while it has the focus, or while nothing has and it is the first of the screen.
    struct Grip {
        bool held = false;
        bool started = false;  // in this frame
        bool over = false;
        bool focused = false;
        float x = 0;  // of the pointer
        float y = 0;
        int steps = 0;  // -1: the left key, 1: the right key
    };
    Grip grip(const std::string& id, const Box& box, std::string_view text);
    // The ring that shows the focus, for what the caller draws itself.
    void focus_ring(const Box& box, float round_dp);
    FieldEvent field(const std::string& id, const Box& box, std::string& text, const FieldLook& look);
    // The next control is where Tab begins while nothing has the focus.
    void tab_starts_here() { start_next_ = true; }
    // Opens a text field by name, now or when it is drawn next, and gives it a letter typed before.
    void open_field(const std::string& id, std::optional<KeyPress> letter = std::nullopt);

    // Keys. A command that nobody takes does nothing.
    bool take(Key key);
    bool take_letter(char32_t letter);
    std::optional<KeyPress> take_digit();
    bool typing() const { return typing_; }
    // Something moves by itself: another frame follows this one without an event.
    void keep_moving() { memory_.moving = true; }
    // The digit of Ctrl 1 to Ctrl 9.
    std::optional<int> take_place();

    // The keys of the screen, for the list of all of them.
    void set_hints(std::vector<KeyHint> hints) { memory_.hints = std::move(hints); }
    const std::vector<KeyHint>& hints() const { return memory_.hints; }

    const Marks& marks() const { return marks_; }

  private:
    struct Flow {
        float x = 0;
        float y = 0;
        float w = 0;
    };
    ImDrawList& list() const;
    // Whether any of a box can be seen where it is drawn. What cannot is left out: a long page would have
    // more corners than the drawing library can count (65,536).
    bool in_sight(const Box& box) const;
    void mark_text(const Box& box, std::string_view text, bool cut);
    std::vector<std::string_view> lines_of(std::string_view text, Type type, float width_px) const;
    void draw_line(float x, float y, std::string_view text, Type type, Role role);
    bool arrow_is_for_a_grip() const;
    void scroll_pane(const Box& box, bool main);
    void bring_into_sight(const std::string& id, const Box& box);
    void use_command();
    void move_focus(Direction direction);
    void register_control(const std::string& id, const Box& box, std::string_view text, bool enabled,
                          bool selected);

    struct Floating {
        Box beside;
        float w = 0;
        std::function<void()> content;
    };
    void draw_floating_card();

    const Theme& theme_;
    KitMemory& memory_;
    std::optional<Floating> floating_;
    Marks marks_;
    Flow flow_;
    Box screen_;
    std::optional<KeyPress> command_;
    bool typing_ = false;
    bool start_next_ = false;
    std::vector<std::string> grips_;  // of this frame, so far
    bool pressed_key_ = false;        // Enter or Space presses the focused control in this frame
    int scroll_steps_ = 0;            // lines of 60 dp the main pane has to move, from the keys
    bool scroll_pages_ = false;
};

// What is typed without a unit is meant in the unit that stands behind it in the field.
std::string with_shown_unit(const std::string& text, std::string_view unit);

// The letter for a side named by the last word of an id ("turns_port", "starboard"): 'P', 'S' or 0.
char side_of(std::string_view id);

}  // namespace hardover::window

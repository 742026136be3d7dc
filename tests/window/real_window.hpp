// The built program in its real window on a display of its own (Xvfb), worked with real keys and a real
// pointer (xdotool); what stands on the screen is read from the marks it writes. Knows no test library.
#pragma once

#include <sys/types.h>

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "app/window/geometry.hpp"

namespace hardover_tests {

struct SeenScreen {
    std::uint64_t frame = 0;
    bool settled = false;
    float scale = 1;
    hardover::window::Marks marks;

    // The control of this id, or nothing.
    const hardover::window::Mark* control(const std::string& id) const;
    bool has(const std::string& id) const { return control(id) != nullptr; }
    bool shows(const std::string& text) const;
    // The first control whose id begins so, or nothing.
    const hardover::window::Mark* first(const std::string& start_of_id) const;
};

// Whether Xvfb, xdotool and import are there; else the name of the first that is missing.
std::string missing_tool();

// A display without a screen. Ends with the object.
class Display {
  public:
    Display(int width, int height);
    ~Display();
    Display(const Display&) = delete;
    Display& operator=(const Display&) = delete;
    const std::string& name() const { return name_; }  // ":7"; "" when it did not start

  private:
    pid_t server_ = 0;
    std::string name_;
};

struct RealProgram {
    std::string program;
    std::string assets;
    std::string knowledge;
    std::string folder;  // records, preferences, marks, errors
};

class RealWindow {
  public:
    // Starts the program and waits for its first settled frame, at most some 60 s: see trouble().
    RealWindow(const Display& display, RealProgram program);
    // Ends the program if it is still there.
    ~RealWindow();
    RealWindow(const RealWindow&) = delete;
    RealWindow& operator=(const RealWindow&) = delete;

    const std::string& trouble() const { return trouble_; }  // "": all went well so far
    double first_frame_ms() const { return first_frame_ms_; }
    pid_t process() const { return process_; }

    // Each waits until the screen has settled afterwards.
    void key(const std::string& name);   // as xdotool names it: "Return", "ctrl+plus", "F6", "1"
    void type(const std::string& text);  // without waiting in between
    void click(const std::string& id);   // turns the wheel over it first where it is out of sight
    void resize(int width, int height);

    const SeenScreen& screen() const { return screen_; }
    // Waits, at most 20 s, until the screen is so; false when it never was.
    bool until(const std::function<bool(const SeenScreen&)>& so);

    void take_picture(const std::string& path) const;
    void kill_hard();              // as when the power fails
    int close();                   // Ctrl Q; gives the exit code
    long processor_ticks() const;  // used so far

  private:
    bool read_screen();
    void settle_after(std::uint64_t frame);
    void find_window();
    std::string tool(const std::string& words) const;  // runs it on the display, gives what it said
    void bring_into_sight(const std::string& id);

    const Display& display_;
    RealProgram program_;
    pid_t process_ = 0;
    std::string window_;
    std::string trouble_;
    double first_frame_ms_ = 0;
    SeenScreen screen_;
};

}  // namespace hardover_tests

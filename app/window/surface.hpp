// The drawing surface: a GLFW window with OpenGL 3.2, or 2.1 where there is no newer one. Knows no screen.
#pragma once

#include <string>

#include "app/window/input.hpp"
#include "rules/result/result.hpp"

struct GLFWwindow;
struct ImDrawData;

namespace hardover::window {

class Surface {
  public:
    enum class Shown { visible, hidden };

    // Error unsupported: no display, or no OpenGL on it.
    static Result<Surface> open(const std::string& title, Shown shown);
    Surface(Surface&& other) noexcept;
    Surface& operator=(Surface&&) = delete;
    ~Surface();

    GLFWwindow* window() const { return window_; }
    // The system's wish for larger drawings: 1 at 96 dpi.
    float content_scale() const;

    void show() const;  // a hidden one

    // Joins the drawing library's current context to this window.
    void join();
    void leave();
    void new_letters() const;  // after the letters have been built anew
    void begin_frame() const;
    void draw(const ImDrawData& data, float r, float g, float b) const;

  private:
    explicit Surface(GLFWwindow* window, bool modern) : window_(window), modern_(modern) {}
    GLFWwindow* window_ = nullptr;
    bool modern_ = true;  // OpenGL 3.2
    bool joined_ = false;
};

}  // namespace hardover::window

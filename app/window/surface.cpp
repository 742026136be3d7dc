// GLFW and OpenGL through the drawing library's own backends.
#include "app/window/surface.hpp"

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl2.h>
#include <backends/imgui_impl_opengl3.h>
#include <GLFW/glfw3.h>
#include <imgui.h>

#include <algorithm>
#include <utility>

namespace hardover::window {

namespace {

Error no_window(const std::string& why) {
    return {Error::Kind::unsupported, why, "", "use 'hardover interview' in a terminal instead"};
}

std::string last_words() {
    const char* words = nullptr;
    glfwGetError(&words);
    return words == nullptr ? "" : std::string(": ") + words;
}

// As large as the work area allows, 1280 x 800 at most times the scale.
void wanted_size(int& w, int& h) {
    float scale = 1, other = 1;
    int x = 0, y = 0, room_w = 0, room_h = 0;
    GLFWmonitor* monitor = glfwGetPrimaryMonitor();
    w = 1280;
    h = 800;
    if (monitor == nullptr) return;
    glfwGetMonitorContentScale(monitor, &scale, &other);
    glfwGetMonitorWorkarea(monitor, &x, &y, &room_w, &room_h);
    w = static_cast<int>(1280 * scale);
    h = static_cast<int>(800 * scale);
    if (room_w > 0) w = std::min(w, room_w);
    if (room_h > 0) h = std::min(h, room_h);
}

GLFWwindow* make_window(const std::string& title, bool modern) {
    int w = 0, h = 0;
    wanted_size(w, h);
    if (modern) {
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 2);
        glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
        glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    } else {
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 2);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 1);
        glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_ANY_PROFILE);
        glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_FALSE);
    }
    return glfwCreateWindow(w, h, title.c_str(), nullptr, nullptr);
}

}  // namespace

Result<Surface> Surface::open(const std::string& title, Shown shown) {
    if (glfwInit() == GLFW_FALSE) return no_window("no window can be opened here" + last_words());
    glfwWindowHint(GLFW_VISIBLE, shown == Shown::visible ? GLFW_TRUE : GLFW_FALSE);
    glfwWindowHint(GLFW_FOCUS_ON_SHOW, GLFW_TRUE);
    bool modern = true;
    GLFWwindow* window = make_window(title, true);
    if (window == nullptr) {
        modern = false;
        window = make_window(title, false);
    }
    if (window == nullptr) {
        const std::string why = last_words();
        glfwTerminate();
        return no_window("this display has no OpenGL to draw with" + why);
    }
    glfwSetWindowSizeLimits(window, 640, 400, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwMakeContextCurrent(window);
    glfwSwapInterval(1);
    return Surface(window, modern);
}

Surface::Surface(Surface&& other) noexcept
    : window_(std::exchange(other.window_, nullptr)),
      modern_(other.modern_),
      joined_(std::exchange(other.joined_, false)) {}

Surface::~Surface() {
    if (window_ == nullptr) return;
    leave();
    glfwDestroyWindow(window_);
    glfwTerminate();
}

float Surface::content_scale() const {
    float x = 1, y = 1;
    glfwGetWindowContentScale(window_, &x, &y);
    return std::max(1.0F, x);
}

void Surface::show() const {
    glfwShowWindow(window_);
}

void Surface::join() {
    ImGui_ImplGlfw_InitForOpenGL(window_, false);
    if (modern_) {
        ImGui_ImplOpenGL3_Init("#version 150");
    } else {
        ImGui_ImplOpenGL2_Init();
    }
    InputQueue::name_keys();
    joined_ = true;
}

void Surface::leave() {
    if (!joined_) return;
    if (modern_) {
        ImGui_ImplOpenGL3_Shutdown();
    } else {
        ImGui_ImplOpenGL2_Shutdown();
    }
    ImGui_ImplGlfw_Shutdown();
    joined_ = false;
}

void Surface::new_letters() const {
    if (modern_) {
        ImGui_ImplOpenGL3_DestroyFontsTexture();
        ImGui_ImplOpenGL3_CreateFontsTexture();
    } else {
        ImGui_ImplOpenGL2_DestroyFontsTexture();
        ImGui_ImplOpenGL2_CreateFontsTexture();
    }
}

void Surface::begin_frame() const {
    if (modern_) {
        ImGui_ImplOpenGL3_NewFrame();
    } else {
        ImGui_ImplOpenGL2_NewFrame();
    }
    ImGui_ImplGlfw_NewFrame();
}

void Surface::draw(const ImDrawData& data, float r, float g, float b) const {
    int w = 0, h = 0;
    glfwGetFramebufferSize(window_, &w, &h);
    glViewport(0, 0, w, h);
    glClearColor(r, g, b, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    // The backends take the data as changeable but only read it.
    auto* drawn = const_cast<ImDrawData*>(&data);
    if (modern_) {
        ImGui_ImplOpenGL3_RenderDrawData(drawn);
    } else {
        ImGui_ImplOpenGL2_RenderDrawData(drawn);
    }
    glfwSwapBuffers(window_);
}

}  // namespace hardover::window

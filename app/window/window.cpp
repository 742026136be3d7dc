// The main loop: frames only while something happens, and a picture only when it differs from the last.
#include "app/window/window.hpp"

#include <backends/imgui_impl_glfw.h>
#include <GLFW/glfw3.h>
#include <imgui.h>

#include <cstdint>
#include <iostream>
#include <string>
#include <utility>
#include <vector>

#include "app/jobs/records_care.hpp"
#include "app/window/app_frame.hpp"
#include "app/window/class_desk.hpp"
#include "app/window/glfw_keys.hpp"
#include "app/window/marks_file.hpp"
#include "app/window/open_outside.hpp"
#include "app/window/records_desk.hpp"
#include "app/window/surface.hpp"

namespace hardover {

using namespace window;

namespace {

// Hover and layout settle, and text fields open, within this many frames after an event.
constexpr int frames_after_event = 5;
constexpr double caret_seconds = 0.25;

// What the callbacks of the window change.
struct Session {
    KitMemory memory;
    int owed = frames_after_event;
    bool redraw = true;  // the window's content was lost
    bool came_to_front = false;
    std::vector<std::string> dropped;  // files let fall on the window

    void event() { owed = frames_after_event; }
};

Session& session_of(GLFWwindow* window) {
    return *static_cast<Session*>(glfwGetWindowUserPointer(window));
}

void on_key(GLFWwindow* window, int key, int scancode, int action, int mods) {
    Session& session = session_of(window);
    session.event();
    const Key ours = key_from_glfw(key, scancode, mods);
    if (ours == Key::none) return;
    if (action == GLFW_RELEASE) {
        session.memory.input.release(ours);
        return;
    }
    if (action == GLFW_REPEAT) {
        if (ours == Key::enter) return;  // held down too long: pressed once
        session.memory.input.release(ours);
    }
    const char32_t digit = ours == Key::place ? U'1' + static_cast<char32_t>(key - GLFW_KEY_1) : 0;
    session.memory.input.press({ours, digit, (mods & GLFW_MOD_SHIFT) != 0, (mods & GLFW_MOD_CONTROL) != 0});
}

void on_letter(GLFWwindow* window, unsigned letter) {
    Session& session = session_of(window);
    session.event();
    session.memory.input.press({Key::character, static_cast<char32_t>(letter)});
}

void set_callbacks(GLFWwindow* window, Session& session) {
    glfwSetWindowUserPointer(window, &session);
    glfwSetKeyCallback(window, on_key);
    glfwSetCharCallback(window, on_letter);
    glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int button, int action, int mods) {
        session_of(w).event();
        ImGui_ImplGlfw_MouseButtonCallback(w, button, action, mods);
    });
    glfwSetScrollCallback(window, [](GLFWwindow* w, double x, double y) {
        session_of(w).event();
        ImGui_ImplGlfw_ScrollCallback(w, x, y);
    });
    glfwSetCursorPosCallback(window, [](GLFWwindow* w, double, double) { session_of(w).event(); });
    glfwSetCursorEnterCallback(window, [](GLFWwindow* w, int entered) {
        session_of(w).event();
        ImGui_ImplGlfw_CursorEnterCallback(w, entered);
    });
    glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int focused) {
        session_of(w).event();
        if (focused == GLFW_TRUE) session_of(w).came_to_front = true;
        ImGui_ImplGlfw_WindowFocusCallback(w, focused);
    });
    glfwSetDropCallback(window, [](GLFWwindow* w, int count, const char** paths) {
        session_of(w).event();
        for (int i = 0; i < count; ++i) session_of(w).dropped.emplace_back(paths[i]);
    });
    const auto lost = [](GLFWwindow* w) {
        session_of(w).event();
        session_of(w).redraw = true;
    };
    glfwSetWindowRefreshCallback(window, lost);
    glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) {
        session_of(w).event();
        session_of(w).redraw = true;
    });
    glfwSetWindowContentScaleCallback(window, [](GLFWwindow* w, float, float) {
        session_of(w).event();
        session_of(w).redraw = true;
    });
}

// A fingerprint of the picture (FNV-1a over words), to leave equal pictures undrawn.
std::uint64_t fingerprint(const ImDrawData& data) {
    std::uint64_t hash = 14695981039346656037U;
    const auto add = [&hash](const void* start, std::size_t bytes) {
        const auto* at = static_cast<const unsigned char*>(start);
        for (std::size_t i = 0; i < bytes; ++i) hash = (hash ^ at[i]) * 1099511628211U;
    };
    add(&data.DisplaySize, sizeof data.DisplaySize);
    for (int i = 0; i < data.CmdListsCount; ++i) {
        const ImDrawList& list = *data.CmdLists[i];
        add(list.VtxBuffer.Data, static_cast<std::size_t>(list.VtxBuffer.size_in_bytes()));
        add(list.IdxBuffer.Data, static_cast<std::size_t>(list.IdxBuffer.size_in_bytes()));
        for (const ImDrawCmd& command : list.CmdBuffer) {
            add(&command.ClipRect, sizeof command.ClipRect);
            add(&command.ElemCount, sizeof command.ElemCount);
        }
    }
    return hash;
}

int refuse(const Error& error) {
    std::cerr << "hardover: " << error.text() << "\n";
    return 1;
}

class Window {
  public:
    Window(Surface& surface, AppState& state, std::string fonts)
        : surface_(surface), state_(state), fonts_(std::move(fonts)) {
        set_callbacks(surface_.window(), session_);
    }

    Result<void> run(const std::string& preferences_file) {
        while (glfwWindowShouldClose(surface_.window()) == GLFW_FALSE) {
            wait();
            if (take_in_background(state_)) session_.event();
            if (Result<void> built = keep_theme(); !built) return built;
            // On coming up for the first time the knowledge has just been read.
            if (std::exchange(session_.came_to_front, false) && frames_ > 0)
                carry_out(state_, ReloadKnowledge{true});
            if (!session_.dropped.empty())
                carry_out(state_, RecordsAction(DropFiles{std::exchange(session_.dropped, {})}));
            const Preferences before = state_.preferences;
            frame();
            if (state_.preferences != before && !preferences_file.empty()) {
                const Result<void> kept = write_preferences(preferences_file, state_.preferences);
                state_.settings_view.trouble = kept ? "" : kept.error().text();
            }
        }
        return {};
    }

  private:
    void wait() {
        if (session_.owed > 0 || session_.memory.input.waiting() || session_.memory.moving) {
            glfwPollEvents();
            if (session_.owed > 0) --session_.owed;
            return;
        }
        tell_marks(true);
        if (session_.memory.typing) {
            glfwWaitEventsTimeout(caret_seconds);
        } else {
            glfwWaitEvents();
        }
    }

    // For tests of the real window: what stands where on the screen, in the file they name.
    void tell_marks(bool settled) {
        if (marks_file_.empty()) return;
        const MarksOfFrame told{frames_, settled, theme_.scale(), session_.memory.marks};
        const Result<void> written = write_marks(marks_file_, told);
        if (!written) std::cerr << "hardover: " << written.error().text() << "\n";
    }

    Result<void> keep_theme() {
        int w = 0, h = 0;
        glfwGetFramebufferSize(surface_.window(), &w, &h);
        const float scale =
            text_scale(state_, surface_.content_scale(), {static_cast<float>(w), static_cast<float>(h)});
        const Look look = state_.preferences.look;
        if (built_ && theme_.scale() == scale && theme_.look() == look) return {};
        Result<void> built = theme_.build(look, scale, fonts_);
        if (!built) return built;
        surface_.new_letters();
        built_ = true;
        session_.redraw = true;
        session_.event();
        return {};
    }

    void frame() {
        int w = 0, h = 0;
        glfwGetFramebufferSize(surface_.window(), &w, &h);
        if (w == 0 || h == 0) return;  // shrunk to an icon
        surface_.begin_frame();
        Kit kit(theme_, session_.memory);
        kit.begin_frame(static_cast<float>(w), static_cast<float>(h));
        auto action = draw_app(kit, state_);
        if (kit.take(Key::quit)) glfwSetWindowShouldClose(surface_.window(), GLFW_TRUE);
        kit.end_frame();
        const ImDrawData& data = *ImGui::GetDrawData();
        const std::uint64_t picture = fingerprint(data);
        if (picture != last_picture_ || session_.redraw) {
            const Rgb ground = colour_of(theme_.look(), Role::ground);
            surface_.draw(data, static_cast<float>(ground.r) / 255, static_cast<float>(ground.g) / 255,
                          static_cast<float>(ground.b) / 255);
            last_picture_ = picture;
            session_.redraw = false;
            if (++frames_ == 1) tell_marks(false);
        } else {
            ++frames_;
        }
        if (action) {
            carry_out(state_, *action);
            session_.event();
        }
    }

    Surface& surface_;
    AppState& state_;
    std::string fonts_;
    Session session_;
    Theme theme_;
    bool built_ = false;
    std::uint64_t last_picture_ = 0;
    std::uint64_t frames_ = 0;
    std::string marks_file_ = marks_file_wanted();
};

// The drawing library's context, for as long as the window lives.
struct Context {
    Context() {
        ImGui::CreateContext();
        ImGui::GetIO().IniFilename = nullptr;
    }
    ~Context() { ImGui::DestroyContext(); }
    Context(const Context&) = delete;
    Context& operator=(const Context&) = delete;
};

}  // namespace

Result<void> display_available() {
    const auto surface = Surface::open("Hardover", Surface::Shown::hidden);
    if (!surface) return surface.error();
    return {};
}

// The window is opened while the knowledge is read, and shown when both are there.
int run_window(const std::function<Result<Knowledge>()>& await_knowledge, Store& store,
               const WindowSettings& settings) {
    auto surface = Surface::open("Hardover", Surface::Shown::hidden);
    Result<Knowledge> read = await_knowledge();
    if (!read) return refuse(read.error());
    if (!surface) return refuse(surface.error());
    KnowledgeInUse knowledge(std::move(read).value());
    AppState state(knowledge.get(), store, utc_now);
    state.in_use = &knowledge;
    if (!settings.preferences_file.empty()) {
        const auto kept = read_preferences(settings.preferences_file);
        if (kept) {
            state.preferences = kept.value();
        } else {
            state.bench_view.notice = state.settings_view.trouble = kept.error().text();
        }
    }
    Background background(glfwPostEmptyEvent);  // ends before `state`, which it works for
    use_background(state, background);
    state.fonts_folder = settings.assets_folder + "/fonts";
    state.open_outside = open_outside;
    take_shop(state);
    show_bench(state);
    if (settings.job != 0) carry_out(state, OpenJob{settings.job});
    const Context context;
    surface.value().join();
    surface.value().show();
    Window window(surface.value(), state, state.fonts_folder);
    const Result<void> done = window.run(settings.preferences_file);
    surface.value().leave();
    // A connection of its own wrote: the one at hand does not know, so that no backup would be made on
    // closing.
    const bool wrote_beside = state.classes->wrote_beside() || state.records->wrote_beside();
    if (wrote_beside && !store.has_written()) {
        const Result<int> kept = backups_kept(store);
        if (kept && kept.value() > 0) {
            if (const auto made = back_up(store, "", utc_now()); !made) return refuse(made.error());
        }
    }
    return done ? 0 : refuse(done.error());
}

}  // namespace hardover

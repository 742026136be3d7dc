// The table of keys.
#include "app/window/glfw_keys.hpp"

#include <GLFW/glfw3.h>

namespace hardover::window {

namespace {

Key with_ctrl(char printed) {
    switch (printed) {
        case '+':
        case '=':
            return Key::larger;
        case '-':
            return Key::smaller;
        case '0':
            return Key::normal;
        case 'q':
            return Key::quit;
        case 'a':
            return Key::a;
        case 'c':
            return Key::c;
        case 'v':
            return Key::v;
        case 'x':
            return Key::x;
        case 'y':
            return Key::y;
        case 'z':
            return Key::z;
        default:
            return Key::none;
    }
}

}  // namespace

Key key_from_glfw(int key, int scancode, int mods) {
    switch (key) {
        case GLFW_KEY_BACKSPACE:
            return Key::backspace;
        case GLFW_KEY_DELETE:
            return Key::remove;
        case GLFW_KEY_TAB:
            return Key::tab;
        case GLFW_KEY_ENTER:
        case GLFW_KEY_KP_ENTER:
            return Key::enter;
        case GLFW_KEY_ESCAPE:
            return Key::escape;
        case GLFW_KEY_LEFT:
            return Key::left;
        case GLFW_KEY_RIGHT:
            return Key::right;
        case GLFW_KEY_UP:
            return Key::up;
        case GLFW_KEY_DOWN:
            return Key::down;
        case GLFW_KEY_PAGE_UP:
            return Key::page_up;
        case GLFW_KEY_PAGE_DOWN:
            return Key::page_down;
        case GLFW_KEY_HOME:
            return Key::home;
        case GLFW_KEY_END:
            return Key::end;
        case GLFW_KEY_F1:
            return Key::f1;
        case GLFW_KEY_F5:
            return Key::f5;
        case GLFW_KEY_F6:
            return Key::f6;
        default:
            break;
    }
    if ((mods & GLFW_MOD_CONTROL) == 0) return Key::none;
    if (key >= GLFW_KEY_1 && key <= GLFW_KEY_9) return Key::place;
    const char* printed = glfwGetKeyName(key, scancode);
    return printed == nullptr ? Key::none : with_ctrl(printed[0]);
}

}  // namespace hardover::window

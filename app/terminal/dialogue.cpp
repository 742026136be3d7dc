#include "app/terminal/dialogue.hpp"

#include <istream>
#include <ostream>

#include "app/terminal/words.hpp"

namespace hardover {

std::optional<std::string> Dialogue::read_line(const std::string& prompt) {
    out_ << prompt << std::flush;
    std::string line;
    if (!std::getline(in_, line)) {
        out_ << "\n";
        input_ended_ = true;
        return std::nullopt;
    }
    if (!colour_) out_ << line << "\n";
    return line;
}

void Dialogue::say(const std::string& text, int hang) {
    say_wrapped(out_, text, hang);
}

void Dialogue::heading(const std::string& text) {
    out_ << "\n" << (colour_ ? "\x1b[1m" : "") << text << (colour_ ? "\x1b[0m" : "") << "\n";
}

}  // namespace hardover

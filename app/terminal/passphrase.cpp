#include "app/terminal/passphrase.hpp"

#include <termios.h>
#include <unistd.h>

#include <istream>
#include <ostream>

namespace hardover {

namespace {

// While it lives, the terminal shows nothing of what is typed.
class WithoutEcho {
  public:
    WithoutEcho() {
        changed_ = tcgetattr(STDIN_FILENO, &before_) == 0;
        if (!changed_) return;
        termios hidden = before_;
        hidden.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        changed_ = tcsetattr(STDIN_FILENO, TCSAFLUSH, &hidden) == 0;
    }
    ~WithoutEcho() {
        if (changed_) tcsetattr(STDIN_FILENO, TCSAFLUSH, &before_);
    }
    WithoutEcho(const WithoutEcho&) = delete;
    WithoutEcho& operator=(const WithoutEcho&) = delete;

  private:
    termios before_{};
    bool changed_ = false;
};

std::string first_line(const std::string& text) {
    std::string line = text.substr(0, text.find('\n'));
    if (!line.empty() && line.back() == '\r') line.pop_back();
    return line;
}

}  // namespace

Result<std::string> read_passphrase(Context& context, const std::string& file, const std::string& prompt) {
    if (!file.empty() && file != "-") {
        const Result<std::string> text = read_file(file);
        if (!text) return text.error();
        return first_line(text.value());
    }
    std::string line;
    if (file == "-") {
        if (std::getline(context.streams.in, line)) return first_line(line);
        return Error{Error::Kind::bad_input, "there is no passphrase on the standard input", "",
                     "give it as the first line"};
    }
    if (isatty(STDIN_FILENO) == 0) {
        return Error{Error::Kind::bad_input, "there is no terminal to ask for the passphrase", "",
                     "give a file with it: --passphrase-file FILE (or - for the standard input)"};
    }
    context.streams.err << prompt << std::flush;
    const WithoutEcho hidden;
    const bool typed = static_cast<bool>(std::getline(context.streams.in, line));
    context.streams.err << "\n";
    if (typed) return first_line(line);
    return Error{Error::Kind::bad_input, "no passphrase was typed", "", ""};
}

}  // namespace hardover

#include "app/terminal/passphrase.hpp"

#include <termios.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
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

Result<std::string> first_line_of(const std::string& path) {
    constexpr std::size_t longest = 4096;
    std::error_code failed;
    if (std::filesystem::is_directory(path, failed)) {
        return Error{Error::Kind::bad_input, "this is a folder, not a file", path, "name a file"};
    }
    std::ifstream file(path, std::ios::binary);
    if (!file) return Error{Error::Kind::not_found, "the file cannot be read", path, "check its name"};
    std::string line;
    for (char letter = 0; line.size() < longest && file.get(letter) && letter != '\n';) line += letter;
    return first_line(line);
}

Result<std::string> read_passphrase(Context& context, const std::string& file, const std::string& prompt) {
    if (!file.empty() && file != "-") {
        return first_line_of(file);
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

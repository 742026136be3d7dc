// How the terminal asks and answers, line by line; works the same through a pipe. Base of whatever asks more
// than once. Knows neither jobs nor boats.
#pragma once

#include <optional>
#include <string>

#include "app/terminal/terminal.hpp"

namespace hardover {

class Dialogue {
  public:
    // What is said goes to `out`, which may be another stream than that of the results.
    Dialogue(const Streams& streams, std::ostream& out)
        : in_(streams.in), out_(out), colour_(streams.colour) {}

  protected:
    ~Dialogue() = default;

    // One line; nothing when the input has ended. Through a pipe, which shows no typing, the line is printed
    // too, so that what comes out can be read by itself.
    std::optional<std::string> read_line(const std::string& prompt);

    bool input_ended() const { return input_ended_; }

    // Broken at the width of a page; further lines start with `hang` spaces.
    void say(const std::string& text, int hang = 0);

    void heading(const std::string& text);

    std::istream& in_;
    std::ostream& out_;

  private:
    bool colour_;
    bool input_ended_ = false;
};

}  // namespace hardover

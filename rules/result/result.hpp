// What every function of this project that can be refused gives back: a value, or one clear error.
// Knows nothing of steering, files or screens.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace hardover {

// One refusal, in words for the person who has to put it right.
struct Error {
    enum class Kind { bad_input, bad_knowledge, not_found, storage, unsupported };
    Kind kind = Kind::bad_input;
    std::string what;   // what is wrong: "unknown cause 'air_in_oli'"
    std::string where;  // "knowledge/causes_oil.yaml:14:12", a path, a command line word; may be empty
    std::string cure;   // what would be right: "did you mean 'air_in_oil'?"; may be empty

    // "where: what (cure)", leaving out what is empty.
    std::string text() const;
};

// A value or an Error. Ask ok() before value(); value() on an error is a programming fault and throws
// std::bad_variant_access.
template <typename T>
class [[nodiscard]] Result {
  public:
    Result(T value) : content_(std::in_place_index<0>, std::move(value)) {}
    Result(Error error) : content_(std::in_place_index<1>, std::move(error)) {}

    bool ok() const { return content_.index() == 0; }
    explicit operator bool() const { return ok(); }
    const T& value() const& { return std::get<0>(content_); }
    T& value() & { return std::get<0>(content_); }
    T&& value() && { return std::get<0>(std::move(content_)); }
    const Error& error() const { return std::get<1>(content_); }

  private:
    std::variant<T, Error> content_;
};

// For work that gives nothing back but may be refused.
template <>
class [[nodiscard]] Result<void> {
  public:
    Result() = default;
    Result(Error error) : error_(std::move(error)) {}

    bool ok() const { return !error_.has_value(); }
    explicit operator bool() const { return ok(); }
    const Error& error() const { return *error_; }

  private:
    std::optional<Error> error_;
};

}  // namespace hardover

#include "app/terminal/typed.hpp"

#include <charconv>
#include <cstdint>

#include "rules/reading/letters.hpp"

namespace hardover {

namespace {

template <typename Number>
bool fits(const std::string& text) {
    Number number{};
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    return fault == std::errc() && end == text.data() + text.size();
}

CLI::Validator whole_number(bool may_be_negative) {
    CLI::Validator check(
        [may_be_negative](std::string& text) -> std::string {
            if (may_be_negative ? fits<std::int64_t>(text) : fits<std::uint64_t>(text)) return "";
            return "'" + text + "' is not a whole number" + (may_be_negative ? "" : " from 0") +
                   " that can be used here";
        },
        "");
    return check;
}

}  // namespace

void check_whole_numbers(CLI::App& app) {
    for (CLI::Option* option : app.get_options()) {
        const std::string type = option->get_type_name();
        if (type.rfind("INT", 0) == 0) option->check(whole_number(true));
        if (type.rfind("UINT", 0) == 0) option->check(whole_number(false));
    }
    for (CLI::App* below : app.get_subcommands([](CLI::App*) { return true; })) check_whole_numbers(*below);
}

CLI::Validator a_name() {
    return CLI::Validator(
        [](std::string& text) -> std::string {
            if (text.find_first_not_of(" \t\n") == std::string::npos) return "a name needs letters";
            const bool readable =
                !reading_detail::first_bad_byte(text) && text.find('\n') == std::string::npos;
            return readable
                       ? ""
                       : "this is not a name that can be shown: it has control characters or is no UTF-8";
        },
        "");
}

CLI::Validator a_job_number() {
    return CLI::Validator(
        [](std::string& text) -> std::string {
            const bool fits_and_not_0 = fits<std::int64_t>(text) && text[0] != '-' && text != "0";
            return fits_and_not_0 ? ""
                                  : "'" + text + "' is not a job's number; they are whole numbers from 1 on";
        },
        "");
}

CLI::Validator not_empty() {
    return CLI::Validator(
        [](std::string& text) -> std::string { return text.empty() ? "a file or folder needs a name" : ""; },
        "");
}

}  // namespace hardover

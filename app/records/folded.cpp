#include "app/records/folded.hpp"

#include <glib.h>

#include <algorithm>
#include <memory>

namespace hardover {

namespace {

using Text = std::unique_ptr<char, decltype(&g_free)>;

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

std::string ascii_folded(std::string_view text) {
    std::string small(text);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return small;
}

}  // namespace

std::string folded(std::string_view text) {
    // Most texts; a tenth of the time.
    if (is_ascii(text)) return ascii_folded(text);
    const auto size = static_cast<gssize>(text.size());
    if (g_utf8_validate(text.data(), size, nullptr) == 0) return ascii_folded(text);
    const Text small(g_utf8_casefold(text.data(), size), g_free);
    const Text one_form(g_utf8_normalize(small.get(), -1, G_NORMALIZE_DEFAULT_COMPOSE), g_free);
    return one_form.get();
}

std::size_t letters_in(const std::string& text) {
    if (g_utf8_validate(text.data(), static_cast<gssize>(text.size()), nullptr) == 0) return text.size();
    return static_cast<std::size_t>(g_utf8_strlen(text.data(), static_cast<gssize>(text.size())));
}

namespace records_detail {

namespace {

void sql_folded(sqlite3_context* context, int, sqlite3_value** values) {
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_value_text(values[0]));
    if (bytes == nullptr) return;  // NULL stays NULL
    const auto size = static_cast<std::size_t>(sqlite3_value_bytes(values[0]));
    const std::string text = folded(std::string_view(bytes, size));
    sqlite3_result_text64(context, text.data(), text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
}

}  // namespace

int add_folded_function(sqlite3* handle) {
    return sqlite3_create_function_v2(handle, "folded", 1,
                                      SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS, nullptr,
                                      sql_folded, nullptr, nullptr, nullptr);
}

}  // namespace records_detail

}  // namespace hardover

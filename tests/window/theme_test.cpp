// Colours that can be told apart and letters that are there.
#include "app/window/theme.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

#include "harness.hpp"
#include "support.hpp"

using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("Contrast is counted as WCAG 2.1 counts it") {
    // W3C, Understanding SC 1.4.3: black on white is 21:1; #777777 on white is 4.48:1.
    CHECK(contrast({0, 0, 0}, {255, 255, 255}) == Approx(21.0));
    CHECK(contrast({0x77, 0x77, 0x77}, {255, 255, 255}) == Approx(4.48).margin(0.005));
}

TEST_CASE("Every text stands out from what it stands on, in every theme, and most of all in high contrast") {
    for (const LookRow& look : looks()) {
        for (const ColourPair& pair : colour_pairs()) {
            INFO(look.label << ": role " << static_cast<int>(pair.text) << " on role "
                            << static_cast<int>(pair.on));
            // WCAG 2.1, SC 1.4.6: 7:1 for text where contrast is to be enhanced.
            const double least = look.look != Look::high_contrast ? pair.least : pair.least > 4 ? 7 : 4.5;
            CHECK(contrast(colour_of(look.look, pair.text), colour_of(look.look, pair.on)) >= least);
        }
    }
}

namespace {

// The letters of a UTF-8 text that a font has not.
std::string missing(const ImFont& font, const std::string& text) {
    std::string lacking;
    for (std::size_t i = 0; i < text.size();) {
        const auto first = static_cast<unsigned char>(text[i]);
        const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        unsigned letter = length == 1 ? first : first & (0xFFU >> (length + 1));
        for (std::size_t k = 1; k < length && i + k < text.size(); ++k) {
            letter = letter << 6U | (static_cast<unsigned char>(text[i + k]) & 0x3FU);
        }
        const bool known =
            letter < 0x20 ||
            (letter <= 0xFFFF && font.FindGlyphNoFallback(static_cast<ImWchar>(letter)) != nullptr);
        if (!known) lacking += text.substr(i, length) + " ";
        i += length;
    }
    return lacking;
}

}  // namespace

TEST_CASE("Every letter of the knowledge and of the signs the trade writes can be drawn") {
    Harness harness(800, 600, 1, Look::light, [](Kit&) {});
    Theme theme;
    REQUIRE_OK(theme.build(Look::light, 1, source_path("assets/fonts")));
    std::string text = "− ± × · ° ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ³ ² ≤ ≥ ≈ Ω → ↑ “ ” ‘ ’ – — … ′ ″ € Łódź Ångström Çeşme";
    for (const auto& file : std::filesystem::directory_iterator(source_path("knowledge"))) {
        if (file.path().extension() == ".yaml") text += file_text(file.path().string());
    }
    for (int type = 0; type < static_cast<int>(Type::count); ++type) {
        CHECK(missing(*theme.font(static_cast<Type>(type)), text).empty());
    }
}

TEST_CASE("Missing letters are said so, with the file that is wanted") {
    Harness harness(800, 600, 1, Look::light, [](Kit&) {});
    Theme theme;
    const auto built = theme.build(Look::light, 1, "/no/such/folder");
    REQUIRE_FALSE(built.ok());
    CHECK(built.error().where == "/no/such/folder/Inter-Regular.otf");
}

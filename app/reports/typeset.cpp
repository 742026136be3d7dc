// The typeface and the setting of text.
#include "app/reports/typeset.hpp"

#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

#include <algorithm>
#include <filesystem>

#if defined(__has_feature)
#define HARDOVER_SEEKS_LEAKS __has_feature(address_sanitizer)
#elif defined(__SANITIZE_ADDRESS__)
#define HARDOVER_SEEKS_LEAKS 1
#endif
#if HARDOVER_SEEKS_LEAKS
// fontconfig keeps its pointers as offsets, which the leak finder cannot follow, and pango 1.50 never gives
// back the list of typefaces it was handed.
extern "C" const char* __lsan_default_suppressions() {
    return "leak:libfontconfig.so\nleak:libpangoft2-1.0.so\n";
}
extern "C" const char* __lsan_default_options() {
    return "print_suppressions=0";
}
#endif

namespace hardover::typeset {

namespace {

constexpr const char* bundled_family = "Inter";
constexpr const char* bundled_files[] = {"Inter-Regular.otf", "Inter-SemiBold.otf"};
constexpr const char* other_family = "Sans";

using Config = std::shared_ptr<FcConfig>;

bool add_bundled(FcConfig* config, const std::string& folder) {
    for (const char* name : bundled_files) {
        const std::string file = folder + "/" + name;
        std::error_code failed;
        const bool added = std::filesystem::is_regular_file(file, failed) &&
                           FcConfigAppFontAddFile(config, reinterpret_cast<const FcChar8*>(file.c_str()));
        if (!added) return false;
    }
    return true;
}

bool any_typeface(FcConfig* config) {
    for (const FcSetName set : {FcSetSystem, FcSetApplication}) {
        const FcFontSet* fonts = FcConfigGetFonts(config, set);
        if (fonts != nullptr && fonts->nfont > 0) return true;
    }
    return false;
}

}  // namespace

std::string clean(const std::string& text) {
    const std::unique_ptr<char, decltype(&g_free)> valid(
        g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())), g_free);
    std::string visible;
    for (const char* at = valid.get(); *at != '\0';) {
        const char* next = g_utf8_next_char(at);
        visible += g_unichar_iscntrl(g_utf8_get_char(at)) != 0 ? std::string(" ") : std::string(at, next);
        at = next;
    }
    return visible;
}

std::string shortened(const std::string& text, std::size_t letters) {
    const std::string whole = clean(text);
    if (static_cast<std::size_t>(g_utf8_strlen(whole.c_str(), -1)) <= letters) return whole;
    const char* end = g_utf8_offset_to_pointer(whole.c_str(), static_cast<glong>(letters));
    return whole.substr(0, static_cast<std::size_t>(end - whole.c_str())) + "…";
}

std::string plain(const std::string& text) {
    std::string visible = clean(text);
    // A percent sign stays with its number.
    for (std::size_t at = visible.find(" %"); at != std::string::npos; at = visible.find(" %", at)) {
        visible.replace(at, 1, "\u00a0");
    }
    const std::unique_ptr<char, decltype(&g_free)> escaped(g_markup_escape_text(visible.c_str(), -1), g_free);
    return escaped.get();
}

std::string bold(const std::string& text) {
    return "<span weight=\"600\">" + plain(text) + "</span>";
}

double Block::height() const {
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout_.get(), &width, &height);
    return static_cast<double>(height) / PANGO_SCALE;
}

double Block::width() const {
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout_.get(), &width, &height);
    return static_cast<double>(width) / PANGO_SCALE;
}

void Block::draw(cairo_t* cairo, double x, double y) const {
    cairo_move_to(cairo, x, y);
    pango_cairo_show_layout(cairo, layout_.get());
}

Result<Typesetter> Typesetter::open(const std::string& fonts_folder) {
    const Config config(FcInitLoadConfigAndFonts(), FcConfigDestroy);
    if (!config)
        return Error{Error::Kind::not_found, "this computer's list of typefaces cannot be read", "", ""};
    const bool bundled = add_bundled(config.get(), fonts_folder);
    if (!any_typeface(config.get())) {
        return Error{Error::Kind::not_found, "there is no typeface to write the sheet with", fonts_folder,
                     "install the program again, or any font package"};
    }
    Typesetter typesetter;
    typesetter.family_ = bundled ? bundled_family : other_family;
    if (!bundled) {
        typesetter.remark_ = "the program's own typeface is missing in " + fonts_folder +
                             "; the sheet is set in this computer's instead";
    }
    typesetter.fonts_ = {pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT), g_object_unref};
    pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(typesetter.fonts_.get()), config.get());
    pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(typesetter.fonts_.get()), 72);
    typesetter.context_ = {pango_font_map_create_context(typesetter.fonts_.get()), g_object_unref};
    // The same sheet on every computer: no rounding to its screen, no language of its user.
    const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> options(
        cairo_font_options_create(), cairo_font_options_destroy);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    pango_cairo_context_set_font_options(typesetter.context_.get(), options.get());
    pango_context_set_round_glyph_positions(typesetter.context_.get(), FALSE);
    pango_context_set_language(typesetter.context_.get(), pango_language_from_string("en-us"));
    return typesetter;
}

Block Typesetter::set(const std::string& markup, double width, const Style& style) const {
    PangoLayout* layout = pango_layout_new(context_.get());
    const std::unique_ptr<PangoFontDescription, decltype(&pango_font_description_free)> font(
        pango_font_description_from_string(family_.c_str()), pango_font_description_free);
    pango_font_description_set_size(font.get(), static_cast<int>(style.size * PANGO_SCALE));
    pango_layout_set_font_description(layout, font.get());
    pango_layout_set_width(layout, static_cast<int>(std::max(width, 1.0) * PANGO_SCALE));
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_alignment(layout, style.align);
    pango_layout_set_line_spacing(layout, 1.08F);
    pango_layout_set_markup(layout, markup.c_str(), static_cast<int>(markup.size()));
    return Block(layout);
}

}  // namespace hardover::typeset

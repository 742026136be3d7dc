// Reads quantities and ranges as people write them. Numbers never pass through the locale.
#include <charconv>
#include <cmath>
#include <optional>

#include "rules/quantity/plain_text.hpp"
#include "rules/quantity/quantity.hpp"
#include "rules/quantity/units.hpp"

namespace hardover {
namespace {

using namespace quantity_detail;

struct Number {
    double value = 0;
    bool fraction = false;  // "3/4" without a whole number before it
};

// A number and its unit, not yet put together: in "20-25 lbf·ft" the unit comes later.
struct Amount {
    double number = 0;
    std::optional<Unit> unit;
    double more = 0;                // SI, the smaller parts: the 4 in of "3 ft 4 in"
    std::optional<Unit> last_unit;  // of the smallest part, which a bare spread is written in
};

// Reads from left to right. The first error is kept; after it every step gives nothing.
class Reader {
  public:
    explicit Reader(std::string_view text) : text_(plain_text(text)) { at_ = text_.skip_spaces(0); }

    const Error& error() const { return *error_; }
    bool at_end() { return text_.ends_at(at_ = text_.skip_spaces(at_)); }
    bool at_spread();
    bool at_range();
    std::optional<Amount> amount();
    Error fault(const std::string& expected, const std::string& cure = "") const;
    Error refuse(const std::string& what, const std::string& cure) const;

  private:
    std::optional<double> decimal();
    std::optional<double> below_the_line(double above);
    std::optional<Number> number();
    std::optional<Unit> unit();
    bool smaller_parts(Amount& amount, double sign);
    std::nullopt_t stop(Error error) {
        error_ = std::move(error);
        return std::nullopt;
    }
    bool fraction_at(std::size_t at) const;

    PlainText text_;
    std::size_t at_ = 0;
    std::optional<Error> error_;
};

Error Reader::refuse(const std::string& what, const std::string& cure) const {
    return {Error::Kind::bad_input, "cannot read '" + text_.original + "': " + what, "", cure};
}

Error Reader::fault(const std::string& expected, const std::string& cure) const {
    const std::string place = " at letter " + std::to_string(text_.letter[std::min(at_, text_.text.size())]);
    const std::string found =
        text_.ends_at(at_) ? ", where the text ends" : place + ", found '" + text_.letter_at(at_) + "'";
    return refuse("expected " + expected + found, cure);
}

bool Reader::at_spread() {
    at_ = text_.skip_spaces(at_);
    for (const std::string_view sign : {"+-", "+/-", "+ -"}) {
        if (std::string_view(text_.text).substr(at_).starts_with(sign)) {
            at_ = text_.skip_spaces(at_ + sign.size());
            return true;
        }
    }
    return false;
}

bool Reader::at_range() {
    at_ = text_.skip_spaces(at_);
    const std::size_t length = text_.at(at_) == '-' ? 1 : word_at(text_, at_) == "to" ? 2 : 0;
    if (length == 0) return false;
    at_ = text_.skip_spaces(at_ + length);
    return true;
}

// Digits with an optional point and power of ten.
std::optional<double> Reader::decimal() {
    const char* begin = text_.text.data() + at_;
    const char* end = text_.text.data() + text_.text.size();
    const bool starts = is_digit(text_.at(at_)) || (text_.at(at_) == '.' && is_digit(text_.at(at_ + 1)));
    if (!starts) return stop(fault("a number", "write it like 4 1/2 in, 450 mm or 2.5 turns"));
    double value = 0;
    const auto [after, problem] = std::from_chars(begin, end, value, std::chars_format::general);
    // Far beyond what can be measured; products of a few such numbers can still be worked with.
    const bool ordinary = problem == std::errc() && (value == 0 || (value >= 1e-60 && value <= 1e60));
    if (!ordinary) return stop(fault("a number of ordinary size", "give 0, or a number from 1e-60 to 1e60"));
    const std::string written(begin, after);
    at_ += written.size();
    if (text_.at(at_) != ',' || !is_digit(text_.at(at_ + 1))) return value;
    std::size_t last = at_ + 1;
    while (is_digit(text_.at(last))) ++last;
    const std::string behind = text_.text.substr(at_ + 1, last - at_ - 1);
    if (written.find('.') != std::string::npos) {
        return stop(
            fault("no comma behind a point", "write one point and nothing for thousands, such as 1234.5"));
    }
    const std::string comma = "write " + written + "." + behind + ", not " + written + "," + behind;
    const bool may_be_thousands = behind.size() == 3 && written.front() != '0';
    const std::string thousands = ", or " + written + behind + " for thousands";
    return stop(fault("a point, not a comma,", comma + (may_be_thousands ? thousands : "")));
}

// "/4" behind "3": the fraction, or an error where no sound number stands below the line.
std::optional<double> Reader::below_the_line(double above) {
    ++at_;  // the stroke
    std::size_t last = at_;
    while (is_digit(text_.at(last))) ++last;
    double below = 0;
    std::from_chars(text_.text.data() + at_, text_.text.data() + last, below);
    if (below == 0) return stop(fault("a whole number above nothing", "write a fraction like 3/4"));
    at_ = last;
    return above / below;
}

// Whether "3/4" stands here.
bool Reader::fraction_at(std::size_t at) const {
    if (!is_digit(text_.at(at))) return false;
    while (is_digit(text_.at(at))) ++at;
    return text_.at(at) == '/' && is_digit(text_.at(at + 1));
}

// "4.5", "3/4", "17 3/4", "17-3/4".
std::optional<Number> Reader::number() {
    const std::size_t start = at_;
    if (fraction_at(at_)) {
        const std::optional<double> above = decimal();
        const std::optional<double> fraction = above ? below_the_line(*above) : std::nullopt;
        if (!fraction) return std::nullopt;
        return Number{*fraction, true};
    }
    const std::optional<double> whole = decimal();
    if (!whole) return std::nullopt;
    bool only_digits = true;
    for (std::size_t i = start; i < at_; ++i) only_digits = only_digits && is_digit(text_.text[i]);
    const std::size_t next = text_.at(at_) == '-' ? at_ + 1 : text_.skip_spaces(at_);
    if (!only_digits || next == at_ || !fraction_at(next)) return Number{*whole, false};
    at_ = next;
    const std::optional<double> above = decimal();
    const std::optional<double> fraction = above ? below_the_line(*above) : std::nullopt;
    if (!fraction) return std::nullopt;
    if (*fraction < 1) return Number{*whole + *fraction, false};
    return stop(refuse("the fraction of a mixed number must be less than one",
                       "write 17 3/4, and a range with 'to'"));
}

// The unit that stands here, if any. Nothing is a unit where the text ends or a spread or a range goes on.
std::optional<Unit> Reader::unit() {
    const std::size_t start = text_.skip_spaces(at_);
    const std::optional<ScannedUnit> scanned = scan_unit(text_, start, Joining::loose);
    if (scanned) {
        at_ = scanned->end;
        return scanned->unit;
    }
    const char letter = text_.at(start);
    const bool other = letter == '\0' || letter == '+' || letter == '-' || is_digit(letter) || letter == '.';
    if (other || word_at(text_, start) == "to") return std::nullopt;
    std::size_t end = start;
    while (!text_.ends_at(end) && text_.at(end) != ' ') ++end;
    const Error unknown = unknown_unit(text_.text.substr(start, end - start));
    return stop(refuse(unknown.what + " at letter " + std::to_string(text_.letter[start]), unknown.cure));
}

// "4 in" behind "3 ft": the same dimension in a smaller unit.
bool Reader::smaller_parts(Amount& amount, double sign) {
    while (amount.unit && amount.last_unit->offset == 0) {
        const std::size_t next = text_.skip_spaces(at_);
        if (!is_digit(text_.at(next)) && text_.at(next) != '.') return true;
        at_ = next;
        const std::optional<Number> part = number();
        const std::optional<Unit> part_unit = part ? unit() : std::nullopt;
        if (error_) return false;
        const bool fits = part_unit && part_unit->dimension == amount.unit->dimension &&
                          part_unit->factor < amount.last_unit->factor && part_unit->offset == 0;
        if (!fits) {
            at_ = next;
            stop(fault("the end of the text or a part in a smaller unit than " + amount.last_unit->name,
                       "write it like 3 ft 4 in, 1 min 30 s or 4 1/2 in"));
            return false;
        }
        amount.more += sign * part->value * part_unit->factor;
        amount.last_unit = part_unit;
    }
    return true;
}

std::optional<Amount> Reader::amount() {
    at_ = text_.skip_spaces(at_);
    double sign = 1;
    if (text_.at(at_) == '-' || text_.at(at_) == '+') {
        sign = text_.at(at_) == '-' ? -1 : 1;
        ++at_;
    }
    at_ = text_.skip_spaces(at_);
    const std::optional<Number> first = number();
    if (!first) return std::nullopt;
    Amount amount;
    amount.number = sign * first->value;
    amount.unit = unit();
    if (error_) return std::nullopt;
    amount.last_unit = amount.unit;
    if (!smaller_parts(amount, sign)) return std::nullopt;
    return amount;
}

Quantity put_together(const Amount& amount, const Unit& unit) {
    Quantity quantity = quantity_in(amount.number, unit);
    quantity.value += amount.more;
    return quantity;
}

Result<std::optional<Unit>> fallback_of(std::string_view fallback_unit) {
    if (fallback_unit.empty()) return std::optional<Unit>();
    const Result<Unit> unit = find_unit(fallback_unit);
    if (!unit) return unit.error();
    return std::optional<Unit>(unit.value());
}

// The spread behind "±". A percentage is of the value, unless the value is a percentage itself. A unit
// written only behind the spread goes for both: "5.5 ± 0.1 turns".
Result<Quantity> with_spread(Reader& reader, const Amount& value, const std::optional<Unit>& fallback) {
    const std::optional<Amount> spread = reader.amount();
    if (!spread) return reader.error();
    if (!reader.at_end())
        return reader.fault("the end of the text after the spread", "write it like 36 in ± 1/16 in");
    const bool percent = spread->unit && spread->unit->name == "%";
    const Unit plain = find_unit("count").value();
    std::optional<Unit> unit = value.unit;
    if (!unit && !(percent && fallback)) unit = spread->unit;
    if (!unit) unit = fallback ? *fallback : plain;

    Quantity quantity = put_together(value, *unit);
    const Unit spread_unit = spread->unit ? *spread->unit : value.last_unit ? *value.last_unit : *unit;
    if (percent && unit->name != "%") {
        quantity.spread = std::abs(quantity.value) * spread->number / 100;
    } else if (spread_unit.dimension == quantity.dimension) {
        quantity.spread = spread->number * spread_unit.factor + spread->more;
    } else {
        return reader.refuse("the value is a " + name_of(quantity.dimension) + " and its spread a " +
                                 name_of(spread_unit.dimension),
                             "give both in units of one kind, such as 36 in ± 1/16 in");
    }
    if (quantity.spread < 0) {
        return reader.refuse("a spread is never negative", "write it like 36 in ± 1/16 in");
    }
    return quantity;
}

Result<Quantity> single(Reader& reader, const Amount& value, const std::optional<Unit>& fallback) {
    if (reader.at_spread()) return with_spread(reader, value, fallback);
    if (!reader.at_end()) return reader.fault("the end of the text", "give one value, such as 4 1/2 in");
    const Unit unit = value.unit ? *value.unit : fallback ? *fallback : find_unit("count").value();
    return put_together(value, unit);
}

}  // namespace

Result<Quantity> read_quantity(std::string_view text, std::string_view fallback_unit) {
    const Result<std::optional<Unit>> fallback = fallback_of(fallback_unit);
    if (!fallback) return fallback.error();
    Reader reader(text);
    const std::optional<Amount> value = reader.amount();
    if (!value) return reader.error();
    if (reader.at_range()) {
        return reader.refuse("this is a range where one value is needed",
                             "give one value, with ± for its spread if it has one");
    }
    return single(reader, *value, fallback.value());
}

Result<QuantityRange> read_range(std::string_view text, std::string_view fallback_unit) {
    const Result<std::optional<Unit>> fallback = fallback_of(fallback_unit);
    if (!fallback) return fallback.error();
    Reader reader(text);
    const std::optional<Amount> low = reader.amount();
    if (!low) return reader.error();
    if (!reader.at_range()) {
        const Result<Quantity> value = single(reader, *low, fallback.value());
        if (!value) return value.error();
        return QuantityRange{value.value(), value.value()};
    }
    const std::optional<Amount> high = reader.amount();
    if (!high) return reader.error();
    if (!reader.at_end())
        return reader.fault("the end of the text after the range", "write it like 20-25 lbf·ft");

    const Unit plain = find_unit("count").value();
    const Unit otherwise = fallback.value() ? *fallback.value() : plain;
    const Unit high_unit = high->unit ? *high->unit : low->unit ? *low->unit : otherwise;
    const Unit low_unit = low->unit ? *low->unit : high_unit;
    const QuantityRange range{put_together(*low, low_unit), put_together(*high, high_unit)};
    if (range.low.dimension != range.high.dimension) {
        return reader.refuse(
            "one end is a " + name_of(range.low.dimension) + ", the other a " + name_of(range.high.dimension),
            "give both ends in units of one kind");
    }
    if (range.low.value > range.high.value) {
        return reader.refuse("the low end is above the high end", "write the low end first");
    }
    return range;
}

Result<Quantity> read_quantity_of(std::string_view text, const Unit& expected) {
    const Result<Quantity> quantity = read_quantity(text);
    if (!quantity || quantity.value().dimension == expected.dimension) return quantity;
    const Dimension given = quantity.value().dimension;
    const Dimension mass{.mass = 1};
    const std::string example = show(quantity_in(4.5, expected), expected);
    std::string cure = "write it like " + example;
    if (given.is_number()) cure += ", with its unit";
    if (given == mass && expected.dimension == Dimension{.length = 1, .mass = 1, .time = -2}) {
        cure = "write lbf for a force";
    } else if (given == mass && expected.dimension == Dimension{.length = 3}) {
        cure = "write fl oz for a volume";
    }
    std::string what = "'";
    what.append(text).append("' is a " + name_of(given));
    what.append(", expected a " + name_of(expected.dimension) + " such as " + example);
    return Error{Error::Kind::bad_input, what, "", cure};
}

}  // namespace hardover

// The names under which the shop's settings stand in the records. Once written, they stay.
#include "app/jobs/shop.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace hardover {

namespace {

constexpr const char* name_key = "shop_name";
constexpr const char* units_key = "units";
constexpr const char* rate_key = "shop_rate";
constexpr const char* paper_key = "paper";
constexpr const char* waters_key = "new_job_waters";
constexpr const char* vessel_use_key = "new_job_vessel_use";

constexpr double most_rate = 100000;

}  // namespace

Result<double> read_rate(const std::string& text) {
    const Error error{Error::Kind::bad_input, "'" + text + "' is no price of an hour", "",
                      "a number such as 95 or 95.50, without a sign; empty: as in the knowledge"};
    const std::size_t first = text.find_first_not_of(' ');
    if (first == std::string::npos) return 0.0;
    const char* const end = text.data() + text.find_last_not_of(' ') + 1;
    double rate = 0;
    const auto read = std::from_chars(text.data() + first, end, rate);
    const bool whole = read.ec == std::errc() && read.ptr == end;
    if (!whole || !std::isfinite(rate) || rate < 0 || rate > most_rate) return error;
    return rate;
}

std::string rate_text(double rate) {
    return rate == 0 ? "" : fmt::format("{}", rate);
}

Result<ShopSettings> read_shop(const Store& store) {
    const auto kept = store.settings();
    if (!kept) return kept.error();
    const auto value = [&kept](const char* key) {
        const auto at = kept.value().find(key);
        return at == kept.value().end() ? std::string() : at->second;
    };
    ShopSettings shop;
    shop.name = value(name_key);
    shop.ways.units = value(units_key) == "metric" ? UnitSystem::metric : UnitSystem::us;
    const Result<double> rate = read_rate(value(rate_key));
    shop.ways.rate = rate ? rate.value() : 0;
    shop.a4 = value(paper_key) == "a4";
    shop.waters = value(waters_key);
    shop.vessel_use = value(vessel_use_key);
    return shop;
}

Result<void> keep_shop(Store& store, const ShopSettings& shop) {
    BesideJobs change;
    const auto put = [&change](const char* key, const std::string& value) {
        change.settings[key] = value.empty() ? std::nullopt : std::optional<std::string>(value);
    };
    put(name_key, shop.name);
    put(units_key, shop.ways.units == UnitSystem::metric ? "metric" : "");
    put(rate_key, rate_text(shop.ways.rate));
    put(paper_key, shop.a4 ? "a4" : "");
    put(waters_key, shop.waters);
    put(vessel_use_key, shop.vessel_use);
    return store.keep(change);
}

}  // namespace hardover

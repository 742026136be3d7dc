// The file of counts: JSON, read strictly, because a count that is half understood would move the odds of
// every later job.
#include "app/jobs/count_file.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <utility>
#include <vector>

#include "app/jobs/json_place.hpp"

namespace hardover {

namespace {

using nlohmann::json;
using nlohmann::ordered_json;

constexpr int form = 1;
constexpr const char* form_field = "hardover_counts";
constexpr std::int64_t greatest_count = 1'000'000'000;
constexpr std::size_t longest_id = 100;
constexpr const char* ask_again = "ask for the file again; nothing of it was used";

bool all_of_letters(const std::string& text, const char* letters) {
    return !text.empty() && text.size() <= longest_id && text.find_first_not_of(letters) == std::string::npos;
}

bool is_id(const std::string& text) {
    return all_of_letters(text, "abcdefghijklmnopqrstuvwxyz0123456789_");
}

bool is_history(const std::string& text) {
    return text == history_not_known || is_id(text);
}

bool is_shop(const std::string& text) {
    return all_of_letters(text, "abcdef0123456789");
}

// JSON without a field given twice, or where it stops being JSON.
Result<json> parse(const std::string& text, const std::string& file) {
    try {
        json parsed = json::parse(text);
        const std::optional<RepeatedKey> twice = repeated_key(text);
        if (!twice) return parsed;
        return Error{Error::Kind::bad_input, "the field '" + twice->key + "' is given twice",
                     file + ":" + line_and_column(text, twice->byte), ask_again};
    } catch (const json::parse_error& refused) {
        const std::size_t byte = refused.byte == 0 ? 0 : refused.byte - 1;  // the library counts from 1
        return Error{Error::Kind::bad_input,
                     "this is not a whole file of counts: its JSON breaks off or is wrong",
                     file + ":" + line_and_column(text, byte), ask_again};
    }
}

// Reads fields out of parsed JSON; keeps the first fault with the way to it.
class CountReader {
  public:
    CountReader(std::string file, const std::string& text) : file_(std::move(file)), text_(text) {}

    const std::optional<Error>& fault() const { return fault_; }

    // Says that something on the way `at` is wrong.
    void refuse(const std::string& at, const std::string& what) {
        if (fault_) return;
        const std::string where = file_ + ":" + json_place(text_, at) + (at.empty() ? "" : ", at " + at);
        fault_ = Error{Error::Kind::bad_input, what, where, ask_again};
    }

    // Whether `value` is an object with exactly these fields.
    bool has_fields(const json& value, const std::string& at, const std::vector<std::string>& fields) {
        if (!value.is_object()) return refuse(at, "this is not an object"), false;
        for (const std::string& field : fields) {
            if (!value.contains(field)) refuse(at, "the field '" + field + "' is missing");
        }
        for (const auto& [field, ignored] : value.items()) {
            if (std::find(fields.begin(), fields.end(), field) == fields.end()) {
                refuse(at, "there is no field '" + field + "'");
            }
        }
        return !fault_;
    }

    std::int64_t number(const json& value, const std::string& at, std::int64_t least) {
        if (value.is_number_integer() && value >= least && value <= greatest_count) {
            return value.get<std::int64_t>();
        }
        refuse(at, "this is not a whole number from " + std::to_string(least) + " to a thousand million");
        return least;
    }

    // {id: jobs}; ids with no jobs are left out.
    std::map<std::string, std::int64_t> counts(const json& value, const std::string& at) {
        std::map<std::string, std::int64_t> counts;
        each(value, at, is_id, [&](const std::string& id, const json& jobs, const std::string& here) {
            if (const std::int64_t count = number(jobs, here, 0); count > 0) counts[id] = count;
        });
        return counts;
    }

    ClosedJobs jobs(const json& value, const std::string& at) {
        ClosedJobs read;
        each(value["jobs"], at + "jobs", is_history,
             [&](const std::string& history, const json& causes, const std::string& here) {
                 auto found = counts(causes, here);
                 if (!found.empty()) read.causes[history] = std::move(found);
             });
        each(value["readings"], at + "readings", is_id,
             [&](const std::string& cause, const json& findings, const std::string& here) {
                 each(findings, here, is_id,
                      [&](const std::string& finding, const json& readings, const std::string& there) {
                          auto found = counts(readings, there);
                          if (!found.empty()) read.readings[cause][finding] = std::move(found);
                      });
             });
        return read;
    }

    void shop(const json& value, const std::string& at, Shops& shops) {
        if (!has_fields(value, at, {"shop", "number", "jobs", "readings"})) return;
        const json& id = value["shop"];
        if (!id.is_string() || !is_shop(id.get<std::string>())) {
            return refuse(at + ".shop", "this is not a shop's id");
        }
        ShopCounts counts{number(value["number"], at + ".number", 1), jobs(value, at + ".")};
        if (!shops.emplace(id.get<std::string>(), std::move(counts)).second) {
            refuse(at + ".shop", "this shop stands in the file twice");
        }
    }

  private:
    template <typename IsId, typename Take>
    void each(const json& value, const std::string& at, IsId is_one, Take take) {
        if (!value.is_object()) return refuse(at, "this is not an object");
        for (const auto& [id, inner] : value.items()) {
            if (!is_one(id)) return refuse(at, "'" + id.substr(0, longest_id) + "' is not an id");
            take(id, inner, at + "." + id);
        }
    }

    std::string file_;
    const std::string& text_;
    std::optional<Error> fault_;
};

ordered_json jobs_json(const ClosedJobs& jobs) {
    const auto object = [](const auto& map) {
        return map.empty() ? ordered_json::object() : ordered_json(map);
    };
    return {{"jobs", object(jobs.causes)}, {"readings", object(jobs.readings)}};
}

}  // namespace

Result<Shops> merged(const Shops& a, const Shops& b) {
    Shops all = a;
    for (const auto& [shop, counts] : b) {
        const auto [known, is_new] = all.emplace(shop, counts);
        if (is_new || known->second == counts) continue;
        if (known->second.number == counts.number) {
            return Error{Error::Kind::bad_input,
                         "there are two different counts with number " + std::to_string(counts.number) +
                             " of shop " + shop,
                         "", "let that shop export again, and merge the new file"};
        }
        if (known->second.number < counts.number) known->second = counts;
    }
    return all;
}

ClosedJobs sum_of(const Shops& shops) {
    ClosedJobs sum;
    for (const auto& [shop, counts] : shops) add(sum, counts.jobs);
    return sum;
}

std::string count_file_text(const Shops& shops) {
    ordered_json list = ordered_json::array();
    for (const auto& [shop, counts] : shops) {
        ordered_json entry = {{"shop", shop}, {"number", counts.number}};
        entry.update(jobs_json(counts.jobs));
        list.push_back(std::move(entry));
    }
    return ordered_json{{form_field, form}, {"shops", std::move(list)}}.dump(2) + "\n";
}

Result<Shops> read_count_file(const std::string& text, const std::string& file) {
    const auto parsed = parse(text, file);
    if (!parsed.ok()) return parsed.error();
    const json& top = parsed.value();
    if (!top.is_object() || !top.contains(form_field)) {
        return Error{Error::Kind::bad_input, "this is not a file of counts",
                     file + ":" + json_place(text, ""), "name a file made by: hardover learning export FILE"};
    }
    if (top[form_field].is_number_integer() && top[form_field] > form) {
        return Error{Error::Kind::unsupported, "a newer version of Hardover made this file of counts",
                     file + ":" + json_place(text, form_field), "merge it with the newer version"};
    }
    CountReader reader(file, text);
    Shops shops;
    if (reader.has_fields(top, "", {form_field, "shops"})) {
        if (top[form_field] != form) reader.refuse(form_field, "there is no such form of counts");
        if (!top["shops"].is_array()) reader.refuse("shops", "this is not a list");
    }
    for (std::size_t i = 0; !reader.fault() && i < top["shops"].size(); ++i) {
        reader.shop(top["shops"][i], "shops[" + std::to_string(i) + "]", shops);
    }
    if (reader.fault()) return *reader.fault();
    return shops;
}

std::string counts_text(const ClosedJobs& jobs) {
    return jobs_json(jobs).dump();
}

Result<ClosedJobs> read_counts(const std::string& text, const std::string& where) {
    const auto parsed = parse(text, where);
    if (!parsed.ok()) return parsed.error();
    CountReader reader(where, text);
    ClosedJobs jobs;
    if (reader.has_fields(parsed.value(), "", {"jobs", "readings"})) jobs = reader.jobs(parsed.value(), "");
    if (reader.fault()) return *reader.fault();
    return jobs;
}

}  // namespace hardover

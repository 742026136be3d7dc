// The JSON library would turn 1e300 into a whole number without a word: every range is looked at first.
#include "app/jobs/json_fields.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace hardover {

using nlohmann::json;

namespace {

constexpr int greatest = 1'000'000'000;
constexpr int deepest = 64;
constexpr int not_whole = 501;  // of the library's other errors

// Lists and objects open at once, at the most.
int depth_of(std::string_view text) {
    int depth = 0;
    int most = 0;
    bool in_text = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '"') in_text = !in_text;
        if (in_text && c == '\\') ++at;
        if (in_text) continue;
        if (c == '[' || c == '{') most = std::max(most, ++depth);
        if (c == ']' || c == '}') --depth;
    }
    return most;
}

bool is_whole(const json& value, std::int64_t least, std::int64_t most) {
    if (value.is_number_unsigned() && value.get<std::uint64_t>() > INT64_MAX) return false;
    return value.is_number_integer() && value.get<std::int64_t>() >= least &&
           value.get<std::int64_t>() <= most;
}

bool is_number(const json& value, double least, double most) {
    return value.is_number() && value.get<double>() >= least && value.get<double>() <= most;
}

}  // namespace

json shallow_json(std::string_view text) {
    if (depth_of(text) > deepest) return json::value_t::discarded;
    return json::parse(text, nullptr, false);
}

int whole_at(const json& object, const char* field, int least, int most) {
    const json& value = object.at(field);
    if (is_whole(value, least, most)) return value.get<int>();
    throw json::other_error::create(
        not_whole, std::string("'") + field + "' is not a whole number from " + std::to_string(least),
        &object);
}

std::uint64_t seed_at(const json& object, const char* field) {
    const json& value = object.at(field);
    if (value.is_number_unsigned()) return value.get<std::uint64_t>();
    throw json::other_error::create(not_whole, std::string("'") + field + "' is not a whole number from 0",
                                    &object);
}

JsonFields::JsonFields(const std::string& text) : body_(std::make_unique<json>(shallow_json(text))) {
    if (!body_->is_object()) fault_ = "has a body that cannot be read";
}

JsonFields::~JsonFields() = default;

bool JsonFields::has(const char* name) const {
    return body_->is_object() && body_->contains(name);
}

std::string JsonFields::text(const char* name) {
    const json* field = find(name);
    if (field == nullptr) return "";
    if (!field->is_string()) return wrong(name, "a text"), "";
    return field->get<std::string>();
}

std::string JsonFields::text_if_there(const char* name) {
    return has(name) ? text(name) : "";
}

bool JsonFields::flag(const char* name) {
    const json* field = find(name);
    if (field == nullptr) return false;
    if (!field->is_boolean()) return wrong(name, "true or false"), false;
    return field->get<bool>();
}

std::int64_t JsonFields::whole(const char* name, std::int64_t least, std::int64_t most) {
    const json* field = find(name);
    if (field == nullptr) return least;
    if (!is_whole(*field, least, most)) {
        return wrong(name, "a whole number from " + std::to_string(least)), least;
    }
    return field->get<std::int64_t>();
}

int JsonFields::count(const char* name, int least) {
    return static_cast<int>(whole(name, least, greatest));
}

int JsonFields::day(const char* name) {
    return static_cast<int>(whole(name, -greatest, greatest));
}

std::uint64_t JsonFields::seed(const char* name) {
    const json* field = find(name);
    if (field == nullptr) return 0;
    if (!field->is_number_unsigned()) return wrong(name, "a whole number from 0"), 0;
    return field->get<std::uint64_t>();
}

double JsonFields::number(const char* name) {
    const json* field = find(name);
    if (field == nullptr) return 0;
    if (!is_number(*field, -greatest, greatest)) return wrong(name, "a number of ordinary size"), 0;
    return field->get<double>();
}

double JsonFields::chance(const char* name) {
    const json* field = find(name);
    if (field == nullptr) return 0;
    if (!is_number(*field, 0, 1)) return wrong(name, "a number from 0 to 1"), 0;
    return field->get<double>();
}

std::vector<std::string> JsonFields::texts(const char* name) {
    const json* field = find(name);
    if (field == nullptr) return {};
    std::vector<std::string> texts;
    bool fits = field->is_array();
    for (std::size_t i = 0; fits && i < field->size(); ++i) {
        fits = (*field)[i].is_string();
        if (fits) texts.push_back((*field)[i].get<std::string>());
    }
    if (!fits) return wrong(name, "a list of texts"), std::vector<std::string>();
    return texts;
}

std::vector<std::string> JsonFields::texts_in(const char* name, const std::vector<const char*>& names) {
    if (!has(name)) return {};
    const json& object = (*body_)[name];
    std::vector<std::string> texts;
    for (const char* part : names) {
        const bool is_text = object.is_object() && object.contains(part) && object[part].is_string();
        if (!is_text) return wrong(name, std::to_string(names.size()) + " texts"), std::vector<std::string>();
        texts.push_back(object[part].get<std::string>());
    }
    return texts;
}

std::vector<std::pair<std::string, bool>> JsonFields::flagged_texts(const char* name, const char* text,
                                                                    const char* flag) {
    if (!has(name)) return {};
    const json& list = (*body_)[name];
    std::vector<std::pair<std::string, bool>> pairs;
    bool fits = list.is_array();
    for (std::size_t i = 0; fits && i < list.size(); ++i) {
        const json& one = list[i];
        fits = one.is_object() && one.contains(text) && one[text].is_string() && one.contains(flag) &&
               one[flag].is_boolean();
        if (fits) pairs.emplace_back(one[text].get<std::string>(), one[flag].get<bool>());
    }
    if (fits) return pairs;
    wrong(name,
          std::string("a list of objects, each with a text '") + text + "' and '" + flag + "' true or false");
    return {};
}

std::vector<int> JsonFields::counts(const char* name, std::size_t how_many) {
    const json* field = find(name);
    std::vector<int> counts(how_many, 0);
    if (field == nullptr) return counts;
    bool fits = field->is_array() && field->size() == how_many;
    for (std::size_t i = 0; fits && i < how_many; ++i) {
        fits = is_whole((*field)[i], 0, greatest);
        if (fits) counts[i] = (*field)[i].get<int>();
    }
    if (!fits) wrong(name, "a list of " + std::to_string(how_many) + " whole numbers from 0");
    return counts;
}

void JsonFields::refuse(const std::string& fault) {
    if (fault_.empty()) fault_ = fault;
}

const json* JsonFields::find(const char* name) {
    if (!body_->is_object()) return nullptr;
    const auto field = body_->find(name);
    if (field != body_->end()) return &*field;
    refuse(std::string("lacks '") + name + "'");
    return nullptr;
}

void JsonFields::wrong(const char* name, const std::string& expected) {
    refuse(std::string("has a '") + name + "' that is not " + expected);
}

}  // namespace hardover

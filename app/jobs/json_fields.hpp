// The fields of a JSON object, asked for one by one with their type and range, so that nothing a file or the
// records hold is taken for what it is not. Knows no format built on JSON.
#pragma once

#include <cstdint>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace hardover {

// JSON as a value; discarded when the text is no JSON, or is nested so deep that a walk over the value could
// run out of stack.
nlohmann::json shallow_json(std::string_view text);

// For readers that let the JSON library throw: a field as a whole number of this range, or
// nlohmann::json::other_error. The library itself would turn 1e300 into one without a word.
int whole_at(const nlohmann::json& object, const char* field, int least = 0, int most = 1'000'000'000);
std::uint64_t seed_at(const nlohmann::json& object, const char* field);

class JsonFields {
  public:
    // Of a text, which need not be JSON.
    explicit JsonFields(const std::string& text);
    ~JsonFields();
    JsonFields(const JsonFields&) = delete;
    JsonFields& operator=(const JsonFields&) = delete;

    bool has(const char* name) const;
    std::string text(const char* name);
    std::string text_if_there(const char* name);  // "" where it is not
    bool flag(const char* name);
    std::int64_t whole(const char* name, std::int64_t least, std::int64_t most);
    int count(const char* name, int least = 0);  // up to a thousand million
    int day(const char* name);             // of the calendar, from 1970; a clock that lost its time is before
    std::uint64_t seed(const char* name);  // any of 64 bits
    double number(const char* name);       // within a thousand million either way
    double chance(const char* name);       // 0 to 1
    std::vector<std::string> texts(const char* name);
    // The texts of an object under these names; none where the object is not there, or is wrong.
    std::vector<std::string> texts_in(const char* name, const std::vector<const char*>& names);
    // Of a list of objects the text and the flag under these names; none where the list is not there.
    std::vector<std::pair<std::string, bool>> flagged_texts(const char* name, const char* text,
                                                            const char* flag);
    std::vector<int> counts(const char* name, std::size_t how_many);

    // The first fault, "lacks 'sequence'", as the end of a sentence; "" as long as all was as asked for. What
    // a wrong field gives is of no use.
    const std::string& fault() const { return fault_; }
    void refuse(const std::string& fault);

  private:
    const nlohmann::json* find(const char* name);
    void wrong(const char* name, const std::string& expected);

    std::unique_ptr<nlohmann::json> body_;
    std::string fault_;
};

}  // namespace hardover

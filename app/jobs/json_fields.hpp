// The fields of a JSON object, asked for one by one with their type and range, so that nothing a file or the
// records hold is taken for what it is not. Knows no format built on JSON.
#pragma once

#include <cstdint>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

namespace hardover {

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
    std::uint64_t seed(const char* name);        // any of 64 bits
    double number(const char* name);             // within a thousand million either way
    double chance(const char* name);             // 0 to 1
    std::vector<std::string> texts(const char* name);
    // The texts of an object under these names; none where the object is not there, or is wrong.
    std::vector<std::string> texts_in(const char* name, const std::vector<const char*>& names);
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

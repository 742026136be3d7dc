#include "app/jobs/csv.hpp"

namespace hardover {

namespace {

bool is_number(const std::string& field) {
    return field.find_first_not_of("0123456789.-+") == std::string::npos;
}

std::string csv_field(const std::string& field) {
    const bool formula = !field.empty() && std::string("=+-@\t\r").find(field.front()) != std::string::npos &&
                         !is_number(field);
    const std::string text = formula ? "'" + field : field;
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char letter : text) {
        if (letter == '"') quoted += '"';
        quoted += letter;
    }
    return quoted + "\"";
}

}  // namespace

std::string csv_record(const std::vector<std::string>& fields) {
    std::string record;
    for (std::size_t i = 0; i < fields.size(); ++i) record += (i == 0 ? "" : ",") + csv_field(fields[i]);
    return record + "\r\n";
}

}  // namespace hardover

#include "app/classroom/csv.hpp"

#include <glib.h>

namespace hardover::classroom {

namespace {

class CsvReader {
  public:
    CsvReader(const std::string& text, const std::string& name) : text_(text), name_(name) {
        if (text_.compare(0, 3, "\xEF\xBB\xBF") == 0) at_ = 3;
    }

    Result<std::vector<std::vector<CsvField>>> read() {
        const char* wrong = nullptr;
        if (g_utf8_validate(text_.data(), static_cast<gssize>(text_.size()), &wrong) == FALSE) {
            while (text_.data() + at_ < wrong) step();
            return fault(line_, column_, "this is no UTF-8 text", "save the table as CSV in UTF-8");
        }
        while (at_ < text_.size()) {
            if (auto row = read_row(); !row) return row.error();
        }
        return std::move(rows_);
    }

  private:
    Error fault(int line, int column, const std::string& what, const std::string& cure) const {
        return {Error::Kind::bad_input, what, place_in(name_, line, column), cure};
    }

    bool at_line_end() const {
        return text_[at_] == '\n' || (text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n');
    }

    // On to the next byte; a letter of several bytes is one column.
    void step() {
        if (text_[at_] == '\n') {
            ++line_;
            column_ = 0;
        }
        ++at_;
        if (at_ >= text_.size() || (static_cast<unsigned char>(text_[at_]) & 0xc0) != 0x80) ++column_;
    }

    Result<void> read_row() {
        std::vector<CsvField> row;
        while (true) {
            auto field = read_field();
            if (!field) return field.error();
            row.push_back(std::move(field).value());
            if (at_ >= text_.size()) break;
            if (text_[at_] == ',') {
                step();
                continue;
            }
            if (text_[at_] == '\r') step();
            step();
            break;
        }
        if (row.size() > 1 || !row.front().text.empty()) rows_.push_back(std::move(row));
        return {};
    }

    Result<CsvField> read_field() {
        CsvField field{"", line_, column_};
        if (at_ < text_.size() && text_[at_] == '"') return read_quoted(std::move(field));
        while (at_ < text_.size() && text_[at_] != ',' && !at_line_end()) {
            if (text_[at_] == '"') {
                return fault(line_, column_, "a quote stands inside a field that does not begin with one",
                             "put the whole field in quotes, and each quote in it twice");
            }
            field.text += text_[at_];
            step();
        }
        return field;
    }

    Result<CsvField> read_quoted(CsvField field) {
        step();
        while (at_ < text_.size()) {
            const bool quote = text_[at_] == '"';
            const bool doubled = quote && at_ + 1 < text_.size() && text_[at_ + 1] == '"';
            if (quote && !doubled) {
                step();
                if (at_ >= text_.size() || text_[at_] == ',' || at_line_end()) return field;
                return fault(line_, column_, "after the closing quote a comma or the end of the line is due",
                             "put the whole field in quotes");
            }
            field.text += text_[at_];
            step();
            if (doubled) step();
        }
        return fault(field.line, field.column, "this quote is never closed", "close it");
    }

    const std::string& text_;
    const std::string& name_;
    std::size_t at_ = 0;
    int line_ = 1;
    int column_ = 1;
    std::vector<std::vector<CsvField>> rows_;
};

}  // namespace

Result<std::vector<std::vector<CsvField>>> read_csv(const std::string& text, const std::string& name) {
    return CsvReader(text, name).read();
}

std::string place_in(const std::string& name, int line, int column) {
    return name + ":" + std::to_string(line) + ":" + std::to_string(column);
}

}  // namespace hardover::classroom

#include "app/reports/job_report.hpp"

#include <sstream>

namespace hardover {

namespace {

int letters(const std::string& text) {
    int count = 0;
    for (const unsigned char byte : text) count += (byte & 0xC0) != 0x80 ? 1 : 0;
    return count;
}

// Collects the report's lines.
class Sheet {
  public:
    explicit Sheet(int width) : width_(width) {}

    void heading(const std::string& text) {
        text_ += "\n" + text + "\n" + std::string(letters(text), '-') + "\n";
    }
    void line(const std::string& text) { text_ += wrapped(text, width_) + "\n"; }
    void item(const std::string& text) { text_ += "  - " + wrapped(text, width_ - 4, 4) + "\n"; }
    void items(const std::string& title, const std::vector<std::string>& texts) {
        if (texts.empty()) return;
        heading(title);
        for (const std::string& text : texts) item(text);
    }
    std::string text() && { return std::move(text_); }

  private:
    int width_;
    std::string text_;
};

void add_rig(Sheet& sheet, const JobPage& page) {
    // What was taken for granted and used stands under "Assumed".
    std::vector<std::string> told;
    for (const RigLine& line : page.rig) {
        if (!line.value.empty() && !line.assumed) told.push_back(line.name + ": " + line.value);
    }
    sheet.items("Rig", told);
}

void add_findings(Sheet& sheet, const JobPage& page) {
    if (page.answers.empty()) return;
    sheet.heading("Found");
    for (const AnswerLine& line : page.answers)
        sheet.item(line.name + ": " + line.answer + " (" + line.origin + ")");
}

void add_causes(Sheet& sheet, const JobPage& page) {
    sheet.heading("Likely causes");
    for (const CauseLine& cause : page.causes) {
        sheet.item(cause.percent + "  " + cause.name + (cause.state.empty() ? "" : " (" + cause.state + ")"));
    }
    if (!page.not_listed.empty()) sheet.item(page.not_listed);
    if (!page.several.empty()) sheet.item(page.several);
    if (!page.conflict.empty()) sheet.line(page.conflict);
}

void add_sheets(Sheet& sheet, const JobPage& page) {
    for (const SheetText& worked : page.sheets) {
        sheet.heading("Worksheet: " + worked.name);
        std::string missing;
        for (const SheetLine& input : worked.inputs) {
            if (input.known) {
                sheet.item(input.name + ": " + input.value + (input.assumed ? " (assumed)" : ""));
            } else {
                missing += (missing.empty() ? "" : ", ") + input.name;
            }
        }
        for (const SheetLine& result : worked.results) {
            if (result.known) sheet.item(result.name + " = " + result.value);
        }
        if (!missing.empty()) sheet.item("Still needs: " + missing);
        for (const std::string& advice : worked.advice) sheet.line(advice);
        if (!worked.refused.empty()) sheet.line(worked.refused);
        if (!worked.source.empty()) sheet.line(worked.source);
    }
}

void add_events(Sheet& sheet, const JobPage& page) {
    if (page.events.empty()) return;
    sheet.heading("What was done, in order");
    for (const EventLine& event : page.events) {
        if (event.counts) sheet.item(event.at + "  " + event.text);
    }
}

}  // namespace

std::string wrapped(const std::string& text, int width, int hang) {
    std::istringstream words(text);
    std::string word;
    std::string result;
    int column = 0;
    while (words >> word) {
        const int size = letters(word);
        if (column > 0 && column + 1 + size > width) {
            result += "\n" + std::string(hang, ' ');
            column = 0;
        } else if (column > 0) {
            result += " ";
            ++column;
        }
        result += word;
        column += size;
    }
    return result;
}

std::string job_report(const JobPage& page, int width) {
    Sheet sheet(width);
    sheet.line(page.title + " - " + page.phase);
    if (!page.words.empty()) sheet.line("In the customer's words: \"" + page.words + "\"");
    if (!page.other_knowledge.empty()) sheet.line(page.other_knowledge);
    if (!page.apart.empty()) sheet.line(page.apart);
    sheet.items("Left out, not understood with this knowledge", page.left_out);
    sheet.items("STOP", page.stops);
    std::vector<std::string> cautions;
    for (const CautionText& caution : page.cautions) {
        cautions.push_back(caution.name + ": " + caution.hurts + " " + caution.avoid);
    }
    sheet.items("Cautions", cautions);
    add_rig(sheet, page);
    add_findings(sheet, page);
    add_causes(sheet, page);
    add_sheets(sheet, page);
    sheet.items("Assumed", page.assumptions);
    sheet.items("Notes", page.notes);
    sheet.items("Photos", page.photos);
    add_events(sheet, page);
    sheet.items("Not ours to decide", page.deferrals);
    return std::move(sheet).text();
}

}  // namespace hardover

// An item's id in words, without making the item.
#include <glib.h>

#include <sstream>

#include "app/classroom/figures.hpp"
#include "app/study/authored.hpp"

namespace hardover::classroom {

namespace {

std::vector<std::string> pieces_of(const std::string& id) {
    std::vector<std::string> pieces;
    std::istringstream text(id);
    for (std::string piece; std::getline(text, piece, '/');) pieces.push_back(piece);
    return pieces;
}

template <typename E>
std::string name_in(const std::vector<E>& entries, const std::string& id) {
    const Index index = find(entries, id);
    return index == none ? id : entries[static_cast<std::size_t>(index)].name;
}

std::string reading_name(const Knowledge& knowledge, const std::string& finding, const std::string& reading) {
    const Index index = find(knowledge.findings, finding);
    if (index == none) return reading;
    const Finding& entry = knowledge.findings[static_cast<std::size_t>(index)];
    const int which = find_reading(entry, reading);
    return which < 0 ? reading : entry.readings[static_cast<std::size_t>(which)].text;
}

std::string result_name(const Knowledge& knowledge, const std::string& worksheet, const std::string& result) {
    const Index index = find(knowledge.worksheets, worksheet);
    if (index == none) return result;
    for (const WorksheetOutput& output : knowledge.worksheets[static_cast<std::size_t>(index)].results) {
        if (output.id == result) return output.name;
    }
    return result;
}

// The pieces after the form, each by the kind that the form puts there.
std::vector<std::string> names_of(const Knowledge& all, const std::vector<std::string>& pieces) {
    using study::Form;
    const std::string& form = pieces[0];
    const auto is = [&](Form one) { return form == study::form_id(one); };
    const std::string second = pieces.size() > 2 ? pieces[2] : "";
    if (is(Form::speaks)) return {name_in(all.findings, pieces[1]), reading_name(all, pieces[1], second)};
    if (is(Form::order)) return {name_in(all.remedies, pieces[1])};
    if (is(Form::next)) return {name_in(all.complaints, pieces[1]), name_in(all.histories, second)};
    if (is(Form::figure)) return {name_in(all.worksheets, pieces[1]), result_name(all, pieces[1], second)};
    if (is(Form::caution)) {
        const std::string work =
            pieces[1] == "check" ? name_in(all.checks, second) : name_in(all.remedies, second);
        return {work, name_in(all.cautions, pieces.size() > 3 ? pieces[3] : "")};
    }
    if (is(Form::signs)) return {name_in(all.causes, pieces[1]), name_in(all.complaints, second)};
    std::vector<std::string> causes;
    for (std::size_t i = 1; i < pieces.size(); ++i) causes.push_back(name_in(all.causes, pieces[i]));
    return causes;
}

bool is_authored(const std::string& form) {
    using study::Form;
    for (const Form one : {Form::method, Form::stopping, Form::telling, Form::deciding}) {
        if (form == study::form_id(one)) return true;
    }
    return false;
}

// Cut after a word.
std::string short_question(const std::string& ask) {
    constexpr glong longest = 60;  // letters
    if (g_utf8_strlen(ask.c_str(), -1) <= longest) return ask;
    const char* cut = g_utf8_offset_to_pointer(ask.c_str(), longest);
    const std::string start(ask.c_str(), cut);
    return start.substr(0, start.find_last_of(' ')) + " …";
}

std::map<std::string, std::string> questions_of(const Knowledge& knowledge) {
    std::map<std::string, std::string> questions;
    for (const study::AuthoredItem& item : study::read_authored(knowledge).items) {
        questions.emplace(item.id, short_question(item.ask));
    }
    return questions;
}

}  // namespace

std::string ItemNames::of(const std::string& item) {
    const std::vector<std::string> pieces = pieces_of(item);
    if (pieces.size() < 2) return item;
    std::string name;
    for (int form = 0; form < study::form_count; ++form) {
        const auto one = static_cast<study::Form>(form);
        if (pieces[0] == study::form_id(one)) name = study::form_name(one);
    }
    if (name.empty()) return item;  // of a form this program does not know
    if (is_authored(pieces[0])) {
        if (!asked_) asked_ = questions_of(knowledge_);
        const auto asked = asked_->find(pieces[1]);
        return name + ": " + (asked == asked_->end() ? pieces[1] : asked->second);
    }
    std::string between = ": ";
    for (const std::string& part : names_of(knowledge_, pieces)) {
        if (part.empty()) continue;
        name += between + part;
        between = ", ";
    }
    return name;
}

}  // namespace hardover::classroom

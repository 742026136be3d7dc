#include "app/window/condition_words.hpp"

#include <algorithm>

namespace hardover::window {

namespace {

bool in_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
}

std::string with_spaces(std::string id) {
    std::replace(id.begin(), id.end(), '_', ' ');
    return id;
}

// The name of what a piece stands for: of a worksheet with the result that is meant.
std::string name_of(const Knowledge& knowledge, const EntryPiece& piece) {
    if (const Index at = find(knowledge.findings, piece.to.id); piece.to.kind == "finding" && at != none)
        return knowledge.findings[at].name;
    if (const Index at = find(knowledge.rig_fields, piece.to.id); piece.to.kind == "rig_field" && at != none)
        return knowledge.rig_fields[at].name;
    const Index at = find(knowledge.worksheets, piece.to.id);
    if (piece.to.kind != "worksheet" || at == none) return with_spaces(piece.text);
    const Worksheet& sheet = knowledge.worksheets[at];
    const std::size_t dot = piece.text.find('.');
    for (const WorksheetOutput& result : sheet.results) {
        if (dot != std::string::npos && result.id == piece.text.substr(dot + 1)) return result.name;
    }
    return sheet.name;
}

// The text of a reading or choice of the entry named last; "" when it is none.
std::string choice_of(const Knowledge& knowledge, const EntryKey& of, const std::string& id) {
    const auto text_in = [&](const auto& choices) {
        const auto found =
            std::find_if(choices.begin(), choices.end(), [&](const auto& choice) { return choice.id == id; });
        return found == choices.end() ? std::string() : "“" + found->text + "”";
    };
    const Index finding = find(knowledge.findings, of.id), field = find(knowledge.rig_fields, of.id);
    if (of.kind == "finding" && finding != none) return text_in(knowledge.findings[finding].readings);
    if (of.kind == "rig_field" && field != none) return text_in(knowledge.rig_fields[field].choices);
    return "";
}

std::string words_between(const Knowledge& knowledge, const EntryKey& last, const std::string& text) {
    std::string said;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && in_word(text[end])) ++end;
        if (end == at) {
            said += text[at++];
            continue;
        }
        const std::string word = text.substr(at, end - at);
        const std::string choice = choice_of(knowledge, last, word);
        said += choice.empty() ? with_spaces(word) : choice;
        at = end;
    }
    return said;
}

// A condition names an entry; formulas and ids that name none are for who writes the knowledge.
void say(const Knowledge& knowledge, EntryText& item) {
    const bool condition = std::any_of(item.pieces.begin(), item.pieces.end(), [](const EntryPiece& piece) {
        return piece.code && !piece.to.kind.empty();
    });
    if (!condition) return;
    EntryKey last;
    for (EntryPiece& piece : item.pieces) {
        if (!piece.code) continue;
        if (piece.to.kind.empty()) {
            piece.text = words_between(knowledge, last, piece.text);
        } else {
            last = piece.to;
            piece.text = name_of(knowledge, piece);
        }
    }
}

}  // namespace

void say_conditions(const Knowledge& knowledge, EntryPage& page) {
    for (EntryRow& row : page.rows) {
        for (EntryText& item : row.items) say(knowledge, item);
    }
}

}  // namespace hardover::window

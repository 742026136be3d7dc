#include "rules/reading/yaml_reader.hpp"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <sstream>
#include <string_view>

#include "rules/reading/letters.hpp"

namespace hardover::reading_detail {
namespace {

// Deeper than any sensible file; keeps every walk over the tree from running out of stack.
constexpr std::size_t deepest = 100;

// Words that YAML readers take for truth values, some in one version of YAML and some in the other.
bool reads_as_truth(std::string_view word) {
    static constexpr std::array<std::string_view, 6> truths = {"yes", "no", "on", "off", "true", "false"};
    std::string lower(word);
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return std::find(truths.begin(), truths.end(), lower) != truths.end();
}

// Builds the tree out of the parser's events. Aliases are not followed, so a small file cannot grow huge.
class TreeBuilder : public YAML::EventHandler {
  public:
    TreeBuilder(const std::string& file, std::string_view text, int lines_before, std::vector<Fault>& faults)
        : file_(file), text_(text), lines_before_(lines_before), faults_(faults) {}

    YamlNode take_root() { return std::move(root_); }

    // The parser counts columns in bytes, and goes on counting behind the end when a text breaks off there.
    Place place(const YAML::Mark& mark) const {
        const int behind = std::max(mark.pos - static_cast<int>(text_.size()), 0);
        const std::size_t end = static_cast<std::size_t>(std::max(mark.pos - behind, 0));
        const std::size_t bytes = std::min(static_cast<std::size_t>(std::max(mark.column - behind, 0)), end);
        const int letters = count_letters(text_.substr(end - bytes, bytes));
        return {file_, lines_before_ + std::max(mark.line, 0) + 1, letters + 1};
    }

    void OnDocumentStart(const YAML::Mark&) override {}
    void OnDocumentEnd() override {}

    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
        refuse_anchor(mark, anchor);
        attach(node(YamlNode::Kind::nothing, mark));
    }

    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
        add(mark, "an alias (*name) is not used in these files", "write the text out, or put it in quotes");
        YamlNode stand_in = node(YamlNode::Kind::text, mark);
        stand_in.text = "alias";
        attach(std::move(stand_in));
    }

    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override {
        refuse_anchor(mark, anchor);
        refuse_tag(mark, tag);
        YamlNode scalar = node(YamlNode::Kind::text, mark);
        scalar.text = value;
        const std::size_t start = static_cast<std::size_t>(mark.pos);
        const bool quoted = start < text_.size() && (text_[start] == '"' || text_[start] == '\'');
        const std::size_t first = start + (quoted ? 1 : 0);
        if (quoted && !quote_is_closed(start)) {
            throw YAML::ParserException(mark, "the quote that opens here is not closed");
        }
        if (first < text_.size() && text_.substr(first, value.size()) == value) {
            scalar.text_column = scalar.column + (quoted ? 1 : 0);
        }
        if (!quoted && reads_as_truth(value)) {
            add(mark, "'" + value + "' without quotes may be read as true or false",
                "write \"" + value + "\", or another word");
        }
        attach(std::move(scalar));
    }

    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override {
        open(YamlNode::Kind::list, mark, tag, anchor);
    }
    void OnSequenceEnd() override { close(); }

    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value) override {
        open(YamlNode::Kind::map, mark, tag, anchor);
    }
    void OnMapEnd() override { close(); }

  private:
    YamlNode node(YamlNode::Kind kind, const YAML::Mark& mark) const {
        const Place at = place(mark);
        YamlNode made;
        made.kind = kind;
        made.file = &file_;
        made.line = at.line;
        made.column = at.column;
        return made;
    }

    void add(const YAML::Mark& mark, std::string what, std::string cure) {
        faults_.push_back({place(mark), std::move(what), std::move(cure)});
    }

    // The YAML library takes a quoted text that runs to the end of the file for a whole one.
    bool quote_is_closed(std::size_t start) const {
        const char quote = text_[start];
        for (std::size_t at = start + 1; at < text_.size(); ++at) {
            if (quote == '"' && text_[at] == '\\') {
                ++at;
            } else if (text_[at] == quote) {
                return true;
            }
        }
        return false;
    }

    void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
        if (anchor != 0) add(mark, "an anchor (&name) is not used in these files", "put the text in quotes");
    }

    void refuse_tag(const YAML::Mark& mark, const std::string& tag) {
        const bool plain_or_quoted = tag.empty() || tag == "?" || tag == "!";
        if (!plain_or_quoted) add(mark, "a tag (!name) is not used in these files", "put the text in quotes");
    }

    void open(YamlNode::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
        refuse_anchor(mark, anchor);
        refuse_tag(mark, tag);
        if (open_.size() >= deepest) {
            throw YAML::ParserException(mark, "nested more than " + std::to_string(deepest) + " deep");
        }
        open_.push_back(node(kind, mark));
    }

    void close() {
        YamlNode done = std::move(open_.back());
        open_.pop_back();
        attach(std::move(done));
    }

    void attach(YamlNode done) {
        if (open_.empty()) {
            root_ = std::move(done);
            return;
        }
        YamlNode& parent = open_.back();
        const bool is_key = parent.is(YamlNode::Kind::map) && parent.keys.size() == parent.items.size();
        if (is_key && !done.is(YamlNode::Kind::text)) {
            faults_.push_back({done.place(), "a key must be a single word", "write 'key: value'"});
        }
        (is_key ? parent.keys : parent.items).push_back(std::move(done));
    }

    const std::string& file_;
    std::string_view text_;
    int lines_before_;
    std::vector<Fault>& faults_;
    std::vector<YamlNode> open_;
    YamlNode root_;
};

// Parses one piece of a file that starts after `lines_before` lines. False with a fault added if it is no
// YAML.
bool parse(const std::string& name, std::string_view text, int lines_before, YamlNode& root,
           std::vector<Fault>& faults) {
    std::vector<Fault> found;
    TreeBuilder builder(name, text, lines_before, found);
    bool readable = true;
    try {
        std::istringstream stream{std::string(text)};
        YAML::Parser parser(stream);
        parser.HandleNextDocument(builder);
        root = builder.take_root();
        if (root.file == nullptr) {
            root.file = &name;
            root.line = root.column = 1;
        }
        TreeBuilder rest(name, text, lines_before, found);
        if (parser.HandleNextDocument(rest)) {
            const YamlNode second = rest.take_root();
            found.push_back({second.file == nullptr ? root.place() : second.place(),
                             "a second document begins here, but a file holds one",
                             "look for a line '---', or at the indentation"});
        }
    } catch (const YAML::Exception& refused) {
        found.push_back({builder.place(refused.mark), "not readable as YAML: " + refused.msg,
                         "look at the indentation, quotes and brackets here and just above"});
        readable = false;
    }
    faults.insert(faults.end(), found.begin(), found.end());
    return readable;
}

bool starts_entry(std::string_view line) {
    return line.substr(0, 2) == "- " || line == "-";
}

struct Piece {
    std::string_view text;
    int lines_before = 0;
};

// The file cut before each line that starts an entry; what stands before the first belongs to the first.
std::vector<Piece> cut_into_entries(std::string_view text) {
    std::vector<Piece> pieces;
    std::size_t piece_start = 0;
    int piece_line = 0;
    bool has_entry = false;
    int line = 0;
    for (std::size_t at = 0; at < text.size(); ++line) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        if (starts_entry(text.substr(at, end - at))) {
            if (has_entry) {
                pieces.push_back({text.substr(piece_start, at - piece_start), piece_line});
                piece_start = at;
                piece_line = line;
            }
            has_entry = true;
        }
        at = end + 1;
    }
    pieces.push_back({text.substr(piece_start), piece_line});
    return pieces;
}

// "- finding: wheel_feel" on the piece's first entry line.
BrokenEntry first_words(std::string_view piece) {
    std::istringstream lines{std::string(piece)};
    for (std::string line; std::getline(lines, line);) {
        if (!starts_entry(line)) continue;
        std::istringstream words(line);
        std::string dash;
        BrokenEntry entry;
        words >> dash >> entry.kind >> entry.id;
        if (!entry.kind.empty() && entry.kind.back() == ':') {
            entry.kind.pop_back();
            return entry;
        }
    }
    return {};
}

// Refuses what the YAML library would misread: bytes that are not UTF-8, control characters.
bool check_letters(const KnowledgeFile& file, std::vector<Fault>& faults) {
    const std::optional<std::size_t> bad = first_bad_byte(file.text);
    if (!bad) return true;
    const std::string_view before = std::string_view(file.text).substr(0, *bad);
    const std::size_t line_start = before.find_last_of('\n') + 1;  // npos + 1 is 0
    const int line = static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1;
    const int column = count_letters(before.substr(line_start)) + 1;
    faults.push_back({{file.name, line, column}, "a byte that is not text", "save the file as UTF-8"});
    return false;
}

std::string_view without_byte_order_mark(std::string_view text) {
    return text.substr(0, 3) == "\xEF\xBB\xBF" ? text.substr(3) : text;
}

}  // namespace

YamlNode read_document(const KnowledgeFile& file, std::vector<Fault>& faults) {
    YamlNode root;
    root.file = &file.name;
    root.line = root.column = 1;
    if (check_letters(file, faults)) parse(file.name, without_byte_order_mark(file.text), 0, root, faults);
    return root;
}

EntriesRead read_entries(const KnowledgeFile& file, std::vector<Fault>& faults) {
    EntriesRead read;
    if (!check_letters(file, faults)) return read;
    const std::string_view text = without_byte_order_mark(file.text);
    const auto keep = [&](YamlNode& root) {
        if (root.is(YamlNode::Kind::list)) {
            std::move(root.items.begin(), root.items.end(), std::back_inserter(read.entries));
        } else if (!root.is(YamlNode::Kind::nothing)) {
            faults.push_back({root.place(), "expected a list of entries", "begin each entry with '- '"});
        }
    };

    YamlNode whole;
    std::vector<Fault> whole_faults;
    if (parse(file.name, text, 0, whole, whole_faults)) {
        faults.insert(faults.end(), whole_faults.begin(), whole_faults.end());
        keep(whole);
        return read;
    }
    bool found_the_bad_one = false;
    for (const Piece& piece : cut_into_entries(text)) {
        YamlNode root;
        if (parse(file.name, piece.text, piece.lines_before, root, faults)) {
            keep(root);
        } else {
            found_the_bad_one = true;
            read.broken.push_back(first_words(piece.text));
        }
    }
    if (!found_the_bad_one) faults.insert(faults.end(), whole_faults.begin(), whole_faults.end());
    return read;
}

}  // namespace hardover::reading_detail

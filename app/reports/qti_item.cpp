// One item as QTI 2.2: declarations, body, response processing, feedback.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <sstream>

#include "app/reports/qti_parts.hpp"
#include "app/study/item_text.hpp"
#include "app/study/marking.hpp"

namespace hardover::reports_detail {

namespace {

using pugi::xml_node;
using study::Way;

constexpr const char* item_namespace = "http://www.imsglobal.org/xsd/imsqti_v2p2";
constexpr const char* item_schema = "http://www.imsglobal.org/xsd/qti/qtiv2p2/imsqti_v2p2.xsd";
constexpr std::size_t most_orders = 200;  // that are all right and written out one by one

enum class Kind { single, several, order, figure, place };

Kind kind_of(const study::Item& item) {
    if (item.drawing && item.stem.form == study::Form::place) return Kind::place;
    switch (way_of(item.stem.form)) {
        case Way::single:
            return Kind::single;
        case Way::several:
            return Kind::several;
        case Way::order:
            return Kind::order;
        case Way::figure:
            return Kind::figure;
    }
    return Kind::single;
}

std::string choice_id(std::size_t option) {
    return std::string(1, static_cast<char>('A' + option));
}

std::string number(double value) {
    return fmt::format("{}", value);
}

// Adds a child with text.
xml_node add(xml_node parent, const char* name, const std::string& text = "") {
    xml_node child = parent.append_child(name);
    if (!text.empty()) child.text().set(text.c_str());
    return child;
}

void set(xml_node node, const char* name, const std::string& value) {
    node.append_attribute(name).set_value(value.c_str());
}

class ItemWriter {
  public:
    ItemWriter(const Knowledge& knowledge, const study::Item& item, const Picture* picture,
               const std::string& picture_file)
        : item_(item),
          text_(study::item_text(knowledge, item)),
          kind_(kind_of(item)),
          picture_(picture),
          picture_file_(picture_file) {}

    void write(xml_node root, const std::string& identifier) {
        set(root, "xmlns", item_namespace);
        set(root, "xmlns:xsi", "http://www.w3.org/2001/XMLSchema-instance");
        set(root, "xsi:schemaLocation", std::string(item_namespace) + " " + item_schema);
        set(root, "identifier", identifier);
        set(root, "title", text_.heading);
        set(root, "adaptive", "false");
        set(root, "timeDependent", "false");
        set(root, "xml:lang", "en-US");
        set(root, "toolName", "Hardover");
        declare_response(add(root, "responseDeclaration"));
        declare_outcomes(root);
        write_body(add(root, "itemBody"));
        process(add(root, "responseProcessing"));
        add_feedback(root);
    }

  private:
    static constexpr const char* response = "RESPONSE";

    // ---- what the right answer is ----

    void declare_response(xml_node node) {
        set(node, "identifier", response);
        set(node, "cardinality",
            kind_ == Kind::several ? "multiple"
            : kind_ == Kind::order ? "ordered"
                                   : "single");
        set(node, "baseType",
            kind_ == Kind::figure  ? "float"
            : kind_ == Kind::place ? "point"
                                   : "identifier");
        xml_node correct = add(node, "correctResponse");
        if (kind_ == Kind::figure) {
            add(correct, "value", number(in_asked_unit(item_.figure->right)));
        } else if (kind_ == Kind::place) {
            add(correct, "value", picture_->point);
            xml_node areas = add(node, "areaMapping");
            set(areas, "lowerBound", "0");
            set(areas, "upperBound", "1");
            set(areas, "defaultValue", "0");
            for (const Area& area : picture_->right) {
                xml_node entry = add(areas, "areaMapEntry");
                set(entry, "shape", area.shape);
                set(entry, "coords", area.coords);
                set(entry, "mappedValue", "1");
            }
        } else if (kind_ == Kind::order) {
            for (const int option : first_right_order()) {
                add(correct, "value", choice_id(static_cast<std::size_t>(option)));
            }
        } else {
            for (std::size_t i = 0; i < item_.options.size(); ++i) {
                if (item_.options[i].right) add(correct, "value", choice_id(i));
            }
            if (kind_ == Kind::several) map_ticks(add(node, "mapping"));
        }
    }

    // Share of the right ones ticked less share of the wrong ones, not below 0.
    void map_ticks(xml_node mapping) {
        set(mapping, "lowerBound", "0");
        set(mapping, "upperBound", "1");
        set(mapping, "defaultValue", "0");
        const auto right =
            static_cast<double>(std::count_if(item_.options.begin(), item_.options.end(),
                                              [](const study::Option& option) { return option.right; }));
        const double wrong = static_cast<double>(item_.options.size()) - right;
        for (std::size_t i = 0; i < item_.options.size(); ++i) {
            xml_node entry = add(mapping, "mapEntry");
            set(entry, "mapKey", choice_id(i));
            set(entry, "mappedValue", number(item_.options[i].right ? 1 / right : -1 / wrong));
        }
    }

    static void declare_outcomes(xml_node root) {
        xml_node score = add(root, "outcomeDeclaration");
        set(score, "identifier", "SCORE");
        set(score, "cardinality", "single");
        set(score, "baseType", "float");
        add(add(score, "defaultValue"), "value", "0");
        xml_node feedback = add(root, "outcomeDeclaration");
        set(feedback, "identifier", "FEEDBACK");
        set(feedback, "cardinality", "single");
        set(feedback, "baseType", "identifier");
    }

    // ---- what is shown ----

    void write_body(xml_node body) {
        for (const std::string& line : text_.given) add(body, "p", line);
        switch (kind_) {
            case Kind::single:
                return write_choices(body, "choiceInteraction", "1");
            case Kind::several:
                return write_choices(body, "choiceInteraction", "0");
            case Kind::order:
                return write_choices(body, "orderInteraction", "");
            case Kind::figure:
                return write_figure(body);
            case Kind::place:
                return write_place(body);
        }
    }

    void write_choices(xml_node body, const char* name, const std::string& most) {
        xml_node interaction = add(body, name);
        set(interaction, "responseIdentifier", response);
        set(interaction, "shuffle", "false");
        if (!most.empty()) set(interaction, "maxChoices", most);  // 0: as many as there are
        std::string how;
        if (kind_ == Kind::several) how = " Tick all that apply: right ticks count, wrong ticks cost.";
        if (kind_ == Kind::order) how = " Put all in order, the first thing first.";
        add(interaction, "prompt", item_.question + how);
        for (std::size_t i = 0; i < item_.options.size(); ++i) {
            set(add(interaction, "simpleChoice", item_.options[i].text), "identifier", choice_id(i));
        }
    }

    void write_figure(xml_node body) {
        add(body, "p", item_.question);
        xml_node line = add(body, "p");
        xml_node entry = add(line, "textEntryInteraction");
        set(entry, "responseIdentifier", response);
        set(entry, "expectedLength", "10");
        const std::string& unit = item_.figure->unit.name;
        line.append_child(pugi::node_pcdata)
            .set_value((" " + (unit == "count" ? std::string() : unit)).c_str());
    }

    void write_place(xml_node body) {
        xml_node interaction = add(body, "selectPointInteraction");
        set(interaction, "responseIdentifier", response);
        set(interaction, "maxChoices", "1");
        add(interaction, "prompt", item_.question);
        xml_node picture = add(interaction, "object", "The drawing: " + item_.drawing->title);
        set(picture, "data", picture_file_);
        set(picture, "type", "image/png");
        set(picture, "width", std::to_string(picture_->width));
        set(picture, "height", std::to_string(picture_->height));
    }

    // ---- what an answer is worth ----

    double in_asked_unit(double value) const {
        return in_unit({value, item_.figure->unit.dimension, 0}, item_.figure->unit);
    }

    static void variable(xml_node parent, const char* name) {
        set(add(parent, "variable"), "identifier", name);
    }

    static void outcome(xml_node parent, const char* name, const char* type, const std::string& value) {
        xml_node node = add(parent, "setOutcomeValue");
        set(node, "identifier", name);
        set(add(node, "baseValue", value), "baseType", type);
    }

    static void worth(xml_node parent, double score, const std::string& feedback) {
        if (score >= 0) outcome(parent, "SCORE", "float", number(score));
        outcome(parent, "FEEDBACK", "identifier", feedback);
    }

    void process(xml_node processing) {
        if (kind_ == Kind::several || kind_ == Kind::place) {
            xml_node score = add(processing, "setOutcomeValue");
            set(score, "identifier", "SCORE");
            set(add(score, kind_ == Kind::place ? "mapResponsePoint" : "mapResponse"), "identifier",
                response);
        }
        xml_node condition = add(processing, "responseCondition");
        xml_node when = add(condition, "responseIf");
        if (kind_ == Kind::place) {
            xml_node inside = add(when, "gt");
            variable(inside, "SCORE");
            set(add(inside, "baseValue", "0"), "baseType", "float");
        } else if (kind_ == Kind::figure) {
            equal(when, add_correct);
        } else if (kind_ == Kind::order) {
            match_orders(when);
        } else {
            xml_node match = add(when, "match");
            variable(match, response);
            set(add(match, "correct"), "identifier", response);
        }
        const bool mapped = kind_ == Kind::several || kind_ == Kind::place;
        worth(when, mapped ? -1 : 1, "RIGHT");
        if (kind_ == Kind::figure) process_slips(condition);
        if (kind_ == Kind::single) process_wrong_choices(condition);
        outcome(add(condition, "responseElse"), "FEEDBACK", "identifier", "WRONG");
    }

    static void add_correct(xml_node parent, double) { set(add(parent, "correct"), "identifier", response); }
    static void add_value(xml_node parent, double value) {
        set(add(parent, "baseValue", number(value)), "baseType", "float");
    }

    void equal(xml_node parent, void (*other)(xml_node, double), double value = 0) const {
        xml_node node = add(parent, "equal");
        const std::string tolerance = number(in_asked_unit(item_.figure->tolerance));
        set(node, "toleranceMode", "absolute");
        set(node, "tolerance", tolerance + " " + tolerance);
        variable(node, response);
        other(node, value);
    }

    // A figure got by a known mistake is worth a little, and is told.
    void process_slips(xml_node condition) {
        for (std::size_t i = 0; i < item_.figure->slips.size(); ++i) {
            const study::Slip& slip = item_.figure->slips[i];
            xml_node when = add(condition, "responseElseIf");
            equal(when, add_value, in_asked_unit(slip.value));
            worth(when, slip.of_unit ? study::mark_of_unit_slip : study::mark_of_slip,
                  "SLIP" + std::to_string(i + 1));
        }
    }

    void process_wrong_choices(xml_node condition) {
        for (std::size_t i = 0; i < item_.options.size(); ++i) {
            if (item_.options[i].right || item_.options[i].why.empty()) continue;
            xml_node when = add(condition, "responseElseIf");
            xml_node match = add(when, "match");
            variable(match, response);
            set(add(match, "baseValue", choice_id(i)), "baseType", "identifier");
            worth(when, 0, choice_id(i));
        }
    }

    std::vector<std::vector<int>> right_orders() const {
        std::vector<int> order(item_.options.size());
        std::iota(order.begin(), order.end(), 0);
        std::vector<std::vector<int>> right;
        do {
            if (study::order_mark(order, item_.rules) >= 1) right.push_back(order);
        } while (right.size() < most_orders && std::next_permutation(order.begin(), order.end()));
        return right;
    }
    std::vector<int> first_right_order() const { return right_orders().front(); }

    void match_orders(xml_node parent) const {
        xml_node any = add(parent, "or");
        for (const std::vector<int>& order : right_orders()) {
            xml_node match = add(any, "match");
            variable(match, response);
            xml_node ordered = add(match, "ordered");
            for (const int option : order) {
                set(add(ordered, "baseValue", choice_id(static_cast<std::size_t>(option))), "baseType",
                    "identifier");
            }
        }
    }

    // ---- what is said after the answer ----

    void add_feedback(xml_node root) {
        feedback(root, "RIGHT", {"Right."});
        const std::string right = right_line();
        feedback(root, "WRONG", {"Not right.", right});
        if (kind_ == Kind::figure) {
            for (std::size_t i = 0; i < item_.figure->slips.size(); ++i) {
                feedback(root, "SLIP" + std::to_string(i + 1),
                         {"That looks like " + item_.figure->slips[i].name + ".", right});
            }
        }
        if (kind_ != Kind::single) return;
        for (std::size_t i = 0; i < item_.options.size(); ++i) {
            const study::Option& option = item_.options[i];
            if (!option.right && !option.why.empty())
                feedback(root, choice_id(i), {"Not right.", option.why, right});
        }
    }

    // The cautions of the work come before the reason, which may name steps of it.
    void feedback(xml_node root, const std::string& identifier, std::vector<std::string> lines) {
        xml_node node = add(root, "modalFeedback");
        set(node, "outcomeIdentifier", "FEEDBACK");
        set(node, "identifier", identifier);
        set(node, "showHide", "show");
        std::string cautions;
        for (const std::string& caution : item_.cautions)
            cautions += (cautions.empty() ? "" : "; ") + caution;
        if (!cautions.empty()) lines.push_back("Cautions before this work: " + cautions + ".");
        lines.push_back(item_.reason);
        lines.push_back(item_.source);
        for (const std::string& line : lines) {
            if (!line.empty()) add(node, "p", line);
        }
    }

    std::string right_line() const {
        if (kind_ == Kind::figure) return "Right is " + study::right_answer(item_) + ".";
        std::string line = kind_ == Kind::order ? "A right order is: " : "Right is: ";
        std::string between;
        const auto name = [&](const study::Option& option) {
            line += between + option.text;
            between = "; ";
        };
        if (kind_ == Kind::order) {
            for (const int option : first_right_order())
                name(item_.options[static_cast<std::size_t>(option)]);
        } else {
            for (const study::Option& option : item_.options) {
                if (option.right) name(option);
            }
        }
        return line + (line.back() == '.' ? "" : ".");
    }

    const study::Item& item_;
    study::ItemText text_;
    Kind kind_;
    const Picture* picture_;
    const std::string& picture_file_;
};

}  // namespace

pugi::xml_document qti_item(const Knowledge& knowledge, const study::Item& item,
                            const std::string& identifier, const Picture* picture,
                            const std::string& picture_file) {
    pugi::xml_document document;
    ItemWriter(knowledge, item, picture, picture_file)
        .write(document.append_child("assessmentItem"), identifier);
    return document;
}

std::string written(const pugi::xml_document& document) {
    std::ostringstream text;
    document.save(text, "  ", pugi::format_default, pugi::encoding_utf8);
    return text.str();
}

}  // namespace hardover::reports_detail

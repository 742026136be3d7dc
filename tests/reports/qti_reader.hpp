// Reads one of our QTI items and marks a response by the item's own response processing, as another program
// would: written after the published meaning of each expression, apart from the writer.
#pragma once

#include <catch2/catch.hpp>
#include <pugixml.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace hardover_tests {

class QtiReader {
  public:
    explicit QtiReader(const std::string& xml) {
        REQUIRE(document_.load_string(xml.c_str()));
        item_ = document_.child("assessmentItem");
        declaration_ = item_.child("responseDeclaration");
    }

    pugi::xml_node item() const { return item_; }

    std::vector<std::string> right() const {
        std::vector<std::string> values;
        for (const auto& value : declaration_.child("correctResponse").children("value")) {
            values.push_back(value.text().get());
        }
        return values;
    }

    // SCORE for these values of RESPONSE; `feedback` gets FEEDBACK.
    double score(const std::vector<std::string>& response, std::string* feedback = nullptr) const {
        std::map<std::string, std::string> outcomes{{"SCORE", "0"}};
        for (const auto& node : item_.child("responseProcessing").children()) {
            if (std::string(node.name()) == "setOutcomeValue") set(node, response, outcomes);
            if (std::string(node.name()) != "responseCondition") continue;
            for (const auto& branch : node.children()) {
                const bool otherwise = std::string(branch.name()) == "responseElse";
                if (!otherwise && !holds(branch.first_child(), response, outcomes)) continue;
                for (const auto& outcome : branch.children("setOutcomeValue"))
                    set(outcome, response, outcomes);
                break;
            }
        }
        if (feedback != nullptr) *feedback = outcomes["FEEDBACK"];
        return std::stod(outcomes["SCORE"]);
    }

    // What is said then.
    std::string said(const std::string& feedback) const {
        for (const auto& node : item_.children("modalFeedback")) {
            if (node.attribute("identifier").value() != feedback) continue;
            std::string text;
            for (const auto& line : node.children("p")) text += std::string(line.text().get()) + "\n";
            return text;
        }
        return "";
    }

  private:
    using Outcomes = std::map<std::string, std::string>;

    std::vector<std::string> values_of(const pugi::xml_node& node, const std::vector<std::string>& response,
                                       const Outcomes& outcomes) const {
        const std::string name = node.name();
        if (name == "correct") return right();
        if (name == "baseValue") return {node.text().get()};
        if (name == "ordered") {
            std::vector<std::string> values;
            for (const auto& child : node.children()) values.push_back(child.text().get());
            return values;
        }
        REQUIRE(name == "variable");
        const std::string which = node.attribute("identifier").value();
        return which == "RESPONSE" ? response : std::vector<std::string>{outcomes.at(which)};
    }

    bool holds(const pugi::xml_node& node, const std::vector<std::string>& response,
               const Outcomes& outcomes) const {
        const std::string name = node.name();
        if (name == "or") {
            return std::any_of(node.begin(), node.end(),
                               [&](const pugi::xml_node& child) { return holds(child, response, outcomes); });
        }
        auto first = values_of(node.first_child(), response, outcomes);
        auto second = values_of(node.last_child(), response, outcomes);
        if (name == "gt") return std::stod(first[0]) > std::stod(second[0]);
        if (name == "equal") {
            std::istringstream tolerance(node.attribute("tolerance").value());
            double below = 0, above = 0;
            tolerance >> below >> above;
            const double x = std::stod(second[0]), y = std::stod(first[0]);
            return y >= x - below && y <= x + above;
        }
        REQUIRE(name == "match");
        if (std::string(declaration_.attribute("cardinality").value()) == "multiple") {
            std::sort(first.begin(), first.end());
            std::sort(second.begin(), second.end());
        }
        return first == second;
    }

    void set(const pugi::xml_node& node, const std::vector<std::string>& response, Outcomes& outcomes) const {
        const pugi::xml_node value = node.first_child();
        const std::string name = value.name();
        std::string& outcome = outcomes[node.attribute("identifier").value()];
        if (name == "baseValue") outcome = value.text().get();
        if (name == "mapResponse") outcome = std::to_string(bounded("mapping", mapped(response)));
        if (name == "mapResponsePoint") outcome = std::to_string(bounded("areaMapping", pointed(response)));
    }

    double bounded(const char* mapping, double value) const {
        const pugi::xml_node node = declaration_.child(mapping);
        return std::clamp(value, node.attribute("lowerBound").as_double(),
                          node.attribute("upperBound").as_double());
    }

    double mapped(const std::vector<std::string>& response) const {
        double sum = 0;
        for (const std::string& key : response) {
            const auto entry = declaration_.child("mapping").find_child_by_attribute("mapKey", key.c_str());
            sum += entry.attribute("mappedValue").as_double();
        }
        return sum;
    }

    double pointed(const std::vector<std::string>& response) const {
        std::istringstream point(response.at(0));
        double x = 0, y = 0;
        point >> x >> y;
        double sum = 0;
        for (const auto& entry : declaration_.child("areaMapping").children("areaMapEntry")) {
            if (inside(entry, x, y)) sum += entry.attribute("mappedValue").as_double();
        }
        return sum;
    }

    static bool inside(const pugi::xml_node& entry, double x, double y) {
        std::vector<double> at;
        std::istringstream coords(entry.attribute("coords").value());
        for (std::string part; std::getline(coords, part, ',');) at.push_back(std::stod(part));
        if (std::string(entry.attribute("shape").value()) == "circle") {
            return std::hypot(x - at[0], y - at[1]) <= at[2];
        }
        bool is_inside = false;
        for (std::size_t i = 0, j = at.size() - 2; i < at.size(); j = i, i += 2) {
            if ((at[i + 1] > y) != (at[j + 1] > y) &&
                x < (at[j] - at[i]) * (y - at[i + 1]) / (at[j + 1] - at[i + 1]) + at[i]) {
                is_inside = !is_inside;
            }
        }
        return is_inside;
    }

    pugi::xml_document document_;
    pugi::xml_node item_;
    pugi::xml_node declaration_;
};

}  // namespace hardover_tests

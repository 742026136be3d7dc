#include <cctype>

#include "jobs_support.hpp"

namespace hardover_tests {

using namespace hardover;

namespace {

// Every text of a page in order. Ids, numbers and flags only where `all` is set.
class Collector {
  public:
    explicit Collector(bool all) : all_(all) {}

    void add(const std::string& place, const std::string& text) {
        if (!text.empty()) texts_.push_back({place, text});
    }
    void add(const std::string& place, const std::vector<std::string>& texts) {
        for (const std::string& text : texts) add(place, text);
    }
    void add_id(const std::string& place, const std::string& id) {
        if (all_) add(place, id);
    }
    void add_number(const std::string& place, double number) {
        if (all_) add(place, std::to_string(number));
    }

    void choices(const std::string& place, const std::vector<ChoiceText>& choices) {
        for (const ChoiceText& choice : choices) {
            add_id(place, choice.id);
            add(place, choice.text);
            add_number(place, choice.chosen);
        }
    }
    void field(const std::string& place, const MeasureField& field) {
        add_id(place, field.id);
        add_number(place, field.of_rig);
        for (const std::string& text : {field.name, field.unit, field.text, field.hint}) add(place, text);
    }
    void question(const QuestionText& question) {
        add_id("question", question.finding);
        for (const std::string& text : {question.name, question.ask, question.answer}) add("question", text);
        choices("question choice", question.choices);
        for (const MeasureField& f : question.fields) field("question field", f);
    }
    void cautions(const std::string& place, const std::vector<CautionText>& cautions) {
        for (const CautionText& caution : cautions) {
            add_id(place, caution.id);
            for (const std::string& text : {caution.name, caution.hurts, caution.avoid}) add(place, text);
        }
    }
    void card(const StepCard& card) {
        add_number("card", static_cast<int>(card.kind));
        add_id("card", card.id);
        add_id("card", card.cause);
        for (const std::string& text : {card.eyebrow, card.heading, card.why, card.sources})
            add("card", text);
        cautions("card caution", card.cautions);
        for (const auto& list : {card.steps, card.tools, card.parts, card.figures, card.after}) {
            add("card list", list);
        }
        add("card branch", card.branches);
        for (const QuestionText& q : card.questions) question(q);
        add_number("card", card.minutes);
        add_number("card", card.minutes_after);
    }
    void weights(const std::vector<WeightText>& weights) {
        for (const WeightText& weight : weights) {
            add_id("weight", weight.id);
            add("weight", weight.text);
            add("weight", weight.strength);
            add_number("weight", weight.decibans);
        }
    }
    void cause(const CauseLine& cause) {
        add_id("cause", cause.id);
        for (const std::string& text : {cause.name, cause.percent, cause.state}) add("cause", text);
        add_number("cause", cause.probability);
        add_number("cause", cause.proved);
        weights(cause.weights_for);
        weights(cause.weights_against);
    }
    void lists(const JobPage& page);
    void known(const JobPage& page);

    std::vector<PageText> take() { return std::move(texts_); }

  private:
    bool all_;
    std::vector<PageText> texts_;
};

void Collector::known(const JobPage& page) {
    for (const RigLine& line : page.rig) {
        add_id("rig", line.id);
        for (const std::string& text : {line.name, line.ask, line.value}) add("rig", text);
        add_number("rig", line.assumed);
        choices("rig choice", line.choices);
        field("rig field", line.field);
    }
    for (const AnswerLine& line : page.answers) {
        add_id("answer", line.finding);
        for (const std::string& text : {line.name, line.answer, line.origin, line.before_work}) {
            add("answer", text);
        }
        add_number("answer", line.changeable);
    }
    for (const CauseLine& line : page.causes) cause(line);
    for (const CauseLine& line : page.put_right) cause(line);
    for (const SheetText& sheet : page.sheets) {
        add_id("sheet", sheet.id);
        for (const std::string& text : {sheet.name, sheet.refused, sheet.source}) add("sheet", text);
        add("sheet advice", sheet.advice);
        for (const auto& lines : {sheet.inputs, sheet.results}) {
            for (const SheetLine& line : lines) add("sheet line", line.name + ": " + line.value);
        }
    }
}

void Collector::lists(const JobPage& page) {
    for (const PlanLine& line : page.plan) {
        add("plan", line.text);
        add_number("plan", line.minutes);
    }
    add("also", page.also);
    add("stop", page.stops);
    cautions("caution", page.cautions);
    add("deferral", page.deferrals);
    add("assumption", page.assumptions);
    add("trace", page.trace);
    add("note", page.notes);
    add("photo", page.photos);
    add("apart", page.apart);
    add("left out", page.left_out);
    for (const EventLine& event : page.events) {
        add_number("event", event.sequence);
        add_number("event", event.counts);
        add("event", event.at);
        add("event", event.text);
    }
}

std::vector<PageText> collected(const JobPage& page, bool all) {
    Collector collector(all);
    for (const std::string& text : {page.title, page.words, page.phase, page.not_listed, page.several,
                                    page.minutes_left, page.other_knowledge, page.conflict}) {
        collector.add("page", text);
    }
    collector.choices("history", page.histories);
    collector.choices("complaint", page.complaints);
    collector.choices("need", page.needs);
    collector.card(page.card);
    collector.known(page);
    collector.lists(page);
    return collector.take();
}

}  // namespace

std::vector<PageText> texts_of(const JobPage& page) {
    return collected(page, false);
}

std::vector<PageText> texts_of(const StepCard& card) {
    Collector collector(false);
    collector.card(card);
    return collector.take();
}

std::string whole_page(const JobPage& page) {
    std::string whole;
    for (const auto& [place, text] : collected(page, true)) whole += place + ": " + text + "\n";
    return whole;
}

std::string internal_id_in(const std::vector<PageText>& texts) {
    for (const PageText& found : texts) {
        const std::string& text = found.second;
        for (std::size_t i = 1; i + 1 < text.size(); ++i) {
            const auto letter = [&text](std::size_t at) {
                return std::isalnum(static_cast<unsigned char>(text[at])) != 0;
            };
            if (text[i] == '_' && letter(i - 1) && letter(i + 1)) return found.first + ": " + text;
        }
    }
    return "";
}

}  // namespace hardover_tests

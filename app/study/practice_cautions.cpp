// What belongs to a piece of work before it is done: its cautions, and how it goes.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/wording.hpp"
#include "app/study/chance.hpp"
#include "app/study/practice_page.hpp"

namespace hardover::study::practice {

using namespace jobs_detail;

namespace {

constexpr std::size_t wrong_options = 3;

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

// The cautions that belong and some that do not, in an order that the boat's seed draws.
std::vector<ChoiceText> options_for(const Session& session, const Session::Caution& before) {
    const Knowledge& knowledge = session.knowledge();
    Chance chance(session.begun().seed, before.work);
    std::vector<Index> others;
    for (std::size_t c = 0; c < knowledge.cautions.size(); ++c) {
        const auto caution = static_cast<Index>(c);
        const bool belongs =
            std::find(before.cautions.begin(), before.cautions.end(), caution) != before.cautions.end();
        if (!belongs) others.push_back(caution);
    }
    chance.shuffle(others);
    others.resize(std::min(others.size(), wrong_options));
    std::vector<ChoiceText> options;
    for (const Index caution : before.cautions) {
        options.push_back({at(knowledge.cautions, caution).id, at(knowledge.cautions, caution).name, true});
    }
    for (const Index caution : others) {
        options.push_back({at(knowledge.cautions, caution).id, at(knowledge.cautions, caution).name, false});
    }
    chance.shuffle(options);
    return options;
}

std::string name_of_work(const Knowledge& knowledge, const std::string& id) {
    const Index check = find(knowledge.checks, id);
    if (check != none) return at(knowledge.checks, check).name;
    const Index remedy = find(knowledge.remedies, id);
    return remedy != none ? at(knowledge.remedies, remedy).name : id;
}

}  // namespace

std::vector<CautionQuestion> caution_questions(const Session& session, const PracticeEvent& event) {
    const Guidance guidance = session.begun().guidance;
    std::vector<CautionQuestion> questions;
    for (const Session::Caution& before : session.cautions_before(event)) {
        CautionQuestion question;
        question.work = before.work;
        question.pick = guidance == Guidance::nudged || guidance == Guidance::unaided;
        question.cautions = caution_texts(session.knowledge(), before.cautions);
        if (question.pick) {
            question.options = options_for(session, before);
        } else {
            for (const CautionText& caution : question.cautions) {
                question.options.push_back({caution.id, caution.name, true});
            }
        }
        const std::string work = quoted(name_of_work(session.knowledge(), before.work));
        question.ask = question.pick ? fmt::format("Before {}: which cautions belong here?", work)
                                     : fmt::format("Before {}: mind this.", work);
        questions.push_back(std::move(question));
    }
    return questions;
}

std::string caution_feedback(const CautionQuestion& question, const Precautions& said) {
    std::vector<std::string> missed;
    for (const CautionText& caution : question.cautions) {
        const bool named = std::find(said.named.begin(), said.named.end(), caution.id) != said.named.end();
        if (!named) missed.push_back(lower_first(caution.name));
    }
    if (missed.empty()) return "";
    return fmt::format("{}: {}.", said.skipped ? "You went on without these" : "You left out",
                       listed(missed));
}

WorkCard work_card(const Session& session, const PracticeEvent& event) {
    const Knowledge& knowledge = session.knowledge();
    WorkCard card;
    card.minutes = minutes_text(session.minutes_of(event));
    if (const auto* remedied = std::get_if<Remedied>(&event)) {
        const Index index = find(knowledge.remedies, remedied->remedy);
        if (index == none) return card;
        const Remedy& remedy = at(knowledge.remedies, index);
        card.heading = remedy.name;
        card.steps = remedy.steps;
        card.tools = remedy.tools;
        for (const PricedPart& part : remedy.parts) card.parts.push_back(part.part);
        card.figures = remedy.figures;
        card.after = remedy.after;
        card.source = source_text(knowledge, remedy.sources);
        return card;
    }
    Index finding = none;
    Index check = none;
    if (const auto* asked = std::get_if<Asked>(&event)) finding = find(knowledge.findings, asked->finding);
    if (finding != none) check = at(knowledge.findings, finding).check;
    if (const auto* proved = std::get_if<Proved>(&event)) {
        const Index cause = find(knowledge.causes, proved->cause);
        if (cause != none) check = at(knowledge.causes, cause).proof;
    }
    if (check != none) {
        card.heading = at(knowledge.checks, check).name;
        card.steps = at(knowledge.checks, check).steps;
        card.tools = at(knowledge.checks, check).tools;
        card.source = source_text(knowledge, at(knowledge.checks, check).sources);
    } else if (finding != none) {
        card.heading = at(knowledge.findings, finding).name;
        card.steps = at(knowledge.findings, finding).look;
        card.source = source_text(knowledge, at(knowledge.findings, finding).sources);
    }
    return card;
}

}  // namespace hardover::study::practice

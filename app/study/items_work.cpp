// Items about the work: the check that proves, the remedy, the order, the next step, the missing caution.
#include "app/jobs/page.hpp"
#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

// The check's findings are all the same whether this cause is there or not, and the proof does not use them.
bool says_nothing_of(const Portraits& portraits, Index check, Index cause) {
    const Knowledge& all = portraits.knowledge();
    const std::vector<std::string>& used = at(all.causes, cause).proved_when.names();
    for (const Index finding : at(all.checks, check).gets) {
        const std::string& id = at(all.findings, finding).id;
        if (portraits.is_shown(cause, finding)) return false;
        if (std::find(used.begin(), used.end(), id) != used.end()) return false;
    }
    return !at(all.checks, check).gets.empty();
}

// The check has a reading that boats with the cause give at least twice as often as boats without any listed
// one. A weaker proof rests on several findings together, and another check might move the cause more.
bool tells_of(const Portraits& portraits, Index check, Index cause) {
    for (const Index finding : at(portraits.knowledge().checks, check).gets) {
        if (!portraits.is_shown(cause, finding)) continue;
        const std::vector<double> with = portraits.readings(cause, finding);
        const std::vector<double> without = portraits.readings_without(finding);
        for (std::size_t r = 0; r < with.size(); ++r) {
            if (with[r] >= 2 * without[r]) return true;
        }
    }
    return false;
}

std::string name_of(const Knowledge& knowledge, const NextStep& step) {
    switch (step.kind) {
        case NextStep::Kind::ask:
            return "Ask or look: " + at(knowledge.findings, step.index).name;
        case NextStep::Kind::check:
        case NextStep::Kind::prove:
            return "Check: " + at(knowledge.checks, step.index).name;
        case NextStep::Kind::remedy:
            return "Put right at once: " + at(knowledge.remedies, step.index).name;
        case NextStep::Kind::stop_asking:
        case NextStep::Kind::done:
            break;
    }
    return "";
}

std::string minutes_line(const NextStep& step) {
    return std::to_string(static_cast<int>(step.minutes + 0.5)) + " min, and then about " +
           std::to_string(static_cast<int>(step.minutes_after + 0.5)) + " min until the boat is right";
}

// Checks that read the same whatever of the likely causes it is. What a check can save is at most the minutes
// left on the boats that have a cause it sees; it must cost clearly more. The most telling of them first.
std::vector<Option> checks_worth_nothing(const Portraits& portraits, const Facts& facts, double minutes_left,
                                         double margin) {
    const Knowledge& all = portraits.knowledge();
    const Belief belief = believe(portraits.prepared(), facts);
    std::vector<std::pair<double, Option>> found;
    for (std::size_t c = 0; c < all.checks.size(); ++c) {
        const Check& check = all.checks[c];
        double seen = 0;
        bool any_sense = false;
        for (std::size_t k = 0; k < belief.causes.size(); ++k) {
            const bool shows = std::any_of(check.gets.begin(), check.gets.end(), [&](Index finding) {
                return portraits.is_shown(static_cast<Index>(k), finding);
            });
            if (shows) seen += belief.causes[k];
        }
        for (const Index finding : check.gets) any_sense = any_sense || portraits.makes_sense(facts, finding);
        if (!any_sense || check.minutes < margin + seen * minutes_left) continue;
        found.push_back({seen,
                         {"Check: " + check.name, false,
                          "It reads the same whatever of the likely causes it is.", static_cast<Index>(c)}});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<Option> options;
    for (auto& [seen, option] : found) options.push_back(std::move(option));
    return options;
}

// What the first step of the work makes safe before anything else is touched.
bool makes_safe(const std::string& step) {
    static const std::vector<std::string> words = {
        "Stop the engine",      "Engine stopped", "Key out", "Switch off", "Battery switch off",
        "Block the drive",      "Lash ",          "Chock ",  "Ease the",   "Let the pressure",
        "Release the pressure", "Pilot off",      "Crib ",   "Prop "};
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& word) { return step.rfind(word, 0) == 0; });
}

// Cautions that any check or remedy of these parts carries.
std::vector<Index> cautions_around(const Knowledge& knowledge, const std::vector<Index>& parts) {
    std::vector<Index> cautions;
    const auto meets = [&](const std::vector<Index>& others) {
        return std::any_of(others.begin(), others.end(), [&](Index part) { return holds(parts, part); });
    };
    const auto take = [&](const std::vector<Index>& more) {
        cautions.insert(cautions.end(), more.begin(), more.end());
    };
    for (std::size_t c = 0; c < knowledge.checks.size(); ++c) {
        if (meets(parts_of_check(knowledge, static_cast<Index>(c)))) take(knowledge.checks[c].cautions);
    }
    for (std::size_t r = 0; r < knowledge.remedies.size(); ++r) {
        if (meets(parts_of_remedy(knowledge, static_cast<Index>(r)))) take(knowledge.remedies[r].cautions);
    }
    return cautions;
}

}  // namespace

bool make_proof(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    const Index cause = item.stem.first;
    const Cause& entry = at(all.causes, cause);
    if (entry.proof == none || !tells_of(portraits, entry.proof, cause)) return false;
    add_option(item, {at(all.checks, entry.proof).name, true, "", entry.proof});
    std::vector<Option> wrong;
    for (const Index rival : portraits.rivals(cause)) {
        const Index check = at(all.causes, rival).proof;
        if (check == none || check == entry.proof || !says_nothing_of(portraits, check, cause)) continue;
        wrong.push_back({at(all.checks, check).name, false,
                         "That proves “" + at(all.causes, rival).name +
                             "” and reads the same with or without this cause.",
                         check});
    }
    add_some(item, std::move(wrong), chance);
    item.question = "You suspect: " + entry.name + ". Which check proves it before anything is taken apart?";
    item.cautions = caution_names(all, at(all.checks, entry.proof).cautions);
    item.reason = at(all.checks, entry.proof).why + " " + entry.about;
    item.source = source_text(all, at(all.checks, entry.proof).sources);
    return true;
}

// A remedy of another part of the system: replacing the whole of a part would cure its lesser faults too.
bool make_remedy(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    const Index cause = item.stem.first;
    const Cause& entry = at(all.causes, cause);
    if (entry.remedy == none) return false;
    add_option(item, {at(all.remedies, entry.remedy).name, true, "", entry.remedy});
    std::vector<Option> wrong;
    for (const Index rival : portraits.rivals(cause)) {
        const Index remedy = at(all.causes, rival).remedy;
        if (remedy == none || remedy == entry.remedy) continue;
        if (holds(parts_of_remedy(all, remedy), entry.part)) continue;
        wrong.push_back({at(all.remedies, remedy).name, false,
                         "That puts right: " + at(all.causes, rival).name + ".", remedy});
    }
    add_some(item, std::move(wrong), chance);
    item.question = "It is proved: " + entry.name + ". What puts it right?";
    item.cautions = caution_names(all, at(all.remedies, entry.remedy).cautions);
    item.reason = entry.about;
    item.source = source_text(all, at(all.remedies, entry.remedy).sources);
    return true;
}

// Only what is forced counts: cautions and the proof before the work, making safe before the rest of it, the
// check after all of it.
bool make_order(const Portraits& portraits, Item& item) {
    const Knowledge& all = portraits.knowledge();
    const Remedy& remedy = at(all.remedies, item.stem.first);
    const std::vector<Index> causes = causes_of_remedy(all, item.stem.first);
    if (causes.empty() || remedy.cautions.empty() || remedy.after.empty() || remedy.steps.size() < 2) {
        return false;
    }
    std::string dangers;
    for (const Index caution : remedy.cautions) {
        dangers += (dangers.empty() ? "" : ", ") + at(all.cautions, caution).name;
    }
    add_option(item, {"Read the cautions: " + dangers});
    const Index proof = at(all.causes, causes.front()).proof;
    const bool proves_itself = std::any_of(remedy.steps.begin(), remedy.steps.end(),
                                           [](const auto& step) { return step.rfind("Prove", 0) == 0; });
    if (proof != none && !proves_itself) add_option(item, {"Prove the cause: " + at(all.checks, proof).name});
    const std::size_t first_step = item.options.size();
    add_option(item, {remedy.steps.front()});
    if (remedy.steps.size() > 2) add_option(item, {remedy.steps[remedy.steps.size() / 2]});
    add_option(item, {remedy.steps.back()});
    const std::size_t after = item.options.size();
    add_option(item, {"Check afterwards: " + remedy.after.front()});
    if (item.options.size() != after + 1) return false;
    for (std::size_t i = 0; i <= after; ++i) item.options[i].of = static_cast<Index>(i);
    if (first_step > 1) item.rules.push_back({0, 1, false});
    for (std::size_t step = first_step; step < after; ++step) {
        item.rules.push_back({0, static_cast<int>(step), true});
        if (first_step > 1) item.rules.push_back({1, static_cast<int>(step), false});
        if (step > first_step && makes_safe(remedy.steps.front())) {
            item.rules.push_back({static_cast<int>(first_step), static_cast<int>(step), true});
        }
        item.rules.push_back({static_cast<int>(step), static_cast<int>(after), false});
    }
    item.question =
        remedy.name + ": put these in order. Pieces whose order does not matter may stand either way.";
    item.cautions = caution_names(all, remedy.cautions);
    item.reason =
        "Cautions come before the work they belong to, the proof before anything is taken apart, and the "
        "check after the last step.";
    item.source = source_text(all, remedy.sources);
    return true;
}

bool make_next(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    Facts facts;
    facts.complaints = {item.stem.first};
    facts.history = item.stem.second;
    item.facts = facts;
    const std::vector<NextStep> steps = steps_by_minutes(portraits.prepared(), facts);
    const NextStep& best = steps.front();
    if (name_of(all, best).empty()) return false;
    const double least = best.minutes + best.minutes_after;
    const double margin = std::max(clearly_dearer_minutes, clearly_dearer_share * least);
    add_option(item, {name_of(all, best), true, "", best.index});
    std::vector<Option> wrong;
    for (std::size_t s = 1; s < steps.size(); ++s) {
        const double total = steps[s].minutes + steps[s].minutes_after;
        // What a rule asks first is asked for another reason than minutes.
        if (steps[s].asked_by != none || name_of(all, steps[s]).empty()) continue;
        if (total < least + margin) continue;
        wrong.push_back(
            {name_of(all, steps[s]), false, "It takes " + minutes_line(steps[s]) + ".", steps[s].index});
    }
    for (Option& option : checks_worth_nothing(portraits, facts, least, margin)) {
        wrong.push_back(std::move(option));
    }
    add_some(item, std::move(wrong), chance);
    item.given.push_back("History: " + at(all.histories, item.stem.second).name);
    item.given.push_back("Complaint: " + at(all.complaints, item.stem.first).name);
    item.question =
        "Nothing else is known yet. Which step leaves the fewest minutes until the boat is right?";
    item.reason = "It takes " + minutes_line(best) + ".";
    for (const NextStep::Branch& branch : best.branches) {
        if (branch.reading < 0 || branch.first == none) continue;
        item.reason += " " + reading_line(all, branch.finding, branch.reading) + " would point to “" +
                       at(all.causes, branch.first).name + "”.";
    }
    item.source = "Worked out from the odds, signs and minutes of the knowledge.";
    return true;
}

bool make_caution(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    const bool of_check = item.stem.third == 0;
    const Index entry = item.stem.first;
    const auto& cautions = of_check ? at(all.checks, entry).cautions : at(all.remedies, entry).cautions;
    const auto& steps = of_check ? at(all.checks, entry).steps : at(all.remedies, entry).steps;
    const std::vector<Index> parts = of_check ? parts_of_check(all, entry) : parts_of_remedy(all, entry);
    const std::vector<Index> around = cautions_around(all, parts);
    const std::vector<Index> usual = portraits.often_carried(steps);

    const Caution& missing = at(all.cautions, item.stem.second);
    add_option(item, {missing.name + ": " + missing.avoid, true, "", item.stem.second});
    std::vector<Option> others;
    for (std::size_t c = 0; c < all.cautions.size(); ++c) {
        const auto caution = static_cast<Index>(c);
        if (holds(cautions, caution) || holds(around, caution) || holds(usual, caution)) continue;
        others.push_back({at(all.cautions, caution).name + ": " + at(all.cautions, caution).avoid, false,
                          "That belongs to other work.", caution});
    }
    add_some(item, std::move(others), chance);
    item.given.push_back("Work: " + (of_check ? at(all.checks, entry).name : at(all.remedies, entry).name));
    for (const Index caution : cautions) {
        if (caution != item.stem.second) item.given.push_back("Caution: " + at(all.cautions, caution).name);
    }
    for (std::size_t s = 0; s < steps.size(); ++s) {
        item.given.push_back("Step " + std::to_string(s + 1) + ": " + steps[s]);
    }
    item.question = "Which caution is missing?";
    item.reason = missing.hurts;
    item.source = source_text(all, missing.sources);
    return true;
}

}  // namespace hardover::study

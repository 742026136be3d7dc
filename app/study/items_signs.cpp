// Items about what a cause shows: cause from signs, cause from one reading, signs of a cause, what tells two
// causes apart.
#include <cmath>
#include <set>

#include "app/jobs/page.hpp"
#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

constexpr std::size_t most_signs = 5;
constexpr double shown_mostly = 0.4;   // a sign is told only when the cause gives it at least so often
constexpr double shown_usually = 0.5;  // "usually shows"
constexpr double shown_hardly = 0.05;  // "does not show"
constexpr double tells_apart = 0.5;    // difference of the shares of readings, 0 to 1
constexpr double same_for_both = 0.05;
const double hardly_moves = std::log(1.5);

// Half the summed difference: 0 alike, 1 never alike.
double difference(const std::vector<double>& a, const std::vector<double>& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += std::abs(a[i] - b[i]);
    return sum / 2;
}

// Of the probabilities of two causes.
double log_ratio(const PreparedKnowledge& prepared, const Facts& facts, Index one, Index other) {
    const Belief belief = believe(prepared, facts);
    constexpr double nothing = 1e-9;
    return std::log((belief.causes[static_cast<std::size_t>(one)] + nothing) /
                    (belief.causes[static_cast<std::size_t>(other)] + nothing));
}

// Whether any reading of the finding moves the two against each other, also by way of other causes.
bool moves(const PreparedKnowledge& prepared, const Facts& facts, Index finding, Index one, Index other,
           double before) {
    for (std::size_t r = 0; r < at(prepared.knowledge().findings, finding).readings.size(); ++r) {
        Facts after = facts;
        after.answers[finding] = Answer{static_cast<int>(r)};
        if (std::abs(log_ratio(prepared, after, one, other) - before) >= hardly_moves) return true;
    }
    return false;
}

struct Sign {
    Index finding = none;
    int reading = -1;
};

// Findings worth telling: what the cause and its rivals show, that makes sense here and is not told yet.
std::vector<Index> tellable(const Portraits& portraits, const Facts& facts, Index cause,
                            const std::vector<Index>& rivals) {
    std::vector<Index> findings;
    const auto take = [&](Index of) {
        for (const Shows& shows : portraits.shown(of)) {
            const Index finding = shows.finding;
            const bool told = facts.answers.contains(finding) || holds(findings, finding);
            if (!told && portraits.makes_sense(facts, finding)) findings.push_back(finding);
        }
    };
    take(cause);
    for (const Index rival : rivals) take(rival);
    return findings;
}

// The reading this cause usually gives that takes most away from the rivals as they stand.
Sign most_telling(const Portraits& portraits, const Facts& facts, Index cause,
                  const std::vector<Index>& rivals, const Belief& belief) {
    Sign best;
    double most = 0.05;
    for (const Index finding : tellable(portraits, facts, cause, rivals)) {
        const LikelyReading own = likeliest_reading(portraits.readings(cause, finding), false);
        if (own.share < shown_mostly) continue;
        double weight = 0;
        for (const Index rival : rivals) {
            const double other = portraits.readings(rival, finding)[static_cast<std::size_t>(own.reading)];
            weight +=
                belief.causes[static_cast<std::size_t>(rival)] * std::log(own.share / std::max(other, 1e-4));
        }
        if (weight <= most) continue;
        most = weight;
        best = {finding, own.reading};
    }
    return best;
}

// The possible causes the ranking puts first beside this one.
std::vector<Index> leading_rivals(const Portraits& portraits, const Facts& facts, Index cause,
                                  const Belief& belief, std::size_t most) {
    std::vector<Index> rivals;
    for (std::size_t c = 0; c < belief.causes.size(); ++c) {
        const auto other = static_cast<Index>(c);
        if (other != cause && belief.causes[c] > 0 && portraits.is_possible(facts, other)) {
            rivals.push_back(other);
        }
    }
    std::stable_sort(rivals.begin(), rivals.end(), [&](Index a, Index b) {
        return belief.causes[static_cast<std::size_t>(a)] > belief.causes[static_cast<std::size_t>(b)];
    });
    if (rivals.size() > most) rivals.resize(most);
    return rivals;
}

// What the rival would rather show than what was told.
std::string would_show(const Portraits& portraits, Index rival, const std::vector<Sign>& signs) {
    const Sign* against = nullptr;
    double least = 0.35;
    for (const Sign& sign : signs) {
        const double share = portraits.readings(rival, sign.finding)[static_cast<std::size_t>(sign.reading)];
        if (share >= least) continue;
        least = share;
        against = &sign;
    }
    const Knowledge& all = portraits.knowledge();
    const std::string& name = at(all.causes, rival).name;
    if (against == nullptr) return name + " gives these signs less often.";
    return name + " seldom gives “" + reading_line(all, against->finding, against->reading) + "”.";
}

// What is told of the rig: the fields on which the choices and the findings depend.
void tell_rig(const Knowledge& knowledge, Item& item) {
    std::set<std::string> matter;
    const auto take = [&](const Expression& condition) {
        matter.insert(condition.names().begin(), condition.names().end());
    };
    for (const Option& option : item.options) take(at(knowledge.causes, option.of).possible_when);
    for (const auto& [finding, answer] : item.facts.answers)
        take(at(knowledge.findings, finding).possible_when);
    std::string line;
    for (const auto& [field, value] : item.facts.rig) {
        const RigField& entry = at(knowledge.rig_fields, field);
        const auto* choice = std::get_if<std::string>(&value);
        if (!matter.contains("rig." + entry.id)) continue;
        const auto* count = std::get_if<Quantity>(&value);
        if (count != nullptr && entry.unit) {
            line += (line.empty() ? "" : "; ") + entry.name + ": " + show(*count, *entry.unit, item.units);
        }
        for (const Word& word : entry.choices) {
            if (choice == nullptr || word.id != *choice) continue;
            line += (line.empty() ? "" : "; ") + entry.name + ": " + word.text;
        }
    }
    if (!line.empty()) item.given.push_back("Rig: " + line);
}

}  // namespace

bool make_signs(const Portraits& portraits, Item& item) {
    const Knowledge& all = portraits.knowledge();
    const Index cause = item.stem.first;
    std::optional<Facts> boat = portraits.boat_for(cause);
    if (!boat) return false;
    boat->complaints = {item.stem.second};
    for (const auto& [finding, reading] : at(all.complaints, item.stem.second).says) {
        if (!portraits.makes_sense(*boat, finding)) return false;
    }
    Belief belief = believe(portraits.prepared(), *boat);
    const std::vector<Index> plausible = leading_rivals(portraits, *boat, cause, belief, 8);
    std::vector<Sign> signs;
    const auto settled = [&] {
        const double own = belief.causes[static_cast<std::size_t>(cause)];
        const auto below = std::count_if(plausible.begin(), plausible.end(), [&](Index rival) {
            return belief.causes[static_cast<std::size_t>(rival)] <= clearly_below * own;
        });
        return own >= sure_enough && below >= static_cast<std::ptrdiff_t>(most_wrong);
    };
    while (!settled() && signs.size() < most_signs) {
        const Sign sign =
            most_telling(portraits, *boat, cause, leading_rivals(portraits, *boat, cause, belief, 5), belief);
        if (sign.finding == none) break;
        signs.push_back(sign);
        boat->answers[sign.finding] = Answer{sign.reading};
        belief = believe(portraits.prepared(), *boat);
    }
    if (signs.empty() || !settled()) return false;

    const double own = belief.causes[static_cast<std::size_t>(cause)];
    add_option(item, {at(all.causes, cause).name, true, "", cause});
    for (const Index rival : plausible) {
        const bool is_below = belief.causes[static_cast<std::size_t>(rival)] <= clearly_below * own;
        if (!is_below || item.options.size() > most_wrong) continue;
        add_option(item, {at(all.causes, rival).name, false, would_show(portraits, rival, signs), rival});
    }
    item.facts = *boat;
    item.given.push_back("History: " + at(all.histories, boat->history).name);
    tell_rig(all, item);
    item.given.push_back("Complaint: " + at(all.complaints, item.stem.second).name);
    for (const Sign& sign : signs) item.given.push_back(reading_line(all, sign.finding, sign.reading));
    item.question = "Which cause fits best?";
    item.reason = at(all.causes, cause).about;
    item.source = source_text(all, at(all.causes, cause).sources);
    return true;
}

bool make_speaks(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    const Index cause = item.stem.first;
    const Index finding = item.stem.second;
    const auto reading = static_cast<std::size_t>(item.stem.third);
    const std::optional<Facts> boat = portraits.boat_for(cause);
    if (!boat || portraits.readings(cause, finding)[reading] < shown_mostly) return false;
    item.facts.rig = boat->rig;
    item.facts.answers[finding] = Answer{item.stem.third};
    const Belief belief = believe(portraits.prepared(), item.facts);
    const double own = belief.causes[static_cast<std::size_t>(cause)];
    add_option(item, {at(all.causes, cause).name, true, "", cause, item.stem.third});
    std::vector<Option> wrong;
    for (const Index rival : portraits.rivals(cause)) {
        const double other = belief.causes[static_cast<std::size_t>(rival)];
        if (other > clearly_below * own || other <= 0) continue;
        wrong.push_back({at(all.causes, rival).name, false, "", rival, item.stem.third});
    }
    add_some(item, std::move(wrong), chance);
    tell_rig(all, item);
    item.given.push_back(reading_line(all, finding, item.stem.third));
    item.question = "For which of these causes does this speak most?";
    item.reason = at(all.causes, cause).about;
    item.source = source_text(all, at(all.causes, cause).sources);
    return true;
}

bool make_shows(const Portraits& portraits, Item& item) {
    const Knowledge& all = portraits.knowledge();
    const Index cause = item.stem.first;
    const std::optional<Facts> boat = portraits.boat_for(cause);
    if (!boat) return false;
    for (const Shows& shows : portraits.shown(cause)) {
        const LikelyReading likely = likeliest_reading(portraits.readings(cause, shows.finding), true);
        if (likely.share < shown_usually || item.options.size() == 3) continue;
        if (!portraits.makes_sense(*boat, shows.finding)) continue;
        add_option(item, {reading_line(all, shows.finding, likely.reading), true, "", shows.finding,
                          likely.reading});
    }
    const std::size_t right = item.options.size();
    for (const Index rival : portraits.rivals(cause)) {
        for (const Shows& shows : portraits.shown(rival)) {
            if (item.options.size() >= right + 3) break;
            const LikelyReading likely = likeliest_reading(portraits.readings(rival, shows.finding), true);
            if (likely.share < shown_usually || portraits.is_shown(cause, shows.finding)) continue;
            const double own =
                portraits.readings(cause, shows.finding)[static_cast<std::size_t>(likely.reading)];
            if (own > shown_hardly || !portraits.makes_sense(*boat, shows.finding)) continue;
            add_option(item, {reading_line(all, shows.finding, likely.reading), false,
                              "That speaks for: " + at(all.causes, rival).name + ".", shows.finding,
                              likely.reading});
        }
    }
    item.question = at(all.causes, cause).name + ": which of these does it usually show?";
    item.reason = at(all.causes, cause).about;
    item.source = source_text(all, at(all.causes, cause).sources);
    return true;
}

bool make_apart(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    const Index one = item.stem.first;
    const Index other = item.stem.second;
    std::optional<Facts> boat = portraits.boat_for(one);
    if (!boat || !portraits.is_possible(*boat, other)) boat = portraits.boat_for(other);
    if (!boat || !portraits.is_possible(*boat, one)) return false;
    item.facts.rig = boat->rig;
    Index best = none;
    double most = tells_apart;
    std::vector<Index> alike;
    for (std::size_t f = 0; f < all.findings.size(); ++f) {
        const auto finding = static_cast<Index>(f);
        const bool either = portraits.is_shown(one, finding) || portraits.is_shown(other, finding);
        if (all.findings[f].readings.empty() || !portraits.makes_sense(*boat, finding)) continue;
        const double apart = difference(portraits.readings(one, finding), portraits.readings(other, finding));
        if (either && apart >= most) {
            most = apart;
            best = finding;
        }
        if (either && apart <= same_for_both) alike.push_back(finding);
    }
    if (best == none) return false;
    // Then findings of the same parts, which neither of the two shows.
    for (std::size_t f = 0; f < all.findings.size(); ++f) {
        const auto finding = static_cast<Index>(f);
        const Index part = all.findings[f].part;
        const bool near = part == at(all.causes, one).part || part == at(all.causes, other).part;
        const bool either = portraits.is_shown(one, finding) || portraits.is_shown(other, finding);
        const bool usable = !all.findings[f].readings.empty() && portraits.makes_sense(*boat, finding);
        if (near && !either && usable) alike.push_back(finding);
    }
    const auto own = [&](Index cause) {
        const LikelyReading likely = likeliest_reading(portraits.readings(cause, best), false);
        return at(all.causes, cause).name + ": " +
               at(all.findings, best).readings[static_cast<std::size_t>(likely.reading)].text + ".";
    };
    add_option(item, {at(all.findings, best).name, true, "", best});
    if (alike.size() > drawn_from) alike.resize(drawn_from);
    chance.shuffle(alike);
    const double before = log_ratio(portraits.prepared(), item.facts, one, other);
    for (const Index finding : alike) {
        if (item.options.size() > most_wrong) break;
        if (moves(portraits.prepared(), item.facts, finding, one, other, before)) continue;
        add_option(item, {at(all.findings, finding).name, false, "Both look alike there.", finding});
    }
    item.question = "It is either “" + at(all.causes, one).name + "” or “" + at(all.causes, other).name +
                    "”. What tells the two apart best?";
    item.reason = own(one) + " " + own(other);
    item.source = source_text(all, at(all.findings, best).sources);
    return true;
}

}  // namespace hardover::study

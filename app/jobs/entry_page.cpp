// An entry by its kind, what the job in hand says about it, and the kinds one can browse.
#include "app/jobs/entry_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/entry_parts.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

// Visits every list of entries with its kind's word in the files and its name for people; true ends it.
template <typename Visit>
void each_kind(const Knowledge& knowledge, Visit&& visit) {
    visit("complaint", "Complaints", knowledge.complaints);
    visit("same_words", "Same words", knowledge.same_words);
    visit("finding", "Findings", knowledge.findings);
    visit("check", "Checks", knowledge.checks);
    visit("cause", "Causes", knowledge.causes);
    visit("same_cure", "Same cures", knowledge.same_cures);
    visit("remedy", "Remedies", knowledge.remedies);
    visit("rule", "Rules", knowledge.rules);
    visit("worksheet", "Worksheets", knowledge.worksheets);
    visit("caution", "Cautions", knowledge.cautions);
    visit("deferral", "Left to others", knowledge.deferrals);
    visit("stop", "Stops", knowledge.stops);
    visit("source", "Sources", knowledge.sources);
    visit("rig_field", "The rig", knowledge.rig_fields);
    visit("part", "Parts", knowledge.parts);
    visit("history", "Histories", knowledge.histories);
    visit("need", "Needs", knowledge.needs);
    visit("setting", "Settings", knowledge.setting_entries);
}

std::string name_of_entry(const Entry& entry) {
    return entry.name.empty() ? entry.id : entry.name;
}

std::string under_of(const Finding& entry) {
    return entry.ask;
}
std::string under_of(const Cause& entry) {
    return entry.about;
}
std::string under_of(const Check& entry) {
    return entry.why;
}
std::string under_of(const Rule& entry) {
    return entry.why;
}
std::string under_of(const Worksheet& entry) {
    return entry.about;
}
std::string under_of(const Caution& entry) {
    return entry.hurts;
}
std::string under_of(const Deferral& entry) {
    return entry.text;
}
std::string under_of(const Stop& entry) {
    return entry.text;
}
std::string under_of(const Source& entry) {
    return entry.where;
}
std::string under_of(const RigField& entry) {
    return entry.ask;
}
std::string under_of(const SameCure& entry) {
    return entry.why;
}
std::string under_of(const SameWords& entry) {
    return fmt::format("{}", fmt::join(entry.words, ", "));
}
std::string under_of(const Complaint& entry) {
    return entry.words.empty() ? "" : quoted(entry.words.front());
}
std::string under_of(const Entry&) {
    return "";
}

// What the job in hand says about an entry, by kind.
class InJob {
  public:
    InJob(const PreparedKnowledge& prepared, const Job& job)
        : knowledge_(prepared.knowledge()), job_(job), view_(prepared, job) {}

    Rows rows(const EntryKey& key, Index index) {
        if (key.kind == "finding") return finding(index);
        if (key.kind == "cause") return cause(index);
        if (key.kind == "rule") return rule(index);
        if (key.kind == "remedy") return remedy(index);
        if (key.kind == "check") return check(index);
        if (key.kind == "worksheet") return worksheet(index);
        if (key.kind == "complaint") {
            return row(here(), job_.facts.complaints.contains(index) ? "The customer complains of it."
                                                                     : "Not complained of.");
        }
        const Assessment& said = job_.assessment;
        if (key.kind == "caution") return raised(said.cautions, index);
        if (key.kind == "deferral") return raised(said.deferrals, index);
        if (key.kind == "stop") return raised(said.stops, index);
        if (key.kind == "rig_field") return rig(index);
        return {};
    }

  private:
    std::string here() const { return fmt::format("In job {}", job_.number); }

    std::string answered(Index finding) {
        const auto known = known_answer(view_, finding);
        if (!known) return "Not answered yet.";
        return fmt::format("{} ({}).", answer_text(knowledge_, finding, known->answer, view_.units()),
                           known->origin);
    }
    Rows finding(Index index) { return row(here(), answered(index)); }

    Rows cause(Index index) {
        const auto& ranking = job_.assessment.ranking;
        const auto ranked = std::find_if(ranking.begin(), ranking.end(),
                                         [&](const RankedCause& each) { return each.cause == index; });
        if (ranked == ranking.end()) return row(here(), "It cannot be on this boat.");
        std::string state = percent_text(ranked->probability) + " probable.";
        if (ranked->proved) state += " Proved.";
        if (ranked->put_right) state += " Put right.";
        if (ranked->impossible_here) state = "It cannot be on this rig.";
        EntryText said(state);
        if (ranked->ruled_out_by != none)
            said = EntryText("Ruled out by ") + link_to("rule", at(knowledge_.rules, ranked->ruled_out_by));
        Items weights;
        for (const Weight& weight : ranked->weights) {
            if (weight.kind == Weight::Kind::remedy || weight.index == none) continue;
            const bool of_finding = weight.kind == Weight::Kind::finding;
            EntryText line = of_finding ? link_to("finding", at(knowledge_.findings, weight.index))
                                        : link_to("rule", at(knowledge_.rules, weight.index));
            if (of_finding) line += ": " + lower_first(answered(weight.index));
            weights.push_back(line + (" " + upper_first(strength_text(weight.decibans)) + "."));
        }
        return row(here(), said) + list_row("What speaks for and against it", weights);
    }

    Rows rule(Index index) {
        for (const FiredRule& fired : job_.assessment.fired) {
            if (fired.rule != index) continue;
            return row(here(), "It fired because " + spoken_because(view_, fired.because) + ".");
        }
        return row(here(), "It has not fired.");
    }

    Rows remedy(Index index) {
        const auto tried = job_.facts.tried.find(index);
        return row(here(), tried == job_.facts.tried.end() ? std::string("Not tried.")
                                                           : "Tried: " + outcome_text(tried->second) + ".");
    }

    Rows check(Index index) {
        Items items;
        for (const Index finding : at(knowledge_.checks, index).gets) {
            items.push_back(link_to("finding", at(knowledge_.findings, finding)) +
                            (": " + lower_first(answered(finding))));
        }
        return list_row(here(), items);
    }

    Rows worksheet(Index index) {
        const SheetText text = sheet_text(
            knowledge_, job_.assessment.worksheets[static_cast<std::size_t>(index)], view_.units());
        Items items;
        for (const SheetLine& line : text.results) items.push_back(line.name + ": " + line.value);
        return list_row(here(), items);
    }

    Rows raised(const std::vector<Index>& all, Index index) const {
        const bool is = std::find(all.begin(), all.end(), index) != all.end();
        return row(here(), is ? "A rule has raised it." : "No rule has raised it.");
    }

    Rows rig(Index index) {
        const auto known = job_.facts.rig.find(index);
        const RigField& field = at(knowledge_.rig_fields, index);
        return row(here(), known == job_.facts.rig.end()
                               ? std::string("Not known.")
                               : rig_value_text(field, known->second, view_.units()));
    }

    const Knowledge& knowledge_;
    const Job& job_;
    View view_;
};

}  // namespace

std::vector<EntryRow> entry_rows(const Knowledge& knowledge, const EntryLinks& links, const std::string& kind,
                                 Index index, UnitSystem units) {
    Rows rows;
    const Book book{knowledge, links, units};
    each_kind(knowledge, [&](const std::string& word, const char*, const auto& entries) {
        if (word == kind)
            rows = rows_of(book, at(entries, index), index) + source_row(book, at(entries, index));
    });
    return rows;
}

EntryPage make_entry_page(const Knowledge& knowledge, const EntryLinks& links, const EntryKey& key,
                          const Job* job, const PreparedKnowledge& prepared, UnitSystem units) {
    EntryPage page{key, kind_name(key.kind), "There is no such entry: " + key.id, {}, {}};
    Index index = none;
    each_kind(knowledge, [&](const std::string& word, const char*, const auto& entries) {
        if (word != key.kind) return;
        index = find(entries, key.id);
        if (index != none) page.name = name_of_entry(at(entries, index));
    });
    if (index == none) return page;
    page.rows = entry_rows(knowledge, links, key.kind, index, units);
    if (job != nullptr) page.in_job = InJob(prepared, *job).rows(key, index);
    return page;
}

std::vector<EntryText> fired_in_job(const Knowledge& knowledge, const Job& job) {
    std::vector<EntryText> lines;
    for (const FiredRule& fired : job.assessment.fired) {
        const Rule& rule = at(knowledge.rules, fired.rule);
        lines.push_back(EntryText(EntryPiece{rule.why.empty() ? rule.id : rule.why, {"rule", rule.id}}));
    }
    return lines;
}

std::vector<KindCount> browsable_kinds(const Knowledge& knowledge) {
    std::vector<KindCount> kinds;
    each_kind(knowledge, [&](const char* word, const char* name, const auto& entries) {
        if (!entries.empty()) kinds.push_back({word, name, entries.size()});
    });
    return kinds;
}

std::vector<EntryName> entries_of(const Knowledge& knowledge, const std::string& kind) {
    std::vector<EntryName> names;
    each_kind(knowledge, [&](const std::string& word, const char*, const auto& entries) {
        if (word != kind) return;
        for (const auto& entry : entries)
            names.push_back({{kind, entry.id}, name_of_entry(entry), under_of(entry)});
    });
    return names;
}

}  // namespace hardover

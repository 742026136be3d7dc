// Reads the entries that stand by themselves: scales, settings, sources, histories, needs, parts, cautions,
// stops and deferrals.
#include <array>
#include <cmath>

#include "rules/reading/draft.hpp"
#include "rules/reading/letters.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::reading_detail {
namespace {

struct KnownSetting {
    const char* id;
    double Settings::*value;
    bool is_time;  // in minutes
    double most;
};

constexpr double no_limit = 1e9;
constexpr std::array<KnownSetting, 7> known_settings = {
    {{"stray", &Settings::stray, false, 1},
     {"not_listed_odds", &Settings::not_listed_odds, false, 1000},
     {"not_listed_shows", &Settings::not_listed_shows, false, 1},
     {"misreading", &Settings::misreading, false, 1},
     {"call_for_help", &Settings::call_for_help, true, no_limit},
     {"try_out", &Settings::try_out, true, no_limit},
     {"shop_rate", &Settings::shop_rate, false, no_limit}}};

const KnownSetting* known_setting(const std::string& id) {
    for (const KnownSetting& setting : known_settings) {
        if (id == setting.id) return &setting;
    }
    return nullptr;
}

void read_scale(Draft& draft, MapReader& map, const std::string& scale) {
    const bool is_share = scale == "how_often";
    if (!is_share && scale != "favour") {
        add_fault(draft.faults, map.node(), "unknown scale '" + scale + "'",
                  "the scales are how_often and favour");
    }
    const YamlNode* words = map.need("words");
    if (words == nullptr) return;
    for (const Pair& word : pairs_of(*words, "'words'", draft.faults)) {
        const auto value = number_of(*word.value, "'" + word.key->text + "'", draft.faults);
        if (!check_word(draft, *word.key, "scale word") || !value) continue;
        if (is_share && (*value < 0 || *value > 1)) {
            add_fault(draft.faults, *word.value, "'" + word.key->text + "' must be a share from 0 to 1");
        } else if (!is_share && *value <= 0) {
            add_fault(draft.faults, *word.value, "'" + word.key->text + "' must be more than 0",
                      "1 changes nothing, less than 1 speaks against");
        }
        draft.scale[scale + "." + word.key->text] = *value;
        draft.knowledge.scale_words.push_back({scale + "." + word.key->text, word.value->text});
    }
}

void read_setting(Draft& draft, MapReader& map, Setting& setting) {
    setting.name = map.text("about");
    const YamlNode* node = map.need("value");
    const KnownSetting* known = known_setting(setting.id);
    if (known == nullptr) {
        std::vector<std::string> ids;
        for (const KnownSetting& each : known_settings) ids.emplace_back(each.id);
        add_fault(draft.faults, map.node(), "unknown setting '" + setting.id + "'",
                  did_you_mean(setting.id, ids));
        return;
    }
    if (node == nullptr) return;
    const auto value = known->is_time ? minutes_of(*node, "'value'", draft.faults)
                                      : number_of(*node, "'value'", draft.faults);
    if (!value) return;
    if (*value < 0 || *value > known->most) {
        const std::string range = known->most == no_limit ? "must not be less than 0"
                                  : known->most == 1      ? "must be a share from 0 to 1"
                                                          : "must be from 0 to 1000, it is per 1000";
        add_fault(draft.faults, *node, "the setting '" + setting.id + "' " + range);
        return;
    }
    setting.value = *value;
    draft.knowledge.settings.*known->value = *value;
}

void read_source(Draft& draft, MapReader& map, Source& source) {
    source.name = map.text("title");
    source.where = map.optional_text("where");
    const YamlNode* node = map.need("kind");
    if (node == nullptr) return;
    const auto kind = text_of(*node, "'kind'", draft.faults);
    if (!kind) return;
    static const std::vector<std::string> kinds = {"published", "common_practice", "from_memory", "invented"};
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        if (*kind != kinds[i]) continue;
        source.kind = static_cast<Source::Kind>(i);
        return;
    }
    std::string cure = did_you_mean(*kind, kinds);
    if (cure.empty()) cure = "published, common_practice, from_memory or invented";
    add_fault(draft.faults, *node, "unknown kind of source '" + *kind + "'", cure);
}

void check_shares_of_histories(Draft& draft) {
    const auto& histories = draft.knowledge.histories;
    if (histories.empty()) return;
    double sum = 0;
    for (std::size_t i = 0; i < histories.size(); ++i) {
        if (draft.entries(EntryKind::history)[i].node == nullptr) return;
        sum += histories[i].share;
    }
    if (std::abs(sum - 1) <= 0.001) return;
    draft.faults.push_back({histories.front().place,
                            "the shares of all histories add to " + short_number(sum) + ", not to 1", ""});
}

}  // namespace

void read_scales_and_settings(Draft& draft) {
    for (std::size_t i = 0; i < draft.entries(EntryKind::scale).size(); ++i) {
        if (draft.entries(EntryKind::scale)[i].node == nullptr) continue;
        MapReader map = open_entry(draft, EntryKind::scale, i);
        read_scale(draft, map, draft.entries(EntryKind::scale)[i].id);
        Entry entry;
        read_sources(draft, map, entry, SourceRule::required);
        map.refuse_other_keys();
    }
    each_entry(draft, EntryKind::setting, draft.knowledge.setting_entries,
               [&](MapReader& map, Setting& setting) {
                   read_setting(draft, map, setting);
                   read_sources(draft, map, setting, SourceRule::required);
               });
}

void read_basic_entries(Draft& draft) {
    Knowledge& knowledge = draft.knowledge;
    each_entry(draft, EntryKind::source, knowledge.sources,
               [&](MapReader& map, Source& source) { read_source(draft, map, source); });
    each_entry(draft, EntryKind::history, knowledge.histories, [&](MapReader& map, History& history) {
        history.name = map.text("name");
        if (const YamlNode* share = map.need("share")) {
            history.share = number_of(*share, "'share'", draft.faults).value_or(0);
            if (history.share < 0) add_fault(draft.faults, *share, "'share' must not be less than 0");
        }
        read_sources(draft, map, history, SourceRule::required);
    });
    check_shares_of_histories(draft);
    const auto read_name = [&](MapReader& map, Entry& entry) {
        entry.name = map.text("name");
        read_sources(draft, map, entry, SourceRule::optional);
    };
    each_entry(draft, EntryKind::need, knowledge.needs, [&](MapReader& map, Need& need) {
        read_name(map, need);
        read_later(draft, map.get("possible_when"), need.possible_when);
        need.takes = optional_list(draft, EntryKind::need, map, "takes");
        const YamlNode* takes_when = map.get("takes_when");
        read_later(draft, takes_when, need.takes_when);
        if (takes_when && need.takes.empty()) {
            add_fault(draft.faults, *takes_when, "'takes_when' needs 'takes', the needs it is about");
        }
    });
    each_entry(draft, EntryKind::part, knowledge.parts, read_name);
    each_entry(draft, EntryKind::caution, knowledge.cautions, [&](MapReader& map, Caution& caution) {
        caution.name = map.text("name");
        caution.hurts = map.text("hurts");
        caution.avoid = map.text("avoid");
        if (const YamlNode* with = map.get("comes_with")) {
            caution.comes_with = resolve(draft, EntryKind::need, *with);
        }
        read_sources(draft, map, caution, SourceRule::required);
    });
    each_entry(draft, EntryKind::stop, knowledge.stops, [&](MapReader& map, Stop& stop) {
        stop.name = map.text("name");
        stop.text = map.text("text");
        stop.bars = optional_list(draft, EntryKind::need, map, "bars");
        read_sources(draft, map, stop, SourceRule::required);
    });
    each_entry(draft, EntryKind::deferral, knowledge.deferrals, [&](MapReader& map, Deferral& deferral) {
        deferral.name = map.text("name");
        deferral.text = map.text("text");
        deferral.to = map.text("to");
        read_later(draft, map.get("when"), deferral.when);
        read_sources(draft, map, deferral, SourceRule::required);
    });
}

}  // namespace hardover::reading_detail

// Which items may be made: one stem for each thing the knowledge lets ask.
#include <set>

#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

constexpr std::size_t rivals_apart = 2;  // how many rivals a cause is held against

class StemList {
  public:
    explicit StemList(const Portraits& portraits) : portraits_(portraits), all_(portraits.knowledge()) {}

    std::vector<Stem> list() {
        for (std::size_t c = 0; c < all_.causes.size(); ++c) add_signs(static_cast<Index>(c));
        for (std::size_t f = 0; f < all_.findings.size(); ++f) add_speaks(static_cast<Index>(f));
        for (std::size_t c = 0; c < all_.causes.size(); ++c) add_of_cause(Form::shows, static_cast<Index>(c));
        for (std::size_t c = 0; c < all_.causes.size(); ++c) add_apart(static_cast<Index>(c));
        for (std::size_t c = 0; c < all_.causes.size(); ++c) add_of_cause(Form::proof, static_cast<Index>(c));
        for (std::size_t c = 0; c < all_.causes.size(); ++c) {
            add_of_cause(Form::remedy, static_cast<Index>(c));
        }
        for (std::size_t r = 0; r < all_.remedies.size(); ++r) add_order(static_cast<Index>(r));
        for (std::size_t c = 0; c < all_.complaints.size(); ++c) add_next(static_cast<Index>(c));
        add_cautions();
        for (std::size_t w = 0; w < all_.worksheets.size(); ++w) add_figures(static_cast<Index>(w));
        for (std::size_t c = 0; c < all_.causes.size(); ++c) add_of_cause(Form::place, static_cast<Index>(c));
        add_authored();
        return std::move(stems_);
    }

  private:
    Stem& add(Form form, const std::string& name) {
        Stem stem;
        stem.form = form;
        stem.id = stem.statement = std::string(form_id(form)) + "/" + name;
        stems_.push_back(stem);
        return stems_.back();
    }

    void take_topics(Stem& stem, Index cause) {
        stem.complaints = portraits_.complaints_of(cause);
        stem.part = at(all_.causes, cause).part;
    }

    void add_of_cause(Form form, Index cause) {
        Stem& stem = add(form, at(all_.causes, cause).id);
        stem.first = cause;
        take_topics(stem, cause);
    }

    void add_signs(Index cause) {
        for (const Index complaint : portraits_.complaints_of(cause)) {
            const std::string& id = at(all_.causes, cause).id;
            Stem& stem = add(Form::signs, id + "/" + at(all_.complaints, complaint).id);
            stem.statement = "signs/" + id;
            stem.first = cause;
            stem.second = complaint;
            stem.complaints = {complaint};
            stem.part = at(all_.causes, cause).part;
        }
    }

    // The cause a bad reading comes from most often gives the topics.
    void add_speaks(Index finding) {
        const Finding& entry = at(all_.findings, finding);
        for (std::size_t r = 0; r + 1 < entry.readings.size(); ++r) {
            Index best = none;
            double most = 0;
            for (std::size_t c = 0; c < all_.causes.size(); ++c) {
                const auto cause = static_cast<Index>(c);
                if (!portraits_.is_shown(cause, finding)) continue;
                const double boats = portraits_.odds(cause) * portraits_.readings(cause, finding)[r];
                if (boats <= most) continue;
                most = boats;
                best = cause;
            }
            if (best == none) continue;
            Stem& stem = add(Form::speaks, entry.id + "/" + entry.readings[r].id);
            stem.first = best;
            stem.second = finding;
            stem.third = static_cast<int>(r);
            take_topics(stem, best);
        }
    }

    void add_apart(Index cause) {
        std::size_t held = 0;
        for (const Index rival : portraits_.rivals(cause)) {
            if (held == rivals_apart) break;
            ++held;
            const Index one = std::min(cause, rival);
            const Index other = std::max(cause, rival);
            if (!pairs_.insert({one, other}).second) continue;
            Stem& stem = add(Form::apart, at(all_.causes, one).id + "/" + at(all_.causes, other).id);
            stem.first = one;
            stem.second = other;
            take_topics(stem, one);
        }
    }

    void add_order(Index remedy) {
        const std::vector<Index> causes = causes_of_remedy(all_, remedy);
        if (causes.empty()) return;
        Stem& stem = add(Form::order, at(all_.remedies, remedy).id);
        stem.first = remedy;
        take_topics(stem, causes.front());
    }

    void add_next(Index complaint) {
        for (std::size_t h = 0; h < all_.histories.size(); ++h) {
            const std::string name = at(all_.complaints, complaint).id + "/" + all_.histories[h].id;
            Stem& stem = add(Form::next, name);
            stem.first = complaint;
            stem.second = static_cast<Index>(h);
            stem.complaints = {complaint};
        }
    }

    void add_cautions() {
        for (std::size_t c = 0; c < all_.checks.size(); ++c) {
            const std::vector<Index> parts = parts_of_check(all_, static_cast<Index>(c));
            add_cautions("check", static_cast<Index>(c), all_.checks[c].id, all_.checks[c].cautions,
                         parts.empty() ? none : parts.front(), 0);
        }
        for (std::size_t r = 0; r < all_.remedies.size(); ++r) {
            const std::vector<Index> parts = parts_of_remedy(all_, static_cast<Index>(r));
            add_cautions("remedy", static_cast<Index>(r), all_.remedies[r].id, all_.remedies[r].cautions,
                         parts.empty() ? none : parts.front(), 1);
        }
    }

    // third: 0 of a check, 1 of a remedy; second: the caution that is missing.
    void add_cautions(const std::string& kind, Index entry, const std::string& id,
                      const std::vector<Index>& cautions, Index part, int which) {
        for (const Index caution : cautions) {
            const std::string name = kind + "/" + id;
            Stem& stem = add(Form::caution, name + "/" + at(all_.cautions, caution).id);
            stem.statement = "caution/" + name;
            stem.first = entry;
            stem.second = caution;
            stem.third = which;
            stem.part = part;
        }
    }

    void add_figures(Index worksheet) {
        const Worksheet& sheet = at(all_.worksheets, worksheet);
        for (std::size_t r = 0; r < sheet.results.size(); ++r) {
            Stem& stem = add(Form::figure, sheet.id + "/" + sheet.results[r].id);
            stem.first = worksheet;
            stem.third = static_cast<int>(r);
            for (const Finding& finding : all_.findings) {
                const bool is_it = finding.from && finding.from->worksheet == worksheet;
                if (is_it && stem.part == none) stem.part = finding.part;
            }
        }
    }

    void add_authored() {
        for (std::size_t i = 0; i < portraits_.authored().size(); ++i) {
            const AuthoredItem& item = portraits_.authored()[i];
            Stem& stem = add(item.form, item.id);
            stem.complaints = item.complaints;
            stem.part = item.part;
            stem.authored = static_cast<int>(i);
        }
    }

    const Portraits& portraits_;
    const Knowledge& all_;
    std::vector<Stem> stems_;
    std::set<std::pair<Index, Index>> pairs_;
};

}  // namespace

std::vector<Stem> list_stems(const Portraits& portraits) {
    return StemList(portraits).list();
}

}  // namespace hardover::study

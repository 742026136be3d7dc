#include "app/classroom/merge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace hardover::classroom {

namespace {

std::string countersigned(const Bytes& last, std::size_t count, const Bytes& key) {
    return hand_in_message(collected_domain, last, static_cast<std::uint32_t>(count)) + key;
}

// Two different records for one place.
bool has_dispute(const std::vector<StoredClassRecord>& records) {
    for (std::size_t i = 1; i < records.size(); ++i) {
        if (records[i].sequence == records[i - 1].sequence) return true;
    }
    return false;
}

std::optional<int> days_late(const ClassSet& set, const HandIn& hand_in) {
    std::optional<int> due;
    for (const Task& task : set.tasks) {
        if (task.due && (!due || *task.due > *due)) due = task.due;
    }
    const int day = hand_in.records.back().day;
    if (!due || day <= *due) return std::nullopt;
    return day - *due;
}

class Merger {
  public:
    Merger(ClassStore& store, const ClassKeys& keys, std::vector<ClassSet> sets,
           std::vector<StoredHandIn> known, const std::string& at)
        : store_(store), keys_(keys), sets_(std::move(sets)), known_(std::move(known)), at_(at) {}

    Result<MergedFile> take(const NamedText& file) {
        MergedFile merged;
        merged.file = file.name;
        const auto read = read_hand_in(file.text, file.name);
        if (!read) {
            merged.refused = read.error();
            return merged;
        }
        const HandIn& hand_in = read.value();
        merged.set = hand_in.of.set;
        merged.seat = hand_in.of.seat;
        const auto set = std::find_if(sets_.begin(), sets_.end(), [&](const ClassSet& each) {
            return each.sitting == hand_in.of.sitting && each.id == hand_in.of.set;
        });
        merged.refused = is_foreign(hand_in, set == sets_.end() ? nullptr : &*set, file.name);
        if (merged.refused) return merged;
        merged.days_late = days_late(*set, hand_in);
        return collect(hand_in, std::move(merged));
    }

    std::vector<std::string> missing() const {
        std::vector<std::string> lines;
        for (const ClassSet& set : sets_) {
            std::string seats;
            for (const std::string& seat : set.seats) {
                const bool there = std::any_of(known_.begin(), known_.end(), [&](const StoredHandIn& each) {
                    return each.sitting == set.sitting && each.seat == seat;
                });
                if (!there) seats += (seats.empty() ? "" : ", ") + seat;
            }
            if (!seats.empty()) lines.push_back(set.id + ": " + seats);
        }
        return lines;
    }

  private:
    std::optional<Error> is_foreign(const HandIn& hand_in, const ClassSet* set,
                                    const std::string& name) const {
        if (set == nullptr) {
            return Error{Error::Kind::not_found,
                         "this hand-in is for set " + hand_in.of.set + " of another class or another sitting",
                         name, "merge it where that set was made"};
        }
        if (std::find(set->seats.begin(), set->seats.end(), hand_in.of.seat) != set->seats.end()) {
            return std::nullopt;
        }
        return Error{Error::Kind::not_found,
                     "this hand-in is of seat " + hand_in.of.seat + ", which set " + set->id + " is not for",
                     name, "ask who made it"};
    }

    Result<MergedFile> collect(const HandIn& hand_in, MergedFile merged) {
        StoredHandIn stored;
        stored.attempt = hand_in.of.attempt;
        stored.last = to_hex(hand_in.last);
        stored.key = to_hex(hand_in.key);
        stored.sitting = hand_in.of.sitting;
        stored.seat = hand_in.of.seat;
        stored.signature = to_hex(hand_in.signature);
        stored.countersignature =
            to_hex(sign(countersigned(hand_in.last, hand_in.records.size(), hand_in.key), keys_.secret_key));
        stored.collected_at = at_;
        std::vector<StoredClassRecord> records;
        for (const Record& record : hand_in.records) {
            stored.records.push_back(record.id);
            records.push_back(
                {record.id, hand_in.of.sitting, hand_in.of.attempt, record.sequence, record.line});
            merged.unknown += std::holds_alternative<std::monostate>(record.content) ? 1 : 0;
        }
        const auto added = store_.collect(stored, records);
        if (!added) return added.error();
        merged.records = static_cast<int>(records.size());
        merged.fresh = added.value().records;
        merged.seen_before = !added.value().hand_in;
        merged.other_pc = std::any_of(known_.begin(), known_.end(), [&](const StoredHandIn& each) {
            return each.seat == stored.seat && each.key != stored.key;
        });
        const auto all = store_.records_of(stored.sitting, stored.attempt);
        if (!all) return all.error();
        merged.disputed = has_dispute(all.value());
        if (added.value().hand_in) known_.push_back(std::move(stored));
        return merged;
    }

    ClassStore& store_;
    const ClassKeys& keys_;
    std::vector<ClassSet> sets_;
    std::vector<StoredHandIn> known_;
    const std::string& at_;
};

// What is wrong with a collected hand-in; "": nothing.
std::string fault_of(const StoredHandIn& hand_in, const std::map<std::string, std::string>& lines,
                     const Bytes& class_key) {
    Bytes last = chain_start();
    for (std::size_t i = 0; i < hand_in.records.size(); ++i) {
        const auto line = lines.find(hand_in.records[i]);
        if (line == lines.end()) return fmt::format("record {} is gone", i + 1);
        if (record_id(line->second) != line->first) return fmt::format("record {} was changed", i + 1);
        last = chain_next(record_domain, last, line->second);
    }
    const auto key = from_hex(hand_in.key, public_key_size);
    const auto signature = from_hex(hand_in.signature, signature_size);
    const auto countersignature = from_hex(hand_in.countersignature, signature_size);
    const std::size_t count = hand_in.records.size();
    if (!key || !signature || !countersignature || to_hex(last) != hand_in.last ||
        !verify(hand_in_message(hand_in_domain, last, static_cast<std::uint32_t>(count)), *signature, *key)) {
        return "the signature of the seat does not fit";
    }
    if (!verify(countersigned(last, count, *key), *countersignature, class_key)) {
        return "the countersignature does not fit";
    }
    return "";
}

}  // namespace

Result<MergeReport> merge_hand_ins(ClassStore& store, const StoredClass& of, const ClassKeys& keys,
                                   const std::vector<NamedText>& files, const std::string& at,
                                   const Watched& watched) {
    auto sets = sets_of(store, of);
    if (!sets) return sets.error();
    auto known = store.hand_ins(of.number);
    if (!known) return known.error();
    Merger merger(store, keys, std::move(sets).value(), std::move(known).value(), at);
    MergeReport report;
    for (const NamedText& file : files) {
        if (!goes_on(watched, report.files.size(), files.size())) break;
        auto merged = merger.take(file);
        if (!merged) return merged.error();
        report.files.push_back(std::move(merged).value());
    }
    report.left = files.size() - report.files.size();
    report.missing = merger.missing();
    return report;
}

std::string merge_text(const MergedFile& file) {
    if (file.refused) return "Refused. " + file.refused->text();
    std::string text = fmt::format("{}: seat {}, set {}: ", file.file, file.seat, file.set);
    if (file.fresh == 0) {
        text += fmt::format("nothing new, all {} records are known.", file.records);
    } else {
        text += fmt::format("{} of {} records are new.", file.fresh, file.records);
    }
    if (file.disputed) {
        text +=
            " DISPUTED: two different records claim one place. Both are kept; ask at that seat which is "
            "right.";
    }
    if (file.other_pc) text += " It comes from another PC than before: ask at that seat whether that is so.";
    if (file.unknown > 0) {
        text += fmt::format(" {} records are of a newer version; they are kept as they are.", file.unknown);
    }
    if (file.days_late) {
        text += fmt::format(" Worked on {} day{} after the last due day, by that PC's clock.",
                            *file.days_late, *file.days_late == 1 ? "" : "s");
    }
    return text;
}

std::vector<std::string> merge_text(const MergeReport& report) {
    std::vector<std::string> lines;
    int fresh = 0, refused = 0;
    for (const MergedFile& file : report.files) {
        lines.push_back(merge_text(file));
        fresh += file.fresh;
        refused += file.refused ? 1 : 0;
    }
    lines.push_back(fmt::format("{} file{}, {} refused, {} new record{}.", report.files.size(),
                                report.files.size() == 1 ? "" : "s", refused, fresh, fresh == 1 ? "" : "s"));
    if (report.left > 0) lines.push_back(fmt::format("Stopped before the last {} files.", report.left));
    for (const std::string& set : report.missing) lines.push_back("Not handed in yet, " + set);
    return lines;
}

Result<std::vector<std::string>> check_collected(const ClassStore& store, const StoredClass& of,
                                                 const Watched& watched) {
    if (const auto sets = sets_of(store, of); !sets) return std::vector<std::string>{sets.error().text()};
    const auto hand_ins = store.hand_ins(of.number);
    if (!hand_ins) return hand_ins.error();
    const auto records = store.records(of.number);
    if (!records) return records.error();
    const auto key = from_hex(of.public_key, public_key_size);
    if (!key) return std::vector<std::string>{"The key of the class is damaged."};
    std::map<std::string, std::string> lines;
    for (const StoredClassRecord& record : records.value()) lines[record.id] = record.line;
    std::vector<std::string> faults;
    std::set<std::string> claimed;
    std::size_t looked_at = 0;
    for (const StoredHandIn& hand_in : hand_ins.value()) {
        if (!goes_on(watched, looked_at++, hand_ins.value().size())) return faults;
        claimed.insert(hand_in.records.begin(), hand_in.records.end());
        const std::string fault = fault_of(hand_in, lines, *key);
        if (fault.empty()) continue;
        faults.push_back(fmt::format("Seat {}, attempt {}, collected {}: {}.", hand_in.seat,
                                     hand_in.attempt.substr(0, 8), hand_in.collected_at, fault));
    }
    for (const StoredClassRecord& record : records.value()) {
        if (claimed.contains(record.id)) continue;
        faults.push_back(fmt::format("Record {} of attempt {} was in no hand-in.", record.sequence,
                                     record.attempt.substr(0, 8)));
    }
    return faults;
}

const Protection& protection() {
    static const Protection text{
        {"A file that was damaged on the way, cut short, or put together anew is refused.",
         "A record that was changed, moved, left out or added after the hand-in was made is refused.",
         "A hand-in for another set, another sitting or another seat is refused.",
         "What was collected and then changed by anyone without the passphrase shows: hardover class check.",
         "The same file twice, or files in any order, come to the same.",
         "In graded sets neither the key nor the marks are on the students' PCs. The questions are sealed "
         "until the start code is given out."},
        {"Someone else in the seat, a look at the next screen, a picture taken of it.",
         "A learner who can read the files of the PC, takes its key and writes a whole attempt before "
         "handing "
         "in.",
         "Reading the memory of a PC while a set is open; a changed program; a changed clock.",
         "An attempt that is thrown away: it only shows as one that was not handed in.",
         "Anyone who has the start code and this program can work out the key of a graded set.",
         "A passphrase that is weak, shared or lost. Only a recovery sheet opens a class without it.",
         "An instructor who changes things before collecting, and copies on memory sticks.",
         "It shows damage and later changes, and makes casual cheating seen. It is no security for exams."}};
    return text;
}

}  // namespace hardover::classroom

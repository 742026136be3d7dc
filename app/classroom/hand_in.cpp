#include "app/classroom/hand_in.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "app/classroom/canonical.hpp"

namespace hardover::classroom {

namespace {

using nlohmann::json;

constexpr int file_version = 1;
constexpr std::size_t hash_size = 32;

json head_of(const AttemptOf& of, const Bytes& key, std::size_t count) {
    return {{"hardover_hand_in", file_version},
            {"set", of.set},
            {"sitting", of.sitting},
            {"seat", of.seat},
            {"attempt", of.attempt},
            {"key", to_hex(key)},
            {"count", count}};
}

std::string end_of(const Bytes& last, const Bytes& signature) {
    return canonical({{"last", to_hex(last)}, {"signature", to_hex(signature)}});
}

// Looks a file over, from the first line to the last.
class HandInReader {
  public:
    HandInReader(const std::string& text, const std::string& name) : name_(name) {
        std::size_t from = 0;
        for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', from)) {
            lines_.push_back(text.substr(from, end - from));
            from = end + 1;
        }
        whole_ = from == text.size();
        if (!whole_) lines_.push_back(text.substr(from));
    }

    Result<HandIn> read() {
        try {
            if (auto head = read_head(); !head) return head.error();
            if (auto records = read_records(); !records) return records.error();
            if (auto end = read_end(); !end) return end.error();
        } catch (const json::exception& error) {
            return refused(std::string("it lacks something: ") + error.what());
        }
        return std::move(hand_in_);
    }

  private:
    Error refused(const std::string& what) const {
        return {Error::Kind::bad_input, "this hand-in is not taken: " + what, name_,
                "nothing of it was kept; hand it in once more from the student's PC"};
    }

    Error refused(std::size_t record, const std::string& what) const {
        return refused(fmt::format("record {} {}", record, what));
    }

    // The line must be in the one form it can have, so that no byte of it is free.
    Result<void> read_head() {
        const json head = lines_.empty() ? json() : json::parse(lines_.front(), nullptr, false);
        if (!head.is_object() || !head.contains("hardover_hand_in")) {
            return Error{Error::Kind::bad_input,
                         "this is no hand-in of a class, or its first line is damaged", name_,
                         "name a file made by: hardover class hand-in"};
        }
        if (head["hardover_hand_in"].is_number_integer() && head["hardover_hand_in"] > file_version) {
            return Error{Error::Kind::unsupported, "this hand-in was made by a newer version", name_,
                         "merge it with that version; the file itself is left as it is"};
        }
        const auto text = [&](const char* key) { return head.at(key).get<std::string>(); };
        hand_in_.of = {text("set"), text("sitting"), text("seat"), text("attempt")};
        count_ = head.at("count").get<std::size_t>();
        const auto key = from_hex(text("key"), public_key_size);
        if (!key || canonical(head_of(hand_in_.of, *key, count_)) != lines_.front()) {
            return refused("its first line was changed");
        }
        hand_in_.key = *key;
        return {};
    }

    Result<void> read_records() {
        const std::size_t there = lines_.size() < 2 ? 0 : lines_.size() - 2;
        if (!whole_ || there != count_) {
            return refused(
                fmt::format("it should have {} records and an end, and has {} lines after the first", count_,
                            lines_.size() - 1));
        }
        hand_in_.last = chain_start();
        for (std::size_t i = 1; i <= count_; ++i) {
            auto record = read_record(lines_[i]);
            if (!record) return refused(i, "cannot be read: " + record.error().what);
            const AttemptOf& of = record.value().of;
            if (of.set != hand_in_.of.set || of.sitting != hand_in_.of.sitting ||
                of.seat != hand_in_.of.seat || of.attempt != hand_in_.of.attempt) {
                return refused(i, "belongs to another seat, set or attempt");
            }
            if (record.value().sequence != static_cast<int>(i)) {
                return refused(i, fmt::format("bears the number {}: records were moved, left out or added",
                                              record.value().sequence));
            }
            hand_in_.last = chain_next(record_domain, hand_in_.last, lines_[i]);
            hand_in_.records.push_back(std::move(record).value());
        }
        if (count_ == 0) return refused("it has no records");
        return {};
    }

    Result<void> read_end() {
        const json end = json::parse(lines_.back(), nullptr, false);
        const auto last = from_hex(end.at("last").get<std::string>(), hash_size);
        const auto signature = from_hex(end.at("signature").get<std::string>(), signature_size);
        if (!last || !signature || end_of(*last, *signature) != lines_.back()) {
            return refused("its last line was changed");
        }
        if (*last != hand_in_.last) {
            return refused(fmt::format("one of its {} records was changed after it was made", count_));
        }
        const Bytes message = hand_in_message(hand_in_domain, *last, static_cast<std::uint32_t>(count_));
        if (!verify(message, *signature, hand_in_.key)) {
            return refused("its signature does not fit: it was changed, or the key in it is another's");
        }
        hand_in_.signature = *signature;
        return {};
    }

    const std::string& name_;
    std::vector<std::string> lines_;
    bool whole_ = false;  // it ends with a line end
    std::size_t count_ = 0;
    HandIn hand_in_;
};

Result<KeyPair> key_of_this_pc(ClassStore& store) {
    auto kept = store.own_key();
    if (!kept) return kept.error();
    if (!kept.value()) {
        const KeyPair made = make_key_pair();
        const auto stored = store.keep_own_key({to_hex(made.public_key), to_hex(made.secret_key.bytes())});
        if (!stored) return stored.error();
        kept = std::optional<StoredKey>(stored.value());
    }
    const auto public_key = from_hex(kept.value()->public_key, public_key_size);
    auto secret_key = from_hex(kept.value()->secret_key, secret_key_size);
    if (!public_key || !secret_key) {
        return Error{Error::Kind::storage, "the key of this PC is damaged in the records", "",
                     "restore a backup of the records"};
    }
    KeyPair key{*public_key, Secret(*secret_key)};
    wipe(*secret_key);
    return key;
}

}  // namespace

std::string hand_in_file(const std::vector<Record>& records, const KeyPair& key) {
    const Bytes last = chain_over(records);
    const Bytes message = hand_in_message(hand_in_domain, last, static_cast<std::uint32_t>(records.size()));
    std::string text = canonical(head_of(records.front().of, key.public_key, records.size())) + "\n";
    for (const Record& record : records) text += record.line + "\n";
    return text + end_of(last, sign(message, key.secret_key)) + "\n";
}

Result<HandIn> read_hand_in(const std::string& text, const std::string& name) {
    return HandInReader(text, name).read();
}

Result<HandedIn> hand_in(ClassStore& store, const std::string& attempt, const WriteHandIn& write,
                         const std::string& at) {
    const auto lines = store.attempt_lines(attempt);
    if (!lines) return lines.error();
    if (lines.value().empty()) {
        return Error{Error::Kind::not_found, "there is nothing of this attempt on this PC to hand in", "",
                     "see: hardover class taken"};
    }
    std::vector<Record> records;
    for (const std::string& line : lines.value()) {
        auto record = read_record(line);
        if (!record) return record.error();
        records.push_back(std::move(record).value());
    }
    const auto key = key_of_this_pc(store);
    if (!key) return key.error();
    HandedIn made;
    const AttemptOf& of = records.front().of;
    made.file_name = of.set + "_" + of.seat + ".hardover-hand-in";
    made.text = hand_in_file(records, key.value());
    made.records = records.size();
    if (auto written = write(made); !written) return written.error();
    if (auto kept = store.keep_handed_in(attempt, static_cast<int>(records.size()), at); !kept) {
        return kept.error();
    }
    return made;
}

}  // namespace hardover::classroom

#include "app/classroom/instructor.hpp"

#include <algorithm>

#include "app/classroom/word_code.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::classroom {

namespace {

constexpr const char* keys_purpose = "hardover.class_keys.v1";
constexpr const char* recovery_purpose = "hardover.class_recovery.v1";
constexpr std::size_t recovery_words = 8;  // 72 bits, behind Argon2id
constexpr const char* seed_domain = "hardover.seed.v1";
constexpr const char* start_code_domain = "hardover.start_code.v1";
constexpr std::uint64_t seeds = 1000000;
constexpr std::size_t longest_class_name = 80;

// A seed nobody comes upon by trying, and that JSON of any make can carry.
std::uint64_t seed_of(const ClassSet& set, std::size_t task, const ClassKeys& keys) {
    const Bytes hash = keyed_hash(keys.of_seeds, seed_domain + set.sitting + std::to_string(task));
    std::uint64_t seed = 0;
    for (std::size_t i = 0; i < 8; ++i) seed = seed << 8 | static_cast<unsigned char>(hash[i]);
    return seed >> 11;
}

Result<void> look_over_passphrase(const std::string& passphrase) {
    if (passphrase.size() >= shortest_passphrase) return {};
    return Error{Error::Kind::bad_input, "the passphrase is too short", "",
                 "12 letters or more; better six words that nobody would guess"};
}

// What the passphrase protects: the seed of the signing key, and the secret of the seeds.
Result<std::string> sealed_keys(std::string_view secrets, const std::string& passphrase,
                                std::optional<Cost> cost) {
    if (auto right = look_over_passphrase(passphrase); !right) return right.error();
    return seal(keys_purpose, secrets, passphrase, cost);
}

// The class keeps one box, or two with a line end between: of the passphrase, and of the recovery words.
struct Boxes {
    std::string passphrase;
    std::string recovery;  // "": none
};
Boxes boxes_of(const StoredClass& of) {
    const std::size_t end = std::min(of.sealed.find('\n'), of.sealed.size());
    return {of.sealed.substr(0, end), of.sealed.substr(std::min(end + 1, of.sealed.size()))};
}
Result<void> keep_boxes(ClassStore& store, const StoredClass& of, const Boxes& boxes) {
    return store.change_sealed(of.number,
                               boxes.passphrase + (boxes.recovery.empty() ? "" : "\n" + boxes.recovery));
}

// What a box of the class holds; the error says what was tried, and what would be right.
Result<Secret> opened(const StoredClass& of, const char* purpose, const std::string& box,
                      const std::string& words) {
    auto secrets = open_box(purpose, box, words);
    if (secrets || secrets.error().what != does_not_open) return secrets;
    const bool recovering = std::string_view(purpose) == recovery_purpose;
    Error error = secrets.error();
    error.what = "these words do not open the class '" + of.name + "': they are not " +
                 (recovering ? "those of its newest recovery sheet" : "its passphrase");
    error.cure = recovering ? "type them as they stand on the sheet, a space between"
                            : "small and capital letters differ; where it is lost, the words of the recovery "
                              "sheet set another: hardover class passphrase --recovery";
    return error;
}

std::string next_id(const std::vector<StoredSet>& sets) {
    for (std::size_t number = sets.size() + 1;; ++number) {
        const std::string id = "S" + std::to_string(number);
        if (std::none_of(sets.begin(), sets.end(), [&](const StoredSet& set) { return set.id == id; })) {
            return id;
        }
    }
}

Result<std::vector<std::string>> seats_for(const Roster& roster, const std::vector<std::string>& wished) {
    std::vector<std::string> codes;
    std::vector<std::string> known;
    for (const Seat& seat : roster.seats()) known.push_back(seat.code);
    if (wished.empty()) return known;
    for (const std::string& code : wished) {
        const Seat* seat = roster.find(code);
        if (seat == nullptr) {
            return Error{Error::Kind::not_found, "there is no seat '" + code + "'", "",
                         did_you_mean(code, known)};
        }
        codes.push_back(seat->code);
    }
    return codes;
}

}  // namespace

Result<StoredClass> make_class(ClassStore& store, const std::string& name, const std::string& passphrase,
                               const std::string& at, std::optional<Cost> cost) {
    const bool named = name.find_first_not_of(" \t") != std::string::npos;
    if (!named || name.size() > longest_class_name) {
        return Error{Error::Kind::bad_input, "a class needs a name of up to 80 letters", "",
                     "such as: Evening class, spring"};
    }
    Bytes secrets = random_bytes(2 * seed_size);
    const KeyPair pair = key_pair_of(Secret(std::string_view(secrets).substr(0, seed_size)));
    const auto sealed = sealed_keys(secrets, passphrase, cost);
    wipe(secrets);
    if (!sealed) return sealed.error();
    StoredClass made{0, name, at, to_hex(pair.public_key), sealed.value()};
    const auto number = store.add_class(made);
    if (!number) return number.error();
    made.number = number.value();
    return made;
}

Result<StoredClass> find_class(const ClassStore& store, const std::string& name) {
    const auto classes = store.classes();
    if (!classes) return classes.error();
    std::vector<std::string> names;
    for (const StoredClass& of : classes.value()) {
        if (of.name == name || (name.empty() && classes.value().size() == 1)) return of;
        names.push_back(of.name);
    }
    if (names.empty()) {
        return Error{Error::Kind::not_found, "there is no class on this PC", "",
                     "make one with: hardover class new NAME"};
    }
    if (name.empty()) {
        return Error{Error::Kind::not_found, "there are several classes on this PC", "",
                     "say which with --class NAME"};
    }
    std::string cure = did_you_mean(name, names);
    if (cure.empty()) cure = "list them with: hardover class list";
    return Error{Error::Kind::not_found, "there is no class '" + name + "'", "", cure};
}

Result<ClassKeys> open_class(const StoredClass& of, const std::string& passphrase) {
    const auto secrets = opened(of, keys_purpose, boxes_of(of).passphrase, passphrase);
    if (!secrets) return secrets.error();
    const std::string_view bytes = secrets.value().bytes();
    KeyPair pair;
    if (bytes.size() == 2 * seed_size) pair = key_pair_of(Secret(bytes.substr(0, seed_size)));
    if (to_hex(pair.public_key) != of.public_key) {
        return Error{Error::Kind::storage, "the keys of the class do not fit it", "",
                     "restore a backup of the records"};
    }
    return ClassKeys{pair.public_key, std::move(pair.secret_key), Secret(bytes.substr(seed_size))};
}

Result<void> change_passphrase(ClassStore& store, const StoredClass& of, const std::string& old_one,
                               const std::string& new_one, std::optional<Cost> cost) {
    const Boxes boxes = boxes_of(of);
    const auto secrets = opened(of, keys_purpose, boxes.passphrase, old_one);
    if (!secrets) return secrets.error();
    const auto sealed = sealed_keys(secrets.value().bytes(), new_one, cost);
    if (!sealed) return sealed.error();
    return keep_boxes(store, of, {sealed.value(), boxes.recovery});
}

Result<Recovery> draw_recovery(const StoredClass& of, const std::string& passphrase,
                               std::optional<Cost> cost) {
    const auto secrets = opened(of, keys_purpose, boxes_of(of).passphrase, passphrase);
    if (!secrets) return secrets.error();
    std::string words = random_words(recovery_words);
    const auto sealed = seal(recovery_purpose, secrets.value().bytes(), words, cost);
    if (!sealed) return sealed.error();
    return Recovery{std::move(words), sealed.value()};
}

Result<void> keep_recovery(ClassStore& store, const StoredClass& of, const Recovery& recovery) {
    return keep_boxes(store, of, {boxes_of(of).passphrase, recovery.sealed});
}

Result<void> recover_class(ClassStore& store, const StoredClass& of, const std::string& words,
                           const std::string& new_one, std::optional<Cost> cost) {
    const Boxes boxes = boxes_of(of);
    if (boxes.recovery.empty()) {
        return Error{
            Error::Kind::not_found, "the class has no recovery sheet", "",
            "only the passphrase opens it; write a sheet while it is known: hardover class recovery-sheet"};
    }
    const auto secrets = opened(of, recovery_purpose, boxes.recovery, words);
    if (!secrets) return secrets.error();
    const auto sealed = sealed_keys(secrets.value().bytes(), new_one, cost);
    if (!sealed) return sealed.error();
    return keep_boxes(store, of, {sealed.value(), boxes.recovery});
}

Result<Roster> roster_of(const ClassStore& store, const StoredClass& of) {
    const auto stored = store.seats(of.number);
    if (!stored) return stored.error();
    std::vector<Seat> seats;
    for (const StoredSeat& seat : stored.value()) seats.push_back({seat.code, seat.name, seat.group});
    return Roster(std::move(seats));
}

Result<void> keep_roster(ClassStore& store, const StoredClass& of, const Roster& roster) {
    std::vector<StoredSeat> seats;
    for (const Seat& seat : roster.seats()) seats.push_back({seat.code, seat.name, seat.group});
    return store.keep_seats(of.number, seats);
}

std::uint64_t random_seed() {
    std::uint64_t drawn = 0;
    for (const char byte : random_bytes(8)) drawn = drawn << 8 | static_cast<unsigned char>(byte);
    return drawn % seeds;
}

std::string start_code_of(const ClassSet& set, const ClassKeys& keys) {
    return words_of(keyed_hash(keys.of_seeds, start_code_domain + set.sitting), start_code_words);
}

void put_seeds(ClassSet& set, const ClassKeys& keys) {
    if (!set.graded) return;
    for (std::size_t i = 0; i < set.tasks.size(); ++i) set.tasks[i].seed = seed_of(set, i, keys);
    set.open = true;
}

Result<MadeSet> make_set(ClassStore& store, const StoredClass& of, const ClassKeys& keys, const SetWish& wish,
                         const std::string& knowledge, const std::string& at, std::optional<Cost> cost) {
    const auto stored = store.sets(of.number);
    if (!stored) return stored.error();
    const auto roster = roster_of(store, of);
    if (!roster) return roster.error();
    const auto seats = seats_for(roster.value(), wish.seats);
    if (!seats) return seats.error();
    MadeSet made;
    ClassSet& set = made.set;
    set.id = wish.id.empty() ? next_id(stored.value()) : wish.id;
    set.title = wish.title;
    set.class_name = of.name;
    set.sitting = random_id();
    set.graded = wish.graded;
    set.knowledge = knowledge;
    set.seats = seats.value();
    set.tasks = wish.tasks;
    set.units = wish.units;
    set.public_key = of.public_key;
    if (auto right = look_over(set); !right) return right.error();
    if (set.graded) {
        put_seeds(set, keys);
        made.start_code = start_code_of(set, keys);
        if (auto sealed = seal_seeds(set, made.start_code, cost); !sealed) return sealed.error();
    }
    made.file_name = set.id + ".hardover-set";
    made.file = set_file(set, keys.secret_key);
    if (auto kept = store.add_set(of.number, {set.sitting, set.id, at, made.file}); !kept)
        return kept.error();
    return made;
}

Result<std::vector<ClassSet>> sets_of(const ClassStore& store, const StoredClass& of) {
    const auto stored = store.sets(of.number);
    if (!stored) return stored.error();
    std::vector<ClassSet> sets;
    for (const StoredSet& each : stored.value()) {
        auto set = read_set_file(each.file, "set " + each.id + " in the records");
        if (!set) return set.error();
        if (set.value().public_key != of.public_key) {
            return Error{Error::Kind::storage,
                         "set " + each.id + " in the records is not signed by this class", "",
                         "restore a backup of the records"};
        }
        sets.push_back(std::move(set).value());
    }
    return sets;
}

Result<ClassSet> find_set(const ClassStore& store, const StoredClass& of, const std::string& id) {
    const auto sets = sets_of(store, of);
    if (!sets) return sets.error();
    std::vector<std::string> ids;
    for (const ClassSet& set : sets.value()) {
        if (set.id == id) return set;
        ids.push_back(set.id);
    }
    return Error{Error::Kind::not_found, "the class has no set '" + id + "'", "", did_you_mean(id, ids)};
}

Result<std::string> file_of_set(const ClassStore& store, const StoredClass& of, const std::string& id) {
    if (const auto known = find_set(store, of, id); !known) return known.error();
    const auto stored = store.sets(of.number);
    if (!stored) return stored.error();
    for (const StoredSet& set : stored.value()) {
        if (set.id == id) return set.file;
    }
    return Error{Error::Kind::not_found, "the class has no set '" + id + "'", "", ""};
}

}  // namespace hardover::classroom

#include "app/classroom/seal.hpp"

#include <glib.h>
#include <sodium.h>

#include <array>
#include <memory>
#include <nlohmann/json.hpp>

#include "app/classroom/canonical.hpp"
#include "app/jobs/json_fields.hpp"

namespace hardover::classroom {

namespace {

using nlohmann::json;

static_assert(public_key_size == crypto_sign_PUBLICKEYBYTES && secret_key_size == crypto_sign_SECRETKEYBYTES);
static_assert(signature_size == crypto_sign_BYTES && seed_size == crypto_sign_SEEDBYTES);
static_assert(salt_size == crypto_pwhash_SALTBYTES);
static_assert(nonce_size == crypto_aead_xchacha20poly1305_ietf_NPUBBYTES);

constexpr const char* algorithm = "argon2id13+xchacha20poly1305";
constexpr std::size_t id_size = 16;
constexpr std::size_t hash_size = 32;
constexpr std::size_t key_size = crypto_aead_xchacha20poly1305_ietf_KEYBYTES;
// A box may not make this program work for minutes or take all memory of the PC.
constexpr std::uint64_t most_passes = crypto_pwhash_OPSLIMIT_SENSITIVE;
constexpr std::uint64_t most_memory = crypto_pwhash_MEMLIMIT_SENSITIVE;

// The generator and the fastest code for this processor are chosen once.
void ready() {
    static const int done = sodium_init();
    (void)done;  // without it the portable code is used
}

const unsigned char* raw(std::string_view bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}

unsigned char* raw(Bytes& bytes) {
    return reinterpret_cast<unsigned char*>(bytes.data());
}

Bytes hashed(std::size_t size, std::initializer_list<std::string_view> parts) {
    ready();
    crypto_generichash_state state;
    crypto_generichash_init(&state, nullptr, 0, size);
    for (const std::string_view part : parts) crypto_generichash_update(&state, raw(part), part.size());
    Bytes hash(size, '\0');
    crypto_generichash_final(&state, raw(hash), size);
    return hash;
}

// The same words typed on another keyboard are the same bytes.
Result<Secret> in_one_form(std::string_view passphrase) {
    const std::unique_ptr<char, void (*)(void*)> form(
        g_utf8_normalize(passphrase.data(), static_cast<gssize>(passphrase.size()), G_NORMALIZE_NFC), g_free);
    if (passphrase.empty() || form == nullptr) {
        return Error{Error::Kind::bad_input, "this is no passphrase: it is empty or no text", "",
                     "five words or more that nobody would guess"};
    }
    Secret secret{std::string_view(form.get())};
    sodium_memzero(form.get(), secret.bytes().size());
    return secret;
}

struct Box {
    Cost cost;
    Bytes salt;
    Bytes nonce;
};

// Everything of a box but the sealed bytes, as it is written and bound.
json head_of(const Box& box) {
    return {{"algorithm", algorithm},
            {"passes", box.cost.passes},
            {"memory", box.cost.memory},
            {"salt", to_hex(box.salt)},
            {"nonce", to_hex(box.nonce)}};
}

Error no_box() {
    return {Error::Kind::bad_input, "what the passphrase protects is damaged: this is no sealed box", "",
            "take an undamaged copy"};
}

}  // namespace

std::string to_hex(std::string_view bytes) {
    std::string hex(bytes.size() * 2 + 1, '\0');
    sodium_bin2hex(hex.data(), hex.size(), raw(bytes), bytes.size());
    hex.pop_back();
    return hex;
}

std::optional<Bytes> from_hex(std::string_view hex, std::size_t size) {
    Bytes bytes(size, '\0');
    std::size_t read = 0;
    if (hex.size() != size * 2) return std::nullopt;
    if (sodium_hex2bin(raw(bytes), size, hex.data(), hex.size(), nullptr, &read, nullptr) != 0 ||
        read != size || to_hex(bytes) != hex) {
        return std::nullopt;
    }
    return bytes;
}

Secret& Secret::operator=(Secret&& other) noexcept {
    if (this == &other) return *this;
    sodium_memzero(bytes_.data(), bytes_.size());
    bytes_ = std::move(other.bytes_);
    other.bytes_.clear();
    return *this;
}

Secret::~Secret() {
    sodium_memzero(bytes_.data(), bytes_.size());
}

void wipe(std::string& text) {
    sodium_memzero(text.data(), text.size());
    text.clear();
}

Bytes random_bytes(std::size_t count) {
    ready();
    Bytes bytes(count, '\0');
    randombytes_buf(bytes.data(), count);
    return bytes;
}

std::string random_id() {
    return to_hex(random_bytes(id_size));
}

std::string record_id(std::string_view record) {
    return to_hex(hashed(id_size, {record}));
}

Bytes chain_start() {
    return Bytes(hash_size, '\0');
}

Bytes chain_next(std::string_view domain, const Bytes& last, std::string_view record) {
    return hashed(hash_size, {domain, last, record});
}

Bytes keyed_hash(const Secret& key, std::string_view message) {
    ready();
    Bytes hash(hash_size, '\0');
    crypto_generichash(raw(hash), hash_size, raw(message), message.size(), raw(key.bytes()),
                       key.bytes().size());
    return hash;
}

KeyPair make_key_pair() {
    Bytes seed = random_bytes(seed_size);
    KeyPair pair = key_pair_of(Secret(seed));
    wipe(seed);
    return pair;
}

KeyPair key_pair_of(const Secret& seed) {
    ready();
    KeyPair pair;
    pair.public_key.resize(public_key_size);
    Bytes secret(secret_key_size, '\0');
    crypto_sign_seed_keypair(raw(pair.public_key), raw(secret), raw(seed.bytes()));
    pair.secret_key = Secret(secret);
    wipe(secret);
    return pair;
}

Bytes sign(std::string_view message, const Secret& secret_key) {
    ready();
    Bytes signature(signature_size, '\0');
    crypto_sign_detached(raw(signature), nullptr, raw(message), message.size(), raw(secret_key.bytes()));
    return signature;
}

bool verify(std::string_view message, const Bytes& signature, const Bytes& public_key) {
    ready();
    return signature.size() == signature_size && public_key.size() == public_key_size &&
           crypto_sign_verify_detached(raw(signature), raw(message), message.size(), raw(public_key)) == 0;
}

Bytes hand_in_message(std::string_view domain, const Bytes& last, std::uint32_t count) {
    Bytes message = Bytes(domain) + last;
    for (int shift = 0; shift < 32; shift += 8) message += static_cast<char>((count >> shift) & 0xff);
    return message;
}

Cost interactive_cost() {
    return {crypto_pwhash_OPSLIMIT_INTERACTIVE, crypto_pwhash_MEMLIMIT_INTERACTIVE};
}

Cost moderate_cost() {
    return {crypto_pwhash_OPSLIMIT_MODERATE, crypto_pwhash_MEMLIMIT_MODERATE};
}

Result<Secret> key_from(std::string_view passphrase, const Bytes& salt, Cost cost) {
    ready();
    std::array<char, key_size> key{};
    const bool made = salt.size() == salt_size &&
                      crypto_pwhash(reinterpret_cast<unsigned char*>(key.data()), key.size(),
                                    passphrase.data(), passphrase.size(), raw(salt), cost.passes,
                                    static_cast<std::size_t>(cost.memory), crypto_pwhash_ALG_ARGON2ID13) == 0;
    if (!made) {
        return Error{Error::Kind::unsupported, "this PC does not give the memory that the passphrase needs",
                     "", "close other programs and try again"};
    }
    Secret secret{std::string_view(key.data(), key.size())};
    sodium_memzero(key.data(), key.size());
    return secret;
}

Bytes encrypt(std::string_view plain, std::string_view bound, const Bytes& nonce, const Secret& key) {
    ready();
    Bytes cipher(plain.size() + crypto_aead_xchacha20poly1305_ietf_ABYTES, '\0');
    crypto_aead_xchacha20poly1305_ietf_encrypt(raw(cipher), nullptr, raw(plain), plain.size(), raw(bound),
                                               bound.size(), nullptr, raw(nonce), raw(key.bytes()));
    return cipher;
}

std::optional<Secret> decrypt(std::string_view cipher, std::string_view bound, const Bytes& nonce,
                              const Secret& key) {
    ready();
    if (cipher.size() < crypto_aead_xchacha20poly1305_ietf_ABYTES || nonce.size() != nonce_size) {
        return std::nullopt;
    }
    Bytes plain(cipher.size() - crypto_aead_xchacha20poly1305_ietf_ABYTES, '\0');
    const bool opened = crypto_aead_xchacha20poly1305_ietf_decrypt(raw(plain), nullptr, nullptr, raw(cipher),
                                                                   cipher.size(), raw(bound), bound.size(),
                                                                   raw(nonce), raw(key.bytes())) == 0;
    std::optional<Secret> secret;
    if (opened) secret.emplace(plain);
    wipe(plain);
    return secret;
}

Result<std::string> seal(std::string_view purpose, std::string_view plain, std::string_view passphrase,
                         std::optional<Cost> cost) {
    const Result<Secret> typed = in_one_form(passphrase);
    if (!typed) return typed.error();
    Box box{cost.value_or(moderate_cost()), random_bytes(salt_size), random_bytes(nonce_size)};
    Result<Secret> key = key_from(typed.value().bytes(), box.salt, box.cost);
    if (!key) {
        box.cost = interactive_cost();
        key = key_from(typed.value().bytes(), box.salt, box.cost);
        if (!key) return key.error();
    }
    json head = head_of(box);
    const std::string bound = std::string(purpose) + canonical(head);
    head["sealed"] = to_hex(encrypt(plain, bound, box.nonce, key.value()));
    return canonical(head);
}

Result<Secret> open_box(std::string_view purpose, const std::string& text, std::string_view passphrase) {
    const Result<Secret> typed = in_one_form(passphrase);
    if (!typed) return typed.error();
    const json read = shallow_json(text);
    if (!read.is_object()) return no_box();
    const auto word = [&](const char* key) { return read.value(key, json()); };
    const auto bytes = [&](const char* key, std::size_t size) -> std::optional<Bytes> {
        const json value = word(key);
        return value.is_string() ? from_hex(value.get<std::string>(), size) : std::nullopt;
    };
    const auto salt = bytes("salt", salt_size);
    const auto nonce = bytes("nonce", nonce_size);
    const json sealed = word("sealed");
    const auto cipher = bytes("sealed", sealed.is_string() ? sealed.get<std::string>().size() / 2 : 0);
    if (!salt || !nonce || !cipher || !word("passes").is_number_unsigned() ||
        !word("memory").is_number_unsigned() || word("algorithm") != algorithm) {
        return no_box();
    }
    const Box box{{word("passes").get<std::uint64_t>(), word("memory").get<std::uint64_t>()}, *salt, *nonce};
    if (box.cost.passes < crypto_pwhash_OPSLIMIT_MIN || box.cost.memory < crypto_pwhash_MEMLIMIT_MIN) {
        return no_box();
    }
    if (box.cost.passes > most_passes || box.cost.memory > most_memory) {
        return Error{Error::Kind::unsupported,
                     "what the passphrase protects asks for more than this PC gives", "",
                     "it was changed, or made by a newer version: take an undamaged copy"};
    }
    const Result<Secret> key = key_from(typed.value().bytes(), box.salt, box.cost);
    if (!key) return key.error();
    auto plain = decrypt(*cipher, std::string(purpose) + canonical(head_of(box)), box.nonce, key.value());
    if (!plain) {
        return Error{Error::Kind::bad_input, does_not_open, "",
                     "type them again; small and capital letters differ"};
    }
    return std::move(*plain);
}

}  // namespace hardover::classroom

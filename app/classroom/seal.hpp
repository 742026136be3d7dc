// Signing, sealing and hashing for the class: Ed25519, BLAKE2b, and XChaCha20-Poly1305 under a passphrase by
// Argon2id. The only box file that knows libsodium. Knows no record, set or roster.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::classroom {

// Raw bytes. What a file or a record carries of them is written in hex, in small letters.
using Bytes = std::string;
std::string to_hex(std::string_view bytes);
// Nothing: not hex in small letters, or not `size` bytes.
std::optional<Bytes> from_hex(std::string_view hex, std::size_t size);

// Bytes nobody else may read: wiped when they go. Movable, not copyable.
class Secret {
  public:
    Secret() = default;
    explicit Secret(std::string_view bytes) : bytes_(bytes.begin(), bytes.end()) {}
    Secret(Secret&& other) noexcept : bytes_(std::move(other.bytes_)) { other.bytes_.clear(); }
    Secret& operator=(Secret&& other) noexcept;
    Secret(const Secret&) = delete;
    Secret& operator=(const Secret&) = delete;
    ~Secret();

    std::string_view bytes() const { return {bytes_.data(), bytes_.size()}; }
    bool empty() const { return bytes_.empty(); }

  private:
    std::vector<char> bytes_;
};

// Overwrites what was typed, once it is no longer needed.
void wipe(std::string& text);

Bytes random_bytes(std::size_t count);
// 128 random bits in hex: an attempt, a sitting.
std::string random_id();

// BLAKE2b-128 of a record's bytes, in hex.
std::string record_id(std::string_view record);

// The chain over records: h_i = BLAKE2b-256(domain || h_{i-1} || record_i), from 32 zero bytes.
Bytes chain_start();
Bytes chain_next(std::string_view domain, const Bytes& last, std::string_view record);

// BLAKE2b-256 of a message under a key of 32 bytes.
Bytes keyed_hash(const Secret& key, std::string_view message);

// Ed25519 (RFC 8032). The secret key is libsodium's: seed and public key, 64 bytes.
inline constexpr std::size_t public_key_size = 32;
inline constexpr std::size_t secret_key_size = 64;
inline constexpr std::size_t signature_size = 64;
inline constexpr std::size_t seed_size = 32;
struct KeyPair {
    Bytes public_key;
    Secret secret_key;
};
KeyPair make_key_pair();
KeyPair key_pair_of(const Secret& seed);
Bytes sign(std::string_view message, const Secret& secret_key);
bool verify(std::string_view message, const Bytes& signature, const Bytes& public_key);

// What a hand-in's signature is over: domain || last h || count as four bytes, the lowest first.
Bytes hand_in_message(std::string_view domain, const Bytes& last, std::uint32_t count);

// What Argon2id takes: passes, and bytes of memory.
struct Cost {
    std::uint64_t passes = 0;
    std::uint64_t memory = 0;
};
Cost interactive_cost();  // 2 passes, 64 MiB
Cost moderate_cost();     // 3 passes, 256 MiB

inline constexpr std::size_t salt_size = 16;
inline constexpr std::size_t nonce_size = 24;
// A key of 32 bytes by Argon2id (version 1.3). Error unsupported: the memory is not to be had.
Result<Secret> key_from(std::string_view passphrase, const Bytes& salt, Cost cost);
// XChaCha20-Poly1305 (IETF), `bound` as associated data.
Bytes encrypt(std::string_view plain, std::string_view bound, const Bytes& nonce, const Secret& key);
// Nothing: another key, or anything at all was changed.
std::optional<Secret> decrypt(std::string_view cipher, std::string_view bound, const Bytes& nonce,
                              const Secret& key);

// A box as text: one line of canonical JSON with algorithm, passes, memory, salt, nonce and the sealed bytes.
// All of them and `purpose` are bound, so that nothing can be exchanged. The passphrase is taken in Unicode
// form NFC. Moderate cost unless another is given; where that memory is refused, the interactive cost.
// Error bad_input: the passphrase is empty or no UTF-8.
Result<std::string> seal(std::string_view purpose, std::string_view plain, std::string_view passphrase,
                         std::optional<Cost> cost = std::nullopt);
// What open_box says when the words are not right, or anything was changed: it does not know what is in the
// box.
inline constexpr const char* does_not_open = "this does not open: the words are not right, or it was changed";

// Errors: bad_input when it is no box, when the passphrase is wrong or the box was changed (one message for
// all that can be the matter then); unsupported when it asks for more memory than this program gives.
Result<Secret> open_box(std::string_view purpose, const std::string& box, std::string_view passphrase);

}  // namespace hardover::classroom

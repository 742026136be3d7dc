// Words to be read out in a room and typed without a slip: start codes, and passphrases to be offered. A word
// is nine bits. Knows no set.
#pragma once

#include <string>
#include <string_view>

namespace hardover::classroom {

inline constexpr std::size_t word_count = 512;
inline constexpr std::size_t start_code_words = 4;  // 36 bits, behind Argon2id
inline constexpr std::size_t passphrase_words = 6;  // 54 bits, behind Argon2id

// `count` words with a blank between, told by the first bits of `bytes`; two bytes for each word.
std::string words_of(std::string_view bytes, std::size_t count);

// Words drawn by chance.
std::string random_words(std::size_t count);

}  // namespace hardover::classroom

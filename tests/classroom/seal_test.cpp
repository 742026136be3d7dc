// Signing and sealing give the published bytes, and nothing that was changed opens.
#include "app/classroom/seal.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "app/classroom/canonical.hpp"
#include "app/classroom/word_code.hpp"
#include "study/learning_checks.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

const YAML::Node& vectors() {
    static const YAML::Node node = learning_checks("integrity");
    return node;
}

std::string text(const char* key) {
    return vectors()[key].as<std::string>();
}

Bytes bytes(const std::string& hex) {
    const auto read = from_hex(hex, hex.size() / 2);
    REQUIRE(read.has_value());
    return *read;
}

Cost cost(const char* name) {
    const YAML::Node node = vectors()["argon2id"][name];
    return {node["ops"].as<std::uint64_t>(), node["mem_bytes"].as<std::uint64_t>()};
}

const Cost quick{1, 64 * 1024};

}  // namespace

TEST_CASE("A key pair signs the empty message as RFC 8032 publishes it") {
    const YAML::Node test = vectors()["rfc8032_test1"];
    const KeyPair pair = key_pair_of(Secret(bytes(test["seed"].as<std::string>())));
    CHECK(to_hex(pair.public_key) == test["public"].as<std::string>());
    CHECK(to_hex(sign("", pair.secret_key)) == test["sig_empty"].as<std::string>());
    CHECK(verify("", bytes(test["sig_empty"].as<std::string>()), pair.public_key));
    CHECK_FALSE(verify("a", bytes(test["sig_empty"].as<std::string>()), pair.public_key));
}

TEST_CASE("Chain, record id and hand-in signature are those of the check values") {
    const std::string domain = text("domain");
    const Bytes first = chain_next(domain, chain_start(), text("record_1"));
    const Bytes second = chain_next(domain, first, text("record_2"));
    CHECK(to_hex(first) == text("h1"));
    CHECK(to_hex(second) == text("h2"));
    CHECK(record_id(text("record_1")) == text("record_1_id_blake2b_128"));

    const KeyPair pair = key_pair_of(Secret(bytes(text("ed25519_seed"))));
    CHECK(to_hex(pair.public_key) == text("ed25519_public"));
    CHECK(to_hex(sign(second, pair.secret_key)) == text("signature_over_h2"));
    const Bytes message = hand_in_message("trainer.handin.v1", second, 2);
    CHECK(to_hex(sign(message, pair.secret_key)) == text("handin_signature"));

    std::string changed = text("record_2");
    changed[changed.rfind('5')] = '6';
    const Bytes other = chain_next(domain, first, changed);
    CHECK_FALSE(verify(hand_in_message("trainer.handin.v1", other, 2), bytes(text("handin_signature")),
                       pair.public_key));
}

TEST_CASE("The passphrase gives the check values' key at both costs") {
    const YAML::Node node = vectors()["argon2id"];
    const Bytes salt = bytes(node["salt"].as<std::string>());
    for (const char* name : {"interactive", "moderate"}) {
        const auto key = key_from(node["passphrase"].as<std::string>(), salt, cost(name));
        REQUIRE_OK(key);
        CHECK(to_hex(key.value().bytes()) == node[name]["key32"].as<std::string>());
    }
    CHECK(interactive_cost().passes == cost("interactive").passes);
    CHECK(interactive_cost().memory == cost("interactive").memory);
    CHECK(moderate_cost().passes == cost("moderate").passes);
    CHECK(moderate_cost().memory == cost("moderate").memory);
}

TEST_CASE("The answer key's box is the check values' and opens with nothing else") {
    const YAML::Node box = vectors()["answer_key_box"];
    const Secret key(bytes(vectors()["argon2id"]["interactive"]["key32"].as<std::string>()));
    const Bytes nonce = bytes(box["nonce"].as<std::string>());
    const std::string plain = box["plain"].as<std::string>(), bound = box["ad"].as<std::string>();
    const Bytes cipher = encrypt(plain, bound, nonce, key);
    CHECK(to_hex(cipher) == box["out"].as<std::string>());
    const auto opened = decrypt(cipher, bound, nonce, key);
    REQUIRE(opened.has_value());
    CHECK(opened->bytes() == plain);
    CHECK_FALSE(decrypt(cipher, bound + "x", nonce, key).has_value());
    CHECK_FALSE(decrypt(cipher.substr(1), bound, nonce, key).has_value());
    CHECK_FALSE(decrypt("", bound, nonce, key).has_value());
}

TEST_CASE("A wrong passphrase and a changed box are refused with one and the same message") {
    const auto box = seal("test", "the seeds", "correct horse battery staple", quick);
    REQUIRE_OK(box);
    const auto opened = open_box("test", box.value(), "correct horse battery staple");
    REQUIRE_OK(opened);
    CHECK(opened.value().bytes() == "the seeds");

    const auto wrong = open_box("test", box.value(), "correct horse battery");
    REQUIRE_FALSE(wrong.ok());
    CHECK(open_box("other purpose", box.value(), "correct horse battery staple").error().text() ==
          wrong.error().text());
    nlohmann::json changed = nlohmann::json::parse(box.value());
    std::string sealed = changed["sealed"].get<std::string>();
    sealed[0] = sealed[0] == '0' ? '1' : '0';
    changed["sealed"] = sealed;
    CHECK(open_box("test", canonical(changed), "correct horse battery staple").error().text() ==
          wrong.error().text());
}

TEST_CASE("A box whose cost was changed does not open, and one of a giant cost is not even tried") {
    const auto box = seal("test", "the seeds", "correct horse battery staple", quick);
    REQUIRE_OK(box);
    for (const char* field : {"passes", "memory"}) {
        nlohmann::json changed = nlohmann::json::parse(box.value());
        changed[field] = changed[field].get<std::uint64_t>() * 2;
        CHECK_FALSE(open_box("test", canonical(changed), "correct horse battery staple").ok());
        changed[field] = std::uint64_t{1} << 40;
        const auto giant = open_box("test", canonical(changed), "correct horse battery staple");
        REQUIRE_FALSE(giant.ok());
        CHECK(giant.error().kind == Error::Kind::unsupported);
        changed[field] = 0;
        CHECK_FALSE(open_box("test", canonical(changed), "correct horse battery staple").ok());
        changed.erase(field);
        CHECK_FALSE(open_box("test", canonical(changed), "correct horse battery staple").ok());
    }
    CHECK_FALSE(open_box("test", "", "correct horse battery staple").ok());
    CHECK_FALSE(open_box("test", "[]", "correct horse battery staple").ok());
}

TEST_CASE("A passphrase typed with a combining accent is the one typed with the letter") {
    const auto box = seal("test", "x", "g\xc3\xa9n\xc3\xa9ral du port", quick);
    REQUIRE_OK(box);
    CHECK(open_box("test", box.value(), "ge\xcc\x81ne\xcc\x81ral du port").ok());
    CHECK_FALSE(open_box("test", box.value(), "general du port").ok());
    CHECK_FALSE(seal("test", "x", "", quick).ok());
    CHECK_FALSE(seal("test", "x", "\xff\xfe", quick).ok());
}

TEST_CASE("Canonical JSON writes numbers and keys as RFC 8785 publishes") {
    // RFC 8785, section 3.2.2 (the example) and appendix B.
    const nlohmann::json sample = nlohmann::json::parse(
        R"({"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"literals":[null,true,false]})");
    CHECK(canonical(sample) ==
          R"({"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]})");
    CHECK(canonical(9007199254740992.0) == "9007199254740992");
    CHECK(canonical(295147905179352830000.0) == "295147905179352830000");
    CHECK(canonical(1e21) == "1e+21");
    CHECK(canonical(999999999999999900000.0) == "999999999999999900000");
    CHECK(canonical(9.999999999999997e-7) == "9.999999999999997e-7");
    CHECK(canonical(0.000001) == "0.000001");
    CHECK(canonical(-0.0) == "0");
    CHECK(canonical(5e-324) == "5e-324");
    CHECK(canonical(-1.7976931348623157e308) == "-1.7976931348623157e+308");
    CHECK(canonical(0.7) == "0.7");
    CHECK(canonical(nlohmann::json::parse("18446744073709551615")) == "18446744073709551615");
}

TEST_CASE("Start codes are words from a list of 512, each as likely as the others") {
    std::set<std::string> words;
    for (int high = 0; high < 2; ++high) {
        for (int low = 0; low < 256; ++low) {
            words.insert(words_of(Bytes{static_cast<char>(high), static_cast<char>(low)}, 1));
        }
    }
    CHECK(words.size() == word_count);
    std::istringstream code(random_words(start_code_words));
    int count = 0;
    for (std::string word; code >> word; ++count) CHECK(words.contains(word));
    CHECK(count == 4);
    CHECK(random_words(4) != random_words(4));
}

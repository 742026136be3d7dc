// Values kept by a well mixed 64-bit key: what a look ahead has worked out before. Pure storage.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace hardover {

// Mixes a number well (S. Vigna's splitmix64, public domain).
inline std::uint64_t mixed(std::uint64_t x) {
    x += 0x9e3779b97f4a7c15u;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
    x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
    return x ^ (x >> 31);
}

// Open addressing, at most half full. Key 0 is as good as any other.
template <typename Value>
class Keyed {
  public:
    void clear() {
        for (auto& place : places_) place.used = false;
        count_ = 0;
    }

    // nullptr: not there. Valid until the next put().
    const Value* find(std::uint64_t key) const {
        if (places_.empty()) return nullptr;
        const Place& place = places_[place_of(key)];
        return place.used ? &place.value : nullptr;
    }

    void put(std::uint64_t key, const Value& value) {
        if (2 * (count_ + 1) > places_.size()) grow();
        Place& place = places_[place_of(key)];
        if (!place.used) ++count_;
        place = {key, true, value};
    }

  private:
    struct Place {
        std::uint64_t key = 0;
        bool used = false;
        Value value{};
    };

    std::size_t place_of(std::uint64_t key) const {
        const std::size_t mask = places_.size() - 1;
        std::size_t at = key & mask;
        while (places_[at].used && places_[at].key != key) at = (at + 1) & mask;
        return at;
    }

    void grow() {
        std::vector<Place> old =
            std::exchange(places_, std::vector<Place>(places_.empty() ? 256 : 4 * places_.size()));
        for (Place& place : old) {
            if (place.used) places_[place_of(place.key)] = std::move(place);
        }
    }

    std::vector<Place> places_;
    std::size_t count_ = 0;
};

}  // namespace hardover

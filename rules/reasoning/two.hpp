// Two numbers that the same is done to, in one instruction each. Pure numbers.
#pragma once

namespace hardover {

// Written with the vector type that g++ and clang++ share: left to themselves they work on one number after
// the other.
struct Two {
    using Both [[gnu::vector_size(2 * sizeof(double))]] = double;
    Both both{0, 0};

    Two() = default;
    Two(double first, double second) : both{first, second} {}

    double first() const { return both[0]; }
    double second() const { return both[1]; }

    friend Two operator+(const Two& a, const Two& b) { return Two(a.both + b.both); }
    friend Two operator-(const Two& a, const Two& b) { return Two(a.both - b.both); }
    friend Two operator*(const Two& a, double by) { return Two(a.both * by); }
    Two& operator+=(const Two& more) {
        both += more.both;
        return *this;
    }

    friend Two greater(const Two& a, const Two& b) { return Two(a.both < b.both ? b.both : a.both); }
    friend Two smaller(const Two& a, const Two& b) { return Two(b.both < a.both ? b.both : a.both); }

  private:
    explicit Two(const Both& numbers) : both(numbers) {}
};

}  // namespace hardover

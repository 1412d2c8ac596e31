#pragma once
/// Included before everything else in a source that carries mutants. Each has a number; the one in the environment variable MUTANT is on, all others
/// do what the source says. With MUTANT_REACHED set to a file's name, the numbers that were asked about are written there when the program ends.

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstdio>
#include <cstdlib>
#include <utility>

namespace mutant {

inline unsigned char reached[1 << 16];

struct Choice {
  int number = 0;
  Choice() {
    if (const char* chosen = std::getenv("MUTANT")) number = std::atoi(chosen);
  }
  ~Choice() {
    const char* path = std::getenv("MUTANT_REACHED");
    if (!path) return;
    if (std::FILE* file = std::fopen(path, "w")) {
      for (int n = 0; n < (1 << 16); ++n)
        if (reached[n]) std::fprintf(file, "%d\n", n);
      std::fclose(file);
    }
  }
};

inline bool on(int number) {
  static const Choice choice;
  reached[number] = 1;
  return choice.number == number;
}

// a < b becomes a < At<7>{} < b: the mark binds as the operator does, so that nobody needs to know where a begins and b ends.

template <int N>
struct At {};

template <int N, typename A>
struct Left {
  A value;
};

#define MUTANT_SWAP(SIGN, OTHER)                                                                              \
  template <typename A, int N>                                                                                \
  Left<N, A&&> operator SIGN(A&& a, At<N>) {                                                                  \
    return {std::forward<A>(a)};                                                                              \
  }                                                                                                           \
  template <int N, typename A, typename B>                                                                    \
  decltype(auto) operator SIGN(Left<N, A> left, B&& b) {                                                      \
    static_assert(std::same_as<decltype(std::forward<A>(left.value) SIGN std::forward<B>(b)),                 \
                               decltype(std::forward<A>(left.value) OTHER std::forward<B>(b))>);              \
    if (on(N)) return std::forward<A>(left.value) OTHER std::forward<B>(b);                                   \
    return std::forward<A>(left.value) SIGN std::forward<B>(b);                                               \
  }
MUTANT_SWAP(<, <=)
MUTANT_SWAP(<=, <)
MUTANT_SWAP(>, >=)
MUTANT_SWAP(>=, >)
MUTANT_SWAP(==, !=)
MUTANT_SWAP(!=, ==)
MUTANT_SWAP(+, -)
MUTANT_SWAP(-, +)
MUTANT_SWAP(*, /)
MUTANT_SWAP(/, *)

// a += b binds to the right: a += (At<7>{} += b).

template <int N, typename B>
struct Right {
  B value;
};

#define MUTANT_ASSIGN(SIGN, OTHER)                                                     \
  template <int N, typename B>                                                         \
  Right<N, B&&> operator SIGN(At<N>, B&& b) {                                          \
    return {std::forward<B>(b)};                                                       \
  }                                                                                    \
  template <typename A, int N, typename B>                                             \
  decltype(auto) operator SIGN(A&& a, Right<N, B> right) {                             \
    if (on(N)) return std::forward<A>(a) OTHER std::forward<B>(right.value);           \
    return std::forward<A>(a) SIGN std::forward<B>(right.value);                       \
  }
MUTANT_ASSIGN(+=, -=)
MUTANT_ASSIGN(-=, +=)
MUTANT_ASSIGN(*=, /=)
MUTANT_ASSIGN(/=, *=)

template <int N, typename A, typename B>
bool both(A a, B b) {
  return on(N) ? a() || b() : a() && b();
}
template <int N, typename A, typename B>
bool either(A a, B b) {
  return on(N) ? a() && b() : a() || b();
}

/// !x becomes !(Not<7>)x: a cast binds as `!` does.
template <int N>
struct Not {
  bool value;
  template <typename T>
  explicit Not(T&& x) : value(static_cast<bool>(x)) {}
  bool operator!() const { return on(N) ? value : !value; }
};

template <int N, typename T>
T constant(T value) {
  if (!on(N)) return value;
  if constexpr (std::same_as<T, bool>)
    return !value;
  else if constexpr (std::integral<T>)
    return value + 1;
  else
    return value == 0 ? T{1} : 2 * value;
}

#define MUTANT_CALL(FUNCTION) [](auto&&... a) -> decltype(auto) { return FUNCTION(std::forward<decltype(a)>(a)...); }
template <int N, typename A, typename B>
auto twin(A a, B b) {
  return [a, b](auto&&... x) -> decltype(auto) {
    if (on(N)) return b(std::forward<decltype(x)>(x)...);
    return a(std::forward<decltype(x)>(x)...);
  };
}

#define MUTANT_STEP(NAME, SIGN, OTHER) \
  template <int N, typename T>         \
  decltype(auto) NAME(T&& x) {         \
    if (on(N)) return OTHER x;         \
    return SIGN x;                     \
  }                                    \
  template <int N, typename T>         \
  auto NAME##_after(T&& x) {           \
    if (on(N)) return x OTHER;         \
    return x SIGN;                     \
  }
MUTANT_STEP(step_up, ++, --)
MUTANT_STEP(step_down, --, ++)

template <int N, std::same_as<bool> T>
bool negated(T value) {
  return on(N) ? !value : value;
}
template <std::same_as<bool> T>
bool plainly_negated(T value) {
  return !value;
}

}  // namespace mutant

#pragma once
// A value or the problems that prevented it. Warnings can accompany a value.
#include <utility>
#include <variant>

#include "engine/base/problem.h"

namespace voltwright::base {

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : content_(std::move(value)) {}  // NOLINT(google-explicit-constructor): return x;
  Result(Problems problems) : content_(std::move(problems)) {}         // NOLINT(google-explicit-constructor)
  Result(Problem problem) : content_(Problems{std::move(problem)}) {}  // NOLINT(google-explicit-constructor)

  bool ok() const { return std::holds_alternative<T>(content_); }
  explicit operator bool() const { return ok(); }

  /// Precondition: ok().
  const T& value() const& { return std::get<T>(content_); }
  T& value() & { return std::get<T>(content_); }
  T&& value() && { return std::get<T>(std::move(content_)); }

  /// Precondition: !ok().
  const Problems& problems() const { return std::get<Problems>(content_); }

 private:
  std::variant<T, Problems> content_;
};

}  // namespace voltwright::base

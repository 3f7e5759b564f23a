#include "engine/units/figure.h"

#include <array>
#include <charconv>
#include <cmath>

namespace voltwright::units {

namespace {

constexpr const char* kThinSpace = "\u202F";
constexpr const char* kMinus = "\u2212";

/// Fixed-point digits without regard to any locale.
std::string fixed(double value, int decimals) {
  std::array<char, 64> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  return {buffer.data(), end.ptr};
}

std::string separated(std::string digits) {
  const std::size_t point = digits.find('.');
  std::size_t at = point == std::string::npos ? digits.size() : point;
  while (at > 3) {
    at -= 3;
    digits.insert(at, ",");
  }
  return digits;
}

}  // namespace

std::string figure(double value) {
  if (!std::isfinite(value)) return "unlimited";
  const double size = std::fabs(value);
  int decimals = 0;
  if (size > 0.0 && size < 99.95) {
    decimals = size < 0.9995 ? 3 : (size < 9.995 ? 2 : 1);
  }
  std::string text = fixed(size, decimals);
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  const bool negative = value < 0.0 && text != "0";
  return (negative ? kMinus : "") + separated(text);
}

std::string figure(double value, const std::string& unit) { return figure(value) + kThinSpace + unit; }

std::string percent(double share) {
  const double p = share * 100.0;
  const int decimals = p < 0.0995 ? 3 : (p < 0.995 ? 2 : (p < 9.95 ? 1 : 0));
  std::string text = fixed(p, decimals);
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return text + kThinSpace + "%";
}

std::string with_thousands(long long count) { return separated(std::to_string(count)); }

}  // namespace voltwright::units

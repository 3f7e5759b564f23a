#include "engine/units/number.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <system_error>
#include <utility>

namespace voltwright::units {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool is_digit_at(const std::string& text, std::size_t i) { return i < text.size() && is_digit(text[i]); }

/// Three digits at `i` and no fourth: what follows a mark between thousands.
bool is_group_at(const std::string& text, std::size_t i) {
  return is_digit_at(text, i) && is_digit_at(text, i + 1) && is_digit_at(text, i + 2) &&
         !is_digit_at(text, i + 3);
}

std::string trimmed(std::string_view text) {
  const char* const blanks = " \t\r\n";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  const std::size_t last = text.find_last_not_of(blanks);
  return std::string(text.substr(first, last - first + 1));
}

/// Appends digits from `i`, with spaces between thousands left out; returns where they end.
std::size_t take_whole_part(const std::string& text, std::size_t i, std::string& digits) {
  const std::size_t first = i;
  while (is_digit_at(text, i)) digits += text[i++];
  if (i == first || i - first > 3) return i;
  while (i < text.size() && text[i] == ' ' && is_group_at(text, i + 1)) {
    digits.append(text, i + 1, 3);
    i += 4;
  }
  return i;
}

/// Appends an exponent if one stands at `i`. "3 e" or "3 eV" is not one.
std::size_t take_exponent(const std::string& text, std::size_t i, std::string& digits) {
  if (i >= text.size() || (text[i] != 'e' && text[i] != 'E')) return i;
  std::size_t j = i + 1;
  if (j < text.size() && (text[j] == '+' || text[j] == '-')) ++j;
  if (!is_digit_at(text, j)) return i;
  digits += 'e';
  if (text[i + 1] == '-') digits += '-';
  while (is_digit_at(text, j)) digits += text[j++];
  return j;
}

base::Problem problem(std::string what, std::string_view given, std::string remedy) {
  base::Problem p;
  p.what = std::move(what);
  p.given = given;
  p.remedy = std::move(remedy);
  return p;
}

}  // namespace

std::string plain_text(std::string_view text) {
  struct Spelling {
    std::string_view from;
    char to;
  };
  static constexpr std::array<Spelling, 6> kSpellings = {{{"\xC2\xA0", ' '},
                                                          {"\xE2\x80\xAF", ' '},
                                                          {"\xE2\x80\x89", ' '},
                                                          {"\xE2\x80\x87", ' '},
                                                          {"\xE2\x80\x8A", ' '},
                                                          {"\xE2\x88\x92", '-'}}};
  std::string plain;
  plain.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    bool replaced = false;
    for (const Spelling& s : kSpellings) {
      if (text.substr(i, s.from.size()) != s.from) continue;
      plain += s.to;
      i += s.from.size();
      replaced = true;
      break;
    }
    if (!replaced) plain += text[i++];
  }
  return trimmed(plain);
}

base::Result<LeadingNumber> read_leading_number(std::string_view text, std::string_view wanted) {
  const std::string plain = plain_text(text);
  std::size_t i = 0;
  std::string digits;
  if (i < plain.size() && (plain[i] == '+' || plain[i] == '-')) {
    if (plain[i] == '-') digits += '-';
    ++i;
  }
  const std::size_t start = i;
  i = take_whole_part(plain, i, digits);
  const std::size_t whole_digits = i - start;
  bool has_digits = whole_digits > 0;
  if (i < plain.size() && (plain[i] == '.' || plain[i] == ',') && is_digit_at(plain, i + 1)) {
    const bool thousands = plain[i] == ',' && has_digits && whole_digits <= 3 && plain[start] != '0' &&
                           is_group_at(plain, i + 1);
    if (thousands) {
      const std::string whole = plain.substr(start, whole_digits);
      const std::string group = plain.substr(i + 1, 3);
      return problem("The comma can mark thousands or decimals.", text,
                     "Write " + whole + group + " or " + whole + "." + group + ".");
    }
    digits += '.';
    ++i;
    while (is_digit_at(plain, i)) digits += plain[i++];
    has_digits = true;
  }
  if (!has_digits) {
    return problem(std::string(wanted) + " is wanted, and it starts with a number.", text, "");
  }
  if (i < plain.size() && (plain[i] == '.' || plain[i] == ',')) {
    return problem("The number has more than one decimal mark.", text,
                   "Write thousands without a mark and decimals after a point, such as 1234.5.");
  }
  i = take_exponent(plain, i, digits);
  LeadingNumber number;
  const char* const end = digits.data() + digits.size();
  const auto [stop, error] = std::from_chars(digits.data(), end, number.value);
  if (error != std::errc() || stop != end || !std::isfinite(number.value)) {
    return problem("The number is too large or too small to count with.", text, "");
  }
  number.rest = trimmed(std::string_view(plain).substr(i));
  return number;
}

}  // namespace voltwright::units

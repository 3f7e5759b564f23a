#pragma once
// Numbers as people type them: "45", "0,045", "3 000", "−12.5".
#include <string>
#include <string_view>

#include "engine/base/result.h"

namespace voltwright::units {

/// A number and the text behind it, trimmed.
struct LeadingNumber {
  double value = 0.0;
  std::string rest;
};

/// Reads the number at the start of `text`. Point or comma marks decimals; spaces (also no-break and thin
/// ones) may group thousands; an exponent is allowed. Always finite. A comma before exactly three digits
/// could also mean thousands and is refused. Problems carry no place; `wanted` completes "… is wanted" ("A
/// power").
base::Result<LeadingNumber> read_leading_number(std::string_view text, std::string_view wanted);

/// `text` trimmed, with no-break, thin and narrow spaces as plain ones and the minus sign U+2212 as '-'.
std::string plain_text(std::string_view text);

}  // namespace voltwright::units

#pragma once
// One claim held against something: what came out, and how it was worked out.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace voltwright::claims {

/// How far a claim stands up. A doubt asks for proof; only figures that exclude each other, or what is known
/// of the chemistry, make a contradiction.
enum class Severity {
  kHolds,          // within what it is held against
  kNote,           // worth knowing, or worth asking: nothing speaks against the claim
  kDoubt,          // outside what was ever seen, or means less than it seems to: ask for proof
  kContradiction,  // cannot all be true together
};

/// "holds", "note", "doubt" or "contradiction".
std::string_view name_of(Severity severity);

struct Finding {
  std::string id{};  // "consistent.energy": family and rule
  Severity severity = Severity::kNote;
  std::string claim{};              // in words, with the figures of the sheet
  std::optional<double> number{};   // what was worked out
  std::optional<double> claimed{};  // what the sheet says in its place, if that is another; in the same unit
  std::string unit{};               // of the number and the range; empty for a plain ratio
  std::optional<double> least{};    // the range it is held against; an open end is empty
  std::optional<double> most{};
  std::string source{};   // of the range
  std::string working{};  // one line of arithmetic
  std::string say{};      // a plain sentence to say to a client
};

using Findings = std::vector<Finding>;

/// True if the sheet is doubted or contradicted anywhere.
bool is_doubted(const Findings& findings);

}  // namespace voltwright::claims

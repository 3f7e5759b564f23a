#include "files/report/claim_lines.h"

#include <fmt/format.h>

#include <algorithm>

#include "engine/units/figure.h"
#include "files/report/markup.h"

namespace voltwright::files::report {

namespace {

using claims::Finding;
using claims::Severity;

constexpr std::string_view kUsual = "usual.";
constexpr std::string_view kPossible = "possible.";

bool of_family(const Finding& f, std::string_view family) { return f.id.starts_with(family); }

/// The finding on the same quantity of the other family; null if there is none.
const Finding* partner_of(const Finding& f, const claims::Findings& findings) {
  const bool usual = of_family(f, kUsual);
  if (!usual && !of_family(f, kPossible)) return nullptr;
  const std::string wanted = usual ? std::string(kPossible) + f.id.substr(kUsual.size())
                                   : std::string(kUsual) + f.id.substr(kPossible.size());
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& o) { return o.id == wanted && o.unit == f.unit; });
  return found == findings.end() ? nullptr : &*found;
}

}  // namespace

const Finding* ClaimLine::usual() const {
  if (of_family(*finding, kUsual)) return finding;
  return beside != nullptr && of_family(*beside, kUsual) ? beside : nullptr;
}

std::optional<double> ClaimLine::flag() const {
  return finding->claimed ? finding->claimed : finding->number;
}

bool ClaimLine::has_scale() const {
  return flag().has_value() && (finding->least.has_value() || finding->most.has_value());
}

std::vector<ClaimLine> claim_lines(const claims::Findings& findings) {
  std::vector<ClaimLine> lines;
  for (const Finding& f : findings) {
    const Finding* partner = partner_of(f, findings);
    if (partner != nullptr) {
      // The worse of the two speaks; of equals the one on what is possible.
      const bool speaks =
          f.severity != partner->severity ? f.severity > partner->severity : of_family(f, kPossible);
      if (!speaks) continue;
    }
    lines.push_back({&f, partner});
  }
  return lines;
}

std::string with_unit(double value, const std::string& unit) {
  if (unit.empty()) return units::figure(value);
  return unit == "C" ? units::figure(value) + unit : units::figure(value, unit);
}

std::string range_words(const Finding& f) {
  std::string words = "expected";
  if (of_family(f, kUsual)) words = "others state";
  if (of_family(f, kPossible)) words = "possible:";
  if (f.id == "misleading.cell_for_battery") words = "bare cells:";
  if (f.least && f.most) return words + " " + units::figure(*f.least) + " to " + with_unit(*f.most, f.unit);
  if (f.least) return words + " at least " + with_unit(*f.least, f.unit);
  if (f.most) return words + " at most " + with_unit(*f.most, f.unit);
  return "";
}

std::string worked_out_words(const Finding& f) {
  if (!f.number) return "";
  const std::string number = with_unit(*f.number, f.unit);
  return f.claim.find(number) == std::string::npos ? "worked out: " + number : "";
}

std::string_view class_of(Severity severity) {
  if (severity == Severity::kHolds) return "full";
  return severity == Severity::kNote ? "ask" : "bad";
}

std::string_view sign_of(Severity severity) {
  switch (severity) {
    case Severity::kHolds:
      return "M0 6H17M17 0V12";
    case Severity::kNote:
      return "M0 6H3M6 6H9M12 6H15M18 0V3M18 5V7M18 9V12";
    case Severity::kDoubt:
      return "M0 6H9M17 0V12";
    case Severity::kContradiction:
      return "M0 6H8M12 1L21 11M21 1L12 11";
  }
  return "";
}

std::string severity_mark(Severity severity) {
  return fmt::format(
      R"(<span class="word {}"><svg class="sign" viewBox="0 0 22 12" aria-hidden="true"><path d="{}"/></svg>{}</span>)",
      class_of(severity), sign_of(severity), claims::name_of(severity));
}

}  // namespace voltwright::files::report

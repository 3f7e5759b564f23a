#include "app/vet.h"

#include <algorithm>
#include <array>
#include <utility>

#include "files/claim_evidence.h"
#include "files/sheet.h"
#include "files/suggest.h"
#include "files/text_file.h"

namespace voltwright::app {

namespace {

std::string summary_of(const claims::Findings& findings) {
  std::array<std::size_t, 4> counts{};
  for (const claims::Finding& f : findings) ++counts[static_cast<std::size_t>(f.severity)];
  struct Words {
    const char* one;
    const char* many;
  };
  // In the order of claims::Severity.
  static constexpr std::array<Words, 4> kWords = {{{"holds", "hold"},
                                                   {"is a note", "are notes"},
                                                   {"is a doubt", "are doubts"},
                                                   {"is a contradiction", "are contradictions"}}};
  std::string text =
      "Of " + std::to_string(findings.size()) + (findings.size() == 1 ? " finding" : " findings");
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (counts[i] == 0) continue;
    text += ", " + std::to_string(counts[i]) + " " + (counts[i] == 1 ? kWords[i].one : kWords[i].many);
  }
  return text + ".";
}

std::string kind_words(const claims::Sheet& sheet, const files::Catalogue& catalogue) {
  for (const cell::Chemistry& chemistry : catalogue.chemistries) {
    if (chemistry.id == sheet.kind) return chemistry.plain_name;
  }
  return sheet.kind;
}

std::vector<std::string> cautions_of() {
  return {
      "A judgement of a sheet is no test. Only a capacity test with stated temperature, rate and end "
      "voltage, on the battery itself, tells what is inside.",
      "A doubt is a question to the seller, not an accusation: figures are misprinted, rounded and "
      "translated.",
      "Do not open a battery and do not test it beyond its maker's limits: pierced, shorted, overcharged or "
      "frozen batteries can burn, gas or burst.",
      "A planning aid. Local codes, the makers' instructions and a licensed person decide."};
}

base::Problem nothing_to_vet(bool both) {
  base::Problem problem;
  problem.field = "SHEET";
  problem.what = both ? "A sheet and claims cannot be vetted in one go." : "There is nothing to vet.";
  problem.remedy = "Give a sheet, or claims such as --claim chemistry=lfp --claim \"capacity=100 Ah\".";
  return problem;
}

base::Result<files::ReadSheets> sheets_of(const VetRequest& request, const files::Catalogue& catalogue) {
  if (request.path.empty() == request.claims.empty()) return nothing_to_vet(!request.path.empty());
  if (request.path.empty()) return files::read_said_claims(request.claims, "--claim", catalogue);
  const auto text = files::read_text(request.path);
  if (!text) return text.problems();
  return files::read_sheets(text.value(), request.path, catalogue);
}

base::Problem no_sheet_called(const std::string& name, const std::vector<std::string>& names) {
  base::Problem problem;
  problem.field = "--only";
  problem.what = "No sheet has this name.";
  problem.given = name;
  const std::string near = files::nearest_word(name, names);
  problem.remedy =
      near.empty() ? "The first is \"" + names.front() + "\"." : "Did you mean \"" + near + "\"?";
  return problem;
}

}  // namespace

base::Result<VetResponse> vet(const VetRequest& request) {
  auto catalogue = files::read_catalogue();
  if (!catalogue) return catalogue.problems();
  auto sheets = sheets_of(request, catalogue.value());
  if (!sheets) return sheets.problems();
  const auto evidence = files::read_evidence(catalogue.value());
  if (!evidence) return evidence.problems();
  VetResponse response;
  response.catalogue_mark = catalogue.value().mark;
  response.sheet_mark = sheets.value().mark;
  response.warnings = std::move(sheets.value().warnings);
  response.cautions = cautions_of();
  std::vector<std::string> names;
  for (claims::Sheet& sheet : sheets.value().sheets) {
    names.push_back(sheet.name);
    if (!request.only.empty() && sheet.name != request.only) continue;
    VettedSheet vetted;
    vetted.findings = claims::vet(sheet, evidence.value());
    vetted.kind_words = kind_words(sheet, catalogue.value());
    vetted.summary = summary_of(vetted.findings);
    vetted.sheet = std::move(sheet);
    response.sheets.push_back(std::move(vetted));
  }
  if (response.sheets.empty() && !names.empty()) return no_sheet_called(request.only, names);
  return response;
}

}  // namespace voltwright::app

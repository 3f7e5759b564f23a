#include <fmt/format.h>

#include <iterator>

#include "app/csv_text.h"
#include "app/json.h"
#include "app/json_parts.h"
#include "app/version.h"
#include "app/vet.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json number_or_null(const std::optional<double>& number) { return number ? Json(*number) : Json(nullptr); }

Json finding_json(const claims::Finding& f) {
  return {{"id", f.id},
          {"severity", claims::name_of(f.severity)},
          {"claim", f.claim},
          {"number", number_or_null(f.number)},
          {"claimed", number_or_null(f.claimed)},
          {"unit", f.unit},
          {"least", number_or_null(f.least)},
          {"most", number_or_null(f.most)},
          {"working", f.working},
          {"source", f.source},
          {"say", f.say}};
}

std::string plain(const std::optional<double>& number) {
  return number ? fmt::format("{:.6g}", *number) : "";
}

}  // namespace

std::string to_json(const VetResponse& response) {
  Json json;
  json["stamp"] = {{"format", kAnswerFormat},
                   {"engine", kVersion},
                   {"sheet_mark", response.sheet_mark},
                   {"catalogue_mark", response.catalogue_mark}};
  json["sheets"] = Json::array();
  for (const VettedSheet& vetted : response.sheets) {
    Json findings = Json::array();
    for (const claims::Finding& f : vetted.findings) findings.push_back(finding_json(f));
    json["sheets"].push_back({{"name", vetted.sheet.name},
                              {"chemistry", vetted.sheet.kind},
                              {"doubted", claims::is_doubted(vetted.findings)},
                              {"summary", vetted.summary},
                              {"findings", std::move(findings)}});
  }
  json["cautions"] = response.cautions;
  json["warnings"] = problem_list_json(response.warnings);
  return json_text(json);
}

std::string findings_csv(const VetResponse& response) {
  std::string text = "sheet,id,severity,claim,number,unit,least,most,working,source,say\n";
  for (const VettedSheet& vetted : response.sheets) {
    for (const claims::Finding& f : vetted.findings) {
      fmt::format_to(std::back_inserter(text), "{},{},{},{},{},{},{},{},{},{},{}\n",
                     in_quotes(vetted.sheet.name), f.id, claims::name_of(f.severity), in_quotes(f.claim),
                     plain(f.number), in_quotes(f.unit), plain(f.least), plain(f.most), in_quotes(f.working),
                     in_quotes(f.source), in_quotes(f.say));
    }
  }
  return text;
}

}  // namespace voltwright::app

#include "files/cost_facts.h"

#include <utility>

#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {

namespace {

using nlohmann::json;

constexpr double kMost_L = 5.0;
constexpr double kMost_USD_per_kg = 1000.0;

void read_scrap(JsonReader& record, const json& list, const std::string& name, base::Problems& problems,
                cost::RunningFacts& facts) {
  for (const json& item : list) {
    if (!item.is_object()) {
      record.report("scrap", "An entry must be an object.", "", "", "Write {...}.");
      continue;
    }
    JsonReader reader(item, name, problems);
    cost::ScrapFact fact;
    fact.USD_per_kg = reader.range("scrap_USD_per_kg", -kMost_USD_per_kg, kMost_USD_per_kg);
    fact.year = reader.whole("value_year", 1990, 2100);
    fact.is_assumption = reader.has("assumption");
    const auto ids = item.find("chemistries");
    if (ids != item.end() && ids->is_array()) {
      for (const json& id : *ids) {
        if (id.is_string()) fact.chemistries.push_back(id.get<std::string>());
      }
    }
    if (fact.chemistries.empty()) {
      reader.report("chemistries", "The entry names no chemistry.", "", "", "Write a list of ids.");
    }
    facts.scrap.push_back(std::move(fact));
  }
}

}  // namespace

base::Result<cost::RunningFacts> read_cost_record(std::string_view text, const std::string& name) {
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  cost::RunningFacts facts;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  facts.L_per_100km_100kg = record.object("carrying").range("fuel_L_per_100km_100kg", 0.0, kMost_L);
  const auto scrap = value->find("scrap");
  if (scrap != value->end() && scrap->is_array()) {
    read_scrap(record, *scrap, name, problems, facts);
  } else {
    record.report("scrap", "A list is wanted here.", "", "", "Write [...].");
  }
  if (base::has_error(problems)) return problems;
  return facts;
}

base::Result<cost::RunningFacts> read_cost_files(std::span<const EmbeddedFile> files) {
  const EmbeddedFile* found = nullptr;
  std::size_t count = 0;
  for (const EmbeddedFile& file : files) {
    if (!file.name.starts_with("costs/") || !file.name.ends_with(".json")) continue;
    found = &file;
    ++count;
  }
  if (count == 1) return read_cost_record(found->bytes, std::string(found->name));
  base::Problem problem;
  problem.where.file = "costs/";
  problem.what = count == 0 ? "The catalogue has no running costs." : "Running costs stand twice.";
  problem.remedy = "Keep one record in costs/.";
  return problem;
}

base::Result<cost::RunningFacts> read_cost_facts() { return read_cost_files(embedded_catalogue()); }

}  // namespace voltwright::files

#include "files/claim_evidence.h"

#include <cctype>
#include <nlohmann/json.hpp>
#include <utility>

#include "files/embedded.h"
#include "files/json_reader.h"
#include "files/number_table.h"
#include "files/text_problem.h"

namespace voltwright::files {
namespace {

constexpr std::string_view kStated = "stated/batteries.csv";
constexpr std::string_view kStatedSource =
    "stated figures of other batteries, 2005 to 2026, a convenience sample [genericBatteries]";
constexpr int kFirstYear = 1950;
constexpr int kLastYear = 2100;
constexpr double kMostDensity = 1e4;

std::string_view embedded(std::string_view name) {
  for (const EmbeddedFile& file : embedded_catalogue()) {
    if (file.name == name) return file.bytes;
  }
  return {};
}

/// "bib:key, table 1" becomes "table 1 [key]": how a page cites.
std::string plain_citation(const std::string& text) {
  std::string out = text;
  std::size_t at = out.find("bib:");
  while (at != std::string::npos) {
    std::size_t end = at + 4;
    while (end < out.size() && std::isalnum(static_cast<unsigned char>(out[end])) != 0) ++end;
    const std::string key = out.substr(at + 4, end - at - 4);
    out.replace(at, end - at, "[" + key + "]");
    at = out.find("bib:", at);
  }
  return out;
}

/// Who says so: source, derivation or assumption of a block, whichever it carries.
std::string said_by(const nlohmann::json& block) {
  for (const char* key : {"source", "derived_from", "assumption"}) {
    const auto found = block.find(key);
    if (found == block.end()) continue;
    if (found->is_string()) return plain_citation(found->get<std::string>());
    std::string joined;
    for (const auto& part : *found) {
      if (part.is_string()) joined += (joined.empty() ? "" : "; ") + plain_citation(part.get<std::string>());
    }
    return joined;
  }
  return {};
}

std::string source_of(const nlohmann::json& record, const char* block) {
  const auto found = record.find(block);
  return found == record.end() ? std::string() : said_by(*found);
}

std::vector<claims::DatedDensity> densities(const nlohmann::json& record, const char* list, const char* key,
                                            const std::string& file, base::Problems& problems) {
  static constexpr std::pair<std::string_view, claims::Level> kLevels[] = {
      {"cell", claims::Level::kCell}, {"battery", claims::Level::kBattery}};
  std::vector<claims::DatedDensity> all;
  const auto facts = record.find("facts");
  if (facts == record.end() || !facts->contains(list)) return all;
  for (const nlohmann::json& entry : facts->at(list)) {
    JsonReader reader(entry, file, problems);
    claims::DatedDensity density;
    density.year = reader.whole("year", kFirstYear, kLastYear);
    density.level = reader.choice("level", kLevels);
    density.density = reader.range(key, 0.0, kMostDensity);
    density.source = said_by(entry);
    density.assumed = entry.contains("assumption");
    all.push_back(std::move(density));
  }
  return all;
}

claims::Kind kind_of(const cell::Chemistry& chemistry, base::Problems& problems) {
  claims::Kind kind;
  kind.chemistry = chemistry;
  const std::string file = "chemistries/" + chemistry.id + ".json";
  const auto record = parse_json(embedded(file), file, problems);
  if (!record) return kind;
  kind.per_mass = densities(*record, "energy_per_mass", "energy_Wh_per_kg", file, problems);
  kind.per_volume = densities(*record, "energy_per_volume", "energy_Wh_per_L", file, problems);
  kind.life_source = source_of(*record, "cycle_life") + " Calendar: " + source_of(*record, "calendar_life");
  kind.temperature_source = source_of(*record, "temperature_limits");
  kind.voltage_source = source_of(*record, "voltage_limits");
  kind.self_discharge_source = source_of(*record, "self_discharge");
  kind.practice_source = source_of(*record, "practice");
  return kind;
}

/// One row after the other, each field a number or empty.
class StatedTable {
 public:
  StatedTable(const NumberTable& table, const NumberTable::Row& row, base::Problems& problems)
      : table_(table), row_(row), problems_(problems) {}

  std::string_view text(std::string_view column) const {
    const auto index = table_.column(column);
    return index ? row_.fields[*index] : std::string_view();
  }

  std::optional<double> number(std::string_view column) {
    const std::string_view field = text(column);
    if (field.empty()) return std::nullopt;
    const auto value = to_number(field);
    if (!value || *value <= 0.0) {
      problems_.push_back(text_problem(std::string(kStated), row_.line, 1,
                                       {.what = "A number above 0 is wanted, or nothing.",
                                        .field = std::string(column),
                                        .given = std::string(field),
                                        .limit = "",
                                        .remedy = "Mend the row."}));
      return std::nullopt;
    }
    return value;
  }

 private:
  const NumberTable& table_;
  const NumberTable::Row& row_;
  base::Problems& problems_;
};

void read_stated(claims::Evidence& evidence, base::Problems& problems) {
  const auto read = read_table(embedded(kStated), std::string(kStated));
  if (!read) {
    problems.insert(problems.end(), read.problems().begin(), read.problems().end());
    return;
  }
  for (const NumberTable::Row& row : read.value().rows) {
    StatedTable fields(read.value(), row, problems);
    claims::StatedBattery stated;
    stated.kind = fields.text("chemistry");
    stated.nominal_V = fields.number("voltage_V").value_or(0.0);
    stated.capacity_Ah = fields.number("capacity_Ah").value_or(0.0);
    stated.mass_kg = fields.number("mass_kg");
    stated.volume_L = fields.number("volume_L");
    stated.continuous_A = fields.number("continuous_A");
    stated.peak_A = fields.number("peak_A");
    stated.charge_A = fields.number("charge_A");
    stated.cycles = fields.number("cycles");
    stated.price_USD = fields.number("price_USD");
    stated.year = static_cast<int>(fields.number("year").value_or(0.0));
    evidence.stated.push_back(std::move(stated));
  }
}

}  // namespace

base::Result<claims::Evidence> read_evidence(const Catalogue& catalogue) {
  claims::Evidence evidence;
  base::Problems problems;
  for (const cell::Chemistry& chemistry : catalogue.chemistries) {
    evidence.kinds.push_back(kind_of(chemistry, problems));
  }
  evidence.stated_source = kStatedSource;
  read_stated(evidence, problems);
  if (base::has_error(problems)) return problems;
  return evidence;
}

}  // namespace voltwright::files

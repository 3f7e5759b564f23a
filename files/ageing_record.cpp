#include "files/ageing_record.h"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "files/ageing_part.h"
#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {

namespace {

base::Problem problem_of(const std::string& file, std::string field, std::string what, std::string given,
                         std::string remedy) {
  base::Problem problem;
  problem.where.file = file;
  problem.field = std::move(field);
  problem.what = std::move(what);
  problem.given = std::move(given);
  problem.remedy = std::move(remedy);
  return problem;
}

/// A record whose kind is known, parsed.
struct Parsed {
  std::string file;
  std::string kind;
  nlohmann::json json;
};

std::vector<Parsed> parse(std::span<const EmbeddedFile> files, base::Problems& problems) {
  constexpr std::string_view kFolder = "ageing/";
  constexpr std::string_view kEnding = ".json";
  std::vector<Parsed> parsed;
  for (const EmbeddedFile& file : files) {
    if (!file.name.starts_with(kFolder) || !file.name.ends_with(kEnding)) continue;
    const std::string name(file.name);
    auto json = parse_json(file.bytes, name, problems);
    if (!json) continue;
    JsonReader record(*json, name, problems);
    record.whole("format", kCatalogueFormat, kCatalogueFormat);
    std::string kind = record.text("kind");
    const std::string id = record.text("id");
    const std::string_view stem =
        file.name.substr(kFolder.size(), file.name.size() - kFolder.size() - kEnding.size());
    if (id != stem) record.report("id", "The id differs from the file name.", id, std::string(stem), "");
    parsed.push_back({name, std::move(kind), std::move(*json)});
  }
  return parsed;
}

using PartsById = std::map<std::string, PartRecord>;

/// The parts of one opinion, named in its list.
ageing::Opinion opinion_of(const nlohmann::json& item, const std::string& place, const PartsById& parts,
                           base::Problems& problems) {
  JsonReader record(item, place, problems);
  static constexpr std::pair<std::string_view, ageing::Basis> kBases[] = {
      {"measured", ageing::Basis::kMeasured},
      {"law", ageing::Basis::kLaw},
      {"life-points", ageing::Basis::kLifePoints},
      {"handbook", ageing::Basis::kHandbook}};
  ageing::Opinion opinion;
  opinion.id = record.text("id");
  opinion.name = record.text("name");
  opinion.caution = record.text("caution");
  opinion.basis = record.choice("basis", kBases);
  opinion.knows_rest = false;
  opinion.knows_swings = false;
  ageing::Parts found;
  const auto list = item.find("parts");
  if (list == item.end() || !list->is_array() || list->empty()) {
    record.report("parts", "The list of parts is missing or empty.", "", "", "Name the records of the law.");
    return opinion;
  }
  for (const auto& name : *list) {
    const auto part = parts.find(name.is_string() ? name.get<std::string>() : "");
    if (part == parts.end()) {
      record.report("parts", "No part has this id.", name.dump(), "", "Use the id of a record in ageing/.");
      continue;
    }
    if (part->second.part == nullptr) continue;
    found.push_back(part->second.part);
    opinion.knows_rest = opinion.knows_rest || part->second.part->validity().rests;
    opinion.knows_swings = opinion.knows_swings || part->second.part->validity().swings;
    opinion.knows_resistance = opinion.knows_resistance || part->second.knows_resistance;
    if (opinion.source.find(part->second.source) != std::string::npos) continue;
    opinion.source += (opinion.source.empty() ? "" : ", ") + part->second.source;
  }
  opinion.law = std::make_shared<ageing::ComposedLaw>(std::move(found));
  return opinion;
}

void read_opinions(const Parsed& file, const PartsById& parts, AgeingCatalogue& catalogue,
                   base::Problems& problems) {
  each_of(file.json, "chemistries", file.file, problems, [&](const auto& item, const auto& place) {
    JsonReader record(item, place, problems);
    ageing::Opinions opinions;
    opinions.chemistry = record.text("chemistry");
    if (record.has("gap")) opinions.gap = record.text("gap");
    if (record.has("life_spread")) {
      JsonReader block = record.object("life_spread");
      opinions.life_spread = block.number("variation_coefficient", 0.0, 1.0);
      opinions.life_spread_source = block.text("source");
    }
    each_of(item, "opinions", place, problems, [&](const auto& one, const auto& where) {
      opinions.opinions.push_back(opinion_of(one, where, parts, problems));
    });
    if (opinions.opinions.empty() && opinions.gap.empty()) {
      record.report("gap", "Nothing speaks for this chemistry, and nothing says why.", "", "",
                    "Say which law is missing.");
    }
    if (ageing::opinions_on(catalogue.opinions, opinions.chemistry) != nullptr)
      record.report("chemistry", "This chemistry stands twice.", opinions.chemistry, "", "Join the two.");
    catalogue.opinions.push_back(std::move(opinions));
  });
}

RefusedLaw read_refused(const Parsed& file, base::Problems& problems) {
  JsonReader record(file.json, file.file, problems);
  RefusedLaw law;
  law.id = record.text("id");
  law.name = record.text("name");
  law.reason = record.text("reason");
  law.source = record.text("source");
  if (!record.has("polynomial")) return law;
  constexpr double kMost = 1e3;
  JsonReader block = record.object("polynomial");
  const ageing::RatePolynomial polynomial{block.number("square_coefficient", 1e-15, kMost),
                                          block.number("slope_coefficient", -kMost, kMost),
                                          block.number("base_coefficient", -kMost, kMost)};
  law.gains = ageing::gaining_span(polynomial);
  if (!law.gains) {
    record.report("polynomial", "This factor is nowhere below 0.", "", "",
                  "Check the constants: a law may not be refused for a fault it does not have.");
  }
  return law;
}

}  // namespace

base::Result<AgeingCatalogue> read_ageing_files(std::span<const EmbeddedFile> files) {
  base::Problems problems;
  AgeingCatalogue catalogue;
  PartsById parts;
  const std::vector<Parsed> parsed = parse(files, problems);
  for (const Parsed& file : parsed) {
    if (is_part(file.kind)) {
      PartRecord part = read_part(file.json, file.kind, file.file, problems);
      if (!part.storage.empty()) catalogue.storage.push_back({part.id, part.storage});
      if (!part.life_points.empty()) catalogue.life_points.push_back({part.id, part.life_points});
      parts.emplace(part.id, std::move(part));
    } else if (file.kind == "refused") {
      catalogue.refused.push_back(read_refused(file, problems));
    } else if (file.kind != "opinions") {
      problems.push_back(problem_of(file.file, "kind", "No ageing law of this kind is known.", file.kind,
                                    "Kinds: docs/formats/catalogue.md."));
    }
  }
  for (const Parsed& file : parsed) {
    if (file.kind == "opinions") read_opinions(file, parts, catalogue, problems);
  }
  if (base::has_error(problems)) return problems;
  return catalogue;
}

base::Result<AgeingCatalogue> read_ageing_catalogue() { return read_ageing_files(embedded_catalogue()); }

}  // namespace voltwright::files

#include "files/catalogue.h"

#include <algorithm>
#include <cstdint>

#include "files/ageing_lead_record.h"
#include "files/catalogue_read.h"
#include "files/catalogue_records.h"
#include "files/fingerprint.h"

namespace voltwright::files {
namespace {

base::Problem problem_of(std::string what, std::string file, std::string field, std::string given,
                         std::string remedy) {
  base::Problem problem;
  problem.what = std::move(what);
  problem.where.file = std::move(file);
  problem.field = std::move(field);
  problem.given = std::move(given);
  problem.remedy = std::move(remedy);
  return problem;
}

template <class Record>
void take(const EmbeddedFile& file, std::string_view folder,
          base::Result<Record> (*read)(std::string_view, const std::string&), std::vector<Record>& records,
          base::Problems& problems) {
  constexpr std::string_view kEnding = ".json";
  if (!file.name.starts_with(folder) || !file.name.ends_with(kEnding)) return;
  const std::string name(file.name);
  auto result = read(file.bytes, name);
  if (!result) {
    problems.insert(problems.end(), result.problems().begin(), result.problems().end());
    return;
  }
  Record record = std::move(result).value();
  const std::string_view stem =
      file.name.substr(folder.size(), file.name.size() - folder.size() - kEnding.size());
  if (record.id != stem) {
    problems.push_back(problem_of("The id differs from the file name.", name, "id", record.id,
                                  "Rename one of the two to match \"" + std::string(stem) + "\"."));
  }
  records.push_back(std::move(record));
}

template <class Record>
void sort_by_id(std::vector<Record>& records, base::Problems& problems) {
  std::sort(records.begin(), records.end(), [](const Record& a, const Record& b) { return a.id < b.id; });
  const auto same = [](const Record& a, const Record& b) { return a.id == b.id; };
  auto twice = std::adjacent_find(records.begin(), records.end(), same);
  while (twice != records.end()) {
    problems.push_back(problem_of("Two records have this id.", "", "id", twice->id, "Rename one."));
    twice = std::adjacent_find(twice + 1, records.end(), same);
  }
}

template <class Record>
const Record* by_id(const std::vector<Record>& records, std::string_view id) {
  const auto found =
      std::lower_bound(records.begin(), records.end(), id,
                       [](const Record& record, std::string_view key) { return record.id < key; });
  return found != records.end() && found->id == id ? &*found : nullptr;
}

template <class Record>
void name_a_chemistry(const std::vector<Record>& records, const std::string& folder,
                      const Catalogue& catalogue, base::Problems& problems) {
  for (const Record& record : records) {
    if (catalogue.chemistry(record.chemistry) != nullptr) continue;
    problems.push_back(problem_of("No chemistry has this id.", folder + record.id + ".json", "chemistry",
                                  record.chemistry, "Use the file name of a record in chemistries/."));
  }
}

/// Gives the kinds of lead-acid their constants of wear.
void wear_plates(const EmbeddedFile& file, Catalogue& catalogue, base::Problems& problems) {
  const std::string name(file.name);
  const auto kinds = read_plate_wear(file.bytes, name);
  if (!kinds) {
    problems.insert(problems.end(), kinds.problems().begin(), kinds.problems().end());
    return;
  }
  for (cell::Chemistry& chemistry : catalogue.chemistries) {
    const auto kind = kinds.value().find(chemistry.id);
    if (kind != kinds.value().end()) chemistry.plate_wear = kind->second;
  }
}

}  // namespace

const cell::Chemistry* Catalogue::chemistry(std::string_view id) const { return by_id(chemistries, id); }
const cell::CellFormat* Catalogue::cell(std::string_view id) const { return by_id(cells, id); }
const bank::Battery* Catalogue::battery(std::string_view id) const { return by_id(batteries, id); }
const demand::Appliance* Catalogue::appliance(std::string_view id) const { return by_id(appliances, id); }

base::Result<Catalogue> read_catalogue_files(std::span<const EmbeddedFile> files) {
  Catalogue catalogue;
  base::Problems problems;
  Fingerprint hash;
  for (const EmbeddedFile& file : files) {
    hash.add(file.name);
    hash.add(file.bytes);
    take(file, "chemistries/", read_chemistry, catalogue.chemistries, problems);
    take(file, "cells/", read_cell, catalogue.cells, problems);
    take(file, "batteries/", read_battery, catalogue.batteries, problems);
    take(file, "appliances/", read_appliance, catalogue.appliances, problems);
  }
  catalogue.mark = hash.mark();
  for (const EmbeddedFile& file : files) {
    if (file.name.starts_with("ageing_lead/") && file.name.ends_with(".json"))
      wear_plates(file, catalogue, problems);
  }
  sort_by_id(catalogue.chemistries, problems);
  sort_by_id(catalogue.cells, problems);
  sort_by_id(catalogue.batteries, problems);
  sort_by_id(catalogue.appliances, problems);
  name_a_chemistry(catalogue.cells, "cells/", catalogue, problems);
  name_a_chemistry(catalogue.batteries, "batteries/", catalogue, problems);
  if (base::has_error(problems)) return problems;
  return catalogue;
}

base::Result<Catalogue> read_catalogue() { return read_catalogue_files(embedded_catalogue()); }

}  // namespace voltwright::files

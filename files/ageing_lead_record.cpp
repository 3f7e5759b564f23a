#include "files/ageing_lead_record.h"

#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {
namespace {

constexpr double kMost_V = 4.0;
constexpr double kMost_K = 100.0;
constexpr double kColdest_C = -60.0;
constexpr double kHottest_C = 100.0;
constexpr double kMostPer_h = 100.0;
constexpr double kLeast = 1e-9;
constexpr double kMany = 1e5;
constexpr double kForever_h = 1e7;

cell::GridCorrosion read_corrosion(JsonReader& record) {
  JsonReader block = record.object("corrosion");
  cell::GridCorrosion result;
  result.rest_V = block.number("rest_V", 0.0, kMost_V);
  result.acid_share = block.number("acid_share", 0.0, 1.0);
  result.acid_V = block.number("acid_V", 0.0, 1.0);
  result.knee_V = block.number("knee_V", 0.0, kMost_V);
  result.doubling_K = block.number("doubling_K", 1.0, kMost_K);
  result.capacity_loss = block.number("capacity_loss", 0.0, 1.0);
  result.resistance_growth = block.number("resistance_growth", 0.0, kMostPer_h);
  result.speed_by_V =
      record.object("corrosion_speed").curve("corrosion_speed_by_V", 0.0, kMost_V, kLeast, kMany);
  return result;
}

cell::PartialCharge read_partial_charge(JsonReader& record) {
  JsonReader block = record.object("partial_charge");
  cell::PartialCharge result;
  result.reference_per_h = block.number("reference_per_h", kLeast, kMostPer_h);
  result.per_h = block.number("growth_per_h", 0.0, 1.0);
  result.empty_per_h = block.number("empty_growth_per_h", 0.0, 1.0);
  result.almost_soc = block.number("almost_soc", 0.0, 1.0);
  result.almost_band = block.number("almost_band", kLeast, 1.0);
  result.bad_charges_scale = block.number("bad_charges_scale", kLeast, kMany);
  JsonReader choices = record.object("partial_charge_choices");
  result.full_soc = choices.number("full_soc", 0.5, 1.0);
  result.charge_ends_after = choices.number("charge_ends_after", kLeast, 1.0);
  result.longest_since_full_h = choices.number("longest_since_full_h", 1.0, kForever_h);
  result.most_bad_charges = choices.number("most_bad_charges", 0.0, kMany);
  result.start_share = choices.number("start_share", kLeast, 1.0);
  return result;
}

cell::AcidLayers read_acid(JsonReader& record) {
  JsonReader block = record.object("acid");
  cell::AcidLayers result;
  result.rise_per_h = block.number("rise_per_h", 0.0, kMostPer_h);
  result.rise_decay = block.number("rise_decay", kLeast, kMany);
  result.mixing_per_h = block.number("mixing_per_h", 0.0, kMostPer_h);
  result.mixing_V = block.number("mixing_V", 0.0, kMost_V);
  result.mixing_from_V = block.number("mixing_from_V", 0.0, kMost_V);
  result.mixing_C = block.number("mixing_C", kColdest_C, kHottest_C);
  result.mixing_per_V = block.number("mixing_per_V", 0.0, kMany);
  result.mixing_per_K = block.number("mixing_per_K", 0.0, 1.0);
  result.mixing_Ah = block.number("mixing_Ah", kLeast, kMany);
  result.diffusion_mm2_per_h = block.number("diffusion_mm2_per_h", 0.0, kMany);
  result.diffusion_C = block.number("diffusion_C", kColdest_C, kHottest_C);
  result.diffusion_doubling_K = block.number("diffusion_doubling_K", 1.0, kMost_K);
  result.height_mm = block.number("height_mm", 1.0, kMany);
  return result;
}

cell::PlateRating read_rating(JsonReader block) {
  cell::PlateRating result;
  result.standard_cycles = block.number("standard_cycles", 1.0, kMany);
  result.float_years = block.number("float_years", 0.1, kMost_K);
  result.float_V = block.number("float_V", 1.0, kMost_V);
  result.float_C = block.number("float_C", kColdest_C, kHottest_C);
  return result;
}

}  // namespace

base::Result<std::map<std::string, cell::PlateWear>> read_plate_wear(std::string_view text,
                                                                     const std::string& name) {
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  cell::PlateWear law;
  law.corrosion = read_corrosion(record);
  law.partial = read_partial_charge(record);
  law.acid = read_acid(record);
  JsonReader shedding = record.object("shedding");
  law.shedding.exponent = shedding.number("exponent", kLeast, kMany);
  law.shedding.stretch = shedding.number("stretch", kLeast, kMany);
  law.shedding.loss_limit = shedding.number("loss_limit", kLeast, 1.0);
  JsonReader validity = record.object("validity");
  law.coldest_C = validity.number("coldest_C", kColdest_C, kHottest_C);
  law.hottest_C = validity.number("hottest_C", law.coldest_C, kHottest_C);
  std::map<std::string, cell::PlateWear> kinds;
  for (const char* kind : {"agm", "flooded", "gel"}) {
    if (!record.has(kind)) continue;
    law.rating = read_rating(record.object(kind));
    kinds.emplace(kind, law);
  }
  if (kinds.empty()) {
    record.report("flooded", "There is no kind of battery in this record.", "", "agm, flooded or gel",
                  "Add a block of one of these names.");
  }
  if (base::has_error(problems)) return problems;
  return kinds;
}

}  // namespace voltwright::files

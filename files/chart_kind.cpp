#include "files/catalogue_records.h"
#include "files/chart_catalogue.h"
#include "files/json_reader.h"

namespace voltwright::files {

namespace {

using chart::Fact;
using chart::Level;
using chart::Quantity;

constexpr int kEarliest = 1950;
constexpr int kLatest = 2100;
constexpr double kColdest_C = -60.0;
constexpr double kHottest_C = 120.0;
constexpr double kHottestOnset_C = 600.0;
constexpr double kMostEnergy = 5000.0;
constexpr double kMostRate_per_h = 200.0;
constexpr double kManyCycles = 1e6;
constexpr double kMostPrice = 1e5;

/// The text of the one field that says where the numbers come from; the texts of a list are joined.
void read_origin(const nlohmann::json& block, chart::Origin& origin, std::string& from) {
  static constexpr std::pair<const char*, chart::Origin> kFields[] = {
      {"source", chart::Origin::kSource},
      {"derived_from", chart::Origin::kDerived},
      {"assumption", chart::Origin::kAssumption}};
  for (const auto& [key, kind] : kFields) {
    const auto found = block.find(key);
    if (found == block.end()) continue;
    origin = kind;
    if (found->is_string()) from = found->get<std::string>();
    if (!found->is_array()) continue;
    for (const auto& line : *found) {
      if (!line.is_string()) continue;
      if (!from.empty()) from += "; ";
      from += line.get<std::string>();
    }
  }
}

class KindReader {
 public:
  KindReader(const nlohmann::json& record, std::string file, base::Problems& problems)
      : record_(record), file_(std::move(file)), problems_(problems) {}

  /// Calls `read(reader, fact)` for every entry of a list of facts; the fact has its year and origin.
  template <class Read>
  void each(const char* list, bool must_be_there, Read read) {
    const auto facts = record_.find("facts");
    const bool is_there =
        facts != record_.end() && facts->is_object() && facts->contains(list) && (*facts)[list].is_array();
    if (!is_there) {
      if (must_be_there)
        note(std::string("facts.") + list, "This list of dated facts is missing.",
             "Add it; it may be empty.");
      return;
    }
    std::size_t number = 0;
    for (const auto& item : (*facts)[list]) {
      const std::string place = file_ + ": facts." + list + "[" + std::to_string(number++) + "]";
      if (!item.is_object()) {
        note(place, "A dated fact must be an object.", "Write {...}.");
        continue;
      }
      JsonReader reader(item, place, problems_);
      item_ = &item;
      Fact fact;
      fact.year = reader.whole("year", kEarliest, kLatest);
      fact.level = block_ ? Level::kBattery : Level::kCell;
      read_origin(item, fact.origin, fact.from);
      fact.from_memory = fact.from.find("(from memory)") != std::string::npos;
      if (reader.has("level")) {
        static constexpr std::pair<std::string_view, Level> kLevelWords[] = {
            {"cell", Level::kCell}, {"pack", Level::kPack}, {"battery", Level::kBattery}};
        fact.level = reader.choice("level", kLevelWords);
      }
      if (reader.has("conditions")) fact.conditions = reader.text("conditions");
      if (reader.has("basis")) fact.conditions = reader.text("basis");
      read(reader, fact);
    }
  }

  void add(Fact fact, Quantity quantity, const units::Ranged& value) {
    fact.quantity = quantity;
    fact.value = value;
    for (const Fact& other : facts_) {
      if (other.quantity == quantity && other.level == fact.level && other.year == fact.year &&
          other.depth == fact.depth && other.conditions == fact.conditions) {
        note("facts",
             "Two figures stand for the " + std::string(name_of(quantity)) + " of the " +
                 std::string(name_of(fact.level)) + " in " + std::to_string(fact.year) + ".",
             "Keep one, or tell their conditions apart.");
      }
    }
    facts_.push_back(std::move(fact));
  }

  void note(const std::string& field, const std::string& what, const std::string& remedy) {
    base::Problem problem;
    problem.where.file = file_;
    problem.field = field;
    problem.what = what;
    problem.remedy = remedy;
    problems_.push_back(std::move(problem));
  }

  /// Of the entry that `each` is reading.
  bool item_is_number(const char* key) const {
    const auto found = item_->find(key);
    return found != item_->end() && found->is_number();
  }

  void set_block(bool block) { block_ = block; }
  std::vector<Fact> take() { return std::move(facts_); }

 private:
  const nlohmann::json& record_;
  std::string file_;
  base::Problems& problems_;
  bool block_ = false;
  const nlohmann::json* item_ = nullptr;
  std::vector<Fact> facts_;
};

void read_energies(KindReader& kind) {
  kind.each("energy_per_mass", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kEnergyPerMass, r.range("energy_Wh_per_kg", 0.1, kMostEnergy));
  });
  kind.each("energy_per_volume", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kEnergyPerVolume, r.range("energy_Wh_per_L", 0.1, kMostEnergy));
  });
  kind.each("energy_target", false, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kEnergyTarget, r.range("energy_Wh_per_kg", 0.1, kMostEnergy));
  });
}

void read_currents(KindReader& kind) {
  kind.each("discharge", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kContinuousRate, r.range("continuous_rate_per_h", 0.001, kMostRate_per_h));
    if (r.has("peak_rate_per_h")) {
      kind.add(fact, Quantity::kPeakRate, r.range("peak_rate_per_h", 0.001, kMostRate_per_h));
    }
  });
  kind.each("charging", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kChargeRate, r.range("charge_rate_per_h", 0.001, kMostRate_per_h));
  });
}

void read_windows(KindReader& kind) {
  kind.each("temperatures", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kChargeFrom, r.range("charge_min_C", kColdest_C, kHottest_C));
    kind.add(fact, Quantity::kChargeTo, r.range("charge_max_C", kColdest_C, kHottest_C));
    kind.add(fact, Quantity::kDischargeFrom, r.range("discharge_min_C", kColdest_C, kHottest_C));
    kind.add(fact, Quantity::kDischargeTo, r.range("discharge_max_C", kColdest_C, kHottest_C));
  });
}

void read_lives(KindReader& kind) {
  kind.each("cycles", true, [&](JsonReader& r, Fact fact) {
    fact.depth = r.number("depth", 0.01, 1.0);
    fact.temperature_C = r.number("temperature_C", kColdest_C, kHottest_C);
    fact.end_of_life_share = r.number("end_of_life_share", 0.1, 1.0);
    kind.add(fact, Quantity::kCycles, r.range("cycles", 1.0, kManyCycles));
  });
  kind.each("calendar", true, [&](JsonReader& r, Fact fact) {
    fact.temperature_C = r.number("temperature_C", kColdest_C, kHottest_C);
    kind.add(fact, Quantity::kCalendarLife, r.range("calendar_years", 0.1, 100.0));
  });
}

void read_losses_and_prices(KindReader& kind) {
  kind.each("self_discharge", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kSelfDischarge, r.range("self_discharge_per_month", 0.0, 1.0));
  });
  kind.each("efficiency", true, [&](JsonReader& r, const Fact& fact) {
    kind.add(fact, Quantity::kEfficiency, r.range("round_trip_efficiency", 0.01, 1.0));
  });
  kind.each("price", true, [&](JsonReader& r, const Fact& fact) {
    units::Ranged price;
    if (kind.item_is_number("price_USD_per_kWh")) {  // an average without a spread
      price.typical = r.number("price_USD_per_kWh", 0.1, kMostPrice);
      price.min = price.max = price.typical;
    } else {
      price = r.range("price_USD_per_kWh", 0.1, kMostPrice);
    }
    kind.add(fact, Quantity::kPrice, price);
  });
}

chart::Safety read_safety(JsonReader& facts, const nlohmann::json& record, KindReader& kind) {
  static constexpr std::pair<std::string_view, chart::Runaway> kRunaways[] = {
      {"none", chart::Runaway::kNone},
      {"low", chart::Runaway::kLow},
      {"medium", chart::Runaway::kMedium},
      {"high", chart::Runaway::kHigh},
      {"not known", chart::Runaway::kNotKnown}};
  chart::Safety safety;
  JsonReader block = facts.object("safety");
  safety.year = block.whole("year", kEarliest, kLatest);
  safety.runaway = block.choice("runaway", kRunaways);
  safety.plates_metal = block.flag("plates_metal");
  if (block.has("stated")) safety.stated = block.text("stated");
  safety.gas = block.text("gas");
  safety.failure = block.text("failure");
  safety.note = block.text("note");
  if (const auto raw = record.find("facts");
      raw != record.end() && raw->contains("safety") && (*raw)["safety"].is_object()) {
    read_origin((*raw)["safety"], safety.origin, safety.from);
  }
  if (block.has("onset_C")) {
    const double onset_C = block.number("onset_C", kColdest_C, kHottestOnset_C);
    Fact fact;
    fact.year = safety.year;
    fact.conditions = "trigger temperature at the cell's surface, not a guarantee";
    fact.origin = safety.origin;
    fact.from = safety.from;
    kind.add(fact, Quantity::kOnset, {onset_C, onset_C, onset_C});
  }
  return safety;
}

}  // namespace

base::Result<chart::Kind> read_kind(std::string_view text, const std::string& name) {
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  chart::Kind kind;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  kind.id = record.text("id");
  kind.name = record.text("name");
  kind.short_name = record.text("short_name");
  kind.plain_name = record.text("plain_name");
  kind.block = record.text("family") == "lead-acid";
  kind.simulated = record.flag("simulated");
  JsonReader facts = record.object("facts");
  if (base::has_error(problems)) return problems;
  KindReader reader(*value, name, problems);
  reader.set_block(kind.block);
  read_energies(reader);
  read_currents(reader);
  read_windows(reader);
  read_lives(reader);
  read_losses_and_prices(reader);
  kind.safety = read_safety(facts, *value, reader);
  kind.facts = reader.take();
  if (base::has_error(problems)) return problems;
  return kind;
}

}  // namespace voltwright::files

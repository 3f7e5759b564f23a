#include "files/plan_money.h"

#include <fmt/core.h>

#include <algorithm>
#include <functional>
#include <optional>
#include <utility>

#include "engine/cost/cash_flow.h"
#include "engine/units/number.h"
#include "engine/units/parse.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

constexpr std::size_t kMostEntries = 500;
constexpr double kMostMoney = 1e9;

/// Reads one value of a key; nothing if it is absent or unreadable, which is noted.
using ReadOne = std::function<std::optional<double>(Section&, std::string_view)>;

/// A value, or three of them: { low = ..., typical = ..., high = ... }; low and high are typical if absent.
std::optional<Ranged> read_spread(Section& section, std::string_view key, const ReadOne& one) {
  const TomlNode* node = section.find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind != TomlKind::kTable) {
    const std::optional<double> value = one(section, key);
    if (!value) return std::nullopt;
    return Ranged{*value, *value, *value};
  }
  Section table(section.reading(), *node, section.field(key));
  if (!table.has("typical")) table.note_missing("typical", "\"...\"");
  const std::optional<double> typical = one(table, "typical");
  const std::optional<double> low = one(table, "low");
  const std::optional<double> high = one(table, "high");
  table.finish();
  if (!typical) return std::nullopt;
  const Ranged spread = {low.value_or(*typical), *typical, high.value_or(*typical)};
  if (spread.min <= spread.typical && spread.typical <= spread.max) return spread;
  table.note("", "The values are out of order.").remedy = "Low is at most typical, and typical at most high.";
  return std::nullopt;
}

/// "0.30 EUR/kWh": a sum for each of something; `per` is empty for a plain sum.
struct SumRule {
  std::string_view per;
  double min = 0.0;
  double max = kMostMoney;
  std::string_view example;  // without the currency: "0.30", filled in by in_words()
};

std::string in_words(double value, const std::string& currency, std::string_view per) {
  return fmt::format("{} {}{}{}", value, currency, per.empty() ? "" : "/", per);
}

std::optional<double> read_sum(Section& section, std::string_view key, const std::string& currency,
                               const SumRule& rule) {
  const std::optional<std::string> text = section.text(key);
  if (!text || currency.empty()) return std::nullopt;
  std::string_view sum = *text;
  if (!rule.per.empty()) {
    const std::size_t slash = sum.rfind('/');
    const std::string unit = slash == std::string_view::npos ? "" : plain_text(sum.substr(slash + 1));
    if (unit != rule.per) {
      base::Problem& problem = section.note(key, fmt::format("A sum for each {} is wanted.", rule.per));
      problem.given = shown(*text);
      problem.remedy = fmt::format("Write {} = \"{} {}/{}\".", key, rule.example, currency, rule.per);
      return std::nullopt;
    }
    sum = sum.substr(0, slash);
  }
  const base::Result<Money> money = parse_money(sum, currency);
  if (!money) {
    for (const base::Problem& p : money.problems()) {
      base::Problem& problem = section.note(key, p.what);
      problem.given = shown(*text);
      problem.limit = p.limit;
      problem.remedy = p.remedy;
    }
    return std::nullopt;
  }
  const double value = as_money(money.value());
  if (value >= rule.min && value <= rule.max) return value;
  base::Problem& problem = section.note(key, "The value lies outside what is possible here.");
  problem.given = shown(*text);
  problem.limit = in_words(rule.min, currency, rule.per) + " to " + in_words(rule.max, currency, rule.per);
  return std::nullopt;
}

base::Result<double> parse_per_100_km(std::string_view text) {
  const base::Result<LeadingNumber> number = read_leading_number(text, "Fuel such as \"0.13 L/100 km\"");
  if (number && (number.value().rest == "L/100 km" || number.value().rest == "L/100km")) {
    return number.value().value;
  }
  base::Problem problem;
  problem.what = "Fuel such as \"0.13 L/100 km\" is wanted.";
  problem.given = text;
  problem.limit = "L/100 km";
  return problem;
}

base::Result<double> parse_km_per_year(std::string_view text) {
  constexpr double kMetresPerKilometre = 1000.0;
  const std::string plain = plain_text(text);
  const std::size_t slash = plain.rfind('/');
  if (slash != std::string::npos && plain_text(std::string_view(plain).substr(slash + 1)) == "year") {
    base::Result<Length> length = parse_length(std::string_view(plain).substr(0, slash));
    if (!length) return length.problems();
    return as_metres(length.value()) / kMetresPerKilometre;
  }
  base::Problem problem;
  problem.what = "A distance for each year is wanted, such as \"8000 km/year\".";
  problem.given = text;
  problem.limit = "km/year";
  return problem;
}

std::optional<double> read_rate(Section& section, std::string_view key) {
  const Span<Fraction> span = {fraction(-0.1), fraction(0.5), "-10 % to 50 %", "\"3 %\""};
  const std::optional<Fraction> rate = section.value<Fraction>(key, parse_fraction, span);
  return rate ? std::optional(as_fraction(*rate)) : std::nullopt;
}

void read_rates(Section& section, cost::Money& money) {
  const std::optional<Ranged> rate = read_spread(section, "discount_rate", read_rate);
  const std::optional<double> inflation = read_rate(section, "inflation");
  if (rate) money.discount_rate = *rate;
  if (!inflation) return;
  if (!section.has("discount_rate")) {
    section.note("inflation", "Inflation alone changes nothing: all sums are in money of today.").remedy =
        "Add the discount_rate it belongs to, or leave it out.";
    return;
  }
  Ranged& real = money.discount_rate;
  real = {cost::real_rate(real.min, *inflation), cost::real_rate(real.typical, *inflation),
          cost::real_rate(real.max, *inflation)};
}

/// Whether a catalogue record has this id; noted if not.
template <class Record>
bool is_known(Section& section, std::string_view key, const std::string& id, std::string_view kind,
              const std::vector<Record>& records) {
  if (std::any_of(records.begin(), records.end(), [&](const Record& r) { return r.id == id; })) return true;
  section.note(key, fmt::format("The catalogue has no {} \"{}\".", kind, shown(id))).remedy =
      "The catalogue lists the names.";
  return false;
}

void read_prices(Section& money_section, const std::string& currency, cost::Money& money) {
  const Catalogue& catalogue = money_section.reading().catalogue;
  for (Section& section : money_section.sections("price", kMostEntries)) {
    const std::optional<std::string> id = section.text("battery");
    if (!section.has("battery")) section.note_missing("battery", "\"...\" with a name from the catalogue");
    const bool known = id && is_known(section, "battery", *id, "battery", catalogue.batteries);
    if (!section.has("price")) section.note_missing("price", "\"250 " + currency + "\"");
    const auto price = read_spread(section, "price", [&](Section& s, std::string_view key) {
      return read_sum(s, key, currency, {"", 0.0, kMostMoney, "250"});
    });
    section.finish();
    if (!known || !price) continue;
    const auto same = [&](const cost::OwnPrice& own) { return own.battery == *id; };
    if (std::any_of(money.prices.begin(), money.prices.end(), same)) {
      section.note("battery", "This battery has a price already.").remedy = "Keep one of them.";
    } else {
      money.prices.push_back({*id, *price});
    }
  }
}

void read_scrap(Section& money_section, const std::string& currency, cost::Money& money) {
  constexpr double kMostPerKilogram = 1e6;
  const Catalogue& catalogue = money_section.reading().catalogue;
  for (Section& section : money_section.sections("scrap", kMostEntries)) {
    const std::optional<std::string> id = section.text("chemistry");
    const bool known = !section.has("chemistry") ||
                       (id && is_known(section, "chemistry", *id, "chemistry", catalogue.chemistries));
    if (!section.has("per_kg")) section.note_missing("per_kg", "\"0.40 " + currency + "/kg\"");
    const auto per_kg = read_spread(section, "per_kg", [&](Section& s, std::string_view key) {
      return read_sum(s, key, currency, {"kg", -kMostPerKilogram, kMostPerKilogram, "0.40"});
    });
    section.finish();
    if (known && per_kg) money.scrap.push_back({id.value_or(""), *per_kg});
  }
}

}  // namespace

cost::Money read_money(Section section, const std::string& currency) {
  cost::Money money;
  const auto sums = [&](std::string_view per, std::string_view example) {
    return [&currency, per, example](Section& s, std::string_view key) {
      return read_sum(s, key, currency, {per, 0.0, kMostMoney, example});
    };
  };
  read_rates(section, money);
  if (const auto horizon = section.value<Duration>("horizon", parse_duration,
                                                   {years(1), years(60), "1 to 60 years", "\"10 years\""})) {
    money.horizon_years = as_years(*horizon);
  }
  if (section.has("dollar"))
    money.per_dollar = read_sum(section, "dollar", currency, {"", 1e-6, kMostMoney, "0.92"});
  money.mains_per_kWh = read_spread(section, "electricity", sums("kWh", "0.30"));
  money.fuel_per_L = read_spread(section, "fuel", sums("L", "1.80"));
  money.upkeep_per_year = read_spread(section, "upkeep", sums("year", "20"));
  section.set<double>("distance", parse_km_per_year, {0.0, 1e6, "0 to 1 000 000 km/year", "\"8000 km/year\""},
                      money.km_per_year);
  money.L_per_100km_100kg = read_spread(section, "fuel_for_100_kg", [](Section& s, std::string_view key) {
    return s.value<double>(key, parse_per_100_km, {0.0, 5.0, "0 to 5 L/100 km", "\"0.13 L/100 km\""});
  });
  if (money.km_per_year > 0.0 && !section.has("fuel")) {
    section.note("distance", "Nothing says what the fuel costs that carries the bank.").remedy =
        fmt::format("Add fuel = \"1.80 {}/L\", or leave the distance out.", currency);
  }
  read_prices(section, currency, money);
  read_scrap(section, currency, money);
  section.finish();
  return money;
}

}  // namespace voltwright::files

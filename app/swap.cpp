#include "app/swap.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "engine/advise/wording.h"
#include "engine/units/parse.h"
#include "files/suggest.h"

namespace voltwright::app {

namespace {

constexpr std::array<std::pair<const char*, advise::Measure>, 6> kMeasures = {{
    {"energy", advise::Measure::kUsableEnergy},
    {"mass", advise::Measure::kMass},
    {"room", advise::Measure::kVolume},
    {"price", advise::Measure::kPrice},
    {"life", advise::Measure::kLifeEnergy},
    {"current", advise::Measure::kStartingCurrent},
}};

/// The rate at which lead-acid is rated, and house loads are about as slow.
constexpr double kUsualHours = 20.0;

advise::Measure measure_of(const std::string& word, OptionReader& reader) {
  if (word.empty()) return advise::Measure::kUsableEnergy;
  std::vector<std::string> words;
  for (const auto& [name, measure] : kMeasures) {
    if (word == name) return measure;
    words.emplace_back(name);
  }
  base::Problem problem;
  problem.field = "--by";
  problem.what = "Banks are not compared by this.";
  problem.given = word;
  problem.limit = "energy, mass, room, price, life or current";
  const std::string near = files::nearest_word(word, words);
  if (!near.empty()) problem.remedy = "Did you mean \"" + near + "\"?";
  reader.add(problem);
  return advise::Measure::kUsableEnergy;
}

/// Litres of "330 x 175 x 220 mm" or of a volume; 0 for an empty or wrong text.
double tray_of(const std::string& text, OptionReader& reader) {
  constexpr double kMost_L = 1e5;
  constexpr double kLitresPerCubicMetre = 1e3;
  std::vector<std::string> parts = {""};
  for (const char c : text) {
    if (c == 'x' || c == 'X' || c == '*') {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  if (parts.size() == 1) {
    return reader.take(text, "--tray", units::parse_volume, units::as_litres, 0.0, 0.1, kMost_L);
  }
  const std::size_t unit_at = parts.back().find_last_of("0123456789.");
  if (parts.size() != 3 || unit_at == std::string::npos) {
    reader.add({"A tray has length, width and height.",
                {},
                "--tray",
                text,
                {},
                "Give \"330 x 175 x 220 mm\" or a volume.",
                base::Severity::kError});
    return 0.0;
  }
  const std::string unit = parts.back().substr(unit_at + 1);
  double volume_L = kLitresPerCubicMetre;
  for (std::string side : parts) {
    if (std::none_of(side.begin(), side.end(), [](unsigned char c) { return std::isalpha(c) != 0; })) {
      side += unit;
    }
    constexpr double kLongest_m = 10.0;
    volume_L *= reader.take(side, "--tray", units::parse_length, units::as_metres, 0.0, 0.001, kLongest_m);
  }
  return volume_L;
}

std::string bank_name(const advise::BankOnHand& bank) {
  const int count = bank.layout.in_series * bank.layout.in_parallel;
  return (count > 1 ? std::to_string(count) + " × " : std::string()) + bank.battery->name;
}

std::vector<std::string> cautions_of(const SwapResponse& r) {
  std::vector<std::string> cautions;
  if (r.incumbent.run.bank_Wh <= 0.0) {
    cautions.push_back("At this load and temperature the incumbent gives nothing: " +
                       std::string(advise::text_of(r.incumbent.run.ending)) + ".");
  }
  if (r.target <= 0.0) {
    cautions.push_back("Nothing can be held equal to none of a thing: ask by mass, room or price.");
  }
  cautions.emplace_back(
      "Catalogue batteries are size classes with typical figures: mass, room and price spread widely, and a "
      "data sheet goes first.");
  cautions.emplace_back(
      "Energy over its life is usable energy times the cycles at that depth, at 25 °C, without fading; "
      "calendar life may end it sooner.");
  if (r.question.tray_L > 0.0)
    cautions.emplace_back("The tray is compared by volume only: measure the case.");
  cautions.emplace_back(
      "Exchanging a battery can start a fire. Local codes, the makers' instructions and a licensed person "
      "decide.");
  return cautions;
}

}  // namespace

base::Result<std::shared_ptr<const SwapResponse>> swap_battery(const SwapRequest& request) {
  auto read = files::read_catalogue();
  if (!read) return read.problems();
  auto response = std::make_shared<SwapResponse>();
  SwapResponse& r = *response;
  r.catalogue = std::move(read).value();
  OptionReader reader;
  r.on_hand = battery_on_hand(request.battery, r.catalogue, reader);
  advise::SwapQuestion& q = r.question;
  q.incumbent = r.on_hand.bank;
  q.measure = measure_of(request.by, reader);
  const advise::RuntimeConditions conditions = conditions_of(request.load, reader);
  q.temperature_C = conditions.temperature_C;
  q.cut_off_V = conditions.cut_off_V;
  if (!request.load.depth.empty()) q.incumbent_depth = depth_of(request.load.depth, "--depth", 1.0, reader);
  if (!request.new_depth.empty()) q.new_depth = depth_of(request.new_depth, "--new-depth", 1.0, reader);
  q.tray_L = tray_of(request.tray, reader);
  constexpr int kMostSideBySide = 16;
  q.most_in_parallel =
      static_cast<int>(reader.checked(request.most_in_parallel, std::to_string(request.most_in_parallel),
                                      "--at-most", 4.0, 1.0, kMostSideBySide));
  LoadRequest load = request.load;
  const bool load_stated = !load.load.empty();
  if (!load_stated) load.load = "1 W";  // its power follows below, once the incumbent is known
  q.load = steady_load(load, reader);
  if (!reader.problems().empty()) return reader.problems();
  if (!load_stated) {
    const bank::BankFigures figures = bank::bank_figures(*q.incumbent.battery, q.incumbent.layout);
    q.load.power_W = figures.nominal_Wh / kUsualHours;
    r.on_hand.assumed.push_back("No load was stated: " + advise::figure(q.load.power_W, "W") +
                                ", which empties the incumbent in about 20 hours. Lead-acid gives less to a "
                                "heavier load (--load).");
  }
  advise::Equivalents found = advise::equivalents_of(q, r.catalogue.chemistries, r.catalogue.batteries);
  r.incumbent = found.incumbent;
  r.target = found.target;
  r.left_out = std::move(found.left_out);
  const std::vector<advise::Compared> shown =
      request.all ? found.found : advise::best_of_each_chemistry(found.found);
  for (const advise::Compared& compared : shown) {
    r.rows.push_back({compared, bank_name(compared.bank), advise::changes_between(q, r.incumbent, compared)});
  }
  r.cautions = cautions_of(r);
  return std::shared_ptr<const SwapResponse>(response);
}

}  // namespace voltwright::app

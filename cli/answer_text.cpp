#include "cli/answer_text.h"

#include <cmath>
#include <map>

#include "app/version.h"
#include "cli/table.h"
#include "engine/advise/caution.h"
#include "engine/advise/cost_words.h"
#include "engine/advise/fuel.h"
#include "engine/advise/wording.h"
#include "files/utc_text.h"

namespace voltwright::cli {

namespace {

using advise::figure;

constexpr int kPerChemistry = 2;

/// The ranking, or of each chemistry the nearest banks and whatever holds.
std::vector<const advise::Ranked*> shown_rows(const advise::Recommendation& answer, bool all) {
  std::vector<const advise::Ranked*> rows;
  std::map<const cell::Chemistry*, int> shown;
  for (const advise::Ranked& r : answer.ranking) {
    int& count = shown[r.trial.candidate.chemistry];
    if (all || r.trial.candidate.fitted_now || count < kPerChemistry) rows.push_back(&r);
    if (!r.trial.candidate.fitted_now) ++count;
  }
  return rows;
}

std::string ranking_table(const app::AdviseResponse& response, bool all) {
  std::vector<std::vector<std::string>> cells;
  const std::string currency = advise::price_currency_of(response.answer);
  for (const advise::Ranked* r : shown_rows(response.answer, all)) {
    const advise::Candidate& c = r->trial.candidate;
    const advise::Chance chance = r->trial.chance();
    const units::Ranged life = r->trial.life_years();
    const double price = r->price.amount.typical;
    const std::string price_cell = currency.empty() ? figure(price, r->price.currency) : figure(price);
    cells.push_back({c.name() + (c.fitted_now ? " (fitted now)" : ""), figure(c.figures.nominal_Wh / 1000.0),
                     std::to_string(chance.events) + "/" + std::to_string(chance.seasons),
                     figure(c.figures.mass_kg.typical), figure(c.figures.volume_L.typical),
                     c.fitted_now ? "-" : price_cell, figure(std::round(life.typical)),
                     advise::name_of(r->holding), r->brief});
  }
  return table({{"Bank", Align::kLeft},
                {"kWh", Align::kRight},
                {"Short", Align::kRight},
                {"kg", Align::kRight},
                {"L", Align::kRight},
                {currency.empty() ? "Price" : currency, Align::kRight},
                {"Years", Align::kRight},
                {"Verdict", Align::kLeft},
                {"Reason", Align::kLeft}},
               cells);
}

/// What a delivered kilowatt-hour costs and what that hangs on, or why it is not known.
std::string cost_block(const app::AdviseResponse& response, std::size_t width) {
  std::string text = "\n" + advise::cost_heading(response.costs.terms) + "\n";
  for (const std::string& sentence : advise::cost_sentences(response.answer, response.costs))
    text += wrapped("  " + sentence, width, "    ");
  std::string notes;
  for (const std::string& note : response.costs.notes) notes += (notes.empty() ? "" : " ") + note;
  return text + wrapped("  " + notes, width, "    ");
}

std::string ledger_table(const advise::Plan& plan, const season::Ledger<double>& l, double seasons) {
  std::vector<std::vector<std::string>> rows;
  const auto row = [&](const std::string& in, double in_Wh, const std::string& out, double out_Wh) {
    rows.push_back(
        {in, in.empty() ? "" : figure(in_Wh / 1000.0 / seasons), out, figure(out_Wh / 1000.0 / seasons)});
  };
  row("Solar", l.solar_Wh, "Direct-current loads", l.direct_Wh);
  row("Engine", l.engine_Wh, "Inverter input", l.inverter_Wh);
  row("Mains", l.mains_Wh, "Bank heater", l.heater_Wh);
  row("From the bank's store", l.drawn_from_store_Wh, "Cables", l.inverter_cable_Wh + l.main_cable_Wh);
  row("", 0.0, "Bank resistance", l.resistance_Wh + l.relaxing_Wh);
  row("", 0.0, "Side reactions, self-discharge", l.side_Wh + l.self_discharge_Wh);
  const auto in_only = [&](const std::string& in, double in_Wh) {
    rows.push_back({in, figure(in_Wh / 1000.0 / seasons), "", ""});
  };
  if (plan.wind) in_only("Wind", l.wind_Wh);
  if (plan.water) in_only("Water", l.water_Wh);
  if (plan.generator) in_only("Generator set", l.generator_Wh);
  row("Sum", l.in_Wh(), "Sum", l.out_Wh());
  return table({{"In", Align::kLeft}, {"kWh", Align::kRight}, {"Out", Align::kLeft}, {"kWh", Align::kRight}},
               rows);
}

}  // namespace

std::string answer_text(const app::AdviseResponse& response, bool all, std::size_t width) {
  const advise::Plan& plan = response.hand.plan;
  std::string text = plan.name + "\n\n";
  if (!response.hand.moved.empty()) text += wrapped(response.hand.moved, width, "") + "\n";
  for (const std::string& sentence : response.answer.sentences) text += wrapped(sentence, width, "");
  text += "\n" + ranking_table(response, all);
  const std::size_t hidden = response.answer.ranking.size() - shown_rows(response.answer, all).size();
  if (hidden > 0) text += std::to_string(hidden) + " more banks were tried; --all lists them.\n";
  if (!response.answer.would_need.empty()) {
    text += "\nWhat would have to change\n";
    for (const advise::WouldNeed& need : response.answer.would_need) {
      text += wrapped("  " + need.chemistry + ", nearest " + need.bank + ": " + need.sentence, width, "    ");
    }
  }
  text += cost_block(response, width);
  const advise::Trial& first = response.answer.ranking.front().trial;
  text += "\nEnergy of a mean season, " + first.candidate.name() + "\n";
  text += ledger_table(plan, first.ledger, std::max(1, first.count()));
  const std::string fuel = advise::fuel_sentences(plan, first.ledger, std::max(1, first.count()));
  if (!fuel.empty()) text += "\n" + wrapped(fuel, width, "");
  if (first.ledger.solar_clipped_Wh > 0.0) {
    text += wrapped("Solar controllers held back " +
                        figure(first.ledger.solar_clipped_Wh / std::max(1, first.count()), "Wh") +
                        " a season at their output limits.",
                    width, "");
  }
  text += "\n" + wrapped("Loads ask for " + figure(response.demand_Wh_day, "Wh") +
                             " a day on average. Seasons of " + figure(first.minutes / 1440.0, "days") +
                             " each; \"Short\" counts those in which an "
                             "essential load went without.",
                         width, "");
  text += "\n";
  for (const advise::Caution& c : advise::cautions_of(plan, first)) {
    text += wrapped(c.title + ": " + c.text, width, "  ");
  }
  for (const advise::Caution& c : advise::sun_cautions(response.sun_findings)) {
    text += wrapped(c.title + ": " + c.text, width, "  ");
  }
  text += wrapped(
      "A planning aid. A battery can start a fire or burn a hand: fuse every source at its terminals, "
      "observe the "
      "maker's limits, ventilate lead-acid, never charge lithium-ion below its limit. Local codes and a "
      "licensed "
      "person decide, above all on shore power.",
      width, "");
  text += "Plan " + response.hand.plan_mark + ", catalogue " + response.hand.catalogue.mark + ", engine " +
          app::kVersion + ", seed " + std::to_string(plan.seed) + "\n";
  return text;
}

std::string season_text(const app::SimulateResponse& response, std::size_t width) {
  const season::Fared& f = response.shown.fared;
  std::string text = response.hand.plan.name + ", " + response.candidate.name() + ", season " +
                     std::to_string(response.shown.season) + "\n\n";
  if (!response.hand.moved.empty()) text += wrapped(response.hand.moved, width, "") + "\n";
  text += wrapped(f.ran_short()
                      ? "Ran short of essential loads for " + advise::duration_text(f.ledger.short_h * 60.0) +
                            ", at most " + advise::duration_text(f.longest_short_min) + " at a stretch; " +
                            figure(f.ledger.unmet_essential_Wh, "Wh") + " went undelivered."
                      : "Every essential load was carried.",
                  width, "");
  text += wrapped("Lowest state of charge " + advise::percent(std::fmax(0.0, f.lowest_charge)) + " at " +
                      files::utc_text(f.lowest_charge_utc_s) + "; at the end " +
                      advise::percent(f.charge_at_end) + ".",
                  width, "");
  text += wrapped("Bus " + figure(f.lowest_V, "V") + " to " + figure(f.highest_V, "V") + "; bank " +
                      figure(std::round(f.coldest_C), "°C") + " to " + figure(std::round(f.hottest_C), "°C") +
                      "; highest minute " + figure(f.highest_discharge_A, "A") + " discharging, " +
                      figure(f.highest_charge_A, "A") + " charging.",
                  width, "");
  const auto hours = [&](double h, const std::string& what) {
    if (h > 0.0) text += wrapped(what + " for " + advise::duration_text(h * 60.0) + ".", width, "");
  };
  hours(f.ledger.charge_blocked_h, "Charging was blocked by temperature or voltage");
  hours(f.ledger.far_off_h, "A load at the end of its cable was below its cut-off");
  hours(f.ledger.over_current_h, "The protection was open on over-current");
  hours(f.ledger.frozen_h, "The electrolyte was frozen");
  hours(f.ledger.unwoken_h, "Sources could not start on the dead bank");
  if (f.ledger.load_dumps > 0.0) {
    text += wrapped("The protection opened while the alternator was charging, at up to " +
                        figure(f.highest_load_dump_A, "A") + ": a load dump.",
                    width, "");
  }
  text += "\n" + ledger_table(response.hand.plan, f.ledger, 1.0);
  const std::string fuel = advise::fuel_sentences(response.hand.plan, f.ledger, 1.0);
  if (!fuel.empty()) text += "\n" + wrapped(fuel, width, "");
  return text;
}

}  // namespace voltwright::cli

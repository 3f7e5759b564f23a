#pragma once
// Weather made from monthly means: one draw of what a stay may bring.
#include <cstdint>

#include "engine/sky/clearness.h"
#include "engine/sky/sun.h"
#include "engine/sky/weather.h"

namespace voltwright::sky {

/// One-minute weather for the minutes of `sun`, which must be the sun of `site`.
///
/// Days are solar days of the place's longitude. Each day's clearness comes from `model` with the month's
/// mean (long-run mean within 1 %) times an anomaly that the days of a month share, each hour's from the
/// autoregressive Gaussian model, scaled so that the hours sum to the day and none exceeds 1.1 times the
/// clear sky; minutes follow the clear sky, with bright and dark spells under broken cloud, and keep each
/// hour's energy, none above 1.3 times the clear sky. Beam and diffuse by `diffuse`; ghi = dhi + dni cos z in
/// every minute. Air temperature: monthly course, day-to-day change, and a daily course whose range follows
/// the day's clearness. Wind: the monthly course, constant over a day.
///
/// The result depends on the arguments alone: the same (seed, season, leg) gives the same weather whatever
/// was drawn before, and a longer stay begins with the same minutes as a shorter one. Years 1950 to 2050. A
/// clearness of 0 marks a month without data (polar night) and is filled from its neighbours. If the
/// turbidity leaves less light than the clearness asks for, the clearness, being measured energy, wins and
/// the turbidity is lowered (not below 1.5).
WeatherMinutes make_weather(const Site& site, const MonthlyClimate& climate,
                            const ClearnessMatrices& matrices, const SunMinutes& sun, std::uint64_t seed,
                            std::uint64_t season, std::uint64_t leg, DailyModel model = DailyModel::kMatrices,
                            DiffuseModel diffuse = DiffuseModel::kErbs);

}  // namespace voltwright::sky

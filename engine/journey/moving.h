#pragma once
// A leg whose driving leads to another place: where it is, its sun and its weather minute by minute.
#include <span>
#include <vector>

#include "engine/journey/calendar.h"
#include "engine/journey/leg.h"
#include "engine/sky/sun.h"
#include "engine/sky/weather.h"

namespace voltwright::journey {

/// Share of the leg's driving that is done at the middle of each minute, 0 to 1, never falling.
std::vector<float> driven_share(const Calendar& calendar);

/// The point at a share [0..1] of the great circle from one place to another, its height on a straight line.
/// Opposite points have no shortest way; the way then goes straight in latitude and longitude.
sky::Site site_between(const sky::Site& from, const sky::Site& to, double share);

/// The sun over the leg's minutes at the place where it is in each of them. Needs leg.end_place.
sky::SunMinutes moving_sun(const Leg& leg, std::span<const float> share);

/// Turns the weather of a leg's start into that on its way: beam, diffuse light, temperature and wind are
/// mixed by the share driven, and the global light follows from the sun of the moving place. All arguments
/// cover the same minutes. Both weathers should come from the same draw, so that a clear day is clear at
/// both ends.
void mix_weather(sky::WeatherMinutes& weather, const sky::WeatherMinutes& end, std::span<const float> share,
                 const sky::SunMinutes& sun);

}  // namespace voltwright::journey

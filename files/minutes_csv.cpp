#include "files/minutes_csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "files/utc_text.h"

namespace voltwright::files {

std::string minutes_csv(const season::Trace& trace, const std::vector<float>& outside_C) {
  const auto any = [](const std::vector<float>& power_W) {
    return std::any_of(power_W.begin(), power_W.end(), [](float w) { return w > 0.0F; });
  };
  const bool rarer = any(trace.wind_W) || any(trace.water_W) || any(trace.generator_W);
  std::string text =
      "utc,state_of_charge,bank_C,outside_C,bus_V,bank_A,loads_W,solar_W,engine_W,mains_W,unmet_W";
  text += rarer ? ",wind_W,water_W,generator_W\n" : "\n";
  text.reserve(text.size() + trace.charge.size() * 90);
  for (std::size_t i = 0; i < trace.charge.size(); ++i) {
    fmt::format_to(
        std::back_inserter(text), "{},{:.5f},{:.2f},{:.2f},{:.3f},{:.2f},{:.1f},{:.1f},{:.1f},{:.1f},{:.1f}",
        utc_text(trace.start_utc_s + 60 * static_cast<std::int64_t>(i)), trace.charge[i], trace.bank_C[i],
        i < outside_C.size() ? outside_C[i] : 0.0F, trace.bus_V[i], trace.bank_A[i], trace.load_W[i],
        trace.solar_W[i], trace.engine_W[i], trace.mains_W[i], trace.unmet_W[i]);
    if (rarer) {
      fmt::format_to(std::back_inserter(text), ",{:.1f},{:.1f},{:.1f}", trace.wind_W[i], trace.water_W[i],
                     trace.generator_W[i]);
    }
    text += '\n';
  }
  return text;
}

}  // namespace voltwright::files

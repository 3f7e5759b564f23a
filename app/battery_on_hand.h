#pragma once
// A bank as somebody tells of it: from the catalogue, or by its kind, ampere-hours and whatever else is
// known.
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "engine/advise/runtime.h"
#include "files/catalogue.h"

namespace voltwright::app {

/// Texts are "value unit"; empty = not said.
struct BatteryRequest {
  std::string battery;   // catalogue id, or the kind ("agm", "lfp"); then `capacity` is needed
  std::string capacity;  // of one battery
  std::string voltage;   // nominal, of one battery; default that of the nearest of its kind
  std::string mass;
  std::string volume;
  std::string price;  // USD
  std::string age;    // years since new
  std::string lost;   // share of the capacity that is gone; counts instead of the age
  int in_series = 1;
  int in_parallel = 1;
};

struct BatteryOnHand {
  std::shared_ptr<const bank::Battery> battery;
  advise::BankOnHand bank;           // points to `battery` and into the catalogue
  std::vector<std::string> assumed;  // sentences: what was not said and where it was taken from
  std::string name;                  // "2 × AGM 12 V 98 Ah"
};

/// Reads "value unit" texts into plain numbers and gathers what is wrong with them under the option's name.
class OptionReader {
 public:
  /// `convert(parse(text))`, or `otherwise` for an empty or wrong text. Outside [least, most] is a problem.
  template <class Quantity>
  double take(const std::string& text, const char* option, base::Result<Quantity> (*parse)(std::string_view),
              double (*convert)(Quantity), double otherwise, double least, double most) {
    if (text.empty()) return otherwise;
    const auto quantity = parse(text);
    if (!quantity) {
      for (base::Problem problem : quantity.problems()) {
        problem.field = option;
        problems_.push_back(std::move(problem));
      }
      return otherwise;
    }
    return checked(convert(quantity.value()), text, option, otherwise, least, most);
  }
  double checked(double value, const std::string& text, const char* option, double otherwise, double least,
                 double most);
  void add(base::Problem problem) { problems_.push_back(std::move(problem)); }
  const base::Problems& problems() const { return problems_; }

 private:
  base::Problems problems_;
};

/// Finds or describes the battery; problems go to the reader, and the bank then has no battery. The catalogue
/// must outlive the result.
BatteryOnHand battery_on_hand(const BatteryRequest& request, const files::Catalogue& catalogue,
                              OptionReader& reader);

}  // namespace voltwright::app

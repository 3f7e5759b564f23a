#pragma once
// A law is put together from parts: what rest does, what use does, what happens to the resistance.
#include <memory>
#include <vector>

#include "engine/ageing/law.h"
#include "engine/ageing/validity.h"

namespace voltwright::ageing {

/// One mechanism or set of mechanisms. Adds to the losses, never to `hours` and `full_cycles`.
class Part {
 public:
  explicit Part(const Validity& validity) : validity_(validity) {}
  virtual ~Part() = default;
  Part(const Part&) = delete;
  Part& operator=(const Part&) = delete;

  /// Adds what `times` repetitions of the exposure do.
  virtual void wear(Aged& aged, const Exposure& exposure, double times) const = 0;

  const Validity& validity() const { return validity_; }

 private:
  Validity validity_;
};

using Parts = std::vector<std::shared_ptr<const Part>>;

/// The sum of parts, as the publications superpose them (no interaction).
class ComposedLaw final : public Law {
 public:
  explicit ComposedLaw(Parts parts) : parts_(std::move(parts)) {}

  /// `hours` and `full_cycles` grow here, once for all parts.
  void age(Aged& aged, const Exposure& exposure, double times) const override;

  /// The worst of the parts.
  Reach reach(const Exposure& exposure, const Aged& aged) const override;

 private:
  Parts parts_;
};

}  // namespace voltwright::ageing

#include "tests/oracle/integrator.h"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <cstdlib>
#include <exception>
#include <stdexcept>
#include <string>
#include <utility>

namespace voltwright::oracle {

namespace {

constexpr double kRelative = 1e-9;
/// Far more than any stretch between two jumps has needed; a runaway ends here.
constexpr long kMostSteps = 1'000'000;
/// Events and ends of stretches closer than this are one [s].
constexpr double kSameTime_s = 1e-9;

std::span<const double> values_of(N_Vector v) {
  return {N_VGetArrayPointer(v), static_cast<std::size_t>(N_VGetLength(v))};
}
std::span<double> writable(N_Vector v) {
  return {N_VGetArrayPointer(v), static_cast<std::size_t>(N_VGetLength(v))};
}

void demand(int flag, const char* what) {
  if (flag >= 0) return;
  const std::unique_ptr<char, decltype(&std::free)> name(CVodeGetReturnFlagName(flag), &std::free);
  throw std::runtime_error(std::string("integrator: ") + what + ": " + name.get());
}

/// The exception that is thrown says what went wrong; the library need not print it as well.
void keep_quiet(int, const char*, const char*, char*, void*) {}

struct FreeVector {
  void operator()(N_Vector v) const { N_VDestroy(v); }
};
struct FreeMatrix {
  void operator()(SUNMatrix m) const { SUNMatDestroy(m); }
};
struct FreeLinearSolver {
  void operator()(SUNLinearSolver s) const { SUNLinSolFree(s); }
};
struct FreeContext {
  void operator()(SUNContext c) const { SUNContext_Free(&c); }
};
struct FreeSolver {
  void operator()(void* memory) const { CVodeFree(&memory); }
};
template <class Pointer, class Free>
using Owned = std::unique_ptr<std::remove_pointer_t<Pointer>, Free>;

Owned<SUNContext, FreeContext> make_context() {
  SUNContext context = nullptr;
  if (SUNContext_Create(nullptr, &context) != 0) throw std::runtime_error("integrator: no context");
  return Owned<SUNContext, FreeContext>(context);
}

Owned<N_Vector, FreeVector> make_vector(const std::vector<double>& values, SUNContext context) {
  Owned<N_Vector, FreeVector> v(N_VNew_Serial(static_cast<sunindextype>(values.size()), context));
  if (!v) throw std::runtime_error("integrator: no vector");
  std::copy(values.begin(), values.end(), writable(v.get()).begin());
  return v;
}

}  // namespace

// Freed from the last member to the first: the solver before what it works with, the context last.
struct Integrator::Library {
  Slope slope;
  Events events;
  std::size_t event_count = 0;
  double time_s = 0.0;
  long steps_before_restart = 0;
  std::exception_ptr thrown;
  Owned<SUNContext, FreeContext> context;
  Owned<N_Vector, FreeVector> y;
  Owned<SUNMatrix, FreeMatrix> matrix;
  Owned<SUNLinearSolver, FreeLinearSolver> linear;
  Owned<void*, FreeSolver> solver;

  /// No exception may pass through the library's C code: it is kept and thrown again behind it.
  template <class Call>
  int guarded(Call call) {
    try {
      call();
      return 0;
    } catch (...) {
      thrown = std::current_exception();
      return -1;
    }
  }
  static int slope_of(realtype t, N_Vector y, N_Vector dydt, void* self) {
    auto& library = *static_cast<Library*>(self);
    return library.guarded([&] { library.slope(t, values_of(y), writable(dydt)); });
  }
  static int events_of(realtype t, N_Vector y, realtype* g, void* self) {
    auto& library = *static_cast<Library*>(self);
    return library.guarded([&] { library.events(t, values_of(y), {g, library.event_count}); });
  }
};

Integrator::Integrator(std::vector<double> start, std::vector<double> absolute, Slope slope,
                       std::size_t event_count, Events events)
    : library_(std::make_unique<Library>()) {
  if (start.size() != absolute.size()) throw std::runtime_error("integrator: a tolerance for each unknown");
  Library& l = *library_;
  l.slope = std::move(slope);
  l.events = std::move(events);
  l.event_count = event_count;
  l.context = make_context();
  l.y = make_vector(start, l.context.get());
  const auto size = static_cast<sunindextype>(start.size());
  l.matrix.reset(SUNDenseMatrix(size, size, l.context.get()));
  l.linear.reset(SUNLinSol_Dense(l.y.get(), l.matrix.get(), l.context.get()));
  l.solver.reset(CVodeCreate(CV_BDF, l.context.get()));
  if (!l.matrix || !l.linear || !l.solver) throw std::runtime_error("integrator: no memory");
  void* solver = l.solver.get();
  demand(CVodeSetErrHandlerFn(solver, &keep_quiet, nullptr), "error handler");
  demand(CVodeInit(solver, &Library::slope_of, 0.0, l.y.get()), "start");
  // The library copies the tolerances.
  const auto tolerance = make_vector(absolute, l.context.get());
  demand(CVodeSVtolerances(solver, kRelative, tolerance.get()), "tolerances");
  demand(CVodeSetUserData(solver, library_.get()), "user data");
  demand(CVodeSetLinearSolver(solver, l.linear.get(), l.matrix.get()), "linear solver");
  demand(CVodeSetMaxNumSteps(solver, kMostSteps), "number of steps");
  demand(CVodeSetNoInactiveRootWarn(solver), "root warning");
  if (event_count > 0) {
    demand(CVodeRootInit(solver, static_cast<int>(event_count), &Library::events_of), "events");
  }
}

Integrator::~Integrator() = default;

Stop Integrator::run_to(double t_s) {
  Library& l = *library_;
  Stop stop;
  stop.t_s = l.time_s;
  if (t_s - l.time_s < kSameTime_s) return stop;
  // Beyond the end of a stretch the right-hand side may be another one.
  demand(CVodeSetStopTime(l.solver.get(), t_s), "stop time");
  const int flag = CVode(l.solver.get(), t_s, l.y.get(), &l.time_s, CV_NORMAL);
  if (l.thrown) std::rethrow_exception(std::exchange(l.thrown, nullptr));
  demand(flag, "integration");
  stop.t_s = l.time_s;
  if (flag == CV_ROOT_RETURN) {
    stop.crossed.resize(l.event_count);
    demand(CVodeGetRootInfo(l.solver.get(), stop.crossed.data()), "events met");
  }
  return stop;
}

void Integrator::restart() {
  Library& l = *library_;
  l.steps_before_restart = steps();
  demand(CVodeReInit(l.solver.get(), l.time_s, l.y.get()), "restart");
}

std::span<double> Integrator::state() { return writable(library_->y.get()); }
std::span<const double> Integrator::state() const { return values_of(library_->y.get()); }
double Integrator::time_s() const { return library_->time_s; }

long Integrator::steps() const {
  long now = 0;
  demand(CVodeGetNumSteps(library_->solver.get(), &now), "steps");
  return library_->steps_before_restart + now;
}

}  // namespace voltwright::oracle

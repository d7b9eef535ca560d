#pragma once

#include <memory>
#include <type_traits>

namespace backspring {

/// A function of one number, borrowed for the length of a call.
class FunctionRef {
  public:
    template <class F>
    requires(!std::is_same_v<std::remove_cvref_t<F>, FunctionRef>)
        FunctionRef(const F& function)  // NOLINT(google-explicit-constructor)
        : function_(std::addressof(function)),
          call_([](const void* f, double x) -> double { return (*static_cast<const F*>(f))(x); }) {}

    double operator()(double x) const { return call_(function_, x); }

  private:
    const void* function_;
    double (*call_)(const void*, double);
};

}  // namespace backspring

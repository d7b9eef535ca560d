#pragma once

#include <memory>
#include <type_traits>

namespace backspring {

/// A number taken of something, by a function borrowed for the length of a call.
template <class Of>
class BorrowedFunction {
  public:
    template <class F>
    requires(!std::is_same_v<std::remove_cvref_t<F>, BorrowedFunction>)
        BorrowedFunction(const F& function)  // NOLINT(google-explicit-constructor)
        : function_(std::addressof(function)),
          call_([](const void* f, Of x) -> double { return (*static_cast<const F*>(f))(x); }) {}

    double operator()(Of x) const { return call_(function_, x); }

  private:
    const void* function_;
    double (*call_)(const void*, Of);
};

using FunctionRef = BorrowedFunction<double>;

}  // namespace backspring

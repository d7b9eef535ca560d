#include "chebyshev.hpp"

#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <vector>

namespace backspring {
namespace {

constexpr std::size_t kMostParts = 32;

// sin^2(pi k/64): the same to the last bit whatever library is at hand.
constexpr std::array<double, kMostParts / 2 + 1> kShares{0.0,
                                                         0.002407636663901556878,
                                                         0.009607359798384775437,
                                                         0.02152983213389556753,
                                                         0.03806023374435662194,
                                                         0.05903936782582248514,
                                                         0.08426519384872738146,
                                                         0.1134947733186315196,
                                                         0.1464466094067262378,
                                                         0.1828033579181772509,
                                                         0.2222148834901988876,
                                                         0.2643016315870011757,
                                                         0.3086582838174551141,
                                                         0.3548576613727688162,
                                                         0.4024548389919358661,
                                                         0.450991429835219699,
                                                         0.5};

/// A number for every place along a way and every part of it.
class PartWeights {
  public:
    explicit PartWeights(std::size_t parts) : places_(parts + 1), weights_(parts * (parts + 1)) {
        for (std::size_t i = 0; i < parts; ++i) add_part(i);
    }

    /// Of a place's value in each part.
    [[nodiscard]] const double* of(std::size_t place) const {
        return weights_.data() + place * (places_ - 1);
    }

  private:
    /// Gauss's rule, exact for polynomials through all places.
    void add_part(std::size_t i) {
        using Rule = boost::math::quadrature::gauss<double, 20>;
        const double from = share(i), to = share(i + 1);
        const double middle = 0.5 * (from + to), half = 0.5 * (to - from);
        std::vector<double> sums(places_);
        for (std::size_t k = 0; k < Rule::abscissa().size(); ++k) {
            const double away = half * Rule::abscissa()[k], weight = half * Rule::weights()[k];
            add_place(sums, middle + away, weight);
            add_place(sums, middle - away, weight);
        }
        for (std::size_t k = 0; k < places_; ++k) weights_[k * (places_ - 1) + i] = sums[k];
    }

    /// Each value's share in the polynomial at a place.
    void add_place(std::vector<double>& sums, double place, double weight) const {
        std::vector<double> shares(places_);
        double all = 0.0;
        for (std::size_t k = 0; k < places_; ++k) {
            shares[k] = chebyshev_weight(places_ - 1, k) / (place - share(k));
            all += shares[k];
        }
        for (std::size_t k = 0; k < places_; ++k) sums[k] += weight * (shares[k] / all);
    }

    [[nodiscard]] double share(std::size_t k) const { return chebyshev_share(places_ - 1, k); }

    std::size_t places_;
    std::vector<double> weights_;
};

template <std::size_t parts>
const PartWeights& part_weights() {
    static const PartWeights weights(parts);
    return weights;
}

const PartWeights& part_weights(std::size_t parts) {
    switch (parts) {
        case 1:
            return part_weights<1>();
        case 4:
            return part_weights<4>();
        case 8:
            return part_weights<8>();
        case 16:
            return part_weights<16>();
        default:
            return part_weights<kMostParts>();
    }
}

}  // namespace

double detail::chebyshev_share(std::size_t parts, std::size_t k) {
    const std::size_t at = kMostParts / parts * k;
    return at <= kMostParts / 2 ? kShares[at] : 1.0 - kShares[kMostParts - at];
}

AtPlaces detail::integrals_between(std::span<const double> values) {
    const std::size_t parts = values.size() - 1;
    const PartWeights& weights = part_weights(parts);
    AtPlaces sums{};
    for (std::size_t k = 0; k <= parts; ++k) {
        const double* weight = weights.of(k);
        const double value = values[k];
        for (std::size_t i = 0; i < parts; ++i) sums[i] += weight[i] * value;
    }
    return sums;
}

}  // namespace backspring

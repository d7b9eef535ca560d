#pragma once

#include <utility>
#include <vector>

#include "backspring/size/size_dimension.hpp"

/// A measure that sizing may change, within its usual bounds.
inline backspring::SizeDimension measure(const char* key) {
    backspring::SizeDimension dimension;
    dimension.key = key;
    return dimension;
}

/// The same within bounds.
inline backspring::SizeDimension between(const char* key, double low_mm, double high_mm) {
    backspring::SizeDimension dimension = measure(key);
    dimension.low_mm = low_mm;
    dimension.high_mm = high_mm;
    return dimension;
}

/// The same in stock sizes.
inline backspring::SizeDimension in_stock(const char* key, std::vector<double> sizes_mm) {
    backspring::SizeDimension dimension = measure(key);
    dimension.stock_mm = std::move(sizes_mm);
    return dimension;
}

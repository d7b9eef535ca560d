#pragma once

#include "backspring/design/check.hpp"
#include "backspring/design/look.hpp"
#include "backspring/steel/hardness.hpp"

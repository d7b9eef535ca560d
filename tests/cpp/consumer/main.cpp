#include <backspring/backspring.hpp>
#include <cstdlib>

// ASTM E140: 45 HRC is 446 HV.
int main() { return backspring::vickers_hv(45.0) == 446.0 ? EXIT_SUCCESS : EXIT_FAILURE; }

#include "backspring/core/error.hpp"

#include <utility>

namespace backspring {
namespace {

std::string joined(const std::vector<Fault>& faults) {
    std::string text;
    for (const Fault& fault : faults) {
        if (!text.empty()) text += '\n';
        text += fault.key + ": " + message(fault);
    }
    return text;
}

}  // namespace

InvalidInput::InvalidInput(std::vector<Fault> faults)
    : Error(joined(faults)), faults_(std::move(faults)) {}

Explained::Explained(Notice notice) : Error(in_short(notice)), notice_(std::move(notice)) {}

}  // namespace backspring

#pragma once

#include "solution.hpp"

namespace rakewright {

/// How the rails arrive at a post; none unless those of two sections do.
std::optional<Arrivals> arrivals_at(const Job& job, const Solution& solution, std::size_t post);

}  // namespace rakewright

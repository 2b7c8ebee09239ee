// SPDX-License-Identifier: GPL-2.0-or-later
// The facts of all sheets in a file of the cache. It is large, and a build after a change of few sheets wants
// little of it: each piece is tested when it is read, and the rest is left alone.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "compiler/check/told_facts.h"

namespace sheafc {

// Its identity, by which it is known again. None if it cannot be kept, and then nothing is.
std::optional<std::uint64_t> keep_facts(const std::string& file, const GatheredFacts& all);

// None if it is another, or not there.
std::shared_ptr<const FactStore> kept_facts(const std::string& file, std::uint64_t identity);

}  // namespace sheafc

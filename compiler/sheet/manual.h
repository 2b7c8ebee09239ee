// SPDX-License-Identifier: GPL-2.0-or-later
// The tables of keys in the authoring manual, made of the declarations that the reader goes by.
#pragma once

#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheafc {

// The manual with every block between "<!-- keys: NAME -->" and "<!-- end -->" filled anew. NAME is a form, a
// kind of entry, `common`, or a record (fits, source, checked). Fails on a name that is none of these, and on
// a block without an end.
sheaf::Result<std::string> with_key_tables(std::string_view manual);

}  // namespace sheafc

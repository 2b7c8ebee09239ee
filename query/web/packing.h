// SPDX-License-Identifier: GPL-2.0-or-later
// Fewer bytes for the same page: gzip (RFC 1952), which halves the wait on a slow network. Nothing secret is
// ever sent, so nothing is given away by the length.
#pragma once

#include <string_view>

#include "query/web/response.h"

namespace sheaf {

// Whether a header Accept-Encoding (RFC 9110, 12.5.3), in small letters, names gzip and does not refuse it by
// a weight of 0.
bool accepts_gzip(std::string_view header);

// The response with its body packed, if it gains by it; else as it was. The same body is always packed alike.
Response packed(Response response);

}  // namespace sheaf

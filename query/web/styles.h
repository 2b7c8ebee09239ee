// SPDX-License-Identifier: GPL-2.0-or-later
// The styles, inside the page: to fetch them would cost a slow network one more round trip before anything is
// painted. The policy lets in these texts, by their digests, and no other.
#pragma once

#include <string>
#include <string_view>

namespace sheaf {

// "<style>…</style>": what a printed card looks like, and what every page looks like.
std::string card_style_html();
std::string page_style_html();

// "'sha256-…' 'sha256-…'": both, as a content security policy names them.
const std::string& allowed_styles();

}  // namespace sheaf

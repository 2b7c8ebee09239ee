// SPDX-License-Identifier: GPL-2.0-or-later
// Which address is answered by what, and for whom: the program's page as one function from request to
// response.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "query/web/request.h"
#include "query/web/response.h"

namespace sheaf {

struct SiteSettings {
  std::vector<std::string> libraries;  // paths
  std::vector<std::string> hosts;      // names by which it may be asked for, besides addresses and localhost
  std::function<std::string()> today;  // asked for anew each time: a server outlives the day
  std::function<void(const std::string&)> complain;  // from any thread
};

// One worker's site, with libraries of its own. The settings outlive it.
std::function<Response(const HttpRequest&)> new_site(const SiteSettings& settings);

// Names that a page elsewhere may have pointed at this address are refused (DNS rebinding); an address in
// numbers cannot be pointed.
bool is_our_host(std::string_view host, const std::vector<std::string>& hosts);

}  // namespace sheaf

// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/site.h"

#include <algorithm>
#include <memory>

#include "query/answer/answer_json.h"
#include "query/web/assets.h"
#include "query/web/listening.h"
#include "query/web/own_crib.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

Response plain(int status, std::string text) {
  return {status, "text/plain; charset=utf-8", std::move(text)};
}

// Alive, and what it answers from.
Response health(const Opened& opened) {
  JsonWriter json;
  json.begin_object();
  json.key("schema").number(json_schema);
  json.member("health", "answering");
  json.member("library", opened.name());
  json.member("digest", opened.digest());
  json.member("data-date", opened.data_date());
  json.end_object();
  return {200, "application/json", json.text() + "\n"};
}

// The worker's first line names the digest, so that a new library makes a new worker, with nothing kept of
// the old.
Response worker_script(const Asset& asset, const Opened& opened) {
  return {200, asset.type, "const digest = '" + opened.digest() + "';\n" + std::string(asset.content)};
}

std::optional<Response> asset_at(std::string_view path, const Opened& opened) {
  const auto assets = all_assets();
  const auto found = std::ranges::find(assets, path, &Asset::path);
  if (found == assets.end()) return std::nullopt;
  if (path == "/worker.js") return worker_script(*found, opened);
  return Response{200, found->type, std::string(found->content)};
}

struct Route {
  std::string_view path;  // with a '/' at its end: what follows it is handed over
  Response (*answer)(const Asking& asking, const std::string& rest);
};

constexpr Route routes[] = {
    {"/", [](const Asking& asking, const std::string&) { return home_page(asking); }},
    {"/find", [](const Asking& asking, const std::string&) { return find_page(asking); }},
    {"/entry",
     [](const Asking& asking, const std::string&) { return entry_page(asking, asking.given("address")); }},
    {"/entry/", [](const Asking& asking, const std::string& rest) { return entry_page(asking, rest); }},
    {"/card", [](const Asking& asking, const std::string&) { return card_page(asking, {}); }},
    {"/card/", [](const Asking& asking, const std::string& rest) { return card_page(asking, rest); }},
    {"/match", [](const Asking& asking, const std::string&) { return match_page(asking); }},
    {"/convert", [](const Asking& asking, const std::string&) { return convert_page(asking); }},
    {"/kit", [](const Asking& asking, const std::string&) { return kit_page(asking); }},
    {"/reckon", [](const Asking& asking, const std::string&) { return reckon_page(asking); }},
    {"/wrench", [](const Asking& asking, const std::string&) { return wrench_page(asking); }},
    {"/about", [](const Asking& asking, const std::string&) { return about_page(asking); }},
    {"/drawing/", [](const Asking& asking, const std::string& rest) { return drawing(asking, rest); }},
    {"/api/", [](const Asking& asking, const std::string& rest) { return api(asking, rest); }}};

// A wrench that cannot be read is never passed over for another one.
Response routed(Asking asking) {
  const std::string& path = asking.request.path;
  auto own = own_crib(asking.request, asking.opened.crib());
  if (own)
    asking.own = std::move(own).value();
  else if (path != "/wrench" && !path.starts_with("/api/"))  // these say it in their own way
    return trouble_page(400, own.failure().message + ".", asking);
  for (const auto& route : routes) {
    if (route.path == path) return route.answer(asking, {});
    if (route.path.size() > 1 && route.path.ends_with('/') && path.starts_with(route.path))
      return route.answer(asking, path.substr(route.path.size()));
  }
  return trouble_page(404, "There is no page at this address.", asking);
}

class Site {
 public:
  explicit Site(const SiteSettings& settings)
      : settings_(settings), opened_(settings.libraries, settings.complain) {}

  Response answer(const HttpRequest& request) {
    if (!is_our_host(request.host, settings_.hosts))
      return plain(421, "This server does not go by that name; --host NAME lets it.\n");
    if (!opened_.refresh()) return plain(503, "No library can be opened.\n");
    if (request.path == "/health") return health(opened_);
    if (auto asset = asset_at(request.path, opened_)) return *asset;
    return routed({request, opened_, settings_.today()});
  }

 private:
  const SiteSettings& settings_;
  Opened opened_;
};

}  // namespace

bool is_our_host(std::string_view host, const std::vector<std::string>& hosts) {
  if (host == "localhost" || std::ranges::find(hosts, host) != hosts.end()) return true;
  if (host.starts_with('[') && host.ends_with(']')) host = host.substr(1, host.size() - 2);
  return is_address(std::string(host));
}

std::function<Response(const HttpRequest&)> new_site(const SiteSettings& settings) {
  const auto site = std::make_shared<Site>(settings);
  return [site](const HttpRequest& request) { return site->answer(request); };
}

}  // namespace sheaf

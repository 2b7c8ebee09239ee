// SPDX-License-Identifier: GPL-2.0-or-later
// The page as a function, over the demonstration library: no sockets.
#include "query/web/site.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>

using namespace sheaf;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> complaints;

SiteSettings settings_with(const std::string& library) {
  return {{library},
          {"bench.local"},
          [] { return std::string("2026-11-25"); },
          [](const std::string& line) { complaints.push_back(line); }};
}

Response ask(const std::function<Response(const HttpRequest&)>& site, const std::string& target,
             const std::string& host = "localhost") {
  const auto request = read_request("GET " + target + " HTTP/1.1\r\nHost: " + host + "\r\n\r\n");
  REQUIRE(request);
  return site(*request);
}

bool has(const Response& response, std::string_view part) {
  return response.body.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("only our own names and addresses in numbers are answered to") {
  for (const char* host : {"localhost", "127.0.0.1", "10.1.2.3", "[::1]", "bench.local"})
    CHECK(is_our_host(host, {"bench.local"}));
  for (const char* host :
       {"elsewhere.example", "bench.local.example", "127.0.0.1.example", "", "[localhost]x"})
    CHECK_FALSE(is_our_host(host, {"bench.local"}));
  const auto settings = settings_with(DEMO_LIBRARY);
  const auto site = new_site(settings);
  CHECK(ask(site, "/find?q=top+plug", "elsewhere.example").status == 421);
  CHECK(ask(site, "/health", "bench.local:8427").status == 200);
}

TEST_CASE("each page answers, and says at its foot from which data") {
  const auto settings = settings_with(DEMO_LIBRARY);
  const auto site = new_site(settings);
  for (const char* target :
       {"/", "/find?q=top+plug+muleback+2013", "/find?q=", "/entry/sorvane-41-rod/top-plug",
        "/entry?address=sorvane-41-rod", "/card/sorvane-41-rod?machine=muleback&year=2013", "/card?q=fork",
        "/match", "/match?q=41x54x11", "/convert", "/convert?q=35+N%C2%B7m", "/wrench",
        "/wrench?q=35+N%C2%B7m", "/kit", "/kit?q=fork,+front+brake&machine=muleback&year=2013", "/reckon",
        "/reckon?topic=torque", "/reckon?topic=torque&thread=M8&class=8.8&state=dry", "/about"}) {
    const Response response = ask(site, target);
    CHECK_MESSAGE(response.status == 200, target);
    CHECK_MESSAGE(has(response, "data of 20"), target);
    CHECK_MESSAGE(has(response, "<main"), target);
  }
  for (const char* target :
       {"/nowhere", "/entry/none/such", "/entry/none", "/card?q=no+such+thing+qqq", "/drawing/none.svg",
        "/drawing/../x", "/api/none", "/entry/", "/kit?q=no+such+thing+qqq", "/reckon?topic=none",
        "/drawing/reckon.svg", "/../etc/passwd"})
    CHECK_MESSAGE(ask(site, target).status == 404, target);
}

TEST_CASE("what was asked comes back as text") {
  const auto settings = settings_with(DEMO_LIBRARY);
  const auto site = new_site(settings);
  for (const char* path :
       {"/find", "/match", "/convert", "/wrench", "/card", "/entry/x", "/kit", "/reckon", "/api/find"}) {
    const Response response =
        ask(site,
            std::string(path) + "?q=%3Cscript%3Ealert(1)%3C/script%3E%22%27&machine=%3Cimg%3E&unit=%3Cb%3E");
    CHECK_MESSAGE((response.type == "application/json" || !has(response, "<script>alert")), path);
    CHECK_MESSAGE((response.type == "application/json" || (!has(response, "<img>") && !has(response, "<b>"))),
                  path);
  }
}

TEST_CASE("a year that no sheet covers shows no figure") {
  const auto settings = settings_with(DEMO_LIBRARY);
  const Response response = ask(new_site(settings), "/find?q=top+plug+muleback+2009");
  CHECK(has(response, "No figure for the Haldrek Muleback 380 of 2009."));
  CHECK_FALSE(has(response, "class=\"figure"));
}

TEST_CASE("a wrench in hand takes the place of the shop's") {
  const auto settings = settings_with(DEMO_LIBRARY);
  const auto site = new_site(settings);
  CHECK(has(ask(site, "/wrench?q=35%C2%B13+N%C2%B7m&range=20..100+N%C2%B7m&step=1&accuracy=4"),
            "wrench in hand"));
  CHECK(ask(site, "/wrench?q=35+N%C2%B7m&range=20..100&step=1").status == 400);
  const std::string two =
      "?range=5..25+N%C2%B7m&step=0.5&accuracy=4&wrench=small&range=20..100+N%C2%B7m&step=1&accuracy=3&wrench=large+%3Cb%3E";
  for (const char* page : {"/entry/sorvane-41-rod/top-plug", "/card/sorvane-41-rod", "/find"}) {
    const Response response = ask(site, page + two + "&q=top+plug+muleback+2013&machine=muleback&year=2013");
    CHECK_MESSAGE(has(response, "on the large &lt;b&gt;"), page);
    CHECK_MESSAGE(!has(response, "three-eighths wrench"), page);
  }
  for (const char* page :
       {"/entry/sorvane-41-rod/top-plug", "/kit", "/find", "/api/find", "/drawing/wrench.svg"})
    CHECK_MESSAGE(ask(site, std::string(page) + "?q=fork&range=20..100&step=1").status >= 400, page);
  CHECK(ask(site, "/wrench?q=35+N%C2%B7m&range=20..100+N%C2%B7m&step=0").status == 400);
  // The shop's adapter, or one in hand, on a wrench in hand: 35 · 300/(300 + 45), by the lever's own rule.
  for (const char* adapter : {"adapter=open-17", "offset=45+mm"})
    CHECK(has(
        ask(site, std::string(
                      "/wrench?q=35%C2%B13+N%C2%B7m&range=20..100+N%C2%B7m&step=0.5&length=300+mm&angle=0&") +
                      adapter),
        "30.5\u00a0N·m"));
  CHECK(ask(site, "/wrench?q=35+N%C2%B7m&offset=0+mm").status == 400);
  CHECK(ask(site, "/wrench?q=35+N%C2%B7m&range=20..100+N%C2%B7m&step=1&length=3+kg").status == 400);
}

TEST_CASE("a library is taken when it is replaced, and a bad one is passed over") {
  complaints.clear();
  const std::string path =
      (fs::temp_directory_path() / ("site_test_" + std::to_string(::getpid()) + ".sheaf")).string();
  const auto replace_by = [&](const std::string& content_of) {
    fs::copy_file(content_of, path + ".new", fs::copy_options::overwrite_existing);
    fs::rename(path + ".new", path);
  };
  const auto settings = settings_with(path);
  const auto site = new_site(settings);
  CHECK(ask(site, "/health").status == 503);
  replace_by(DEMO_LIBRARY);
  CHECK(ask(site, "/health").status == 200);
  replace_by("README.md");
  CHECK(has(ask(site, "/find?q=top+plug+muleback+2013"), "25–31"));
  CHECK(has(ask(site, "/health"), "answering"));
  CHECK(complaints.size() == 1);
  fs::remove(path);
  CHECK(ask(site, "/health").status == 200);
  replace_by(DEMO_LIBRARY);
  CHECK(has(ask(site, "/find?q=top+plug+muleback+2013"), "25–31"));
  CHECK(complaints.size() == 1);
  fs::remove(path);
}

// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf serve: the library as a page for a phone or a tablet.
#include <sys/resource.h>
#include <sys/signalfd.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <mutex>
#include <thread>

#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/cli/today.h"
#include "query/web/listening.h"
#include "query/web/server.h"
#include "query/web/site.h"

namespace sheaf {
namespace {

constexpr int usual_port = 8427;
constexpr unsigned fewest_workers = 2, most_workers = 8;
constexpr std::size_t descriptors_kept = 100;  // for libraries, one set for each worker

// A descriptor that can be read when the program is asked to end. To be made before any thread is.
int end_signals() {
  sigset_t set;
  sigemptyset(&set);
  sigaddset(&set, SIGINT);
  sigaddset(&set, SIGTERM);
  pthread_sigmask(SIG_BLOCK, &set, nullptr);
  return ::signalfd(-1, &set, SFD_CLOEXEC);
}

// No more places than the system has descriptors for.
std::size_t connections_possible(std::size_t wanted) {
  rlimit limit{};
  if (::getrlimit(RLIMIT_NOFILE, &limit) != 0 || limit.rlim_cur == RLIM_INFINITY) return wanted;
  const auto all = static_cast<std::size_t>(limit.rlim_cur);
  return std::min(wanted, all > 2 * descriptors_kept ? all - descriptors_kept : all / 2);
}

class Serve : public Command {
 public:
  void declare(Flags& flags) override {
    flags.number("--port", port_, 0, 65535, "N", "Port; 0 takes any that is free");
    flags.text("--listen", address_, "ADDRESS", "Address in numbers; 0.0.0.0 is every one of this machine's");
    flags.texts("--host", hosts_, "NAME", "Also answer to this name; again for several");
    flags.text("--certificate", certificate_, "FILE", "Speak https with this certificate, in PEM");
    flags.text("--key", key_, "FILE", "The certificate's key, in PEM");
    flags.flag("--log", log_, "Say each request on standard error");
    declare_today(flags, today_);
    declare_library(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (!words.empty()) return trouble("'" + words.front() + "' is one word too many");
    if (certificate_.empty() != key_.empty()) return trouble("--certificate and --key go together");
    if (const auto day = today_from(today_); !day) return trouble(day.failure().message);
    auto open = open_libraries(common_.libraries);
    if (!open) return trouble(open.failure().message);
    describe(*open);
    const int signals = end_signals();
    auto server = listen();
    if (!server) return trouble(server.failure().message);
    announce(**server, *open);
    (*server)->run(signals);
    ::close(signals);
    say("stopped");
    return ExitStatus::done;
  }

 private:
  static ExitStatus trouble(const std::string& message) {
    say_error(message, "see sheaf serve --help");
    return ExitStatus::trouble;
  }

  // Whatever comes from a thread goes through one lock.
  void say_line(const std::string& line) {
    const std::lock_guard lock(saying_);
    say(line);
  }

  void describe(const OpenLibraries& open) {
    for (const auto& library : open.all) site_.libraries.push_back(library.facts().path);
    for (auto& host : hosts_) {
      std::ranges::transform(host, host.begin(), [](unsigned char sign) { return std::tolower(sign); });
      site_.hosts.push_back(host);
    }
    site_.today = [this] { return *today_from(today_); };
    site_.complain = [this](const std::string& line) {
      const std::lock_guard lock(saying_);
      if (std::exchange(last_complaint_, line) != line) say(line);  // each worker finds the same fault
    };
  }

  Result<std::unique_ptr<Server>> listen() {
    ServerSettings settings;
    settings.address = address_;
    settings.port = port_;
    settings.workers = std::clamp(std::thread::hardware_concurrency(), fewest_workers, most_workers);
    settings.limits.connections = connections_possible(settings.limits.connections);
    settings.new_worker = [this] { return new_site(site_); };
    settings.goes_first = [](std::string_view path) { return path == "/health"; };
    if (log_) settings.log = [this](const std::string& line) { say_line(line); };
    if (!certificate_.empty()) {
      auto tls = open_tls(certificate_, key_);
      if (!tls) return tls.failure();
      settings.tls = std::move(tls).value();
    }
    return Server::listen(std::move(settings));
  }

  void announce(const Server& server, const OpenLibraries& open) {
    const std::string scheme = certificate_.empty() ? "http://" : "https://";
    const std::string host = address_.find(':') == std::string::npos ? address_ : "[" + address_ + "]";
    std::string names;
    for (const auto& library : open.all) names += (names.empty() ? "" : ", ") + library.facts().path;
    print(scheme + host + ":" + std::to_string(server.port()) + "/ answers from " + names + "\n");
    flush_output();
    if (is_loopback(address_)) return;
    say("warning: everyone who reaches " + address_ + " can read the library" +
        (certificate_.empty() ? ", and nothing on the way is encrypted" : ""));
  }

  Common common_;
  std::string address_ = "127.0.0.1", today_, certificate_, key_;
  std::vector<std::string> hosts_;
  int port_ = usual_port;
  bool log_ = false;
  SiteSettings site_;
  std::mutex saying_;
  std::string last_complaint_;
};

}  // namespace

std::unique_ptr<Command> make_serve() { return std::make_unique<Serve>(); }

}  // namespace sheaf

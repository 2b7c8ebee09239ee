// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/server.h"

#include <poll.h>
#include <sys/eventfd.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <map>

#include "query/web/connection.h"
#include "query/web/listening.h"
#include "query/web/workers.h"

namespace sheaf {
namespace {

using std::chrono::milliseconds;
using State = Connection::State;

constexpr int most_accepted_at_once = 256;

Response refused(const Refusal& refusal) {
  return {refusal.status, "text/plain; charset=utf-8", std::string(refusal.why) + "\n"};
}

class PollingServer : public Server {
 public:
  PollingServer(ServerSettings settings, Listening listening)
      : settings_(std::move(settings)),
        listening_(std::move(listening)),
        wake_(::eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC)) {}

  int port() const override { return listening_.port; }

  void stop() override {
    stopping_ = true;
    wake();
  }

  void run(int signals) override {
    std::signal(SIGPIPE, SIG_IGN);  // a reader that has gone away is no end of ours
    workers_ = std::make_unique<Workers>(settings_.workers, settings_.new_worker, [this] { wake(); });
    while (!stopping_) serve_once(signals, true);
    const auto end = Clock::now() + settings_.limits.finish;
    while (is_anything_under_way() && Clock::now() < end) serve_once(-1, false);
    workers_.reset();
    connections_.clear();
  }

 private:
  using Connections = std::map<std::uint64_t, std::unique_ptr<Connection>>;

  void wake() {
    const std::uint64_t one = 1;
    [[maybe_unused]] const auto written = ::write(wake_.number(), &one, sizeof one);
  }

  bool is_anything_under_way() const {
    return std::ranges::any_of(connections_, [](const auto& each) {
      return each.second->state() == State::waiting || each.second->state() == State::replying;
    });
  }

  // Waits for whatever comes first, and does all that can be done without waiting.
  void serve_once(int signals, bool accepting) {
    std::vector<pollfd> polled = {{wake_.number(), POLLIN, 0}, {signals, POLLIN, 0}, {-1, POLLIN, 0}};
    std::vector<std::uint64_t> ids;
    for (const auto& [id, connection] : connections_) {
      if (connection->state() == State::waiting) continue;  // for a worker: nothing is asked of its socket
      polled.push_back({connection->socket(), connection->wishes(), 0});
      ids.push_back(id);
    }
    // Where every place waits for a worker, whoever comes next waits in the system's own queue.
    if (accepting && (connections_.size() < settings_.limits.connections || !ids.empty()))
      polled[2].fd = listening_.socket.number();
    if (::poll(polled.data(), polled.size(), time_to_wait()) < 0) return;
    if (polled[1].revents != 0) stopping_ = true;
    if (polled[0].revents != 0) deliver();
    for (std::size_t i = 0; i < ids.size(); ++i)
      if (polled[i + 3].revents != 0) go_on(ids[i]);
    if (polled[2].revents != 0) accept_some();
    close_what_is_over();
  }

  // Until the next deadline, and never longer than a second.
  int time_to_wait() const {
    auto wait = milliseconds(1'000);
    const auto now = Clock::now();
    for (const auto& [id, connection] : connections_)
      if (connection->state() != State::waiting)
        wait = std::min(wait, std::chrono::ceil<milliseconds>(connection->deadline() - now));
    return static_cast<int>(std::max(wait, milliseconds(0)).count());
  }

  void accept_some() {
    for (int i = 0; i < most_accepted_at_once; ++i) {
      if (connections_.size() >= settings_.limits.connections && !give_one_up()) return;
      FileDescriptor socket(
          ::accept4(listening_.socket.number(), nullptr, nullptr, SOCK_NONBLOCK | SOCK_CLOEXEC));
      if (socket.number() < 0) {
        if (errno == EMFILE || errno == ENFILE) give_one_up();
        return;
      }
      const int number = socket.number();
      auto channel = settings_.tls ? settings_.tls->channel(number) : plain_channel(number);
      connections_.emplace(next_id_, std::make_unique<Connection>(std::move(socket), std::move(channel),
                                                                  peer_of(number), settings_.limits));
      go_on(next_id_++);
    }
  }

  // That which has been waited for longest and is owed nothing; else, the reply that is taken most slowly.
  bool give_one_up() {
    auto chosen = connections_.end();
    for (auto at = connections_.begin(); at != connections_.end(); ++at) {
      if (at->second->state() == State::waiting) continue;
      if (chosen == connections_.end() || at->second->may_be_given_up() > chosen->second->may_be_given_up() ||
          (at->second->may_be_given_up() == chosen->second->may_be_given_up() &&
           at->second->since() < chosen->second->since()))
        chosen = at;
    }
    if (chosen == connections_.end()) return false;
    connections_.erase(chosen);
    return true;
  }

  void go_on(std::uint64_t id) {
    const auto found = connections_.find(id);
    if (found == connections_.end()) return;
    found->second->go_on();
    take_request(id, *found->second);
  }

  void take_request(std::uint64_t id, Connection& connection) {
    while (connection.state() == State::listening) {
      if (connection.head_is_too_long())
        return refuse(connection, {431, "The head of the request is too long."}, Clock::now());
      const std::string head = connection.take_head();
      if (head.empty()) return;
      auto request = read_request(head);
      if (!request) return refuse(connection, request.refusal(), Clock::now());
      const bool first = settings_.goes_first && settings_.goes_first(request->path);
      workers_->add({id, *request, Clock::now()}, first);
    }
  }

  void refuse(Connection& connection, const Refusal& refusal, Clock::time_point since) {
    const Response response = refused(refusal);
    log(connection, "-", response, since);
    connection.reply(bytes_of(response, {.keep_alive = false}), false);
  }

  void deliver() {
    std::uint64_t count = 0;
    [[maybe_unused]] const auto read = ::read(wake_.number(), &count, sizeof count);
    for (const auto& done : workers_->take_done()) {
      const auto found = connections_.find(done.job.connection);
      if (found == connections_.end()) continue;
      const HttpRequest& request = done.job.request;
      const bool keep_alive = request.keep_alive && !stopping_;
      log(*found->second, request.target, done.response, done.job.since);
      found->second->reply(bytes_of(done.response, {request.head_only, keep_alive, request.if_none_match}),
                           keep_alive);
      take_request(found->first, *found->second);
    }
  }

  void close_what_is_over() {
    const auto now = Clock::now();
    for (auto& [id, connection] : connections_)
      if (connection->state() != State::waiting && connection->deadline() <= now) connection->close();
    std::erase_if(connections_, [](const auto& each) { return each.second->state() == State::over; });
  }

  void log(const Connection& connection, const std::string& target, const Response& response,
           Clock::time_point since) const {
    if (!settings_.log) return;
    const auto time = std::chrono::duration_cast<milliseconds>(Clock::now() - since);
    settings_.log(connection.peer() + " " + target + " " + std::to_string(response.status) + " " +
                  std::to_string(response.body.size()) + " bytes " + std::to_string(time.count()) + " ms");
  }

  ServerSettings settings_;
  Listening listening_;
  FileDescriptor wake_;
  std::atomic<bool> stopping_ = false;
  std::unique_ptr<Workers> workers_;
  Connections connections_;
  std::uint64_t next_id_ = 1;
};

}  // namespace

Result<std::unique_ptr<Server>> Server::listen(ServerSettings settings) {
  auto listening = listen_on(settings.address, settings.port);
  if (!listening) return listening.failure();
  return std::unique_ptr<Server>(
      std::make_unique<PollingServer>(std::move(settings), std::move(listening).value()));
}

}  // namespace sheaf

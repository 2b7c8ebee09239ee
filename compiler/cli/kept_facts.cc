// SPDX-License-Identifier: GPL-2.0-or-later
// Pieces, then the hash of each, then the length of the pieces and the hash of their hashes. In the pieces,
// one behind the other: how many facts, sheets and statements; the facts; the places of each sheet's facts;
// the statements by sheet; and where each sheet's places and statements begin.
#include "compiler/cli/kept_facts.h"

#include <fcntl.h>
#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <map>
#include <numeric>
#include <string_view>

#include "query/library/file_descriptor.h"
#include "query/library/hash.h"

namespace sheafc {
namespace {

using sheaf::FileDescriptor;

constexpr std::size_t piece_bytes = 4096;
using Counts = std::array<std::uint64_t, 3>;  // facts, sheets, statements
using Begins = std::array<std::uint32_t, 2>;  // of a sheet's places and statements
using Ending = std::array<std::uint64_t, 2>;  // length of the pieces, identity

template <typename Value>
std::string_view bytes_of(const Value* values, std::size_t count) {
  return {reinterpret_cast<const char*>(values), count * sizeof(Value)};
}

std::uint64_t identity_of(const std::vector<std::uint64_t>& hashes) {
  return sheaf::hash_of(bytes_of(hashes.data(), hashes.size()));
}

class PieceWriter {
 public:
  explicit PieceWriter(const std::string& file) : out_(file, std::ios::binary | std::ios::trunc) {}

  template <typename Value>
  void add(const Value* values, std::size_t count) {
    for (std::string_view bytes = bytes_of(values, count); !bytes.empty();) {
      const std::string_view some = bytes.substr(0, piece_bytes - piece_.size());
      piece_ += some;
      bytes.remove_prefix(some.size());
      if (piece_.size() == piece_bytes) end_piece();
    }
  }
  std::optional<std::uint64_t> finish() {
    if (!piece_.empty()) end_piece();
    const Ending ending{length_, identity_of(hashes_)};
    out_ << bytes_of(hashes_.data(), hashes_.size()) << bytes_of(ending.data(), ending.size());
    out_.close();
    return out_ ? std::optional(ending[1]) : std::nullopt;
  }

 private:
  void end_piece() {
    hashes_.push_back(sheaf::hash_of(piece_));
    length_ += piece_.size();
    out_ << piece_;
    piece_.clear();
  }

  std::ofstream out_;
  std::string piece_;
  std::uint64_t length_ = 0;
  std::vector<std::uint64_t> hashes_;
};

class PieceReader {
 public:
  // None if it is not the one of that identity.
  static std::optional<PieceReader> open(const std::string& path, std::uint64_t identity) {
    PieceReader reader;
    reader.file_ = FileDescriptor(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    struct stat status {};
    if (reader.file_.number() < 0 || ::fstat(reader.file_.number(), &status) != 0) return std::nullopt;
    const auto bytes = static_cast<std::uint64_t>(status.st_size);
    Ending ending{};
    if (bytes < sizeof ending || !reader.read_raw(bytes - sizeof ending, ending.data(), ending.size()))
      return std::nullopt;
    const auto [length, found] = ending;
    if (found != identity || length > bytes) return std::nullopt;
    reader.hashes_.resize((length + piece_bytes - 1) / piece_bytes);
    if (bytes != length + reader.hashes_.size() * sizeof(std::uint64_t) + sizeof ending) return std::nullopt;
    if (!reader.read_raw(length, reader.hashes_.data(), reader.hashes_.size())) return std::nullopt;
    if (identity_of(reader.hashes_) != identity) return std::nullopt;
    reader.length_ = length;
    return reader;
  }

  // Nothing if any of it is damaged or lies behind the end, nor from then on.
  template <typename Value>
  std::vector<Value> read(std::uint64_t at, std::size_t count) {
    if (at > length_ || count > (length_ - at) / sizeof(Value)) is_sound_ = false;
    if (!is_sound_) return {};
    std::vector<Value> values(count);
    char* to = reinterpret_cast<char*>(values.data());
    for (const std::uint64_t end = at + count * sizeof(Value); at < end;) {
      const std::string_view piece = this->piece(at / piece_bytes);
      if (!is_sound_) return {};
      const std::string_view some = piece.substr(at % piece_bytes, end - at);
      std::memcpy(to, some.data(), some.size());
      to += some.size();
      at += some.size();
    }
    return values;
  }
  bool is_sound() const { return is_sound_; }

 private:
  template <typename Value>
  bool read_raw(std::uint64_t at, Value* to, std::size_t count) {
    const auto bytes = sheaf::read_at(file_.number(), at, count * sizeof(Value));
    if (!bytes || bytes->size() != count * sizeof(Value)) return false;
    std::memcpy(to, bytes->data(), bytes->size());
    return true;
  }
  std::string_view piece(std::uint64_t number) {
    const auto [known, is_new] = pieces_.try_emplace(number);
    if (is_new) {
      const std::uint64_t at = number * piece_bytes;
      auto read = sheaf::read_at(file_.number(), at, std::min<std::uint64_t>(piece_bytes, length_ - at));
      if (read) known->second = std::move(read).value();
      if (sheaf::hash_of(known->second) != hashes_[number]) is_sound_ = false;
    }
    return known->second;
  }

  FileDescriptor file_;
  std::uint64_t length_ = 0;
  std::vector<std::uint64_t> hashes_;
  std::map<std::uint64_t, std::string> pieces_;  // that were read
  bool is_sound_ = true;
};

class KeptFacts : public FactStore {
 public:
  explicit KeptFacts(PieceReader reader) : reader_(std::move(reader)) {
    const auto counts = reader_.read<std::uint64_t>(0, Counts().size());
    if (counts.size() == Counts().size()) std::ranges::copy(counts, counts_.begin());
  }

  std::size_t sheets() const override { return counts_[1]; }
  std::size_t size() const override { return counts_[0]; }
  std::vector<Fact> facts(std::size_t first, std::size_t count) const override {
    if (first >= size()) return {};
    return reader_.read<Fact>(sizeof counts_ + first * sizeof(Fact), std::min(count, size() - first));
  }
  std::vector<Fact> of_sheet(std::uint32_t sheet) const override {
    std::vector<Fact> its;
    for (const std::uint32_t place : part_of<0>(sheet, places_at())) {
      for (const Fact& fact : facts(place, 1)) its.push_back(fact);
    }
    return its;
  }
  std::vector<std::uint32_t> statements_of(std::uint32_t sheet) const override {
    return part_of<1>(sheet, statements_at());
  }
  bool is_sound() const override { return reader_.is_sound(); }

 private:
  std::uint64_t places_at() const { return sizeof counts_ + counts_[0] * sizeof(Fact); }
  std::uint64_t statements_at() const { return places_at() + counts_[0] * sizeof(std::uint32_t); }
  std::uint64_t begins_at() const { return statements_at() + counts_[2] * sizeof(std::uint32_t); }

  template <std::size_t which>
  std::vector<std::uint32_t> part_of(std::uint32_t sheet, std::uint64_t all_at) const {
    const auto begins = reader_.read<Begins>(begins_at() + sheet * sizeof(Begins), 2);
    if (begins.size() != 2) return {};
    const std::uint32_t begin = begins[0][which], end = begins[1][which];
    return reader_.read<std::uint32_t>(all_at + begin * sizeof begin, end - begin);
  }

  mutable PieceReader reader_;
  Counts counts_{};
};

}  // namespace

std::optional<std::uint64_t> keep_facts(const std::string& file, const GatheredFacts& all) {
  std::vector<Begins> begins(all.statements.size() + 1);
  for (const Fact& fact : all.facts) ++begins[fact.sheet + 1][0];
  for (std::size_t i = 0; i < all.statements.size(); ++i) {
    begins[i + 1][0] += begins[i][0];
    begins[i + 1][1] = begins[i][1] + static_cast<std::uint32_t>(all.statements[i].size());
  }
  std::vector<std::uint32_t> places(all.facts.size());
  auto next = begins;
  for (std::uint32_t place = 0; place < places.size(); ++place)
    places[next[all.facts[place].sheet][0]++] = place;
  const std::string draft =
      file + ".new";  // two builds of one library at once may spoil it: see the identity
  PieceWriter writer(draft);
  const Counts counts{all.facts.size(), all.statements.size(), begins.back()[1]};
  writer.add(counts.data(), counts.size());
  writer.add(all.facts.data(), all.facts.size());
  writer.add(places.data(), places.size());
  for (const auto& statements : all.statements) writer.add(statements.data(), statements.size());
  writer.add(begins.data(), begins.size());
  const auto identity = writer.finish();
  if (identity && std::rename(draft.c_str(), file.c_str()) == 0) return identity;
  std::remove(draft.c_str());
  return std::nullopt;
}

std::shared_ptr<const FactStore> kept_facts(const std::string& file, std::uint64_t identity) {
  auto reader = PieceReader::open(file, identity);
  return reader ? std::make_shared<KeptFacts>(std::move(*reader)) : nullptr;
}

}  // namespace sheafc

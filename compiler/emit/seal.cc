// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/seal.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>

#include "compiler/emit/row_pages.h"
#include "query/library/file_descriptor.h"

namespace sheafc {
namespace {

using namespace sheaf;

// An SQLite file whose write version is beyond what SQLite knows is read-only to every SQLite.
constexpr std::uint64_t write_version_at = 18;
constexpr char read_only_version = 3, written_version = 1;
// A number, high byte first, by which SQLite tells when tables were changed.
constexpr std::uint64_t schema_number_at = 40;
// Xapian numbers each database at random; the same content must give the same bytes.
constexpr std::uint64_t identity_at = 16;
constexpr std::size_t identity_bytes = 16;
static_assert(hashed_piece % page_bytes == 0);
constexpr std::size_t blocks_at_once = 128;       // of the index, while it is copied
constexpr std::uint64_t begun_at_once = 4 << 20;  // bytes that the disk is told to begin with

Result<std::uint64_t> size_of(const FileDescriptor& file) {
  struct stat status {};
  if (::fstat(file.number(), &status) != 0) return system_failure();
  return static_cast<std::uint64_t>(status.st_size);
}

Result<Trailer> trailer_of(const FileDescriptor& library) {
  const auto bytes = size_of(library);
  if (!bytes) return bytes.failure();
  if (*bytes < trailer_bytes) return Failure{"no library"};
  const auto beginning = read_at(library.number(), 0, 100),
             end = read_at(library.number(), *bytes - trailer_bytes, trailer_bytes);
  if (!beginning || !end) return system_failure();
  return read_trailer(*beginning, *end, *bytes);
}

// Takes what comes behind what is in the file; the disk begins with it long before all is there and waited
// for.
class GrowingFile {
 public:
  GrowingFile(const FileDescriptor& file, std::uint64_t end) : file_(file), end_(end), begun_(end) {}

  void append(std::string_view bytes) {
    if (!fault_) fault_ = write_at(file_.number(), end_, bytes);
    end_ += bytes.size();
    if (end_ - begun_ < begun_at_once) return;
    ::sync_file_range(file_.number(), static_cast<off_t>(begun_), static_cast<off_t>(end_ - begun_),
                      SYNC_FILE_RANGE_WRITE);
    begun_ = end_;
  }
  std::uint64_t end() const { return end_; }
  const std::optional<Failure>& fault() const { return fault_; }  // the first

 private:
  const FileDescriptor& file_;
  std::uint64_t end_, begun_;
  std::optional<Failure> fault_;
};

// A piece of a file that begins there; empty if none of the pages lies in it.
std::string with_pages(std::string_view piece, std::uint64_t at,
                       const std::map<std::uint32_t, std::string>& pages) {
  std::string all;
  const auto first = static_cast<std::uint32_t>(at / page_bytes + 1);
  const auto end = static_cast<std::uint32_t>(first + piece.size() / page_bytes);
  for (auto page = pages.lower_bound(first); page != pages.end() && page->first < end; ++page) {
    if (all.empty()) all = piece;
    all.replace((page->first - first) * page_bytes, page_bytes, page->second);
  }
  return all;
}

// Formed as RFC 9562 has it for identities made from something: version 8, variant 2.
std::string identity_from(const Digest& digest) {
  std::string identity(reinterpret_cast<const char*>(digest.data()), identity_bytes);
  identity[6] = static_cast<char>((identity[6] & 0x0F) | 0x80);
  identity[8] = static_cast<char>((identity[8] & 0x3F) | 0x80);
  return identity;
}

std::optional<Failure> sync(const std::string& path, int flags) {
  const FileDescriptor file(::open(path.c_str(), flags | O_CLOEXEC));
  if (file.number() < 0 || ::fsync(file.number()) != 0) return system_failure();
  return std::nullopt;
}

}  // namespace

Result<RowsSealed> seal_rows(const std::string& path) {
  const FileDescriptor file(::open(path.c_str(), O_RDWR | O_CLOEXEC));
  if (file.number() < 0) return system_failure();
  if (auto fault = write_at(file.number(), write_version_at, std::string_view(&read_only_version, 1)))
    return *fault;
  const auto bytes = size_of(file);
  if (!bytes) return bytes.failure();
  DigestOfBytes digest;
  HashOfPieces hash;
  const auto fault = read_range(file.number(), 0, *bytes, hashed_piece, [&](std::string_view piece) {
    digest.add(piece);
    hash.add(piece);
  });
  if (fault) return *fault;
  return RowsSealed{*bytes, identity_from(digest.so_far()), hash.finish(), 0, std::move(digest)};
}

Result<Trailer> seal_library(const std::string& path, const FileDescriptor& index, RowsSealed rows) {
  const FileDescriptor file(::open(path.c_str(), O_RDWR | O_CLOEXEC));
  if (file.number() < 0) return system_failure();
  const auto index_bytes = size_of(index);
  if (!index_bytes) return index_bytes.failure();
  GrowingFile growing(file, rows.rows_bytes);
  const auto append = [&](std::string_view bytes) {
    growing.append(bytes);
    rows.digest.add(bytes);
  };
  append(std::string((index_block - growing.end() % index_block) % index_block, '\0'));
  const std::uint64_t offset = growing.end();
  std::string checks;
  const auto fault =
      read_range(index.number(), 0, *index_bytes, blocks_at_once * index_block, [&](std::string_view read) {
        if (growing.end() == offset) {
          std::string first(read.substr(0, index_block));
          first.replace(identity_at, identity_bytes, rows.identity);
          checks += block_check(first);
          append(first);
          read.remove_prefix(first.size());
        }
        for (std::size_t block = 0; block < read.size(); block += index_block) {
          checks += block_check(read.substr(block, index_block));
        }
        append(read);
      });
  if (fault) return *fault;
  append(checks);
  const Trailer trailer{rows.rows_bytes, offset, *index_bytes, growing.end() + trailer_bytes,
                        rows.digest.finish()};
  growing.append(to_bytes(trailer));
  if (growing.fault()) return *growing.fault();
  return trailer;
}

Result<RowsSealed> copy_rows(const std::string& library, const std::map<std::uint32_t, std::string>& pages,
                             const std::string& path) {
  const FileDescriptor from(::open(library.c_str(), O_RDONLY | O_CLOEXEC));
  const FileDescriptor to(::open(path.c_str(), O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
  if (from.number() < 0 || to.number() < 0) return system_failure();
  const auto trailer = trailer_of(from);
  if (!trailer) return trailer.failure();
  DigestOfBytes digest;
  HashOfPieces before, now;
  GrowingFile growing(to, 0);
  const auto fault =
      read_range(from.number(), 0, trailer->rows_bytes, hashed_piece, [&](std::string_view read) {
        const std::uint64_t as_it_was = hash_of(read);
        before.add_hash(as_it_was);
        const std::string replaced = with_pages(read, growing.end(), pages);
        const std::string_view piece = replaced.empty() ? read : replaced;
        now.add_hash(replaced.empty() ? as_it_was : hash_of(piece));
        digest.add(piece);
        growing.append(piece);
      });
  if (fault || growing.fault()) return fault ? *fault : *growing.fault();
  return RowsSealed{growing.end(), identity_from(digest.so_far()), now.finish(), before.finish(),
                    std::move(digest)};
}

std::optional<Failure> unseal_rows(const std::string& library, std::uint64_t hash, const std::string& path) {
  const FileDescriptor from(::open(library.c_str(), O_RDONLY | O_CLOEXEC));
  const FileDescriptor to(::open(path.c_str(), O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
  if (from.number() < 0 || to.number() < 0) return system_failure();
  const auto trailer = trailer_of(from);
  if (!trailer) return trailer.failure();
  HashOfPieces found;
  std::uint64_t at = 0;
  std::optional<Failure> unwritten;
  const auto fault =
      read_range(from.number(), 0, trailer->rows_bytes, hashed_piece, [&](std::string_view piece) {
        found.add(piece);
        if (!unwritten) unwritten = write_at(to.number(), at, piece);
        at += piece.size();
      });
  if (fault || unwritten) return fault ? fault : unwritten;
  if (found.finish() != hash) return Failure{"the rows are not what they were"};
  // Copying them counted the schema's number up by one.
  auto beginning = read_at(from.number(), schema_number_at, 4);
  if (!beginning) return beginning.failure();
  std::string number = std::move(beginning).value();
  for (auto byte = number.rbegin(); byte != number.rend(); ++byte) {
    if ((*byte)-- != 0) break;
  }
  if (auto failed = write_at(to.number(), schema_number_at, number)) return failed;
  return write_at(to.number(), write_version_at, std::string_view(&written_version, 1));
}

std::optional<Failure> put_in_place(const std::string& path, const std::string& target) {
  if (auto fault = sync(path, O_RDONLY)) return fault;
  if (std::rename(path.c_str(), target.c_str()) != 0) return system_failure();
  const std::filesystem::path folder = std::filesystem::path(target).parent_path();
  return sync(folder.empty() ? "." : folder.string(), O_RDONLY | O_DIRECTORY);
}

}  // namespace sheafc

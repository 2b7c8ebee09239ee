// SPDX-License-Identifier: GPL-2.0-or-later
// Every record becomes one string of bytes in which no two records are alike: texts after their length,
// lists after their count, numbers in eight bytes. Part of the format: a change here is a new format.
#include "query/library/record_checksum.h"

#include <array>

#include "query/library/hash.h"

namespace sheaf {
namespace {

class Bytes {
 public:
  Bytes() { bytes_.reserve(2048); }  // more than most records need
  Bytes& operator<<(std::int64_t number) {
    std::array<char, 8> eight{};
    for (std::size_t i = 0; i < eight.size(); ++i) {
      eight[i] = static_cast<char>(static_cast<std::uint64_t>(number) >> 8 * i & 0xFF);
    }
    bytes_.append(eight.data(), eight.size());
    return *this;
  }
  Bytes& operator<<(const std::string& text) {
    *this << static_cast<std::int64_t>(text.size());
    bytes_ += text;
    return *this;
  }
  template <typename Record>
  Bytes& operator<<(const std::vector<Record>& list) {
    *this << static_cast<std::int64_t>(list.size());
    for (const Record& record : list) *this << record;
    return *this;
  }
  Bytes& operator<<(const Place& place) { return *this << place.file << place.line; }
  Bytes& operator<<(const FieldRecord& field) { return *this << field.key << field.text << field.place; }
  Bytes& operator<<(const CautionRecord& caution) { return *this << caution.name << caution.text; }
  Bytes& operator<<(const FitRecord& fit) {
    return *this << fit.make << fit.model << fit.year_from << fit.year_to << fit.market << fit.frame_from
                 << fit.frame_to << fit.note;
  }
  Bytes& operator<<(const SourceRecord& source) {
    return *this << source.title << source.publisher << source.edition << source.page << source.note
                 << source.year;
  }
  Bytes& operator<<(const CheckRecord& checked) {
    return *this << checked.on << checked.by << checked.against << checked.second;
  }
  Bytes& operator<<(const WithdrawalRecord& withdrawn) {
    return *this << withdrawn.on << withdrawn.reason << withdrawn.instead;
  }

  std::int64_t checksum() const { return static_cast<std::int64_t>(hash_of(bytes_)); }

 private:
  std::string bytes_;
};

}  // namespace

std::int64_t checksum_of(EntryId id, const EntryRecord& entry) {
  Bytes bytes;
  bytes << id << entry.address << entry.variant << entry.kind << entry.name << entry.fields << entry.fits
        << entry.cautions << entry.source << entry.checked << entry.status << entry.withdrawn
        << entry.formerly << entry.critical << entry.place;
  return bytes.checksum();
}

std::int64_t checksum_of(EntryId first_entry, std::int64_t entries, const SheetRecord& sheet) {
  Bytes bytes;
  bytes << first_entry << entries << sheet.name << sheet.form << sheet.title << sheet.assembly << sheet.maker
        << sheet.row_kind << sheet.fields << sheet.fits << sheet.source << sheet.checked << sheet.cautions
        << sheet.invented << sheet.place;
  return bytes.checksum();
}

std::int64_t checksum_of(std::int64_t id, const WordRecord& word) {
  Bytes bytes;
  bytes << id << word.group << word.word << word.language << word.main << word.never;
  return bytes.checksum();
}

std::int64_t checksum_of(std::int64_t id, const Machine& machine) {
  Bytes bytes;
  bytes << id << machine.make << machine.model << machine.year_from << machine.year_to;
  return bytes.checksum();
}

std::int64_t checksum_of(const LibraryFacts& facts) {
  Bytes bytes;
  bytes << facts.name << facts.data_date << facts.sheets << facts.entries << facts.words
        << facts.sqlite_version << facts.xapian_version;
  return bytes.checksum();
}

}  // namespace sheaf

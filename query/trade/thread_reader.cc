// SPDX-License-Identifier: GPL-2.0-or-later
// Each `read_` function takes one construct from the reader, or nothing. A hyphen means three things
// in a thread ("1-1/2", "1-8", "M8-6g"), so each looks ahead before it takes one.
#include "query/trade/thread_reader.h"

#include <initializer_list>

namespace sheaf {
namespace {

constexpr int finest_inch_size = 24;  // no 1 in or larger thread of ASME B1.1 is this fine, each # size is

bool take_any(Reader& reader, std::initializer_list<std::string_view> words) {
  for (std::string_view word : words) {
    if (reader.take_word(word)) return true;
  }
  return false;
}

// "-", " - ", spaces: what may stand before a suffix. Taken only if the suffix then reads.
void skip_joint(Reader& reader) {
  reader.skip_spaces();
  if (reader.take("-")) reader.skip_spaces();
}

void read_hand(Reader& reader, Thread& thread) {
  const std::size_t start = reader.mark();
  skip_joint(reader);
  if (take_any(reader, {"lh", "l.h.", "l.h", "left hand", "left-hand", "lefthand"})) {
    thread.left_hand = true;
  } else if (!take_any(reader, {"rh", "r.h.", "right hand", "right-hand"})) {
    reader.back_to(start);
  }
}

// "-6g", "-5g6g", "-6H" (ISO 965-1: the case tells screw from nut), "-2A" (ASME B1.1).
void read_tolerance(Reader& reader, Thread& thread) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  const bool unified = thread.system == Thread::System::unified;
  if (!reader.take("-") && !(unified && reader.mark() > start)) return reader.back_to(start);
  reader.skip_spaces();
  const std::size_t begin = reader.mark();
  const char last_grade = unified ? '3' : '9';
  const char last_position = unified ? 'b' : 'h';
  while (reader.peek() >= '1' && reader.peek() <= last_grade && reader.peek(1) >= 'a' &&
         reader.peek(1) <= last_position && reader.mark() - begin < 4) {
    reader.back_to(reader.mark() + 2);
  }
  const char after = reader.peek();
  const bool ends = !reader.at_digit() && !(after >= 'a' && after <= 'z');
  if (reader.mark() == begin || !ends) return reader.back_to(start);
  thread.tolerance = reader.source_since(begin);
  if (unified && thread.tolerance.back() >= 'a') thread.tolerance.back() -= 'a' - 'A';
}

// The mark of a pitch: "x 1.25", "xP1.25", "-1.25"; nothing is taken unless a digit follows.
bool take_pitch_mark(Reader& reader, Input input) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  const bool marked = reader.take("x") || (input == Input::prompt && reader.take("-"));
  reader.skip_spaces();
  if (marked && reader.take("p")) reader.skip_spaces();
  if (marked && reader.at_digit()) return true;
  reader.back_to(start);
  return false;
}

// A number after x that is more than half the diameter is no pitch but the screw's length: "M8x30".
Result<bool> read_pitch_or_length(Reader& reader, Thread& thread, double diameter, Input input) {
  const std::size_t start = reader.mark();
  if (!take_pitch_mark(reader, input)) return false;
  const std::size_t at_number = reader.mark();
  auto number = reader.take_decimal(input);
  if (!number) return number.failure();
  const bool tolerance_follows = number->places == 0 && reader.peek() >= 'a' && reader.peek() <= 'h';
  if (tolerance_follows) {  // the 6 of "M8-6g"
    reader.back_to(start);
    return false;
  }
  if (number->digits == 0) {
    reader.back_to(at_number);
    return reader.failure("a pitch is more than 0");
  }
  const bool is_length = thread.pitch || approximate(*number) > diameter / 2;
  if (is_length && input == Input::sheet) {
    reader.back_to(at_number);
    return reader.failure("a pitch of " + to_text(*number) + " mm is impossible on M" + thread.diameter +
                          "; a screw's length is not part of its thread");
  }
  (is_length ? thread.length : thread.pitch) = *number;
  return true;
}

std::string read_series(Reader& reader) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  for (std::string_view series : {"UNC", "UNF", "UNEF", "UNS", "UNJC", "UNJF", "UNR", "UN"}) {
    if (reader.take_word(lower_case(series))) return std::string(series);
  }
  reader.back_to(start);
  return "";
}

// Pipe threads by the name that stands after the size: "1/4 BSPP", "1/8-27 NPT".
std::string read_pipe_series(Reader& reader) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  if (take_any(reader, {"bspp"})) return "G";
  if (take_any(reader, {"bspt"})) return "R";
  if (take_any(reader, {"bsp"})) return "BSP";
  if (take_any(reader, {"nptf"})) return "NPTF";
  if (take_any(reader, {"npt"})) return "NPT";
  reader.back_to(start);
  return "";
}

// "-18", " - 18", at a prompt "x18", and the halves of "-4 1/2" and "-4.5".
Result<bool> read_per_inch(Reader& reader, Thread& thread, Input input) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  const bool marked = reader.take("-") || (input == Input::prompt && reader.take("x"));
  reader.skip_spaces();
  if (!marked || !reader.at_digit()) {
    reader.back_to(start);
    return false;
  }
  auto number = reader.take_mixed(input);
  if (!number) return number.failure();
  const double per_inch = approximate(*number);
  if (per_inch < 1 || per_inch > 100) {
    reader.back_to(start);
    return reader.failure("an inch thread has 1 to 100 threads per inch");
  }
  thread.per_inch = *number;
  const std::size_t after = reader.mark();
  reader.skip_spaces();
  if (!reader.take_word("tpi")) reader.back_to(after);
  return true;
}

// A decimal inch is written as the standard's fraction or number: 0.250 -> 1/4, 0.190 -> #10.
std::string inch_diameter(const Number& number) {
  if (number.denominator > 1) return plain(number, Fractions::kept);
  const double inches = approximate(number);
  const double sixty_fourths = inches * 64;
  const int whole = static_cast<int>(sixty_fourths + 0.5);
  if (whole > 0 && sixty_fourths - whole < 0.04 && whole - sixty_fourths < 0.04 && number.places > 2) {
    return plain(Number{whole, 0, 64}, Fractions::kept);
  }
  const int size = static_cast<int>((inches - 0.060) / 0.013 + 0.5);  // ASME B1.1: 0.060 + 0.013 n
  if (number.places > 2 && size >= 0 && size <= 12 && inches - (0.060 + 0.013 * size) < 0.0005 &&
      (0.060 + 0.013 * size) - inches < 0.0005) {
    return "#" + std::to_string(size);
  }
  return plain(number);
}

// ASME B1.1 knows sizes #0 to #12 and fractions up to 6 in.
bool is_standard_number(const Number& size) {
  return size.denominator == 1 && size.places == 0 && size.digits >= 0 && size.digits <= 12;
}
bool is_inch_size(const Number& size) { return approximate(size) > 0 && approximate(size) <= 6; }

bool take_number_sign(Reader& reader) {
  for (std::string_view sign : {"#", "no.", "no", "nr.", "nr", "number"}) {
    const std::size_t start = reader.mark();
    if (reader.take(sign)) {
      reader.skip_spaces();
      if (reader.at_digit()) return true;
      reader.back_to(start);
    }
  }
  return false;
}

bool take_inch_mark(Reader& reader) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  if (reader.take("\"") || take_any(reader, {"in", "in.", "inch"})) return true;
  reader.back_to(start);
  return false;
}

// An integer before "-" is the diameter and what follows the threads per inch, unless a fraction
// comes of it: "1-1/2-6" against "1-8". Reading the mixed number first settles both.
Result<Thread> read_inch(Reader& reader, std::string series, Input input) {
  Thread thread;
  thread.system = Thread::System::unified;
  const std::size_t start = reader.mark();
  const bool numbered = take_number_sign(reader);
  auto size = numbered ? reader.take_decimal(input) : reader.take_mixed(input);
  if (!size) return size.failure();
  const bool inch_marked = !numbered && take_inch_mark(reader);
  auto per_inch = read_per_inch(reader, thread, input);
  if (!per_inch) return per_inch.failure();
  thread.series = series.empty() ? read_series(reader) : series;
  if (std::string pipe = thread.series.empty() ? read_pipe_series(reader) : ""; !pipe.empty()) {
    thread.system = Thread::System::pipe;
    thread.series = pipe;
  }
  const bool known = thread.per_inch || !thread.series.empty();
  const bool number_size =
      numbered || (!inch_marked && thread.system == Thread::System::unified && is_number_size(*size, thread));
  if (!known || !(number_size ? is_standard_number(*size) : is_inch_size(*size))) {
    reader.back_to(start);
    return reader.failure("not a thread: M8, M8x1.25, 5/16-18 UNC, #10-32 and G1/4 are");
  }
  thread.diameter = number_size ? "#" + plain(*size) : inch_diameter(*size);
  if (thread.system == Thread::System::unified) read_tolerance(reader, thread);
  read_hand(reader, thread);
  return thread;
}

// "G1/4", "G 1/2-14", "R1/4".
Result<Thread> read_pipe(Reader& reader, std::string series, Input input) {
  Thread thread;
  thread.system = Thread::System::pipe;
  thread.series = std::move(series);
  const bool spaced = reader.at(" ");
  reader.skip_spaces();
  auto size = reader.take_mixed(input);
  if (!size) return size.failure();
  const bool only_a_letter = spaced && size->denominator == 1;  // "g 5" may be five grams
  if (only_a_letter || !is_inch_size(*size)) return reader.failure("a pipe thread is G1/8 to G6");
  thread.diameter = inch_diameter(*size);
  take_inch_mark(reader);
  auto per_inch = read_per_inch(reader, thread, input);
  if (!per_inch) return per_inch.failure();
  read_hand(reader, thread);
  return thread;
}

bool digit_after_spaces(const Reader& reader, std::size_t ahead) {
  while (reader.peek(ahead) == ' ') ++ahead;
  return reader.at_digit(ahead);
}

}  // namespace

bool is_number_size(const Number& size, const Thread& thread) {
  if (size.denominator != 1 || size.places != 0 || size.digits > 12) return false;
  if (thread.per_inch) return approximate(*thread.per_inch) >= finest_inch_size;
  return size.digits == 0 || size.digits >= 5;
}

Result<Thread> read_metric(Reader& reader, Input input) {
  Thread thread;
  reader.skip_spaces();
  auto diameter = reader.take_decimal(input);
  if (!diameter) return diameter.failure();
  const double d = approximate(*diameter);
  if (d < 0.2 || d > 1000) return reader.failure("a metric thread is M0.25 to M1000");
  thread.diameter = plain(*diameter);
  for (int dimension = 0; dimension < 2 && !thread.length; ++dimension) {
    auto more = read_pitch_or_length(reader, thread, d, input);
    if (!more) return more.failure();
    if (!*more) break;
  }
  read_tolerance(reader, thread);
  read_hand(reader, thread);
  return thread;
}

Result<Thread> read_thread(Reader& reader, Input input) {
  if (reader.at("m") && digit_after_spaces(reader, 1)) {
    reader.take("m");
    return read_metric(reader, input);
  }
  if ((reader.at("g") || reader.at("r")) && digit_after_spaces(reader, 1)) {
    std::string series = reader.take("g") ? "G" : (reader.take("r"), "R");
    return read_pipe(reader, series, input);
  }
  const std::string series = read_series(reader);
  if (!series.empty()) reader.skip_spaces();
  return read_inch(reader, series, input);
}

}  // namespace sheaf

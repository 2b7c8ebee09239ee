// SPDX-License-Identifier: GPL-2.0-or-later
// Reading and writing of numbers. A number is scanned where it stands in a longer text, so that a
// figure, a range and a bare number share one grammar.
#include "query/quantity/number.h"

#include <array>
#include <charconv>
#include <optional>

#include "query/quantity/exact.h"
#include "query/quantity/scan.h"

namespace sheaf {
namespace {

constexpr int max_fraction = 1024;

struct VulgarFraction {
  std::string_view character;
  std::uint16_t numerator, denominator;
};
constexpr std::array<VulgarFraction, 11> vulgar_fractions{{{"½", 1, 2},
                                                           {"¼", 1, 4},
                                                           {"¾", 3, 4},
                                                           {"⅓", 1, 3},
                                                           {"⅔", 2, 3},
                                                           {"⅕", 1, 5},
                                                           {"⅙", 1, 6},
                                                           {"⅛", 1, 8},
                                                           {"⅜", 3, 8},
                                                           {"⅝", 5, 8},
                                                           {"⅞", 7, 8}}};

// Gathers digits; says no when they are too many.
class DigitRun {
 public:
  bool add(char digit) {
    if (value_ >= max_digits / 10) return false;
    value_ = value_ * 10 + (digit - '0');
    return true;
  }
  std::int64_t value() const { return value_; }

 private:
  std::int64_t value_ = 0;
};

class NumberScan {
 public:
  NumberScan(Scanner& scanner, Input input) : scanner_(scanner), input_(input), start_(scanner.at) {}

  Result<Number> read() {
    const bool negative = scanner_.take("-") || scanner_.take("\u2212");
    auto number = read_unsigned();
    if (!number) return number;
    if (auto fault = refused_tail()) return *fault;
    Number result = *number;
    if (negative) result.digits = -result.digits;
    return result;
  }

 private:
  Result<Number> read_unsigned() {
    if (const auto vulgar = take_vulgar()) return Number{vulgar->numerator, 0, vulgar->denominator};
    if (scanner_.peek() == '.' && is_digit(scanner_.peek(1))) {
      return fail("a bare point is easily lost: write 0." + digits_from(scanner_.at + 1));
    }
    if (scanner_.peek() == '+') return fail("a plus sign needs no writing here");
    if (!is_digit(scanner_.peek())) return fail("a number is missing");

    const std::size_t first = scanner_.at;
    DigitRun run;
    if (!take_digits(run)) return too_many();
    const std::size_t length = scanner_.at - first;
    if (input_ == Input::sheet && length > 1 && scanner_.text[first] == '0') {
      return fail("a leading zero is not read: write " + std::to_string(run.value()));
    }
    if (length <= 3 && scanner_.text[first] != '0' && !take_thousands(run)) return too_many();
    if (scanner_.peek() == '.' && scanner_.peek(1) != '.') return read_decimals(run, '.');
    if (scanner_.peek() == ',' && is_digit(scanner_.peek(1))) return read_decimal_comma(run, first);
    if (is_fraction_bar()) return read_denominator(0, run.value());
    if (auto mixed = read_mixed(run.value())) return *mixed;
    return Number{run.value(), 0, 1};
  }

  bool take_digits(DigitRun& run) {
    while (is_digit(scanner_.peek())) {
      if (!run.add(scanner_.peek())) return false;
      ++scanner_.at;
    }
    return true;
  }

  Result<Number> read_decimals(DigitRun& run, char point) {
    ++scanner_.at;
    const std::size_t first = scanner_.at;
    if (!take_digits(run)) return too_many();
    const std::size_t places = scanner_.at - first;
    if (places == 0) return fail("digits are missing after the point");
    if (places > max_places) return too_many();
    if (scanner_.peek() == point && is_digit(scanner_.peek(1))) return fail("a number has one point at most");
    return Number{run.value(), static_cast<std::uint8_t>(places), 1};
  }

  // "9,5" is 9.5 to many people; "1,200" is 1200 to some and 1.2 to others, so it is nobody's number.
  Result<Number> read_decimal_comma(DigitRun& run, std::size_t first) {
    const std::string whole(scanner_.text.substr(first, scanner_.at - first));
    const std::string decimals = digits_from(scanner_.at + 1);
    const bool like_thousands = decimals.size() == 3 && whole.size() <= 3 && whole[0] != '0';
    if (input_ == Input::prompt && !like_thousands) return read_decimals(run, ',');
    scanner_.at += 1 + decimals.size();
    if (like_thousands) {
      return fail("a comma may be a decimal or a thousands mark: write " + whole + decimals + " or " + whole +
                  "." + decimals);
    }
    return fail("a comma is no decimal point here: write " + whole + "." + decimals);
  }

  bool is_fraction_bar() const {
    const std::string_view rest = scanner_.rest();
    return (rest.starts_with('/') && is_digit(scanner_.peek(1))) ||
           (rest.starts_with("\u2044") && is_digit(scanner_.peek(3)));
  }

  Result<Number> read_denominator(std::int64_t whole, std::int64_t numerator) {
    if (!scanner_.take("/")) scanner_.take("\u2044");
    DigitRun run;
    if (!take_digits(run)) return too_many();
    const std::int64_t denominator = run.value();
    if (denominator == 0) return fail("a fraction over zero is no number");
    if (denominator > max_fraction) return fail("a fraction is read down to 1/1024: write it as a decimal");
    if (whole > max_digits / max_fraction || numerator > max_digits / max_fraction) return too_many();
    return Number{whole * denominator + numerator, 0, static_cast<std::uint16_t>(denominator)};
  }

  // "1-1/2", "1 1/2", "1½": a whole number with a proper fraction after it.
  std::optional<Result<Number>> read_mixed(std::int64_t whole) {
    if (const auto vulgar = take_vulgar()) {
      if (whole > max_digits / max_fraction) return too_many();
      return Number{whole * vulgar->denominator + vulgar->numerator, 0, vulgar->denominator};
    }
    Scanner ahead = scanner_;
    if (!ahead.take("-")) {
      ahead.skip_spaces();
      if (ahead.at == scanner_.at) return std::nullopt;
    }
    NumberScan part(ahead, input_);
    DigitRun numerator;
    const std::size_t first = ahead.at;
    if (!part.take_digits(numerator) || ahead.at == first || !part.is_fraction_bar()) return std::nullopt;
    auto fraction = part.read_denominator(whole, numerator.value());
    scanner_.at = ahead.at;
    if (fraction && numerator.value() >= fraction->denominator) {
      return fail("the fraction after a whole number is less than one");
    }
    return fraction;
  }

  // "1 200": groups of three after a space.
  bool take_thousands(DigitRun& run) {
    while (const std::size_t space = space_length(scanner_.rest())) {
      std::size_t digits = 0;
      while (is_digit(scanner_.peek(space + digits))) ++digits;
      if (digits != 3 || scanner_.peek(space + 3) == '/') return true;
      scanner_.at += space;
      if (!take_digits(run)) return false;
    }
    return true;
  }

  std::optional<VulgarFraction> take_vulgar() {
    if (static_cast<unsigned char>(scanner_.peek()) < 0x80) return std::nullopt;
    for (const VulgarFraction& fraction : vulgar_fractions) {
      if (scanner_.take(fraction.character)) return fraction;
    }
    return std::nullopt;
  }

  std::optional<Failure> refused_tail() {
    const char e = scanner_.peek();
    const char sign = scanner_.peek(1);
    if ((e == 'e' || e == 'E') &&
        (is_digit(sign) || ((sign == '-' || sign == '+') && is_digit(scanner_.peek(2))))) {
      scanner_.at += 2;
      return fail("an exponent is not read: write the number out");
    }
    return std::nullopt;
  }

  std::string digits_from(std::size_t from) const {
    std::size_t end = from;
    while (end < scanner_.text.size() && is_digit(scanner_.text[end])) ++end;
    return std::string(scanner_.text.substr(from, end - from));
  }

  // Marks the whole number, as far as it looks like one.
  Failure fail(std::string message) const {
    Scanner end = scanner_;
    while (is_digit(end.peek()) ||
           (std::string_view(".,/").find(end.peek()) != std::string_view::npos && is_digit(end.peek(1)))) {
      ++end.at;
    }
    return end.failure_since(start_, std::move(message));
  }
  Failure too_many() const { return fail("the number has too many digits: at most 18, 15 of them decimals"); }

  Scanner& scanner_;
  Input input_;
  std::size_t start_;
};

}  // namespace

Result<Number> scan_number(Scanner& scanner, Input input) { return NumberScan(scanner, input).read(); }

Result<Number> parse_number(std::string_view text, Input input) {
  if (text.size() > longest_text) return Failure{"the text is too long for a number"};
  Scanner scanner{text};
  scanner.skip_spaces();
  auto number = scan_number(scanner, input);
  if (!number) return number;
  scanner.skip_spaces();
  if (!scanner.done()) {
    return scanner.failure_at(scanner.at, text.size() - scanner.at, "a number ends before this");
  }
  return number;
}

int compare(const Number& left, const Number& right) {
  const auto order = compare(exact(left), exact(right));
  return order < 0 ? -1 : order > 0 ? 1 : 0;
}

double approximate(const Number& number) {
  const std::int64_t divisor = power_of_ten(number.places) * number.denominator;
  constexpr std::int64_t exact_in_double = std::int64_t{1} << 53;
  if (number.digits > -exact_in_double && number.digits < exact_in_double) {
    return static_cast<double>(number.digits) / static_cast<double>(divisor);
  }
  return static_cast<double>(static_cast<long double>(number.digits) / static_cast<long double>(divisor));
}

}  // namespace sheaf

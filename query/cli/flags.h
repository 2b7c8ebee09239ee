// SPDX-License-Identifier: GPL-2.0-or-later
// The flags of a command, declared one by one. CLI11 reads them, behind this: each file that includes it
// takes seconds more to compile, and brings a dozen objects that are made whenever the program starts.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace sheaf {

// `name` is "--year", `type` names its value in the help: "YEAR". What is declared must outlive the reading.
class Flags {
 public:
  using Set = std::function<void(const std::string&)>;
  using Words = std::vector<std::string>;

  explicit Flags(CLI::App& app) : app_(app) {}

  void flag(const char* name, bool& into, const char* help);
  void action(const char* name, const std::function<void()>& act, const char* help);
  void text(const char* name, std::string& into, const char* type, const char* help);
  void texts(const char* name, Words& into, const char* type, const char* help);  // again for several
  void one_of(const char* name, std::string& into, const Words& allowed, const char* type, const char* help);
  void one_of(const char* name, const Set& set, const Words& allowed, const char* type, const char* help);
  void number(const char* name, int& into, const char* type, const char* help);
  void number(const char* name, int& into, int least, int most, const char* type, const char* help);
  void number(const char* name, std::size_t& into, int least, int most, const char* type, const char* help);

 private:
  CLI::App& app_;
};

}  // namespace sheaf

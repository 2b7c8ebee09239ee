// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/flags.h"

#include <CLI/CLI.hpp>

namespace sheaf {
namespace {

CLI::Validator range(int least, int most) { return CLI::Range(least, most).description(""); }

}  // namespace

void Flags::flag(const char* name, bool& into, const char* help) { app_.add_flag(name, into, help); }

void Flags::action(const char* name, const std::function<void()>& act, const char* help) {
  app_.add_flag_callback(name, act, help);
}

void Flags::text(const char* name, std::string& into, const char* type, const char* help) {
  app_.add_option(name, into, help)->type_name(type);
}

void Flags::texts(const char* name, Words& into, const char* type, const char* help) {
  app_.add_option(name, into, help)
      ->type_name(type)
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void Flags::one_of(const char* name, std::string& into, const Words& allowed, const char* type,
                   const char* help) {
  app_.add_option(name, into, help)->type_name(type)->check(CLI::IsMember(allowed));
}

void Flags::one_of(const char* name, const Set& set, const Words& allowed, const char* type,
                   const char* help) {
  app_.add_option_function<std::string>(name, set, help)->type_name(type)->check(CLI::IsMember(allowed));
}

void Flags::number(const char* name, int& into, const char* type, const char* help) {
  app_.add_option(name, into, help)->type_name(type);
}

void Flags::number(const char* name, int& into, int least, int most, const char* type, const char* help) {
  app_.add_option(name, into, help)->type_name(type)->check(range(least, most));
}

void Flags::number(const char* name, std::size_t& into, int least, int most, const char* type,
                   const char* help) {
  app_.add_option(name, into, help)->type_name(type)->check(range(least, most));
}

}  // namespace sheaf

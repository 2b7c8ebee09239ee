// SPDX-License-Identifier: GPL-2.0-or-later
// Small pieces of HTML. Whatever is given as text is escaped here; what is given as markup was made here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

std::string escaped(std::string_view text);

// <p class="act">dry · each</p>; nothing for an empty text. An empty class leaves the attribute out.
std::string element(std::string_view name, std::string_view style_class, std::string_view text);
std::string enclosed(std::string_view name, std::string_view style_class, const std::string& markup);
std::string link(std::string_view target, std::string_view text, std::string_view style_class = {});

// "/entry/sorvane-41-rod/top-plug", "/find?q=top%20plug&year=2013": empty values are left out.
struct Given {
  std::string_view name;
  std::string value;
};
std::string address_of(std::string_view path, const std::vector<Given>& given = {});

// A list of labels and what stands behind them: <dl class="facts">.
class Facts {
 public:
  void add(std::string_view label, std::string_view text, std::string_view style_class = {});
  void add_markup(std::string_view label, const std::string& markup, std::string_view style_class = {});
  std::string finish() const;  // nothing, if nothing was added

 private:
  std::string rows_, last_label_;
};

}  // namespace sheaf

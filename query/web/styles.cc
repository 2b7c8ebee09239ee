// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/styles.h"

#include <algorithm>

#include "query/answer/html_style.h"
#include "query/library/hash.h"
#include "query/web/assets.h"

namespace sheaf {
namespace {

std::string_view page_style() {
  const auto assets = all_assets();
  return std::ranges::find(assets, std::string_view("/page.css"), &Asset::path)->content;
}

std::string base64_of(const Digest& digest) {
  constexpr std::string_view signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  unsigned bits = 0;
  int held = 0;
  for (const unsigned byte : digest) {
    bits = bits << 8 | byte;
    for (held += 8; held >= 6; held -= 6) text += signs[bits >> (held - 6) & 63];
  }
  if (held > 0) text += signs[bits << (6 - held) & 63];
  while (text.size() % 4 != 0) text += '=';
  return text;
}

std::string source_of(std::string_view style) {
  DigestOfBytes digest;
  digest.add(style);
  return "'sha256-" + base64_of(digest.finish()) + "'";
}

std::string style_html(std::string_view style) { return "<style>" + std::string(style) + "</style>\n"; }

}  // namespace

std::string card_style_html() { return style_html(document_style); }
std::string page_style_html() { return style_html(page_style()); }

const std::string& allowed_styles() {
  static const std::string both = source_of(document_style) + " " + source_of(page_style());
  return both;
}

}  // namespace sheaf

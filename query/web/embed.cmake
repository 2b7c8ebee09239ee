# SPDX-License-Identifier: GPL-2.0-or-later
# cmake -DOUTPUT=assets.cc -DFILES="a.css;b.js" -P embed.cmake
# Writes the files into C++ as arrays of bytes, and a table of them.
set(types_css "text/css; charset=utf-8")
set(types_js "text/javascript; charset=utf-8")
set(types_svg "image/svg+xml")
set(arrays "")
set(rows "")
set(count 0)
foreach(file IN LISTS FILES)
  get_filename_component(name ${file} NAME)
  get_filename_component(extension ${file} LAST_EXT)
  string(SUBSTRING ${extension} 1 -1 extension)
  file(READ ${file} bytes HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${bytes}")
  string(APPEND arrays "constexpr char file_${count}[] = {${bytes}};\n")
  string(APPEND rows "    {\"/${name}\", \"${types_${extension}}\", {file_${count}, sizeof file_${count}}},\n")
  math(EXPR count "${count} + 1")
endforeach()
file(WRITE ${OUTPUT} "// Made by query/web/embed.cmake.
#include \"query/web/assets.h\"

namespace sheaf {
namespace {

${arrays}
constexpr Asset assets[] = {
${rows}};

}  // namespace

std::span<const Asset> all_assets() { return assets; }

}  // namespace sheaf
")

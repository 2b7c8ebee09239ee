// SPDX-License-Identifier: GPL-2.0-or-later
// A run touches new memory all the time, 170 MB for a thousand sheets; in pages of 4 kB the system's share of that is
// larger than that of parsing. jemalloc asks for large pages and keeps the threads apart.

// Read by jemalloc when the program starts; a user's MALLOC_CONF comes after it.
extern "C" __attribute__((visibility("default"))) const char* malloc_conf;
const char* malloc_conf = "thp:always,metadata_thp:auto";

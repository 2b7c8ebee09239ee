// SPDX-License-Identifier: GPL-2.0-or-later
// A run touches new memory all the time. In pages of 4 kB a build took half as long again as in large ones
// (tests/bench/README.md); jemalloc asks for those, and keeps the threads apart.

// Read by jemalloc when the program starts; a user's MALLOC_CONF comes after it.
extern "C" __attribute__((visibility("default"))) const char* malloc_conf;
const char* malloc_conf = "thp:always,metadata_thp:auto";

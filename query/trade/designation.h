// SPDX-License-Identifier: GPL-2.0-or-later
// How the trade writes threads, drives, sizes and bearings, in every spelling, and the one canonical
// spelling of each. The index and the question go through the same functions, so that sizes match by
// number and never by letters.
#pragma once

#include "query/trade/bearing.h"
#include "query/trade/drive.h"
#include "query/trade/size.h"
#include "query/trade/thread.h"

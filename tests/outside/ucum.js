// SPDX-License-Identifier: GPL-2.0-or-later
// Converts with @lhncbc/ucum-lhc: reads [[value, from, to], ...] as JSON, writes the results in order; null where it
// will not convert.
"use strict";
const { UcumLhcUtils } = require("@lhncbc/ucum-lhc");
const ucum = UcumLhcUtils.getInstance();
const requests = JSON.parse(require("fs").readFileSync(0, "utf8"));
const results = requests.map(([value, from, to]) => {
  const result = ucum.convertUnitTo(from, value, to);
  return result.status === "succeeded" ? result.toVal : null;
});
process.stdout.write(JSON.stringify(results));

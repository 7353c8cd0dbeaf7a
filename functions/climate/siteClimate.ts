import { defineFunction, table, unitsParameter } from "../define";
import { Problem } from "../problem";
import { orEmpty } from "./shared/orEmpty";
import { site } from "./shared/place";

export const siteClimate = defineFunction({
  name: "SITECLIMATE",
  summary:
    "The year at any place and elevation, estimated from all stations around it: twelve rows, each with its band.",
  needs: "network",
  parameters: { ...site, units: unitsParameter },
  result: table(
    { name: "highLeast", unit: "celsius", about: "Daily high, low end: nine months in ten lie in the band" },
    { name: "highLikely", unit: "celsius", about: "Daily high, likely" },
    { name: "highMost", unit: "celsius", about: "Daily high, high end" },
    { name: "lowLeast", unit: "celsius", about: "Daily low, low end" },
    { name: "lowLikely", unit: "celsius", about: "Daily low, likely" },
    { name: "lowMost", unit: "celsius", about: "Daily low, high end" },
    { name: "rain", unit: "millimetre", about: "Rain and melted snow in the month" },
    { name: "humidity", unit: "percent", about: "Relative humidity at the mid-point of high and low" },
  ),
  sources: ["siteEstimate", "kriging", "climatReports", "noaaNormals", "jmaNormals", "cwaNormals", "wmo8"],
  cautions: ["proxy", "stationNetwork", "estimatedSite"],
  examples: [
    {
      given: [46.5, 9.8, 1800],
      gives: [[-2.2, -0.8, 0.6, -9.4, -6.6, -3.7, 59, 70.8]],
      within: 1,
      rows: 12,
    },
  ],
  calculate({ latitude, longitude, elevation }, network) {
    const year = network.yearAt(latitude, longitude, elevation);
    if (year instanceof Problem) return year;
    return year.high.map((high, month) => {
      const low = year.low[month] ?? high;
      return [
        high.least,
        high.likely,
        high.most,
        low.least,
        low.likely,
        low.most,
        orEmpty(year.rain[month]),
        orEmpty(year.humidity[month]),
      ];
    });
  },
});

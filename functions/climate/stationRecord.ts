import { defineFunction, table, unitsParameter } from "../define";
import { relativeHumidity } from "../air/shared/vapour";
import { Problem } from "../problem";
import { orEmpty } from "./shared/orEmpty";
import { stationParameter } from "./shared/stationParameter";

export const stationRecord = defineFunction({
  name: "STATIONRECORD",
  summary: "The average year of a station of the built-in network, as its service published it: twelve rows.",
  needs: "network",
  parameters: { station: stationParameter, units: unitsParameter },
  result: table(
    { name: "high", unit: "celsius", about: "Mean of the daily highs" },
    { name: "low", unit: "celsius", about: "Mean of the daily lows" },
    { name: "rain", unit: "millimetre", about: "Rain and melted snow in the month" },
    { name: "humidity", unit: "percent", about: "Relative humidity at the mid-point of high and low" },
    { name: "rainDays", unit: "day", about: "Days with at least 1 mm" },
  ),
  sources: ["climatReports", "noaaNormals", "jmaNormals", "cwaNormals", "wmo8"],
  cautions: ["proxy", "stationNetwork"],
  examples: [{ given: [16008], gives: [[1.1, -6.9, 24, 70.8, 5]], within: 0.1, rows: 12 }],
  calculate({ station }, network) {
    const found = network.find(station);
    if (found instanceof Problem) return found;
    const { high, low, rain, vapour, rainDays } = found;
    return high.map((warmest, month) => {
      const coldest = low[month] as number;
      return [
        warmest,
        coldest,
        orEmpty(rain[month]),
        orEmpty(relativeHumidity(vapour[month] as number, (warmest + coldest) / 2)),
        orEmpty(rainDays[month]),
      ];
    });
  },
});

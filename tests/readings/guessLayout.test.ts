import fc from "fast-check";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { dateOrders, separators } from "../../taskpane/text/form";
import { clock, readAll, written } from "./files";

const lines = (...rows: string[]): string => rows.join("\r\n");

describe("files as loggers write them (invented figures)", () => {
  test("comma, decimal point, ISO, degree sign in the heading", () => {
    const text = lines("Time,Temperature (°C),Humidity", "2026-11-02 08:00:00,21.5,60", "2026-11-02 08:05:00,21.6,61");
    expect(guessLayout(text)).toEqual({
      layout: {
        separator: ",",
        decimal: ".",
        headings: 1,
        dateOrder: "ymd",
        unit: "celsius",
        timeColumn: 0,
        clockColumn: undefined,
        temperatureColumn: 1,
        others: [],
      },
      ask: [],
      titles: ["Time", "Temperature (°C)", "Humidity"],
    });
  });

  test("semicolon, decimal comma, day first, no heading", () => {
    const { layout, ask, titles } = guessLayout(lines("29.10.2026 08:00;21,5", "29.10.2026 08:05;21,6"));
    expect(layout).toMatchObject({ separator: ";", decimal: ",", headings: 0, dateOrder: "dmy", temperatureColumn: 1 });
    expect(ask).toEqual([]);
    expect(titles).toEqual(["column 1", "column 2"]);
  });

  test("tab, month first, twelve-hour clock, °F", () => {
    const text = lines("Date Time\tTemp F (F)", "10/29/2026 8:00:00 PM\t70.7", "10/29/2026 8:05:00 PM\t70.9");
    expect(guessLayout(text).layout).toMatchObject({
      separator: "\t",
      dateOrder: "mdy",
      unit: "fahrenheit",
      headings: 1,
    });
  });

  test("what a logger says of itself stands above, rows are numbered, date and clock stand apart", () => {
    const text = lines(
      "Serial;A 17",
      "Started;by hand",
      "",
      "No.;Date;Clock;Humidity;Temperature",
      "1;29.10.2026;08:00;61,5;21,5",
      "2;29.10.2026;08:05;61,5;21,6",
      "3;29.10.2026;08:10;61,4;21,7",
    );
    const guess = guessLayout(text);
    expect(guess.layout).toMatchObject({
      headings: 4,
      timeColumn: 1,
      clockColumn: 2,
      temperatureColumn: 4,
      decimal: ",",
    });
    expect(guess.titles).toEqual(["No.", "Date", "Clock", "Humidity", "Temperature"]);
  });

  test("no unit named: figures over 45 are °F", () => {
    expect(guessLayout(lines("2026-11-02,71", "2026-11-03,72")).layout.unit).toBe("fahrenheit");
    expect(guessLayout(lines("2026-11-02,21", "2026-11-03,22")).layout.unit).toBe("celsius");
  });

  test("a heading that a spreadsheet made of dates: bare serial numbers are not asked about", () => {
    const { layout, ask } = guessLayout(lines("Time;T", "46327,5;21,5", "46327,75;21,6"));
    expect(layout).toMatchObject({ timeColumn: 0, temperatureColumn: 1, decimal: "," });
    expect(ask).toEqual([]);
  });
});

describe("the order of day and month", () => {
  test("is asked where both are 12 or less throughout", () => {
    const { ask } = guessLayout(lines("Time,T", "02/11/2026 08:00,21.5", "03/11/2026 08:00,21.6"));
    expect(ask).toEqual(["dateOrder"]);
  });

  test("is not asked once it is said, and what is said holds", () => {
    const guess = guessLayout(lines("02/11/2026 08:00,21.5"), { dateOrder: "mdy" });
    expect(guess.ask).toEqual([]);
    expect(guess.layout.dateOrder).toBe("mdy");
  });

  test("is told by one day over 12, however far down", () => {
    const rows = Array.from({ length: 30_000 }, (_, i) => `0${1 + (i % 9)}/11/2026 08:00,21.5`);
    expect(guessLayout(lines("Time,T", ...rows)).ask).toEqual(["dateOrder"]);
    const guess = guessLayout(lines("Time,T", ...rows, "13/11/2026 08:00,21.5"));
    expect([guess.ask, guess.layout.dateOrder]).toEqual([[], "dmy"]);
  });

  test("is told by the most dates: one slip turns nothing round", () => {
    const rows = Array.from({ length: 20 }, (_, i) => `${13 + (i % 10)}/11/2026 08:00,21.5`);
    const guess = guessLayout(lines("Time,T", "11/13/2026 08:00,21.5", ...rows));
    expect([guess.ask, guess.layout.dateOrder]).toEqual([[], "dmy"]);
  });
});

test("everything that was said is taken as said", () => {
  const said = {
    separator: ";",
    decimal: ",",
    headings: 2,
    dateOrder: "mdy",
    unit: "fahrenheit",
    timeColumn: 1,
    clockColumn: 2,
    temperatureColumn: 3,
    others: [0],
  } as const;
  expect(guessLayout("Time,T\n2026-11-02,21", said).layout).toEqual(said);
});

test("what is said of one thing changes the guess of the rest", () => {
  const text = lines("A;B", "29.10.2026 08:00;21,5", "29.10.2026 08:05;21,6");
  expect(guessLayout(text, { separator: "," }).layout.decimal).toBe(".");
});

test("an empty text and one without readings guess something, and never throw", () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const { layout, titles } = guessLayout(text);
      expect(titles.length).toBeGreaterThan(0);
      expect(layout.timeColumn).toBeLessThan(titles.length);
      expect(layout.temperatureColumn).toBeLessThan(titles.length);
    }),
  );
});

test("property: a file written in any layout is read back as it was, or the date order is asked", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...separators),
      fc.constantFrom(...dateOrders),
      fc.constantFrom(".", ","),
      fc.boolean(),
      fc.integer({ min: 0, max: 700 }),
      fc.array(fc.integer({ min: -100, max: 400 }), { minLength: 2, maxLength: 40 }),
      async (separator, order, decimal, heading, startDay, tenths) => {
        fc.pre(!(separator === "," && decimal === ",") && tenths.some((one) => one % 10 !== 0));
        const dates = tenths.map((_, i) => new Date(Date.UTC(2025, 0, 1 + startDay, i * 7)));
        const rows = dates.map((date, i) => {
          const figure = ((tenths[i] as number) / 10).toFixed(1).replace(".", decimal);
          return [`${written[order](date)} ${clock(date)}`, figure].join(separator);
        });
        const text = [...(heading ? [["When", "Temp °C"].join(separator)] : []), ...rows].join("\n");
        const guess = guessLayout(text);
        const both = dates.every((date) => date.getUTCDate() <= 12);
        expect(guess.ask).toEqual(both && order !== "ymd" ? ["dateOrder"] : []);
        const { rows: landed, refused } = await readAll(text, guessLayout(text, { dateOrder: order }).layout);
        expect(refused).toEqual([]);
        expect(landed.map(([time]) => Math.round((time as number) * 1440))).toEqual(
          dates.map((date) => Math.round(date.getTime() / 60_000) + 25_569 * 1440),
        );
        expect(landed.map(([, temperature]) => Math.round((temperature as number) * 10) + 0)).toEqual(
          tenths.map((one) => one + 0),
        );
      },
    ),
    { numRuns: 150 },
  );
});

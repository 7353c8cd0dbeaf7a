import type { Browser, Page } from "playwright-core";
import { climate, rain, unfilled, winter, type Case } from "./charts";
import { readPage } from "../../taskpane/pictures/page/readPage";
import { sheets } from "../../taskpane/sheets/catalogue";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { openPage } from "./inBrowser";
import { cajon, planned, sierra } from "./years";
import { dailyOf } from "../../taskpane/pictures/year/daily";
import { homeYear } from "../../taskpane/sheets/shared/scenario";
import { coldDays, STARTS, type DrawnYear } from "../../taskpane/pictures/year/drawnYear";
import { contrast } from "../contrast";

/** The pictures in the browser that will show them: shapes are counted and measured there. */
let browser: Browser;
let page: Page;
const refused: string[] = [];

beforeAll(async () => {
  ({ browser, page } = await openPage());
  page.on("console", (message) => message.type() === "error" && refused.push(message.text()));
}, 60_000);
afterAll(() => browser.close());

/** What `script`, a function of the drawn picture, answers. */
const drawn = <T>({ chart, cells }: Case, script: string, options: object = {}): Promise<T> =>
  page.evaluate(`(async () => {
    const cells = ${JSON.stringify(cells)};
    const picture = pictures.draw(${JSON.stringify(chart)}, (range) => cells[range] ?? [[null]], document, ${JSON.stringify(options)});
    document.body.replaceChildren(picture);
    return (${script})(picture);
  })()`);

const words = `(svg) => [...svg.querySelectorAll("text")].map((text) => text.textContent)`;

test("a picture names itself and says in words what it shows", async () => {
  const said = await drawn(
    climate,
    `(svg) => ({
    role: svg.getAttribute("role"),
    name: document.getElementById(svg.getAttribute("aria-labelledby")).textContent,
    summary: document.getElementById(svg.getAttribute("aria-describedby")).textContent,
  })`,
  );
  expect(said).toEqual({
    role: "img",
    name: climate.chart.title,
    summary: "Highs run from 4 to 28 °C; five months are colder than 10 °C.",
  });
});

test("a series is named by the cell that it takes its name from, and by its own name where that is blank", async () => {
  const series = climate.chart.series.map((one, i) => ({ ...one, nameFrom: i === 1 ? "Z1" : "Z2" }));
  const said = (cells: Case["cells"]): Promise<string> =>
    drawn<readonly string[]>(
      { chart: { ...climate.chart, series }, cells: { ...climate.cells, ...cells } },
      words,
    ).then((all) => all.join(" "));
  const given = await said({ Z1: [["Jan Mayen, 9 m"]], Z2: [["  "]] });
  expect(given).toContain("Jan Mayen, 9 m");
  expect(given).not.toContain("Median");
  expect(given).toContain("Upper site median");
  expect(await said({ Z1: [[{ error: "#N/A" }]], Z2: [[null]] })).toContain("Median");
});

test("two pictures in a page share no id", async () => {
  const ids = await drawn<string[]>(
    climate,
    `(svg) => {
    const second = pictures.draw(${JSON.stringify(climate.chart)}, (range) => (${JSON.stringify(climate.cells)})[range], document);
    return [svg, second].flatMap((one) => [...one.querySelectorAll("[id]")].map(({ id }) => id));
  }`,
  );
  expect(ids.length).toBeGreaterThan(4);
  expect(new Set(ids).size).toBe(ids.length);
});

test("a blank cell is a gap: no area, no line and no bar stands at it, least of all at 0", async () => {
  // The band breaks at August, where the high is blank: two closed areas. The upper median lacks August and September.
  const areas = await drawn<string[]>(
    climate,
    `(svg) => [...svg.querySelectorAll("[aria-label='area'] path")].map((path) => path.getAttribute("d"))`,
  );
  expect(areas.join("").match(/Z/g)).toHaveLength(2);
  const lines = await drawn<string[]>(
    climate,
    `(svg) => [...svg.querySelectorAll("[aria-label='line'] path")].map((path) => path.getAttribute("d"))`,
  );
  expect(lines.map((d) => d.match(/M/g)?.length)).toEqual([1, 2, 1, 2]); // low, high, median, upper median
  expect(await drawn(rain, `(svg) => svg.querySelectorAll("[aria-label='bar'] rect").length`)).toBe(11);
});

test("a figure between two gaps is seen as a point", async () => {
  const lonely: Case = {
    ...climate,
    cells: { ...climate.cells, "D2:D13": (climate.cells["D2:D13"] ?? []).map(([v], i) => [i === 5 ? v : null]) },
  };
  expect(await drawn(lonely, `(svg) => svg.querySelectorAll("[aria-label='dot'] circle").length`)).toBe(1);
  expect(await drawn(climate, `(svg) => svg.querySelectorAll("[aria-label='dot'] circle").length`)).toBe(0);
});

test("heights are the figures: the July bar is 110/60 of the January bar", async () => {
  const [january, july] = await drawn<[number, number]>(
    rain,
    `(svg) => {
    const bars = [...svg.querySelectorAll("[aria-label='bar'] rect")].map((bar) => Number(bar.getAttribute("height")));
    return [bars[0], bars[6]];
  }`,
  );
  expect(july / january).toBeCloseTo(110 / 60, 6);
});

test("the threshold stands level with its figure on the axis", async () => {
  const [rule, tick] = await drawn<[number, number]>(
    climate,
    `(svg) => {
    const middle = (element) => { const box = element.getBoundingClientRect(); return (box.top + box.bottom) / 2; };
    const tick = [...svg.querySelectorAll("[aria-label='y-axis tick label'] text")].find((text) => text.textContent === "10");
    return [middle(svg.querySelector("[aria-label='rule'] line")), middle(tick)];
  }`,
  );
  expect(Math.abs(rule - tick)).toBeLessThan(1.5); // pixels: half the height of a digit is 4
});

test("a rule without its figure is not drawn", async () => {
  const without: Case = { ...climate, cells: { ...climate.cells, E2: [[""]] } };
  expect(await drawn(without, `(svg) => svg.querySelectorAll("[aria-label='rule'] line").length`)).toBe(0);
});

test("stages are a strip of named runs, ticks stand over their days, unused rows are left out", async () => {
  const shown = await drawn<string[]>(winter, words);
  for (const stage of ["Feeding", "Clearing", "Cooling", "Cold", "Warming", "Settling"]) {
    expect(shown.filter((text) => text === stage)).toHaveLength(1);
  }
  expect(shown.filter((text) => text === "▼")).toHaveLength(7); // weeks 0, 4 … 24; rows 26 and 27 have no date
  expect(shown.filter((text) => text === "●")).toHaveLength(2);
  expect(await drawn(winter, `(svg) => svg.querySelectorAll("[aria-label='rect'] rect").length`)).toBe(7);
  expect(shown.some((text) => text.includes("1900"))).toBe(false);
});

test.each([640, 320])("no word covers another and none leaves the picture, %i px wide", async (width) => {
  for (const one of [climate, rain, winter]) {
    const clashes = await drawn<string[]>(
      one,
      `(svg) => {
      const page = svg.getBoundingClientRect();
      const all = [...svg.querySelectorAll("text")].filter((text) => !/^[▼●]$/.test(text.textContent)).map((text) => [text.textContent, text.getBoundingClientRect()]);
      const found = all.filter(([, box]) => box.left < page.left - 1 || box.right > page.right + 1).map(([text]) => text + " is cut off");
      all.forEach(([text, a], i) => all.slice(i + 1).forEach(([other, b]) => {
        if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 4 && b.top < a.bottom - 4) found.push(text + " covers " + other);
      }));
      return found;
    }`,
      { width, height: 300 },
    );
    expect(clashes).toEqual([]);
  }
});

test("it reads without colour: every line has a dash of its own, every area a hatching, every series its name", async () => {
  const dashes = await drawn<string[]>(
    climate,
    `(svg) => [...svg.querySelectorAll("[aria-label='line']")].map((line) => line.getAttribute("stroke-dasharray") ?? "none")`,
  );
  expect(new Set(dashes.slice(1)).size).toBe(3); // the band's two edges share one
  const shown = (await drawn<string[]>(climate, words)).join(" ");
  for (const { name } of climate.chart.series) expect(shown).toContain(name);
  const hatched = await drawn<string[]>(
    winter,
    `(svg) => [...svg.querySelectorAll("pattern")].map((one) => one.getAttribute("patternTransform"))`,
  );
  expect(new Set(hatched).size).toBe(winter.chart.series.length);
});

test("tones stand out from white and from a dark page by 3 to 1 (WCAG 2.2, 1.4.11)", async () => {
  const tones = await page.evaluate<string[]>("pictures.tones");
  for (const tone of tones)
    for (const paper of ["#ffffff", "#292929"]) expect(contrast(tone, paper)).toBeGreaterThanOrEqual(3);
});

test("text takes the colour of where the picture is put", async () => {
  const colour = await drawn(
    climate,
    `(svg) => { svg.parentElement.style.color = "rgb(240, 240, 240)"; return getComputedStyle(svg.querySelector("text")).fill; }`,
  );
  expect(colour).toBe("rgb(240, 240, 240)");
  await page.evaluate(`document.body.style.color = ""`);
});

test("with no figures it says so instead of drawing zeros", async () => {
  expect(await drawn(unfilled, words)).toContain("No figures yet");
  expect(await drawn(unfilled, `(svg) => svg.querySelectorAll("[aria-label='bar'] rect").length`)).toBe(0);
});

test("saved as SVG it is a file of its own with the caption, and holds no script and no address", async () => {
  const caption =
    "Corrected from 300 to 1400 m with 6.5 K/km; station figures invented for this test; drawn 2026-10-05 & checked <twice>.";
  const text = await drawn<string>(climate, `(svg) => pictures.svgText(svg, ${JSON.stringify(caption)})`);
  const read = await page.evaluate<{ error: boolean; words: string; colour: string | null }>(`(() => {
    const file = new DOMParser().parseFromString(${JSON.stringify(text)}, "image/svg+xml");
    return { error: file.querySelector("parsererror") !== null, words: [...file.querySelectorAll("text")].map((one) => one.textContent).join(" "), colour: file.documentElement.getAttribute("color") };
  })()`);
  expect(read.error).toBe(false);
  expect(read.words).toContain(caption);
  expect(read.colour).toBe("#000000");
  expect(text).not.toMatch(/<script|<style|href=|@import/);
  expect(text.replaceAll("http://www.w3.org/", "")).not.toMatch(/https?:/);
});

test("saved as PNG it is twice the size, with ink on white, and more of it with a caption", async () => {
  const seen = await drawn<{ bytes: number[]; sizes: number[][]; corner: number[]; ink: number }>(
    climate,
    `async (svg) => {
    const files = [await pictures.pngBytes(svg, ""), await pictures.pngBytes(svg, "A caption that is read below the picture")];
    const images = await Promise.all(files.map((file) => createImageBitmap(new Blob([file], { type: "image/png" }))));
    const canvas = document.createElement("canvas"); canvas.width = images[1].width; canvas.height = images[1].height;
    const context = canvas.getContext("2d"); context.drawImage(images[1], 0, 0);
    const below = context.getImageData(0, images[0].height, images[1].width, images[1].height - images[0].height).data;
    let ink = 0; for (let i = 0; i < below.length; i += 4) if (below[i] < 128) ink++;
    return { bytes: [...files[0].slice(0, 8)], sizes: images.map(({ width, height }) => [width, height]), corner: [...context.getImageData(0, 0, 1, 1).data], ink };
  }`,
  );
  expect(seen.bytes).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]); // PNG, W3C recommendation, section 5.2
  expect(seen.sizes[0]).toEqual([1280, 720]);
  expect(seen.sizes[1]?.[1]).toBeGreaterThan(720);
  expect(seen.corner).toEqual([255, 255, 255, 255]);
  expect(seen.ink).toBeGreaterThan(200);
});

test("the page of every sheet says all of it: no word covers another or leaves it", async () => {
  for (const sheet of sheets) {
    // As many words and figures as the sheet can hold: each formula answers one or the other.
    const cells: { value: string | number | boolean | null; format?: string }[][] = [];
    for (const { at, role, rows } of sheet.blocks) {
      const { top, left } = areaOf(at);
      rows.forEach((row, i) =>
        row.forEach((content, j) => {
          const line = (cells[top - 1 + i] ??= []);
          const isFormula = typeof content === "string" && content.startsWith("=");
          line[left - 1 + j] = {
            value: !isFormula ? content : role === "text" ? "Words that say what is so. ".repeat(6) : 12.3,
          };
        }),
      );
    }
    const filled = Array.from(cells, (line?: (typeof cells)[number]) =>
      Array.from(line ?? [], (cell?: (typeof cells)[number][number]) => cell ?? { value: null }),
    );
    const data = readPage(sheet, filled);
    const clashes = await page.evaluate<string[]>(`(() => {
      const told = { title: ${JSON.stringify(sheet.name)}, sentence: ${JSON.stringify(sheet.sentence)}, summary: "All of it." };
      const svg = pictures.sheetPage(${JSON.stringify(data)}, undefined, told, document);
      document.body.replaceChildren(svg);
      const page = svg.getBoundingClientRect();
      const all = [...svg.querySelectorAll("text")].map((text) => [text.textContent, text.getBoundingClientRect()]);
      const found = all.filter(([, box]) => box.right > page.right + 1 || box.bottom > page.bottom + 1).map(([text]) => text + " is cut off");
      all.forEach(([text, a], i) => all.slice(i + 1).forEach(([other, b]) => {
        if (a.left < b.right - 2 && b.left < a.right - 2 && a.top < b.bottom - 5 && b.top < a.bottom - 5) found.push(text + " covers " + other);
      }));
      return found;
    })()`);
    expect([sheet.name, clashes.slice(0, 6)]).toEqual([sheet.name, []]);
    expect(data.rows.length).toBeGreaterThan(2);
  }
});

describe("the year", () => {
  /** What `script` answers of a strip or a ring of a year, or of two side by side. */
  const pictured = <T>(form: "strip" | "ring" | "pair", year: unknown, script: string): Promise<T> =>
    page.evaluate(`(() => {
      const year = JSON.parse(${JSON.stringify(JSON.stringify(year))}, (_, value) => (value === null ? NaN : value));
      const picture = pictures.${form}(year, document);
      document.body.replaceChildren(picture);
      return (${script})(picture);
    })()`);

  test("a day's curve is the months': the days of each average to it (histospline, Boneva et al. 1971)", () => {
    const daily = dailyOf(homeYear.high);
    for (const [month, mean] of homeYear.high.entries()) {
      const days = daily.slice(STARTS[month], STARTS[month + 1]);
      expect(days.reduce((sum, value) => sum + value, 0) / days.length).toBeCloseTo(mean, 9);
    }
    expect(dailyOf([1, 2, 3]).every(Number.isNaN)).toBe(true);
  });

  test("the winter stands in the middle in both hemispheres, and every figure at its height", async () => {
    const seen = (year: DrawnYear) =>
      pictured<{ months: string[]; lowest: number; middle: number; zero: number; ten: number; low: number }>(
        "strip",
        year,
        `(svg) => {
        const texts = [...svg.querySelectorAll("text")];
        const months = texts.map((text) => text.textContent).filter((text) => /^(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)$/.test(text));
        const line = [...svg.querySelectorAll("[data-part=line]")].at(-1);
        const points = line.getAttribute("d").slice(1).split("L").map((pair) => pair.split(",").map(Number));
        const lowest = points.reduce((best, point) => (point[1] > best[1] ? point : best));
        const [from, to] = [points[0][0], points.at(-1)[0]];
        const level = (label) => { const box = texts.find((text) => text.textContent === label).getAttribute("y"); return Number(box) - 24 * 0.35; };
        return { months, lowest: (lowest[0] - from) / (to - from), middle: points.length, zero: level("0"), ten: level("10"), low: lowest[1] };
      }`,
      );
    for (const [year, first] of [
      [sierra, "Jul"],
      [cajon, "Jan"],
    ] as const) {
      const { months, lowest, zero, ten, low } = await seen(year);
      expect(months).toHaveLength(12);
      expect(months[0]).toBe(first);
      expect(Math.abs(lowest - 0.5)).toBeLessThan(0.1);
      const celsius = ((zero - low) / (zero - ten)) * 10;
      expect(Math.abs(celsius - Math.min(...(year.lines[1]?.likely ?? [])))).toBeLessThan(0.05);
    }
  });

  test("rain and stages stand under the same months: October's rain below the word, the cold from its date", async () => {
    const { word, rain, stage, column } = await pictured<Record<"word" | "rain" | "stage" | "column", number>>(
      "strip",
      planned,
      `(svg) => {
      const middle = (element) => { const box = element.getBoundingClientRect(); return (box.left + box.right) / 2; };
      const october = [...svg.querySelectorAll("text")].find((text) => text.textContent === "Oct");
      const bars = [...svg.querySelectorAll("[data-part=rain]")];
      const tallest = bars.reduce((best, bar) => (Number(bar.getAttribute("height")) > Number(best.getAttribute("height")) ? bar : best));
      const cold = [...svg.querySelectorAll("text")].find((text) => text.textContent === "Cold");
      const november = [...svg.querySelectorAll("text")].find((text) => text.textContent === "Nov");
      const stages = [...svg.querySelectorAll("[data-part=stage]")].find((one) => { const box = one.getBoundingClientRect(); const x = middle(cold); return box.left < x && x < box.right; });
      return { word: middle(october), rain: middle(tallest), stage: stages.getBoundingClientRect().left - middle(november), column: bars[0].getBoundingClientRect().width };
    }`,
    );
    expect(Math.abs(word - rain)).toBeLessThan(column * 0.2);
    expect(Math.abs(stage)).toBeLessThan(4); // 16 November is the middle of the month
  });

  test.each([
    ["strip", sierra],
    ["strip", planned],
    ["ring", planned],
    ["ring", cajon],
    ["pair", [planned, cajon]],
  ] as const)("no word of a %s covers another or leaves it, and none needs colour", async (form, year) => {
    const { clashes, ids, dashes } = await pictured<{ clashes: string[]; ids: number; dashes: string[] }>(
      form,
      year,
      `(svg) => {
      const page = svg.getBoundingClientRect();
      // Of turned words the middle lines are compared, not the boxes about them.
      const all = [...svg.querySelectorAll("text")].map((text) => [text.textContent, text.getBoundingClientRect(), text.hasAttribute("transform")]);
      const clashes = all.filter(([, box]) => box.left < page.left - 1 || box.right > page.right + 1 || box.bottom > page.bottom + 1).map(([text]) => text + " is cut off");
      const flat = all.filter(([, , isTurned]) => !isTurned);
      flat.forEach(([text, a], i) => flat.slice(i + 1).forEach(([other, b]) => {
        if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 6 && b.top < a.bottom - 6) clashes.push(text + " covers " + other);
      }));
      const dashes = [...svg.querySelectorAll("[data-part=line]")].map((line) => line.getAttribute("stroke-dasharray"));
      return { clashes, ids: svg.querySelectorAll("title, desc").length, dashes: [...new Set(dashes)] };
    }`,
    );
    expect(clashes).toEqual([]);
    expect(ids).toBe(2);
    expect(dashes).toHaveLength(2);
  });

  test("the days are counted on average, in the picture and in its words", async () => {
    const words = await pictured<string>(
      "ring",
      sierra,
      `(svg) => [...svg.querySelectorAll("text")].map((text) => text.textContent).join(" ")`,
    );
    expect(words).toContain(`${coldDays(sierra)} days with lows below 10 °C on average`);
    expect(await pictured<string>("strip", planned, `(svg) => svg.querySelector("desc").textContent`)).not.toContain(
      "on average",
    );
  });

  test("on dark paper ink and paper change places, in the file itself", async () => {
    const text = await pictured<string>("ring", sierra, `(svg) => pictures.svgText(svg, "A caption.", "dark")`);
    expect(text).toMatch(/color="#ffffff"/);
    expect(text).toMatch(/<rect [^>]*fill="#292929"/);
    expect(text).not.toMatch(/<script|<style|href=|@import/);
  });
});

test("the page's strict policy had nothing to refuse", () => expect(refused).toEqual([]));

import { identified, type Turn } from "./turn";
import { OfficeError, type HeldChart, type HeldWorkbook, type Tab } from "./workbook";

interface Where {
  where(): string;
}

/** Office.js's ChartSeries: one that is there, by its place, or one that is added. */
const series = ({ queue, strict, written }: Turn, tell: (line: string) => void, find: () => HeldSeries): object => {
  const name = (): string => find().name;
  const say = (line: string): void => tell(`series ${name()} ${line}`);
  return written("", (line) => say(line.replace(/^\./, "")), ["chartType", "markerStyle"], {
    setValues: (values: Where) => queue("series.setValues", () => (find().values = values.where())),
    setXAxisValues: (values: Where) => queue("series.setXAxisValues", () => (find().along = values.where())),
    format: strict("format", {
      line: written("line", say, ["color", "lineStyle", "weight"]),
      fill: strict("fill", {
        setSolidColor: (colour: string) => queue("fill.setSolidColor", () => say(`fill ${colour}`)),
      }),
    }),
  });
};
type HeldSeries = HeldChart["series"][number];

/** Office.js's Chart. */
const chart = (turn: Turn, tab: () => Tab, find: () => HeldChart | undefined): object => {
  const { queue, strict, written } = turn;
  const held = (): HeldChart => {
    const found = find();
    if (!found) throw new OfficeError("ItemNotFound", "there is no such chart");
    return found;
  };
  const tell = (line: string): void => void tab().told.push(line);
  const axis = (name: string) =>
    written(name, tell, ["tickLabelPosition"], { title: written(`${name} title`, tell, ["text"]) });

  /** A series of the list stands for its place: which one that is follows from when its turn comes. */
  const at = (index: number): object => {
    const find = (): HeldSeries => {
      const one = held().series[index];
      if (!one) throw new OfficeError("ItemNotFound", `there is no series ${index}`);
      return one;
    };
    return strict("ChartSeries", {
      delete: () =>
        queue("series.delete", () => {
          find();
          held().series.splice(index, 1);
        }),
    });
  };
  let items: object[] | undefined;
  const all = strict("ChartSeriesCollection", {
    load: (wanted: string) => {
      if (wanted !== "items/name") throw new Error(`${wanted} of series is not modelled`);
      queue("series.load", () => {
        items = held().series.map(({ name }, i) =>
          strict("ChartSeries", Object.defineProperties({ name }, Object.getOwnPropertyDescriptors(at(i)))),
        );
      });
    },
    get items() {
      if (!items) throw new OfficeError("PropertyNotLoaded", "series.items was read before it was loaded");
      return items;
    },
    getItemAt: at,
    add: (name: string) => {
      const added: HeldSeries = { name, values: "", along: "" };
      queue("series.add", () => held().series.push(added));
      return series(turn, tell, () => added);
    },
  });
  const own = written("chart", tell, ["displayBlanksAs", "plotVisibleOnly"], {
    delete: () =>
      queue("chart.delete", () => {
        tab().charts = tab().charts.filter((one) => one !== held());
      }),
    title: written("chart title", tell, ["text"]),
    legend: written("legend", tell, ["position"]),
    axes: strict("axes", { valueAxis: axis("value axis"), categoryAxis: axis("category axis") }),
    series: all,
    setPosition: (from: string, to: string) => queue("chart.setPosition", () => tell(`chart at ${from}:${to}`)),
    set name(name: string) {
      queue("chart.name", () => (held().name = name));
    },
  });
  return identified(own, () => ({ id: held().id }));
};

/** Office.js's ChartCollection. */
export const charts = (excel: HeldWorkbook, turn: Turn, tab: () => Tab): object => {
  const { queue, strict } = turn;
  let items: object[] | undefined;
  return strict("ChartCollection", {
    load: (wanted: string) => {
      if (wanted !== "items/name") throw new Error(`${wanted} of charts is not modelled`);
      queue("charts.load", () => {
        items = tab().charts.map((one) => {
          const own = chart(turn, tab, () => one);
          const told = Object.defineProperties({ name: one.name }, Object.getOwnPropertyDescriptors(own));
          return identified(strict("Chart", told), () => ({ id: one.id }));
        });
      });
    },
    get items() {
      if (!items) throw new OfficeError("PropertyNotLoaded", "charts.items was read before it was loaded");
      return items;
    },
    getItem: (id: string) => chart(turn, tab, () => tab().charts.find((one) => one.id === id)),
    add: (type: string, of: Where & { columns(): number; isFigure(): boolean }, by: string) => {
      if (by !== "Columns") throw new Error(`series by ${by} are not modelled`);
      let added: HeldChart | undefined;
      queue("charts.add", () => {
        // Excel takes for a series what it will; over cells without a figure it takes their column for names.
        const guessed = of.columns() + (of.isFigure() ? 0 : 1);
        const series = Array.from({ length: guessed }, (_, i) => ({ name: `Series${i + 1}`, values: "", along: "" }));
        added = { id: excel.newId(), name: "", series };
        tab().charts.push(added);
        tab().told.push(`chart ${type}`);
      });
      return chart(turn, tab, () => added);
    },
  });
};

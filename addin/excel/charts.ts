import { plainSeries, type PlainSeries } from "../../taskpane/pictures/plainSeries";
import { addressOf, areaOf } from "../../taskpane/sheets/shared/address";
import { plottedOf } from "../../taskpane/pictures/plotted";
import type { Chart, Sheet } from "../../taskpane/sheets/sheet";

const dashes = ["Continuous", "Dash", "RoundDot", "DashDot", "DashDotDot"] as const;

const kindOf = ({ bar }: PlainSeries) => (bar ? "ColumnClustered" : "Line");

const frame = (drawn: Excel.Chart, { title, area, axis }: Chart): void => {
  const { top, left, bottom, right } = areaOf(area);
  drawn.setPosition(
    addressOf({ top, left, bottom: top, right: left }),
    addressOf({ top: bottom, left: right, bottom, right }),
  );
  drawn.name = title;
  drawn.title.text = title;
  drawn.legend.position = "Bottom";
  drawn.axes.valueAxis.title.text = axis;
  drawn.axes.categoryAxis.tickLabelPosition = "Low";
  // Blank cells are gaps.
  drawn.displayBlanksAs = "NotPlotted";
};

const series = (sheet: Excel.Worksheet, drawn: Excel.Chart, along: string, data: PlainSeries): void => {
  const one = drawn.series.add(data.name);
  one.setValues(sheet.getRange(data.values));
  one.setXAxisValues(sheet.getRange(along));
  one.chartType = kindOf(data);
  if (data.bar) {
    one.format.fill.setSolidColor(data.colour);
  } else {
    one.format.line.color = data.colour;
    one.format.line.lineStyle = dashes[data.dash % dashes.length] as (typeof dashes)[number];
    one.format.line.weight = data.weight;
    one.markerStyle = "None";
  }
};

/**
 * Charts of Excel's own. Excel cannot make one without guessing its series from cells, which may not be worked out yet:
 * what it has guessed goes, and each series is told its name, figures and axis. Its figures stand in hidden columns,
 * where no text is taken for 0.
 */
export const drawCharts = async (context: Excel.RequestContext, sheet: Excel.Worksheet, data: Sheet): Promise<void> => {
  const plotted = plottedOf(data);
  for (const { at, formulas } of plotted.values()) {
    const range = sheet.getRange(at);
    range.formulas = formulas.map((row) => [...row]);
    range.getEntireColumn().columnHidden = true;
  }
  const begun = data.charts.flatMap((one) => {
    const rows = plainSeries(one).map((row) => ({ ...row, values: plotted.get(row.values)?.at ?? row.values }));
    const [first] = rows;
    if (!first) return [];
    const drawn = sheet.charts.add(kindOf(first), sheet.getRange(first.values), "Columns");
    drawn.plotVisibleOnly = false;
    frame(drawn, one);
    drawn.series.load("items/name");
    return [{ drawn, rows, along: one.along }];
  });
  await context.sync();
  for (const { drawn, rows, along } of begun) {
    // They are known by their places: the last goes first.
    for (const guessed of [...drawn.series.items].reverse()) guessed.delete();
    for (const row of rows) series(sheet, drawn, along, row);
  }
};

export const removeCharts = async (context: Excel.RequestContext, sheet: Excel.Worksheet): Promise<void> => {
  sheet.charts.load("items/name");
  await context.sync();
  for (const one of [...sheet.charts.items].reverse()) one.delete();
};

import type { Turn } from "./turn";

/** Office.js's ChartCollection. */
export const charts = ({ queue, strict, written }: Turn, tell: (line: string) => void): object => {
  const axis = (name: string) =>
    written(name, tell, ["tickLabelPosition"], { title: written(`${name} title`, tell, ["text"]) });
  const series = (name: string) =>
    written(`series ${name}`, tell, ["name", "chartType", "markerStyle"], {
      setValues: (values: { where(): string }) =>
        queue("series.setValues", () => tell(`series ${name} values ${values.where()}`)),
      setXAxisValues: (values: { where(): string }) =>
        queue("series.setXAxisValues", () => tell(`series ${name} along ${values.where()}`)),
      format: strict("format", {
        line: written(`series ${name} line`, tell, ["color", "lineStyle", "weight"]),
        fill: strict("fill", {
          setSolidColor: (colour: string) => queue("fill.setSolidColor", () => tell(`series ${name} fill ${colour}`)),
        }),
      }),
    });
  return strict("charts", {
    add: (type: string, of: { where(): string }, by: string) => {
      queue("charts.add", () => tell(`chart ${type} ${of.where()} ${by}`));
      return written("chart", tell, ["name", "displayBlanksAs"], {
        title: written("chart title", tell, ["text"]),
        legend: written("legend", tell, ["position"]),
        axes: strict("axes", { valueAxis: axis("value axis"), categoryAxis: axis("category axis") }),
        series: strict("series", {
          getItemAt: (index: number) => series(String(index)),
          add: (name: string) => {
            queue("series.add", () => tell(`series ${name} added`));
            return series(name);
          },
        }),
        setPosition: (from: string, to: string) => queue("chart.setPosition", () => tell(`chart at ${from}:${to}`)),
      });
    },
  });
};

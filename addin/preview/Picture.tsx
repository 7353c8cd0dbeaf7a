import { useEffect, useRef } from "react";
import type { Engine } from "./engine";
import { valuesOf } from "./readCells";
import { templateOf } from "./template";

/** Plain data, which the engine keeps: the template by its key, and which of its charts. */
export interface PictureData {
  readonly [key: string]: string | number;
  readonly template: string;
  readonly chart: number;
}

/** A sheet's chart over the grid: the same picture as in the pane, drawn anew when its figures have changed. */
export const pictureOf = (engine: Engine) =>
  function Picture({ data }: { readonly data?: PictureData }) {
    const place = useRef<HTMLDivElement>(null);
    useEffect(() => {
      if (!data) return undefined;
      let gone = false;
      const show = async (): Promise<void> => {
        const { draw } = await import("../../taskpane/pictures/draw");
        // A picture is on the page only while its sheet is shown; a copied sheet brings the same data for its own cells.
        const sheet = engine.api.getActiveWorkbook()?.getActiveSheet();
        const template = sheet && templateOf(sheet);
        const chart = template?.key === data.template ? template.charts[data.chart] : undefined;
        const element = place.current;
        if (gone || !sheet || !chart || !element) return;
        const { clientWidth: width, clientHeight: height } = element;
        element.replaceChildren(
          draw(chart, (range) => valuesOf(sheet, range), document, width > 0 && height > 0 ? { width, height } : {}),
        );
      };
      let waiting: ReturnType<typeof setTimeout> | undefined;
      const soon = (): void => {
        clearTimeout(waiting);
        waiting = setTimeout(() => void show(), 60);
      };
      soon();
      const heard = [
        engine.api.getFormula().calculationResultApplied(soon),
        engine.api.addEvent(engine.api.Event.SheetValueChanged, soon),
        engine.api.addEvent(engine.api.Event.ActiveSheetChanged, soon),
      ];
      return () => {
        gone = true;
        clearTimeout(waiting);
        for (const one of heard) one.dispose();
      };
    }, [data]);
    return <div ref={place} className="picture" />;
  };

import { sheets as templates } from "../sheets/catalogue";
import type { Chart } from "../sheets/sheet";
import { WorkbookError, type SheetContents, type Workbook } from "../workbook";
import { stopIfCancelled, type Action } from "./action";
import { captionOf } from "./caption";
import { fileName } from "./saveFile";
import type { SavedFile } from "./savedFile";
import { recognise, valuesOf } from "./template";

export interface PictureChoice {
  readonly sheet: string;
  /** The chart's title. */
  readonly chart: string;
  readonly kind: "png" | "svg";
  readonly document: Document;
  readonly save: (file: SavedFile) => void | Promise<void>;
  /** The day on which it is saved. */
  readonly today: Date;
}

/** The charts that can be drawn of a sheet; none where its cells have been moved about, and so hold other things. */
export const chartsOf = (contents: SheetContents): readonly Chart[] => {
  const known = recognise(contents, templates);
  return known?.inPlace ? known.template.charts : [];
};

/** Every sheet of the workbook with its charts. */
export const picturesOf = async (
  workbook: Workbook,
): Promise<readonly { readonly sheet: string; readonly chart: string }[]> =>
  (await workbook.read()).flatMap((contents) =>
    chartsOf(contents).map(({ title }) => ({ sheet: contents.name, chart: title })),
  );

const find = async (workbook: Workbook, { sheet, chart }: Pick<PictureChoice, "sheet" | "chart">) => {
  const [contents] = await workbook.read([sheet]);
  const template = contents && recognise(contents, templates)?.template;
  return { contents, template, found: contents && chartsOf(contents).find(({ title }) => title === chart) };
};

export const savePicture: Action<PictureChoice> = {
  key: "save-picture",
  label: "Save picture",
  about: "Saves a chart with its caption: from which stations, how corrected, what to be careful of, and when.",
  async describe(workbook, choice) {
    const { found } = await find(workbook, choice);
    return found
      ? {
          text: `Saves "${choice.chart}" of "${choice.sheet}". The workbook does not change.`,
          possible: true,
          ask: false,
        }
      : {
          text: `"${choice.sheet}" has no such chart any more, or its cells have been moved.`,
          possible: false,
          ask: false,
        };
  },
  async run(workbook, choice, options) {
    const { contents, template, found } = await find(workbook, choice);
    if (!contents || !template || !found)
      throw new WorkbookError("There is no such chart any more. Nothing was saved.");
    const [{ draw }, { pngBytes, svgText }] = await Promise.all([
      import("../pictures/draw"),
      import("../pictures/save"),
    ]);
    stopIfCancelled(options);
    const picture = draw(found, (range) => valuesOf(contents.cells, range), choice.document, {
      width: 960,
      height: 540,
    });
    const caption = captionOf(found, template, contents, choice.today);
    const name = fileName(`${choice.sheet} - ${choice.chart}`, choice.kind);
    const file: SavedFile =
      choice.kind === "svg"
        ? { name, type: "image/svg+xml", bytes: svgText(picture, caption) }
        : { name, type: "image/png", bytes: await drawn(() => pngBytes(picture, caption)) };
    await choice.save(file);
    return { text: `"${name}" is saved where your browser or program puts downloads. Its caption: ${caption}` };
  },
};

/** The drawing speaks in words for the keeper, too. */
const drawn = async <T>(work: () => Promise<T>): Promise<T> => {
  try {
    return await work();
  } catch (failure) {
    throw new WorkbookError(
      failure instanceof Error ? failure.message : "The picture could not be drawn. Nothing was saved.",
    );
  }
};

import { WorkbookError, type Workbook } from "../workbook";
import type { Paper } from "../pictures/save";
import { impossible, stopIfCancelled, type Action, type Words } from "./action";
import { handOver, noFile } from "./files";
import { picturesIn, plansIn } from "./picturesIn";
import { fileName } from "./saveFile";
import type { SavedFile } from "./savedFile";

export type PictureKind = "png" | "svg";

export interface PictureChoice {
  readonly sheet: string;
  /** What it is called among the pictures of its sheet. */
  readonly picture: string;
  readonly kind: PictureKind;
  readonly paper: Paper;
  readonly document: Document;
  readonly save: (file: SavedFile) => void | Promise<void>;
  /** The day on which it is saved. */
  readonly today: Date;
}

/** Why a picture cannot be saved here, and what to do in its place. One for print is text, which can be copied. */
export const noPicture = (workbook: Workbook, kind: PictureKind, instead: string): Words | undefined =>
  kind === "svg"
    ? undefined
    : noFile(workbook, `Choose "SVG, for print", whose text can be copied here; or ${instead}`);

/** Every sheet of the workbook with its pictures. */
export const picturesOf = async (
  workbook: Workbook,
): Promise<readonly { readonly sheet: string; readonly picture: string }[]> => {
  const all = await workbook.read();
  const plans = plansIn(all);
  return all.flatMap((contents) =>
    picturesIn(contents, plans).map(({ name }) => ({ sheet: contents.name, picture: name })),
  );
};

const find = async (workbook: Workbook, { sheet, picture }: Pick<PictureChoice, "sheet" | "picture">) => {
  const all = await workbook.read();
  const contents = all.find(({ name }) => name === sheet);
  return contents && picturesIn(contents, plansIn(all)).find(({ name }) => name === picture);
};

/** A drawn picture as a file, with its caption below. */
export const pictureFile = async (
  picture: SVGSVGElement,
  caption: string,
  title: string,
  { kind, paper }: Pick<PictureChoice, "kind" | "paper">,
): Promise<SavedFile> => {
  const { pngBytes, svgText } = await import("../pictures/save");
  const name = fileName(title, kind);
  return kind === "svg"
    ? { name, type: "image/svg+xml", bytes: svgText(picture, caption, paper) }
    : { name, type: "image/png", bytes: await drawn(() => pngBytes(picture, caption, paper)) };
};

export const savePicture: Action<PictureChoice> = {
  key: "save-picture",
  label: "Save picture",
  about:
    "Saves a picture, or the whole sheet as a page, with its caption: from which stations, how corrected, whose records, what to be careful of, and when. The workbook does not change.",
  async describe(workbook, choice) {
    const no = noPicture(workbook, choice.kind, "copy the chart on its sheet, and paste it where you want it.");
    if (no) return no;
    return (await find(workbook, choice))
      ? {
          text: `Saves "${choice.picture}" of "${choice.sheet}". The workbook does not change.`,
          possible: true,
          ask: false,
        }
      : impossible(`"${choice.sheet}" has no such picture any more, or its cells have been moved.`);
  },
  async run(workbook, choice, options) {
    const found = await find(workbook, choice);
    if (!found) throw new WorkbookError("There is no such picture any more. Nothing was saved.");
    const picture = await found.draw(choice.document);
    stopIfCancelled(options);
    const caption = found.caption(choice.today);
    const file = await pictureFile(picture, caption, `${choice.sheet} - ${choice.picture}`, choice);
    return handOver(workbook, file, choice.save, `Its caption: ${caption}`);
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

import type { CautionKey } from "../../functions/cautions";
import type { DrawnYear } from "../pictures/year/drawnYear";
import type { Captioned } from "./caption";
import { yearCaption } from "./caption";
import { stopIfCancelled, type Action } from "./action";
import { handOver } from "./files";
import { noPicture, pictureFile, type PictureChoice } from "./savePicture";

/** A place's year, and what a caption tells of it. */
export interface PlaceYear {
  readonly drawn: DrawnYear;
  readonly told: Captioned["told"][number];
}

/** What a picture of one year, or of two side by side, is made of. */
export interface YearPicture {
  readonly form: "strip" | "ring" | "pair";
  /** Two for a pair. */
  readonly years: readonly PlaceYear[];
}

export interface YearChoice extends YearPicture, Omit<PictureChoice, "sheet" | "picture"> {}

const CAUTIONS: readonly CautionKey[] = ["proxy"];

/** A ring has no room for rain. */
const drawnAs = ({ form }: Pick<YearPicture, "form">, { drawn }: PlaceYear): DrawnYear =>
  form === "ring" ? { ...drawn, rain: [] } : drawn;

export const drawYear = async ({ form, years }: YearPicture, document: Document): Promise<SVGSVGElement> => {
  const [one, other] = years.map((year) => drawnAs({ form }, year));
  if (!one) throw new Error("a year is wanted");
  if (form === "ring") return (await import("../pictures/year/ring")).ring(one, document);
  const { pair, strip } = await import("../pictures/year/strip");
  return other && form === "pair" ? pair([one, other], document) : strip(one, document);
};

export const captionOfYear = ({ form, years }: YearPicture, today: Date): string =>
  yearCaption(
    years.map((year) => ({
      name: year.drawn.title,
      how: year.drawn.subtitle,
      drawn: drawnAs({ form }, year),
    })),
    { told: years.map(({ told }) => told), cautions: CAUTIONS, today },
  );

export const saveYear: Action<YearChoice> = {
  key: "save-year",
  label: "Save picture",
  about: "Saves the picture with its caption: how it was estimated, whose records, what to be careful of, and when.",
  describe: (workbook, { years, kind }) =>
    noPicture(workbook, kind, "take a picture of the screen.") ?? {
      text: `Saves a picture of ${years.map(({ drawn }) => `"${drawn.title}"`).join(" and ")}. The workbook does not change.`,
      possible: true,
      ask: false,
    },
  async run(workbook, choice, options) {
    const picture = await drawYear(choice, choice.document);
    stopIfCancelled(options);
    const caption = captionOfYear(choice, choice.today);
    const title = choice.years.map(({ drawn }) => drawn.title).join(" and ");
    const file = await pictureFile(picture, caption, `${title} - ${choice.form}`, choice);
    return handOver(workbook, file, choice.save, `Its caption: ${caption}`);
  },
};

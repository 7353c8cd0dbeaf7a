import { areaOf } from "./shared/address";
import type { Block, Look, Role, Sheet } from "./sheet";

/** How a cell looks, for every host alike. Colours are "#rrggbb"; sizes are points; nothing said is the host's own. */
export interface CellLook {
  readonly bold?: boolean;
  readonly size?: number;
  readonly colour?: string;
  readonly fill?: string;
  /** A thin line all round, or below only. */
  readonly frame?: "box" | "below";
  readonly frameColour?: string;
  /** Words run over several lines, from the top. */
  readonly wraps?: boolean;
}

/** Framed cells are to be filled, tinted cells may be changed, the rest is worked out: the sheets' legend says so. */
export const roleLooks: Readonly<Record<Role, CellLook>> = {
  title: { bold: true, size: 16, colour: "#22363d" },
  heading: { bold: true, colour: "#22363d", fill: "#e6edee", frame: "below", frameColour: "#8fa3a8" },
  guide: { size: 9, colour: "#55636a" },
  hint: { size: 9, colour: "#55636a" },
  label: {},
  input: { frame: "box", frameColour: "#5f7d86" },
  setting: { fill: "#f2eddd", frame: "below", frameColour: "#d5ccb0" },
  computed: {},
  text: { wraps: true },
  caution: { fill: "#fff3d1", colour: "#3d2f00", wraps: true },
  source: { size: 9, colour: "#55636a", wraps: true },
};

/** How a block looks. What is no running text runs on over the free cells beside it, and wraps only in a row made tall for it. */
export const lookOf = ({ at, role }: Pick<Block, "at" | "role">, { lines }: Pick<Sheet, "lines">): CellLook =>
  lines.some(({ row }) => row === areaOf(at).top) ? { ...roleLooks[role], wraps: true } : roleLooks[role];

/** The look of a cell as a host tells of it: what nobody has set, or is `plain` there, is left out. */
export const lookTold = (
  told: { readonly [K in keyof CellLook]: CellLook[K] | undefined },
  plain: Pick<CellLook, "size" | "colour" | "fill">,
): CellLook | undefined => {
  const isSet = ([key, value]: [string, string | number | boolean | undefined]): boolean =>
    value !== undefined &&
    value !== false &&
    value !== "" &&
    String(value).toLowerCase() !== String(plain[key as keyof typeof plain]).toLowerCase();
  const look = Object.entries(told).filter(isSet);
  return look.length > 0 ? Object.fromEntries(look) : undefined;
};

/** Every pair has a contrast of at least 7 to 1. */
export const ruleLooks: Readonly<
  Record<Look, { readonly fill: string; readonly colour: string; readonly bold: boolean }>
> = {
  stop: { fill: "#f8cfca", colour: "#6e100d", bold: true },
  care: { fill: "#fde4be", colour: "#5c3600", bold: true },
  note: { fill: "#e2e6ea", colour: "#2d363d", bold: false },
  good: { fill: "#d6ebd2", colour: "#1c4519", bold: false },
  cold: { fill: "#d2e5f4", colour: "#0e3a57", bold: false },
  linked: { fill: "#e9e3f4", colour: "#3b2a66", bold: false },
};

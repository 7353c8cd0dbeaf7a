import { decimals, dateOrders, type DateOrder, type Decimal, type Manner } from "../../taskpane/text/form";
import type { Engine } from "./engine";
import { changeManner, mannerNow, onManner } from "./manner";

const dateWords: Readonly<Record<DateOrder, string>> = {
  dmy: "day first, 25/10/2026",
  mdy: "month first, 10/25/2026",
  ymd: "year first, 2026-10-25",
};
const decimalWords: Readonly<Record<Decimal, string>> = { ".": "point, 24.5", ",": "comma, 24,5" };

const menu = <T extends string>(
  label: string,
  words: Readonly<Record<T, string>>,
  all: readonly T[],
  pick: (manner: Manner) => T,
  change: (value: T) => void,
): HTMLElement => {
  const list = document.createElement("select");
  for (const one of all) list.add(new Option(words[one], one));
  const show = (): void => void (list.value = pick(mannerNow()));
  list.addEventListener("change", () => change(list.value as T));
  onManner(show);
  show();
  const around = document.createElement("label");
  around.append(`${label} `, list);
  return around;
};

/** How the keeper types dates and figures: in view, and changed there. */
export const showManner = (engine: Engine, place: HTMLElement): void => {
  place.append(
    menu(
      "Dates",
      dateWords,
      dateOrders,
      ({ dateOrder }) => dateOrder,
      (dateOrder) => changeManner(engine, { ...mannerNow(), dateOrder }),
    ),
    menu(
      "Decimals",
      decimalWords,
      decimals,
      ({ decimal }) => decimal,
      (decimal) => changeManner(engine, { ...mannerNow(), decimal }),
    ),
  );
};

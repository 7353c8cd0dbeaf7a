import type { AnyDefinition, Need, Supplies } from "../functions/define";
import { notAvailable } from "../functions/problem";
import { supplies } from "./boundary/supplies";

/** How a host comes by what it does not carry; undefined once it is there. */
const fetching: Partial<Record<Need, () => Promise<void> | undefined>> = {};

/** Says how something is fetched. It is done once, when first needed; where it fails, those who waited answer why, and the next call tries again. */
export const fetchBy = <N extends Need>(need: N, load: () => Promise<Supplies[N]>, failed: string): void => {
  let isThere = false;
  let loading: Promise<void> | undefined;
  const run = async (): Promise<void> => {
    try {
      const supply = await load();
      Object.assign(supplies, { [need]: () => supply });
      isThere = true;
    } catch (error) {
      const words = error instanceof Error ? error.message : String(error);
      const problem = notAvailable(`${failed}: ${words}. Look at the connection and calculate again`);
      Object.assign(supplies, { [need]: () => problem });
    }
  };
  fetching[need] = () => {
    if (isThere) return undefined;
    return (loading ??= run().finally(() => {
      loading = undefined;
    }));
  };
};

/** Whether a definition may have to wait for something in this host. */
export const mayWait = ({ needs }: AnyDefinition): boolean => needs !== undefined && fetching[needs] !== undefined;

/** Undefined where it is there, or carried from the start. */
export const untilThere = (need: Need): Promise<void> | undefined => fetching[need]?.();

/** What a definition has to wait for before it can be evaluated; undefined where it need not. */
export const waitFor = ({ needs }: AnyDefinition): Promise<void> | undefined => needs && untilThere(needs);

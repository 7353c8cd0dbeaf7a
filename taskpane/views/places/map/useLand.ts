import { useEffect, useState } from "react";
import { usePane } from "../../context";
import type { Land } from "./PlaceMap";
import { readRelief } from "./relief";
import { readWorld } from "./world";

/** What the map is drawn from: undefined while it is being read; in words why it cannot be. */
export const useLand = (): Land | string | undefined => {
  const { shipped } = usePane();
  const [land, setLand] = useState<Land | string | undefined>();
  useEffect(() => {
    let isWanted = true;
    const read = async (): Promise<Land | string> => {
      try {
        const [bytes, topology] = await Promise.all([shipped.relief(), shipped.coast()]);
        const relief = readRelief(bytes);
        return relief ? { relief, world: readWorld(topology) } : "its file is damaged";
      } catch (error) {
        return error instanceof Error ? error.message : String(error);
      }
    };
    void read().then((answer) => {
      if (isWanted) setLand(answer);
    });
    return () => {
      isWanted = false;
    };
  }, [shipped]);
  return land;
};

import { useCallback, useEffect, useState } from "react";
import type { Network } from "../../../functions/network/network";
import type { Problem } from "../../../functions/problem";
import { usePane } from "../context";

/** The station network: undefined while it is being read; why it cannot be read; and a way to try again. */
export const useNetwork = (): readonly [network: Network | Problem | undefined, again: () => void] => {
  const { shipped } = usePane();
  const [network, setNetwork] = useState<Network | Problem | undefined>();
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let isWanted = true;
    void shipped.network().then((answer) => {
      if (isWanted) setNetwork(answer);
    });
    return () => {
      isWanted = false;
    };
  }, [shipped, tries]);
  const again = useCallback(() => {
    setNetwork(undefined);
    setTries((before) => before + 1);
  }, []);
  return [network, again];
};

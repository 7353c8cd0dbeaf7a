import { useEffect, useMemo, useRef, useState, type RefObject } from "react";
import type { Theme } from "../../Pane";
import type { Belt } from "../readPlace";
import { drawGround, readPalette } from "./ground";
import { tintsOf, type Palette, type Relief } from "./relief";
import type { View } from "./view";
import type { World } from "./world";

/** Draws the ground into the canvas whenever the view, the band or the theme changes, at most once a frame. */
export const useGround = (
  canvas: RefObject<HTMLCanvasElement>,
  relief: Relief,
  world: World,
  view: View | undefined,
  belt: Belt | undefined,
  theme: Theme,
): void => {
  const [palette, setPalette] = useState<Palette | undefined>();
  const context = useRef<CanvasRenderingContext2D | null>(null);
  useEffect(() => {
    context.current ??= canvas.current?.getContext("2d", { willReadFrequently: true }) ?? null;
    if (canvas.current && context.current) setPalette(readPalette(canvas.current, context.current));
  }, [canvas, theme]);
  const [low, high] = [belt?.low, belt?.high];
  const tints = useMemo(
    () => palette && tintsOf(low === undefined || high === undefined ? undefined : { low, high }, palette),
    [palette, low, high],
  );
  useEffect(() => {
    if (!view || !tints) return undefined;
    const frame = requestAnimationFrame(() => {
      if (context.current) drawGround(context.current, view, { relief, world, tints });
    });
    return () => cancelAnimationFrame(frame);
  }, [relief, world, view, tints]);
};

import { CLASSES, paintRelief, type Palette, type Relief, type Tints } from "./relief";
import type { View } from "./view";
import { trace, type World } from "./world";

/** Canvas pixels a pixel, at least: it also smooths the edges of the classes. */
const DENSITY = 2;
export const densityOf = (): number => Math.max(DENSITY, window.devicePixelRatio);

/** px a radian from which borders are drawn: on a map of the world they would be all that is seen. */
const BORDERS_FROM = 150;

/** The map's colours from the style sheet, in which the system's may be named. */
export const readPalette = (host: Element, context: CanvasRenderingContext2D): Palette => {
  const style = getComputedStyle(host);
  const named = (name: string): string => style.getPropertyValue(`--map-${name}`).trim();
  /** A canvas resolves names of colours, and answers them as figures. */
  const rgb = (name: string): [number, number, number] => {
    context.fillStyle = "#000";
    context.fillStyle = named(name);
    const value = parseInt(context.fillStyle.slice(1), 16);
    return [value >> 16, (value >> 8) & 255, value & 255];
  };
  return {
    land: CLASSES.map((_, i) => rgb(`land-${i}`)),
    beltLow: rgb("belt-low"),
    beltHigh: rgb("belt-high"),
    beltEdge: rgb("belt-edge"),
    sea: named("sea"),
    coast: named("coast"),
    border: named("border"),
    isHatched: named("hatch") === "1",
    shading: Number(named("shading")),
  };
};

/** Draws relief, coast and borders of a view into a canvas, which it gives its size. */
export const drawGround = (
  context: CanvasRenderingContext2D,
  view: View,
  { relief, world, tints }: { readonly relief: Relief; readonly world: World; readonly tints: Tints },
): void => {
  const { canvas } = context;
  const density = densityOf();
  const [width, height] = [Math.round(view.width * density), Math.round(view.height * density)];
  if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  const image = context.createImageData(width, height);
  paintRelief(new Uint32Array(image.data.buffer), width, height, relief, view, tints);
  context.globalCompositeOperation = "source-over";
  context.putImageData(image, 0, 0);

  // The relief ends at the true coast: its cells of 37 km never show as a shore.
  context.beginPath();
  trace(context, world.land, view, density);
  context.globalCompositeOperation = "destination-in";
  context.fill("evenodd");
  context.globalCompositeOperation = "destination-over";
  context.fillStyle = tints.palette.sea;
  context.fillRect(0, 0, width, height);

  context.globalCompositeOperation = "source-over";
  context.lineJoin = "round";
  context.lineWidth = Math.min(1, Math.max(0.4, view.scale / 400)) * density;
  context.setLineDash([]);
  context.strokeStyle = tints.palette.coast;
  context.stroke();
  if (view.scale > BORDERS_FROM) {
    context.beginPath();
    trace(context, world.borders, view, density);
    context.setLineDash([3 * density, 2 * density]);
    context.strokeStyle = tints.palette.border;
    context.stroke();
  }
};

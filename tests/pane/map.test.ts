import { readFileSync } from "node:fs";
import { join } from "node:path";
import { geoDistance, geoMercator } from "d3-geo";
import type { Topology } from "topojson-specification";
import { placeLabels } from "../../taskpane/views/places/map/labels";
import { groundAt, paintRelief, readRelief, tintsOf, type Palette } from "../../taskpane/views/places/map/relief";
import {
  around,
  dragged,
  isInView,
  kmPerPixel,
  toMap,
  toWorld,
  wholeWorld,
  zoomed,
} from "../../taskpane/views/places/map/view";
import { isLand, readWorld, trace } from "../../taskpane/views/places/map/world";

const file = (name: string): Buffer => readFileSync(join(__dirname, "../../functions/network", name));
const bytes = file("relief.i8");
const relief = readRelief(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
if (!relief) throw new Error("functions/network/relief.i8 is damaged");
const world = readWorld(JSON.parse(file("coast.json").toString()) as Topology);

const pane = wholeWorld(400, 250);
const alps = { latitude: 46.5, longitude: 9.8 };

// d3-geo is the projection's independent maker.
test("places lie where the Mercator projection of d3-geo has them, and come back", () => {
  const view = around(alps, 700, pane);
  const projection = geoMercator()
    .scale(view.scale)
    .rotate([-view.longitude, 0])
    .translate([200, 125 + view.scale * view.northing]);
  for (const [latitude, longitude] of [
    [46.5, 9.8],
    [44, 7],
    [49.2, 14.4],
  ] as const) {
    const [x, y] = toMap(view, { latitude, longitude });
    const [px, py] = projection([longitude, latitude]) as [number, number];
    expect(x).toBeCloseTo(px, 3);
    expect(y).toBeCloseTo(py, 3);
    expect(toWorld(view, x, y).latitude).toBeCloseTo(latitude, 6);
    expect(toWorld(view, x, y).longitude).toBeCloseTo(longitude, 6);
  }
  const far = toWorld(view, 400, 125);
  const km = geoDistance([alps.longitude, alps.latitude], [far.longitude, far.latitude]) * 6371.0088;
  expect(Math.abs(km - 350)).toBeLessThan(2);
  expect(kmPerPixel(view) * 400).toBeCloseTo(700, 0);
});

test("what lies under the pointer stays there while one zooms; no view leaves the world or comes closer than 200 km", () => {
  const view = around(alps, 2000, pane);
  const spot = toWorld(view, 90, 60);
  const [x, y] = toMap(zoomed(view, 2, 90, 60), spot);
  expect([x, y].map((value) => Math.round(value))).toEqual([90, 60]);
  expect(kmPerPixel(zoomed(view, 1e6)) * 400).toBeCloseTo(200, 0);
  expect(zoomed(view, 1e-6).scale).toBeCloseTo(400 / (2 * Math.PI), 6);
  // Over the date line, and never over the pole.
  const pacific = dragged(around({ latitude: 0, longitude: 179 }, 2000, pane), -100, 0);
  expect(pacific.longitude).toBeLessThan(-175);
  expect(isInView(pacific, { latitude: 0, longitude: 179.5 })).toBe(true);
  expect(toWorld(dragged(view, 0, 1e6), 200, 0).latitude).toBeCloseTo(83, 3);
});

// Known places: on land, in the sea, at the date line and at the far south.
test.each([
  ["Alps", 46.5, 9.8, true],
  ["Andes", -13.5, -72, true],
  ["Chukotka, beyond the date line", 66.5, -172, true],
  ["Siberia", 68, 179, true],
  ["Antarctica", -80, 100, true],
  ["mid Atlantic", 30, -40, false],
  ["Pacific at the date line", 0, 180, false],
  ["Bay of Biscay", 45.5, -5, false],
  ["north of everything", 88, 0, false],
])("%s", (_, latitude, longitude, land) => {
  expect(isLand(world, { latitude, longitude })).toBe(land);
});

test("the ground of a place is its cell's mean; a damaged file is no relief", () => {
  // The grid's own file: row 130 and column 569 from the north-west corner.
  expect(groundAt(relief, alps)).toBe(bytes.readInt8(130 * 1080 + 569) * 50);
  expect(groundAt(relief, alps)).toBeGreaterThan(1500);
  expect(groundAt(relief, { latitude: 30, longitude: -40 })).toBe(0);
  expect(groundAt(relief, { latitude: -90, longitude: 180 })).toBeGreaterThanOrEqual(0);
  expect(readRelief(new ArrayBuffer(10))).toBeUndefined();
});

const grey = (value: number) => [value, value, value] as const;
const palette: Palette = {
  land: [10, 20, 30, 40, 50, 60].map(grey),
  beltLow: [200, 0, 0],
  beltHigh: [0, 200, 0],
  beltEdge: [0, 0, 200],
  sea: "",
  coast: "",
  border: "",
  isHatched: false,
  shading: 0,
};

test("a pixel has the colour of its class, and the band's where the ground lies in it", () => {
  const view = around(alps, 200, pane);
  const ground = groundAt(relief, toWorld(view, 200, 125));
  const painted = (low: number, high: number): number => {
    const pixels = new Uint32Array(400 * 250);
    paintRelief(pixels, 400, 250, relief, view, tintsOf({ low, high }, palette));
    return pixels[125 * 400 + 200] as number;
  };
  // The middle of the view need not be the middle of a cell: within 500 m of its mean.
  expect(painted(ground - 500, ground + 2000) & 0xff).toBe(200);
  expect((painted(ground - 2000, ground + 500) >> 8) & 0xff).toBe(200);
  expect([30, 40]).toContain(painted(5000, 6000) & 0xff);
});

test("a coast is drawn whole where it is seen, and for next to nothing where it is not", () => {
  const drawn = (view: typeof pane): { points: number; seen: number } => {
    let points = 0;
    let seen = 0;
    const point = (x: number, y: number): void => {
      points++;
      if (x >= 0 && x <= 400 && y >= 0 && y <= 250) seen++;
    };
    trace({ moveTo: point, lineTo: point } as unknown as CanvasRenderingContext2D, world.land, view, 1);
    return { points, seen };
  };
  const near = drawn(around({ latitude: 44, longitude: 9 }, 300, pane));
  expect(near.seen).toBeGreaterThan(10);
  expect(near.points).toBeLessThan(2000);
  expect(drawn(around({ latitude: 30, longitude: -40 }, 300, pane)).seen).toBe(0);
  expect(drawn(pane).seen).toBeGreaterThan(2000);
});

test("labels cover neither one another nor what is covered, shorten, and give up", () => {
  const one = { texts: ["A long name 1234 m", "A"], x: 50, y: 50, gap: 8 };
  const [first, second, third] = placeLabels([one, one, one], [], 140, 100);
  expect([first?.text, second?.text]).toEqual(["A", "A"]);
  expect(third && [first, second].some((other) => other?.x === third.x && other.y === third.y)).toBe(false);
  expect(placeLabels([one], [{ left: 0, top: 0, right: 140, bottom: 100 }], 140, 100)).toEqual([]);
  expect(placeLabels([one], [], 400, 100)[0]?.text).toBe("A long name 1234 m");
});

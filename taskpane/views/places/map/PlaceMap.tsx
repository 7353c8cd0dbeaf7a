import { useEffect, useId, useRef, useState, type KeyboardEvent } from "react";
import type { Network } from "../../../../functions/network/network";
import type { Station } from "../../../../functions/network/station";
import { Button } from "../../../components/Button";
import { usePane } from "../../context";
import type { Belt, Spot } from "../readPlace";
import type { Speaking } from "../speaking";
import { degrees, direction, metres, standingWords } from "../words";
import { Marks } from "./Marks";
import { groundAt, type Relief } from "./relief";
import { useGround } from "./useGround";
import { useHands, type Hands } from "./useHands";
import { around, dragged, isInView, kmPerPixel, resized, toMap, toWorld, wholeWorld, zoomed, type View } from "./view";
import { isLand, type World } from "./world";

/** km across when a place has been typed. */
const AT_PLACE = 700;
/** km across when a station has been asked for. */
const AT_STATION = 600;
/** px that an arrow key moves the cross; with Shift, and with Ctrl. */
const STEPS = { plain: 8, long: 40, short: 1 } as const;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** px from the edge at which the map follows the cross. */
const EDGE = 30;
/** ms after the last key: a reader hears where the cross has come to rest. */
const SILENCE = 350;

export interface Land {
  readonly relief: Relief;
  readonly world: World;
}

/** What the ground is, in words: a cell of the relief is a mean over 37 km. */
export const groundInWords = ({ relief, world }: Land, spot: Spot, belt: Belt | undefined): string => {
  if (!isLand(world, spot)) return "In the sea, or on an island too small for this map.";
  const ground = groundAt(relief, spot);
  return `Ground about ${metres(ground)} on average over 37 km${belt ? `, ${standingWords(ground, belt)}` : ""}.`;
};

interface PlaceMapProps {
  readonly network: Network;
  readonly land: Land;
  readonly best: readonly Speaking[];
  readonly bestAt: (spot: Spot) => Speaking | undefined;
  readonly spot: Spot | undefined;
  readonly belt: Belt | undefined;
  /** A station of the list that is being looked at, and one that was asked for. */
  readonly lit: Station | undefined;
  readonly shown: Station | undefined;
  readonly onPick: (spot: Spot) => void;
}

export const PlaceMap = ({ network, land, best, bestAt, spot, belt, lit, shown, onPick }: PlaceMapProps) => {
  const { theme } = usePane();
  const host = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const field = useRef<HTMLDivElement>(null);
  const [view, setView] = useState<View | undefined>();
  const [cross, setCross] = useState<Spot | undefined>();
  const [said, setSaid] = useState("");
  const [hint, setHint] = useState(false);
  const picked = useRef<Spot | undefined>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const keys = useId();

  // A map in a pane that is not laid out yet has no size.
  useEffect(() => {
    const element = host.current;
    if (!element) return undefined;
    const watch = new ResizeObserver(() => {
      const { clientWidth: width, clientHeight: height } = element;
      if (width === 0 || height === 0) return;
      setView((before) => (before ? resized(before, width, height) : wholeWorld(width, height)));
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  useEffect(() => () => clearTimeout(timer.current), []);

  // What was typed comes into view; what was picked is there already.
  const [latitude, longitude] = [spot?.latitude, spot?.longitude];
  const hasSize = view !== undefined;
  useEffect(() => {
    if (latitude === undefined || longitude === undefined || !hasSize) return;
    setCross(undefined);
    const here = { latitude, longitude };
    if (picked.current?.latitude === latitude && picked.current.longitude === longitude) return;
    setView((before) => before && around(here, AT_PLACE, before));
  }, [latitude, longitude, hasSize]);
  useEffect(() => {
    if (shown) setView((before) => before && around(shown, AT_STATION, before));
  }, [shown]);

  useGround(canvas, land.relief, land.world, view, belt, theme);

  const say = (words: string): void => {
    clearTimeout(timer.current);
    setSaid(words);
  };
  const sayWhere = (before: string, at: Spot): void => {
    clearTimeout(timer.current);
    timer.current = setTimeout(() => {
      const first = bestAt(at);
      const station = first
        ? ` Best station ${first.name}, ${Math.round(first.km)} km ${direction(at, first.station)}.`
        : "";
      setSaid(`${before}${degrees(at)}. ${groundInWords(land, at, belt)}${station}`);
    }, SILENCE);
  };
  const pick = (at: Spot): void => {
    // As it will stand in the fields.
    const rounded = { latitude: Math.round(at.latitude * 100) / 100, longitude: Math.round(at.longitude * 100) / 100 };
    picked.current = rounded;
    setCross(undefined);
    onPick(rounded);
    sayWhere("Picked: ", rounded);
  };
  const change = (next: View): void => {
    setView(next);
    setHint(false);
    say(`The map is ${Math.round(next.width * kmPerPixel(next))} km across.`);
  };
  const middle = (of: View): Spot => toWorld(of, of.width / 2, of.height / 2);
  const hereIn = (of: View): Spot => {
    const at = cross ?? spot;
    return at && isInView(of, at) ? at : middle(of);
  };
  // About the cross where it can be seen, so that it stays.
  const zoom = (factor: number): void => {
    if (view) change(zoomed(view, factor, ...toMap(view, hereIn(view))));
  };
  const world = (): void => {
    if (view) change(wholeWorld(view.width, view.height));
  };

  const hands = useRef<Hands | null>(null);
  hands.current = {
    move: (next) => setView((before) => before && next(before)),
    tap: (x, y) => view && pick(toWorld(view, x, y)),
    passed: () => setHint(true),
  };
  useHands(field, hands);

  const press = (event: KeyboardEvent): void => {
    const arrow = ARROWS[event.key];
    if (!view || event.altKey || event.metaKey || (event.ctrlKey && !arrow)) return;
    if (arrow) {
      const by = event.shiftKey ? STEPS.long : event.ctrlKey ? STEPS.short : STEPS.plain;
      const [x, y] = toMap(view, hereIn(view));
      const next = toWorld(view, x + arrow[0] * by, Math.min(view.height - 1, Math.max(1, y + arrow[1] * by)));
      const [cx, cy] = toMap(view, next);
      const inside = (value: number, size: number): number => Math.min(size - EDGE, Math.max(EDGE, value));
      setCross(next);
      setView(dragged(view, inside(cx, view.width) - cx, inside(cy, view.height) - cy));
      sayWhere("", next);
    } else if (event.key === "Enter" || event.key === " ") pick(hereIn(view));
    else if (event.key === "+" || event.key === "=") zoom(1.5);
    else if (event.key === "-") zoom(1 / 1.5);
    else if (event.key === "0" || event.key === "Home") world();
    else if (event.key === "Escape" && cross) {
      setCross(undefined);
      say(spot ? `Cross back at ${degrees(spot)}.` : "Cross taken away.");
    } else return;
    event.preventDefault();
  };

  return (
    <>
      <div className="map" ref={host}>
        <canvas ref={canvas} aria-hidden="true" />
        {view && (
          <Marks view={view} stations={network.stations} best={best} belt={belt} spot={spot} cross={cross} lit={lit} />
        )}
        <div
          className="ground"
          ref={field}
          tabIndex={0}
          role="application"
          aria-roledescription="map"
          aria-label="Map of stations"
          aria-describedby={keys}
          onKeyDown={press}
          onBlur={() => setHint(false)}
        />
        <div className="zoom">
          <Button aria-label="Closer" onClick={() => zoom(2)}>
            +
          </Button>
          <Button aria-label="Farther" onClick={() => zoom(0.5)}>
            −
          </Button>
          <Button aria-label="Whole world" onClick={world}>
            <svg viewBox="-8 -8 16 16" aria-hidden="true">
              <path d="M-6.5,0a6.5,6.5 0 1 0 13,0a6.5,6.5 0 1 0 -13,0zM-6.5,0h13M0,-6.5c-4,4 -4,9 0,13c4,-4 4,-9 0,-13" />
            </svg>
          </Button>
        </div>
        {hint && <p className="hint">Click the map first, or hold Ctrl, to zoom with the wheel.</p>}
      </div>
      <p className="unseen" id={keys}>
        Arrow keys move the cross, with Shift in long steps, with Control in short ones. Enter picks the place. Plus and
        minus zoom, 0 shows the whole world, Escape takes the cross back. The list below says the same in words.
      </p>
      <p className="unseen" role="status">
        {said}
      </p>
    </>
  );
};

import { useEffect, type RefObject } from "react";
import { dragged, zoomed, type View } from "./view";

/** px that a hand may tremble while it taps. */
const TAP = 4;

export interface Hands {
  /** Answers the next view from the last. */
  readonly move: (next: (view: View) => View) => void;
  readonly tap: (x: number, y: number) => void;
  /** The wheel was turned over a map that it does not zoom, because it would hold up the pane's own scrolling. */
  readonly passed: () => void;
}

/** Mouse, pen and fingers: one drags, two zoom, a tap picks; the wheel zooms a map that has the focus, or with Ctrl. */
export const useHands = (field: RefObject<HTMLElement>, hands: RefObject<Hands>): void => {
  useEffect(() => {
    const element = field.current;
    if (!element) return undefined;
    const down = new Map<number, readonly [x: number, y: number]>();
    let way = 0;
    const local = (event: MouseEvent): readonly [number, number] => {
      const box = element.getBoundingClientRect();
      return [event.clientX - box.left, event.clientY - box.top];
    };
    const apart = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number =>
      Math.max(1, Math.hypot(ax - bx, ay - by));

    const press = (event: PointerEvent): void => {
      element.setPointerCapture(event.pointerId);
      if (down.size === 0) way = 0;
      down.set(event.pointerId, local(event));
    };
    const moveTo = (event: PointerEvent): void => {
      const was = down.get(event.pointerId);
      if (!was) return;
      const now = local(event);
      const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
      way += Math.hypot(now[0] - was[0], now[1] - was[1]);
      down.set(event.pointerId, now);
      if (way < TAP) return;
      // Of two fingers each moves the middle by half.
      const share = other ? 2 : 1;
      hands.current?.move((view) => {
        const next = dragged(view, (now[0] - was[0]) / share, (now[1] - was[1]) / share);
        return other
          ? zoomed(next, apart(now, other) / apart(was, other), (now[0] + other[0]) / 2, (now[1] + other[1]) / 2)
          : next;
      });
    };
    const release = (event: PointerEvent): void => {
      if (event.type === "pointerup" && down.size === 1 && way < TAP) hands.current?.tap(...local(event));
      // The last finger of two is no tap.
      if (down.delete(event.pointerId) && down.size > 0) way = TAP;
    };
    const turn = (event: WheelEvent): void => {
      if (document.activeElement !== element && !event.ctrlKey) {
        hands.current?.passed();
        return;
      }
      event.preventDefault();
      // Some count in lines; a touch pad that is pinched is a wheel with Ctrl.
      const pixels = event.deltaY * (event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1);
      const steps = Math.min(1, Math.max(-1, -pixels / (event.ctrlKey ? 60 : 250)));
      hands.current?.move((view) => zoomed(view, 2 ** steps, ...local(event)));
    };
    element.addEventListener("pointerdown", press);
    element.addEventListener("pointermove", moveTo);
    element.addEventListener("pointerup", release);
    element.addEventListener("pointercancel", release);
    element.addEventListener("wheel", turn, { passive: false });
    return () => {
      element.removeEventListener("pointerdown", press);
      element.removeEventListener("pointermove", moveTo);
      element.removeEventListener("pointerup", release);
      element.removeEventListener("pointercancel", release);
      element.removeEventListener("wheel", turn);
    };
  }, [field, hands]);
};

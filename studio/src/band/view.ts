/**
 * Which part of the band is seen, and how large. Pure: every function gives a new view.
 *
 * Properties (view.test.ts):
 *  (1) zooming about a point keeps what lies under the point, as long as the band is not held back at its edge
 *  (2) a pinch takes what lay between the fingers along with them
 *  (3) a clamped view clamped again is the same; one that fits is seen whole
 */
import { type Mm, mm, type Px, px } from '../engine/units';
import { extentOf, type Lattice } from './lattice';

/** `left` and `top` are the band's millimetres at the upper left corner of the window. */
export interface View {
  /** Pixels a millimetre. */
  readonly scale: number;
  readonly left: Mm;
  readonly top: Mm;
}

/** The window on the page, and the room round the band that is kept for row numbers and marks. */
export interface Frame {
  readonly width: Px;
  readonly height: Px;
  readonly margin: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The largest a bead is shown, along the edge. */
const largestBead = px(96);

export const toMm = (view: View, spot: Spot) => ({
  x: mm(view.left + spot.x / view.scale),
  y: mm(view.top + spot.y / view.scale),
});

export const toPx = (view: View, at: { readonly x: number; readonly y: number }) => ({
  x: px((at.x - view.left) * view.scale),
  y: px((at.y - view.top) * view.scale),
});

const roomOf = ({ width, height, margin }: Frame) => ({
  width: Math.max(1, width - margin.left - margin.right),
  height: Math.max(1, height - margin.top - margin.bottom),
});

/** The scale at which the whole band is seen. */
export function fittingScale(lattice: Lattice, frame: Frame): number {
  const extent = extentOf(lattice);
  const room = roomOf(frame);
  const greatest = largestBead / lattice.edgeMm;
  return Math.min(room.width / extent.width, room.height / extent.height, greatest);
}

export function scaleLimits(lattice: Lattice, frame: Frame): { least: number; greatest: number } {
  return { least: fittingScale(lattice, frame), greatest: largestBead / lattice.edgeMm };
}

/** The whole band in the middle of the window. */
export function fit(lattice: Lattice, frame: Frame): View {
  return clamp({ scale: fittingScale(lattice, frame), left: mm(0), top: mm(0) }, lattice, frame);
}

/** Along one axis: in the middle where all of it is seen, else no further than its ends. */
function held(
  start: number,
  extent: number,
  scale: number,
  window: number,
  before: number,
  after: number,
): number {
  const room = window - before - after;
  const spare = room - extent * scale;
  if (spare >= -1e-6) return -(before + spare / 2) / scale;
  return Math.min(Math.max(start, -before / scale), extent - (window - after) / scale);
}

export function clamp(view: View, lattice: Lattice, frame: Frame): View {
  const { least, greatest } = scaleLimits(lattice, frame);
  const scale = Math.min(Math.max(view.scale, least), greatest);
  const extent = extentOf(lattice);
  const { left, right, top, bottom } = frame.margin;
  return {
    scale,
    left: mm(held(view.left, extent.width, scale, frame.width, left, right)),
    top: mm(held(view.top, extent.height, scale, frame.height, top, bottom)),
  };
}

/** `by` times as large, what lies under the spot staying there. The scale is limited before the place is found. */
export function zoomAbout(view: View, spot: Spot, by: number, lattice: Lattice, frame: Frame): View {
  const { least, greatest } = scaleLimits(lattice, frame);
  const scale = Math.min(Math.max(view.scale * by, least), greatest);
  const at = toMm(view, spot);
  return clamp({ scale, left: mm(at.x - spot.x / scale), top: mm(at.y - spot.y / scale) }, lattice, frame);
}

export const panBy = (view: View, dx: number, dy: number, lattice: Lattice, frame: Frame): View =>
  clamp(
    { ...view, left: mm(view.left - dx / view.scale), top: mm(view.top - dy / view.scale) },
    lattice,
    frame,
  );

export type Fingers = readonly [Spot, Spot];

const between = ([a, b]: Fingers): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const apart = ([a, b]: Fingers): number => Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));

/** Two fingers that went from one pair of places to another. */
export function pinch(view: View, from: Fingers, to: Fingers, lattice: Lattice, frame: Frame): View {
  const { least, greatest } = scaleLimits(lattice, frame);
  const scale = Math.min(Math.max((view.scale * apart(to)) / apart(from), least), greatest);
  const at = toMm(view, between(from));
  const spot = between(to);
  return clamp({ scale, left: mm(at.x - spot.x / scale), top: mm(at.y - spot.y / scale) }, lattice, frame);
}

/** What a turn of the wheel asks: with a key held (or a pinch on a touchpad) a zoom, else a pan. Modes are lines and pages in WheelEvent's count. */
export function wheelled(
  view: View,
  wheel: Spot & { dx: number; dy: number; mode: number; zooms: boolean; sideways: boolean },
  lattice: Lattice,
  frame: Frame,
): View {
  const unit = wheel.mode === 1 ? 16 : wheel.mode === 2 ? frame.height : 1;
  if (wheel.zooms) return zoomAbout(view, wheel, Math.exp(-wheel.dy * unit * 0.0022), lattice, frame);
  const [dx, dy] = wheel.sideways && wheel.dx === 0 ? [wheel.dy, 0] : [wheel.dx, wheel.dy];
  return panBy(view, -dx * unit, -dy * unit, lattice, frame);
}

/** Just far enough that a box is wholly seen, with a little round it. */
export function revealed(
  view: View,
  box: { x: number; y: number; width: number; height: number },
  lattice: Lattice,
  frame: Frame,
): View {
  const round = 12 / view.scale;
  const { margin } = frame;
  const shifted = (
    start: number,
    at: number,
    size: number,
    window: number,
    before: number,
    after: number,
  ): number => {
    const low = at - round - before / view.scale;
    const high = at + size + round - (window - after) / view.scale;
    return start > low ? low : start < high ? high : start;
  };
  return clamp(
    {
      ...view,
      left: mm(shifted(view.left, box.x, box.width, frame.width, margin.left, margin.right)),
      top: mm(shifted(view.top, box.y, box.height, frame.height, margin.top, margin.bottom)),
    },
    lattice,
    frame,
  );
}

/** The part of the band that is seen, in millimetres and no further than the band. */
export function seen(view: View, lattice: Lattice, frame: Frame) {
  const extent = extentOf(lattice);
  const x = Math.max(0, view.left);
  const y = Math.max(0, view.top);
  return {
    x: mm(x),
    y: mm(y),
    width: mm(Math.max(0, Math.min(extent.width, view.left + frame.width / view.scale) - x)),
    height: mm(Math.max(0, Math.min(extent.height, view.top + frame.height / view.scale) - y)),
  };
}

/** The view with a point of the band in its middle. */
export const centredOn = (view: View, at: Spot, lattice: Lattice, frame: Frame): View =>
  clamp(
    {
      ...view,
      left: mm(at.x - frame.width / 2 / view.scale),
      top: mm(at.y - frame.height / 2 / view.scale),
    },
    lattice,
    frame,
  );

import { describe, expect, it } from 'vitest';

import { px } from '../engine/units';
import { extentOf } from './lattice';
import { lattice, seeded, squares } from './testing';
import {
  centredOn,
  clamp,
  fit,
  type Fingers,
  type Frame,
  panBy,
  pinch,
  revealed,
  scaleLimits,
  seen,
  toMm,
  toPx,
  type View,
  wheelled,
  zoomAbout,
} from './view';

const frame: Frame = {
  width: px(800),
  height: px(600),
  margin: { left: 46, right: 146, top: 22, bottom: 22 },
};
const bands = [lattice(6, 24), lattice(200, 300), lattice(10, 110), squares(21, 41), lattice(1, 1)];
const large = lattice(200, 300);
/** A place where the band reaches past the window on every side. */
const amid: View = centredOn({ ...fit(large, frame), scale: 20 }, { x: 130, y: 250 }, large, frame);

describe('fit', () => {
  it('shows the whole band within its margins', () => {
    for (const on of bands) {
      const view = fit(on, frame);
      const extent = extentOf(on);
      const upper = toPx(view, { x: 0, y: 0 });
      const lower = toPx(view, { x: extent.width, y: extent.height });
      expect(upper.x).toBeGreaterThanOrEqual(frame.margin.left - 1e-6);
      expect(upper.y).toBeGreaterThanOrEqual(frame.margin.top - 1e-6);
      expect(lower.x).toBeLessThanOrEqual(frame.width - frame.margin.right + 1e-6);
      expect(lower.y).toBeLessThanOrEqual(frame.height - frame.margin.bottom + 1e-6);
    }
  });
  it('survives a window without room', () => {
    const none = fit(large, { ...frame, width: px(10), height: px(10) });
    expect(Number.isFinite(none.left) && none.scale > 0).toBe(true);
  });
});

describe('clamp', () => {
  it('done twice is done once', () => {
    const random = seeded(3);
    for (const on of bands)
      for (let i = 0; i < 50; ++i) {
        const wild = {
          scale: 0.1 + random(100),
          left: (random(900) - 400) as View['left'],
          top: (random(900) - 400) as View['top'],
        };
        const once = clamp(wild, on, frame);
        const twice = clamp(once, on, frame);
        expect(twice.left).toBeCloseTo(once.left, 9);
        expect(twice.top).toBeCloseTo(once.top, 9);
        expect(twice.scale).toBe(once.scale);
      }
  });
});

describe('zoom', () => {
  it('keeps what lies under the pointer', () => {
    const random = seeded(5);
    for (let i = 0; i < 100; ++i) {
      const spot = { x: 100 + random(500), y: 50 + random(500) };
      const by = 0.8 + random(40) / 100;
      const after = zoomAbout(amid, spot, by, large, frame);
      expect(toMm(after, spot).x).toBeCloseTo(toMm(amid, spot).x, 6);
      expect(toMm(after, spot).y).toBeCloseTo(toMm(amid, spot).y, 6);
    }
  });
  it('keeps it also where the scale comes to its limit', () => {
    const spot = { x: 300, y: 300 };
    const after = zoomAbout(amid, spot, 1000, large, frame);
    expect(after.scale).toBe(scaleLimits(large, frame).greatest);
    expect(toMm(after, spot).x).toBeCloseTo(toMm(amid, spot).x, 6);
  });
  it('out ends with the whole band', () => {
    expect(zoomAbout(amid, { x: 10, y: 10 }, 1e-6, large, frame)).toEqual(fit(large, frame));
  });
  it('by the wheel goes in when it turns up and out when it turns down', () => {
    const wheel = { x: 300, y: 300, dx: 0, dy: -100, mode: 0, zooms: true, sideways: false };
    expect(wheelled(amid, wheel, large, frame).scale).toBeGreaterThan(amid.scale);
    expect(wheelled(amid, { ...wheel, dy: 100 }, large, frame).scale).toBeLessThan(amid.scale);
    const panned = wheelled(amid, { ...wheel, dy: 40, zooms: false }, large, frame);
    expect(panned.top).toBeCloseTo(amid.top + 40 / amid.scale, 9);
    const sideways = wheelled(amid, { ...wheel, dy: 40, zooms: false, sideways: true }, large, frame);
    expect(sideways.left).toBeCloseTo(amid.left + 40 / amid.scale, 9);
  });
});

describe('pan and pinch', () => {
  it('a pan takes the band along with the hand', () => {
    const after = panBy(amid, 31, -17, large, frame);
    expect(toPx(after, toMm(amid, { x: 200, y: 200 })).x).toBeCloseTo(231, 6);
    expect(toPx(after, toMm(amid, { x: 200, y: 200 })).y).toBeCloseTo(183, 6);
  });
  it('a pinch takes what lay between the fingers along', () => {
    const from: Fingers = [
      { x: 200, y: 200 },
      { x: 300, y: 300 },
    ];
    const to: Fingers = [
      { x: 190, y: 230 },
      { x: 330, y: 370 },
    ];
    const after = pinch(amid, from, to, large, frame);
    const at = toMm(amid, { x: 250, y: 250 });
    expect(toPx(after, at).x).toBeCloseTo(260, 6);
    expect(toPx(after, at).y).toBeCloseTo(300, 6);
    expect(after.scale).toBeCloseTo(amid.scale * 1.4, 9);
  });
});

describe('what is seen', () => {
  it('is brought in just far enough', () => {
    const box = { x: 10, y: 10, width: 1.35, height: 1.66 };
    const after = revealed(amid, box, large, frame);
    const at = toPx(after, box);
    expect(at.x).toBeGreaterThanOrEqual(frame.margin.left);
    expect(at.y).toBeGreaterThanOrEqual(frame.margin.top);
    expect(revealed(after, box, large, frame)).toEqual(after);
    const inside = { x: amid.left + 15, y: amid.top + 15, width: 1, height: 1 };
    expect(revealed(amid, inside, large, frame)).toEqual(amid);
  });
  it('is no more than the band', () => {
    for (const on of bands) {
      const part = seen(fit(on, frame), on, frame);
      const extent = extentOf(on);
      expect(part.width).toBeCloseTo(extent.width, 6);
      expect(part.height).toBeCloseTo(extent.height, 6);
    }
  });
});

import { beforeEach, describe, expect, it } from 'vitest';

import { px } from '../engine/units';
import { BandPainter, type Scene } from './painter';
import { holdsBead, type Lattice } from './lattice';
import type { MakeSurface, Pen, Surface } from './surface';
import { filledWith, lattice, legend, squares } from './testing';
import { fit, type Frame, panBy, type View, zoomAbout } from './view';

/** What a pen was asked for, by name. */
type Counts = Map<string, number>;

interface Watched extends Surface {
  readonly counts: Counts;
}

/** A pen that paints nothing and counts. */
function watchedSurface(width: number, height: number, all: Watched[]): Watched {
  const counts: Counts = new Map();
  const image = (w: number, h: number) => ({ width: w, height: h, data: new Uint8ClampedArray(4 * w * h) });
  const pen = new Proxy<Record<string, unknown>>(
    {},
    {
      get: (held, name: string) => {
        if (name in held) return held[name];
        return (...given: number[]) => {
          counts.set(name, (counts.get(name) ?? 0) + 1);
          if (name === 'createImageData') return image(given[0] ?? 1, given[1] ?? 1);
          if (name === 'getImageData') return image(given[2] ?? 1, given[3] ?? 1);
          if (name.startsWith('create')) return { addColorStop: () => undefined };
          return undefined;
        };
      },
      set: (held, name: string, value) => {
        held[name] = value;
        return true;
      },
    },
  );
  const surface = { canvas: { width, height } as HTMLCanvasElement, pen: pen as unknown as Pen, counts };
  all.push(surface);
  return surface;
}

const frame: Frame = {
  width: px(900),
  height: px(700),
  margin: { left: 40, right: 40, top: 20, bottom: 20 },
};

describe('painter', () => {
  let made: Watched[] = [];
  const make: MakeSurface = (width, height) => watchedSurface(width, height, made);
  const total = (name: string) => made.reduce((sum, { counts }) => sum + (counts.get(name) ?? 0), 0);
  const options = { budget: 1000, now: () => 0, moving: false };

  beforeEach(() => {
    made = [];
  });

  const scene = (on: Lattice, beads = filledWith(on).beads): Scene => ({
    lattice: on,
    beads,
    legend,
    letters: false,
    outline: '#888',
    font: 'Lato',
  });

  function settled(painter: BandPainter, view: View): number {
    let rounds = 0;
    while (painter.unfinished(view, frame, 1) && rounds < 100) {
      painter.work(view, frame, 1, options);
      rounds += 1;
    }
    expect(painter.unfinished(view, frame, 1)).toBe(false);
    return rounds;
  }

  it('repaints exactly the cells that changed', () => {
    const on = lattice(6, 24);
    const view = fit(on, frame);
    const painter = new BandPainter(make);
    const first = scene(on);
    painter.update(first);
    settled(painter, view);
    const before = total('putImageData');
    const beads = first.beads.slice();
    beads[7] = 1;
    beads[11] = 2;
    expect(painter.update({ ...first, beads })).toBe(2);
    // Both lie within one tile: a sprite each.
    expect(total('putImageData') - before).toBe(2);
    expect(painter.unfinished(view, frame, 1)).toBe(false);
  });

  it('finds what was written into the same array', () => {
    const on = lattice(6, 24);
    const painter = new BandPainter(make);
    const first = scene(on);
    painter.update(first);
    first.beads[3] = 1;
    expect(painter.update(first)).toBe(1);
    expect(painter.update(first)).toBe(0);
  });

  it('paints no bead in a frame in which nothing changed', () => {
    const on = lattice(60, 90);
    const painter = new BandPainter(make);
    painter.update(scene(on));
    const view = zoomAbout(fit(on, frame), { x: 400, y: 300 }, 2, on, frame);
    settled(painter, view);
    const paints = () => total('putImageData') + total('roundRect') + total('getImageData');
    const before = paints();
    const window = watchedSurface(900, 700, []);
    for (let i = 0; i < 10; ++i) {
      const panned = panBy(view, i, -i, on, frame);
      painter.update(scene(on));
      painter.compose(window.pen, panned, frame, 1);
    }
    expect(paints()).toBe(before);
    expect(window.counts.get('drawImage')).toBeGreaterThan(0);
  });

  it('paints each bead of the legend once for each size', () => {
    const on = lattice(20, 30);
    const painter = new BandPainter(make);
    painter.update(scene(on, filledWith(on, ({ column }) => column % 3).beads));
    settled(painter, fit(on, frame));
    // Sizes differ by a pixel at most each way.
    expect(total('getImageData')).toBeLessThanOrEqual(3 * 4);
  });

  it('shows blocks from far off, and a changed cell is one block', () => {
    const on = lattice(200, 300);
    const view = fit(on, frame);
    const painter = new BandPainter(make);
    const first = scene(on);
    painter.update(first);
    expect(painter.unfinished(view, frame, 1)).toBe(false);
    const blocks = made[0];
    first.beads[1234] = 2;
    painter.update(first);
    expect(blocks?.counts.get('fillRect')).toBe(1);
    const window = watchedSurface(900, 700, []);
    painter.compose(window.pen, view, frame, 1);
    expect(window.counts.get('drawImage')).toBe(1);
  });

  it('shows a large change at once', () => {
    const on = lattice(60, 90);
    const view = fit(on, frame);
    const painter = new BandPainter(make);
    painter.update(scene(on));
    settled(painter, view);
    expect(painter.update(scene(on, filledWith(on, () => 1).beads))).toBe(60 * 90);
    expect(painter.unfinished(view, frame, 1)).toBe(true);
    painter.work(view, frame, 1, { ...options, budget: 0 });
    expect(painter.unfinished(view, frame, 1)).toBe(false);
  });

  it('waits while the scale changes and then paints a tile at least in every frame', () => {
    const on = lattice(60, 90);
    const painter = new BandPainter(make);
    painter.update(scene(on));
    const view = fit(on, frame);
    settled(painter, view);
    const nearer = zoomAbout(view, { x: 400, y: 300 }, 1.7, on, frame);
    const before = total('putImageData');
    painter.work(nearer, frame, 1, { ...options, moving: true });
    expect(total('putImageData')).toBe(before);
    let time = 0;
    painter.work(nearer, frame, 1, { budget: 1, now: () => (time += 10), moving: false });
    expect(total('putImageData')).toBe(before + 1);
  });

  it('lets go of what is far from the window', () => {
    const on = lattice(200, 300);
    const painter = new BandPainter(make);
    painter.update(scene(on));
    let view = zoomAbout(fit(on, frame), { x: 450, y: 350 }, 10, on, frame);
    for (let i = 0; i < 60; ++i) {
      view = panBy(view, i % 2 === 0 ? -300 : 40, -150, on, frame);
      settled(painter, view);
    }
    const held = made.filter(({ canvas }) => canvas.width === 512).length;
    // 900 x 700 is reached by 3 x 3 tiles at most, and 4 more are kept each way.
    expect(held).toBeLessThanOrEqual(7 * 7);
  });

  it('paints sides of squares and nothing between them', () => {
    const on = squares(7, 9);
    const painter = new BandPainter(make);
    const first = scene(on);
    painter.update(first);
    settled(painter, fit(on, frame));
    const before = total('putImageData');
    const beads = first.beads.slice();
    beads[0] = 1;
    expect(holdsBead(on, { column: 0, step: 0 })).toBe(false);
    painter.update({ ...first, beads });
    expect(total('putImageData')).toBe(before);
  });
});

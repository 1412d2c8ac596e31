import type { BufferGeometry, Material, Mesh, Scene } from 'three';
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

import type { Lattice } from '../band/lattice';
import { mm } from '../engine/units';
import type { BandItem, BeadSize, LegendBead, Piece, PlacedBand } from './beads';
import PieceView from './PieceView.svelte';
import RoundView from './RoundView.svelte';
import { ringOf } from './slide';
import type { Painter } from './stage';

/** What a renderer would hold until it is told to let go, over all painters. */
const held = { painters: 0, geometries: new Set<BufferGeometry>(), materials: new Set<Material>() };
const drawn = { frames: 0, calls: 0, passes: 0 };

function fakePainter(): Painter {
  held.painters++;
  const take = (mesh: Mesh) => {
    const { geometry, material } = mesh;
    if (!held.geometries.has(geometry)) {
      held.geometries.add(geometry);
      geometry.addEventListener('dispose', () => held.geometries.delete(geometry));
    }
    for (const one of Array.isArray(material) ? material : [material]) {
      if (held.materials.has(one)) continue;
      held.materials.add(one);
      one.addEventListener('dispose', () => held.materials.delete(one));
    }
  };
  return {
    slow: false,
    render: (scene: Scene) => {
      drawn.frames++;
      drawn.calls = 0;
      scene.traverseVisible((object) => {
        if (!('isMesh' in object)) return;
        const mesh = object as Mesh;
        take(mesh);
        const both = !Array.isArray(mesh.material) && mesh.material.transparent && mesh.material.side === 2;
        drawn.calls += both ? 2 : 1;
      });
    },
    setSize: () => undefined,
    figures: () => ({ calls: drawn.calls, triangles: 0 }),
    whenDrawn: (then) => then(),
    dispose: () => held.painters--,
  };
}

const size: BeadSize = { kind: 'cylinder', diameter: mm(1.6), length: mm(1.3), hole: mm(0.8), rim: mm(0.16) };
const legend: LegendBead[] = [
  { letter: 'A', name: 'sky', colour: '#1f3a5f', finish: 'opaque' },
  { letter: 'B', name: 'moon', colour: '#c8b27d', finish: 'transparent' },
];

function closedBand(columns: number, edge: number): PlacedBand {
  const lattice: Lattice = {
    columns,
    edge,
    drop: 1,
    holes: 'across',
    edgeRound: true,
    columnsRound: false,
    columnMm: mm(1.3),
    edgeMm: mm(1.6),
  };
  const cellOf = Uint32Array.from({ length: columns * edge }, (_, i) => i);
  const seats = Float32Array.from(
    Array.from(cellOf, (cell) => {
      const turn = (Math.PI * (2 * Math.floor(cell / columns) + ((cell % columns) % 2))) / edge;
      return [9 * Math.cos(turn), 4 * Math.sin(turn), ((cell % columns) - (columns - 1) / 2) * 1.3, 0, 0, 1];
    }).flat(),
  );
  const ring = ringOf(lattice, cellOf);
  const section = Array.from({ length: 24 }, (_, i) => ({
    x: 8 * Math.cos((i * Math.PI) / 12),
    y: 3 * Math.sin((i * Math.PI) / 12),
  }));
  const form = { kind: 'oval', section, length: mm(9), holes: [] };
  const thread = { mouths: Uint32Array.from([1, 2, 3, 4]), diameter: mm(0.15), colour: '#ffffff' };
  return { lie: 'closed', seats, cellOf, size, form, thread, ...(ring ? { ring } : {}) };
}

let queue: (FrameRequestCallback | undefined)[] = [];
let clock = 0;
/** Runs what has asked for a frame, once; how many there were. */
function frame(): number {
  flushSync();
  const asked = queue.filter((one) => one !== undefined);
  queue = [];
  clock += 50;
  for (const one of asked) one(clock);
  return asked.length;
}
function settle(): number {
  let frames = 0;
  while (frame() > 0) if (++frames > 100) throw new Error('it never stops asking for frames');
  return frames;
}

let quiet = false;
beforeEach(() => {
  queue = [];
  drawn.frames = 0;
  quiet = false;
  vi.stubGlobal('requestAnimationFrame', (one: FrameRequestCallback) => queue.push(one));
  vi.stubGlobal('cancelAnimationFrame', (id: number) => (queue[id - 1] = undefined));
  vi.stubGlobal('matchMedia', () => ({ matches: quiet }));
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(640);
  vi.spyOn(HTMLElement.prototype, 'clientHeight', 'get').mockReturnValue(480);
  vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 640, 480));
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  document.body.replaceChildren();
});

const band = closedBand(4, 12);
const cells = new Uint16Array(48).map((_, i) => (i % 5 === 0 ? 1 : 0));
const show = (more: Record<string, unknown> = {}) =>
  mount(RoundView, {
    target: document.body,
    props: { band, cells, legend, makePainter: fakePainter, ...more },
  });
function element(selector: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`no ${selector}`);
  return found;
}

describe('RoundView', () => {
  it('lets go of all it held, fifty times', async () => {
    const small = { band: closedBand(2, 6), cells: new Uint16Array(12), quality: 'low' };
    for (let i = 0; i < 50; i++) {
      const view = show(small);
      settle();
      if (i === 0) expect(held.geometries.size).toBeGreaterThanOrEqual(3);
      await unmount(view);
      expect(held.painters).toBe(0);
      expect(held.geometries.size).toBe(0);
      expect(held.materials.size).toBe(0);
      expect(settle()).toBe(0);
    }
    // Fifty pages on a busy machine.
  }, 300_000);

  it('listens to nothing after it is gone', async () => {
    const view = show();
    settle();
    const hands = element('.hands');
    await unmount(view);
    hands.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowLeft' }));
    expect(frame()).toBe(0);
  });

  it('draws once, and again only when something changes', async () => {
    const view = show();
    settle();
    const first = drawn.frames;
    expect(first).toBeGreaterThan(0);
    settle();
    expect(drawn.frames).toBe(first);
    element('.hands').dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowLeft' }));
    settle();
    expect(drawn.frames).toBe(first + 1);
    element('.hands').dispatchEvent(new KeyboardEvent('keydown', { key: 'q' }));
    settle();
    expect(drawn.frames).toBe(first + 1);
    await unmount(view);
  });

  it('slides bead by bead and then rests', async () => {
    const view = show();
    settle();
    const first = drawn.frames;
    element('.slide button:last-of-type').click();
    expect(settle()).toBeGreaterThan(2);
    expect(drawn.frames).toBeGreaterThan(first + 2);
    expect(element('output').textContent).toContain('1 of 12');
    element('.slide button').click();
    element('.slide button').click();
    settle();
    expect(element('output').textContent).toContain('11 of 12');
    await unmount(view);
  });

  it('slides at once where motion is unwelcome', async () => {
    quiet = true;
    const view = show();
    settle();
    const first = drawn.frames;
    element('.slide button:last-of-type').click();
    settle();
    expect(drawn.frames).toBe(first + 1);
    await unmount(view);
  });

  it('says what is in front', async () => {
    const view = show({ slide: 3, inFront: (slide: number) => `face ${slide}` });
    settle();
    expect(element('output').textContent).toContain('face 3');
    expect(element('input').getAttribute('aria-valuetext')).toContain('face 3');
    await unmount(view);
  });

  it('gives the bead in hand to the bead in the middle, and to none beside the piece', async () => {
    const painted: number[] = [];
    const view = show({ onpaint: ({ cell }: { cell: number }) => painted.push(cell) });
    settle();
    element('.hands').dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter' }));
    expect(painted).toHaveLength(1);
    // Seen from +y and a little from the right: a bead of the front.
    const cell = painted[0] ?? 0;
    expect(band.seats[6 * cell + 1]).toBeGreaterThan(2);
    const press = (x: number, y: number) => {
      for (const name of ['pointerdown', 'pointerup'])
        element('.hands').dispatchEvent(new MouseEvent(name, { clientX: x, clientY: y, button: 0 }));
    };
    press(2, 2);
    expect(painted).toHaveLength(1);
    press(320, 240);
    expect(painted).toEqual([cell, cell]);
    await unmount(view);
  });

  it('says so where nothing can be drawn', async () => {
    const view = show({ makePainter: () => undefined });
    settle();
    expect(element('.sorry').textContent).toContain('3D');
    await unmount(view);
  });
});

describe('PieceView', () => {
  it('draws eight bands of three finishes with forms, beads, cords and findings in at most twelve draws', async () => {
    const one = closedBand(6, 24);
    const bands: BandItem[] = Array.from({ length: 8 }, (_, i) => ({
      kind: 'band',
      transform: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 20 * i, 1],
      band: one,
      cells: new Uint16Array(144).map((_, cell) => (cell + i) % 2),
      legend,
    }));
    const at = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, -20, 1];
    const piece: Piece = {
      lie: 'hung',
      items: [
        ...bands,
        { kind: 'bead', transform: at, size, colour: '#aa3322', finish: 'metallic' },
        {
          kind: 'finding',
          transform: at,
          shape: { kind: 'ring', diameter: mm(8), wire: mm(1) },
          colour: '#ccaa44',
        },
      ],
      cords: [{ points: Float32Array.from([0, 0, 0, 0, 0, 160]), diameter: mm(0.6), colour: '#444444' }],
    };
    const view = mount(PieceView, { target: document.body, props: { piece, makePainter: fakePainter } });
    settle();
    expect(drawn.calls).toBeGreaterThan(4);
    expect(drawn.calls).toBeLessThanOrEqual(12);
    await unmount(view);
    expect(held.geometries.size).toBe(0);
    expect(held.materials.size).toBe(0);
  });
});

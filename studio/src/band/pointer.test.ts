import { describe, expect, it } from 'vitest';

import { px } from '../engine/units';
import type { Cell } from './cells';
import type { Worktop } from './drafts';
import { neighbours, reflection } from './grid';
import { boxOf } from './lattice';
import { cellOf, type Intent, sameCell } from './model';
import { type Place, PointerReader, type PointerSample } from './pointer';
import { filledWith, lattice, worktop } from './testing';
import { centredOn, fit, type Frame, toMm } from './view';

const frame: Frame = {
  width: px(600),
  height: px(800),
  margin: { left: 40, right: 40, top: 20, bottom: 20 },
};
const on = lattice(12, 30);
const view = fit(on, frame);

const place = (more: Partial<Worktop> = {}): Place => ({ top: worktop(on, more), view, frame });

function spotOf(cell: Cell) {
  const box = boxOf(on, cell);
  return {
    x: (box.x + box.width / 2 - view.left) * view.scale,
    y: (box.y + box.height / 2 - view.top) * view.scale,
  };
}

const sample = (cell: Cell, more: Partial<PointerSample> = {}): PointerSample => ({
  ...spotOf(cell),
  id: 1,
  device: 'mouse',
  button: 0,
  grabs: false,
  ...more,
});

/** From cell to cell with one sample each, and what was asked for in the end. */
function drag(cells: readonly Cell[], at: Place, more: Partial<PointerSample> = {}): Intent[] {
  const reader = new PointerReader();
  const [first, ...rest] = cells;
  const last = cells.at(-1);
  if (!first || !last) return [];
  const asked = [...reader.down(sample(first, more), at).intents];
  for (const cell of rest) asked.push(...reader.move([sample(cell, more)], at).intents);
  asked.push(...reader.up(sample(last, more), at).intents);
  return asked.filter(({ kind }) => kind !== 'hover');
}

const only = (intents: readonly Intent[]): Intent => {
  expect(intents).toHaveLength(1);
  const [intent] = intents;
  if (!intent) throw new Error('nothing was asked for');
  return intent;
};

describe('strokes', () => {
  it('hold every cell between two samples', () => {
    const intent = only(
      drag(
        [
          { column: 1, step: 2 },
          { column: 10, step: 25 },
        ],
        place(),
      ),
    );
    if (intent.kind !== 'beads') throw new Error(intent.kind);
    const cells = intent.cells.map((index) => cellOf(on, index));
    expect(cells.at(0)).toEqual({ column: 1, step: 2 });
    expect(cells.at(-1)).toEqual({ column: 10, step: 25 });
    cells.slice(1).forEach((cell, i) => {
      const before = cells[i];
      if (before) expect(neighbours(on, before).some((other) => sameCell(other, cell))).toBe(true);
    });
  });

  it('are seen while they are drawn, and asked for only at their end', () => {
    const reader = new PointerReader();
    const at = place();
    expect(reader.down(sample({ column: 1, step: 1 }), at).preview?.beads.size).toBe(1);
    const moved = reader.move([sample({ column: 1, step: 3 }), sample({ column: 1, step: 6 })], at);
    expect(moved.preview?.beads.size).toBe(6);
    expect(moved.intents.filter(({ kind }) => kind !== 'hover')).toEqual([]);
    const up = reader.up(sample({ column: 1, step: 6 }), at);
    expect(up.preview).toBeUndefined();
    expect(up.expected?.beads.size).toBe(6);
  });

  it('come mirrored with what they are mirrored in', () => {
    const turn = reflection(on, filledWith(on), 'half turn');
    const intent = only(drag([{ column: 0, step: 0 }], place({ reflections: [turn] })));
    expect(intent).toEqual({ kind: 'beads', cells: [0, 12 * 30 - 1], bead: 1 });
  });

  it('that were taken away by the system never happened', () => {
    const reader = new PointerReader();
    reader.down(sample({ column: 1, step: 1 }), place());
    expect(reader.cancel(1, place())).toMatchObject({ intents: [], preview: undefined });
    expect(reader.busy).toBe(false);
  });
});

describe('tools', () => {
  const ends = [
    { column: 2, step: 3 },
    { column: 6, step: 9 },
  ] as const;
  const [from, to] = ends;

  it('ask for shapes by their two ends', () => {
    for (const tool of ['line', 'rectangle', 'ellipse'] as const)
      expect(only(drag(ends, place({ tool, filled: false })))).toEqual({
        kind: tool,
        stretches: [{ from, to }],
        bead: 1,
        filled: false,
      });
  });
  it('select, and let go beside the band', () => {
    expect(only(drag(ends, place({ tool: 'select' })))).toEqual({ kind: 'select', selection: { from, to } });
    const beside = { x: 3, y: 3 };
    const reader = new PointerReader();
    reader.down(sample(from, beside), place({ tool: 'select' }));
    const up = reader.up(sample(from, beside), place({ tool: 'select' }));
    expect(up.intents).toEqual([{ kind: 'select', selection: undefined }]);
  });
  it('fill, replace and pick up what lies under the pointer', () => {
    expect(only(drag([from], place({ tool: 'fill' })))).toEqual({ kind: 'fill', from: [from], bead: 1 });
    expect(only(drag([from], place({ tool: 'replace' })))).toEqual({ kind: 'replace', from: 0, to: 1 });
    expect(only(drag([from], place({ tool: 'pick' })))).toEqual({ kind: 'pick', bead: 0 });
    expect(drag([from], place({ tool: 'replace', colour: 0 }))).toEqual([]);
  });
  it('move a selection by whole pairs of columns, so that it keeps its shift', () => {
    const selection = { from: { column: 6, step: 9 }, to: { column: 3, step: 5 } };
    const at = place({ tool: 'move', selection });
    const intent = only(
      drag(
        [
          { column: 4, step: 6 },
          { column: 7, step: 8 },
        ],
        at,
      ),
    );
    if (intent.kind !== 'move') throw new Error(intent.kind);
    expect(intent.to.step).toBe(7);
    expect((intent.to.column - 3) % 2).toBe(0);
    expect(intent.selection).toEqual({ from: { column: 3, step: 5 }, to: { column: 6, step: 9 } });
  });
  it('stamp where the columns keep their shift, and show it before', () => {
    const stamp = { columns: 2, edge: 2, beads: new Uint16Array([2, 2, 2, 2]), shift: 1 };
    const at = place({ tool: 'stamp', stamp });
    const reader = new PointerReader();
    const hovered = reader.move([sample({ column: 4, step: 3 })], at);
    expect(hovered.preview?.beads.size).toBe(4);
    const intent = only(drag([{ column: 4, step: 3 }], at));
    if (intent.kind !== 'stamp') throw new Error(intent.kind);
    expect(intent.at.column % 2).toBe(1);
    expect(Math.abs(intent.at.column - 4)).toBe(1);
  });
  it('pick up a colour with the other button, whatever is in hand', () => {
    expect(drag([from], place(), { button: 2 })).toEqual([{ kind: 'pick', bead: 0 }]);
  });
});

describe('panning', () => {
  const near = centredOn({ ...view, scale: view.scale * 3 }, { x: 8, y: 25 }, on, frame);
  it('takes the band along, with the middle button or the space bar', () => {
    for (const how of [{ button: 1 }, { grabs: true }]) {
      const reader = new PointerReader();
      const at = { ...place(), view: near };
      const start = { ...sample({ column: 0, step: 0 }), x: 300, y: 300, ...how };
      reader.down(start, at);
      const moved = reader.move([{ ...start, x: 310, y: 280 }], at);
      expect(toMm(moved.view, { x: 310, y: 280 }).y).toBeCloseTo(toMm(near, { x: 300, y: 300 }).y, 6);
      expect(reader.up({ ...start, x: 310, y: 280 }, { ...at, view: moved.view }).intents).toEqual([]);
    }
  });
});

describe('fingers', () => {
  const touch = (cell: Cell, id: number) => sample(cell, { device: 'touch', id });

  it('one draws', () => {
    expect(only(drag([{ column: 1, step: 1 }], place(), { device: 'touch' })).kind).toBe('beads');
  });

  it('two pinch, and what one had begun to draw is forgotten', () => {
    const reader = new PointerReader();
    const at = place();
    reader.down(touch({ column: 4, step: 10 }, 1), at);
    reader.move([touch({ column: 4, step: 11 }, 1)], at);
    expect(reader.down(touch({ column: 8, step: 20 }, 2), at).preview).toBeUndefined();
    const moved = reader.move([touch({ column: 11, step: 28 }, 2)], at);
    expect(moved.view.scale).toBeGreaterThan(view.scale);
    const after = { ...at, view: moved.view };
    expect(reader.up(touch({ column: 4, step: 11 }, 1), after).intents).toEqual([]);
    // The finger that is still down does not draw.
    expect(reader.move([touch({ column: 2, step: 2 }, 2)], after).preview).toBeUndefined();
    expect(reader.up(touch({ column: 2, step: 2 }, 2), after).intents).toEqual([]);
    expect(reader.busy).toBe(false);
  });

  it('one that rests picks up the colour and draws nothing', () => {
    const reader = new PointerReader();
    const at = place();
    reader.down(touch({ column: 4, step: 10 }, 1), at);
    expect(reader.rested(1, at).intents).toEqual([{ kind: 'pick', bead: 0 }]);
    expect(reader.up(touch({ column: 4, step: 10 }, 1), at).intents).toEqual([]);
  });

  it('one that moved does not rest any more', () => {
    const reader = new PointerReader();
    const at = place();
    reader.down(touch({ column: 4, step: 10 }, 1), at);
    reader.move([touch({ column: 4, step: 14 }, 1)], at);
    expect(reader.rested(1, at).intents).toEqual([]);
    expect(reader.up(touch({ column: 4, step: 14 }, 1), at).intents).toHaveLength(1);
  });

  it('are not heard while a pen draws', () => {
    const reader = new PointerReader();
    const at = place();
    const pen = (cell: Cell) => sample(cell, { device: 'pen', id: 9 });
    reader.down(pen({ column: 1, step: 1 }), at);
    reader.down(touch({ column: 8, step: 20 }, 1), at);
    reader.move([pen({ column: 1, step: 4 })], at);
    reader.up(touch({ column: 8, step: 20 }, 1), at);
    const asked = reader.up(pen({ column: 1, step: 4 }), at).intents;
    expect(asked).toHaveLength(1);
    expect(reader.busy).toBe(false);
  });

  it('that rested before the pen came are forgotten', () => {
    const reader = new PointerReader();
    const at = place();
    reader.down(touch({ column: 8, step: 20 }, 1), at);
    reader.down(sample({ column: 1, step: 1 }, { device: 'pen', id: 9 }), at);
    expect(reader.up(sample({ column: 1, step: 1 }, { device: 'pen', id: 9 }), at).intents).toHaveLength(1);
  });
});

describe('hovering', () => {
  it('tells a cell once, and when it is left', () => {
    const reader = new PointerReader();
    const at = place();
    const over = sample({ column: 2, step: 2 });
    expect(reader.move([over], at).intents).toEqual([{ kind: 'hover', cell: { column: 2, step: 2 } }]);
    expect(reader.move([over], at).intents).toEqual([]);
    expect(reader.leave(at).intents).toEqual([{ kind: 'hover', cell: undefined }]);
  });
});

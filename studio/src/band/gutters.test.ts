import { describe, expect, it } from 'vitest';

import { px } from '../engine/units';
import { brackets, marginFor, rowLabels, sidesOf } from './gutters';
import { noMarks, type WorkedRow } from './model';
import { describeCell, summary } from './describe';
import { filledWith, lattice, legend } from './testing';
import { fit, type Frame } from './view';

const on = lattice(6, 24, { edgeRound: true });
const rows: WorkedRow[] = [
  { firstNumber: 1, lastNumber: 2, travel: 'left', cells: [5, 4, 3, 2, 1, 0] },
  ...Array.from({ length: 46 }, (_, i): WorkedRow => {
    const number = i + 3;
    const step = Math.floor((number - 1) / 2);
    const cells = [0, 2, 4].map((column) => step * 6 + column + (number % 2 === 0 ? 1 : 0));
    return { firstNumber: number, lastNumber: number, travel: number % 2 === 0 ? 'left' : 'right', cells };
  }),
];
const frameOf = (height: number): Frame => ({
  width: px(500),
  height: px(height),
  margin: marginFor(rows, noMarks),
});

describe('row numbers', () => {
  it('stand where their row begins', () => {
    const frame = frameOf(800);
    const labels = rowLabels(on, rows, fit(on, frame), frame, undefined);
    expect(labels).toHaveLength(rows.length);
    expect(labels.find(({ text }) => text === '1–2')?.side).toBe('right');
    expect(labels.find(({ text }) => text === '3')?.side).toBe('left');
    expect(labels.filter(({ strong }) => strong).map(({ text }) => text)).toEqual(['10', '20', '30', '40']);
  });

  it('never touch, at any size', () => {
    for (const height of [120, 200, 300, 450, 600, 900]) {
      const frame = frameOf(height);
      for (const current of [undefined, 17, 2]) {
        const labels = rowLabels(on, rows, fit(on, frame), frame, current);
        for (const side of ['left', 'right']) {
          const places = labels.filter((one) => one.side === side).map(({ at }) => at);
          places.sort((a, b) => a - b);
          places.slice(1).forEach((at, i) => expect(at - (places[i] ?? 0)).toBeGreaterThanOrEqual(14 - 1e-9));
        }
        if (current !== undefined) expect(labels.some((label) => label.current)).toBe(true);
      }
    }
  });
});

describe('brackets', () => {
  it('that reach past the last step go on from the first', () => {
    const frame = frameOf(800);
    const view = fit(on, frame);
    const marks = { ...noMarks, tapered: [{ firstStep: 23, steps: 2 }] };
    const made = brackets(on, marks, view);
    expect(made).toHaveLength(2);
    const total = made.reduce((sum, { from, to }) => sum + to - from, 0);
    expect(total).toBeCloseTo(2 * on.edgeMm * view.scale, 6);
  });
  it('stand inside the window while the band is larger than it', () => {
    const frame = frameOf(800);
    const view = { ...fit(on, frame), scale: 60 };
    const sides = sidesOf(on, view, frame);
    expect(sides.left).toBeGreaterThanOrEqual(frame.margin.left);
    expect(sides.right).toBeLessThanOrEqual(frame.width - frame.margin.right);
  });
});

describe('words', () => {
  const described = { lattice: on, cells: filledWith(on), legend, rows, marks: noMarks };
  it('say a cell with its colour and its row', () => {
    expect(describeCell(described, { column: 2, step: 12 })).toBe('column 2, step 12, night blue, row 25');
    expect(describeCell(described, { column: 3, step: 0 })).toBe('column 3, step 0, night blue, row 1–2');
    expect(describeCell({ ...described, rows: undefined }, { column: 0, step: 0 })).toBe(
      'column 0, step 0, night blue',
    );
  });
  it('sum up the band', () => {
    const marks = { faces: [{ side: 'front' as const, firstStep: 1, steps: 11 }], tapered: [], seam: true };
    const text = summary({ ...described, marks });
    for (const part of ['6 columns', '24 beads along', '48 rows', 'steps 1 to 11', 'A night blue'])
      expect(text).toContain(part);
  });
});

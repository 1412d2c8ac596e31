import { describe, expect, it } from 'vitest';

import { type KeyPress, KeyReader } from './keys';
import { lattice, legend, worktop } from './testing';

const on = lattice(6, 24);
const top = worktop(on);

const press = (key: string, more: Partial<KeyPress> = {}): KeyPress => ({
  key,
  shift: false,
  command: false,
  alt: false,
  time: 0,
  ...more,
});

describe('keys', () => {
  it('walk and tell where', () => {
    const keys = new KeyReader();
    expect(keys.press(press('ArrowDown'), top, legend).intents).toEqual([
      { kind: 'walk', cell: { column: 0, step: 1 } },
    ]);
    keys.press(press('ArrowRight'), top, legend);
    expect(keys.focus).toEqual({ column: 1, step: 1 });
    expect(keys.press(press('Home'), top, legend).intents).toEqual([
      { kind: 'walk', cell: { column: 1, step: 0 } },
    ]);
    keys.press(press('End', { shift: true }), top, legend);
    expect(keys.focus).toEqual({ column: 5, step: 23 });
    keys.press(press('PageUp'), top, legend);
    expect(keys.focus).toEqual({ column: 5, step: 13 });
    keys.press(press('ArrowLeft', { command: true }), top, legend);
    expect(keys.focus).toEqual({ column: 0, step: 13 });
  });

  it('set a bead with Enter and with the space bar', () => {
    for (const key of ['Enter', ' '])
      expect(new KeyReader().press(press(key), top, legend).intents).toEqual([
        { kind: 'beads', cells: [0], bead: 1 },
      ]);
  });

  it('choose colours by letter, longer letters by typing on', () => {
    const keys = new KeyReader();
    const type = (key: string, time: number) => keys.press(press(key, { time }), top, legend).intents;
    expect(type('a', 0)).toEqual([{ kind: 'pick', bead: 0 }]);
    expect(type('a', 200)).toEqual([{ kind: 'pick', bead: 2 }]);
    expect(type('b', 300)).toEqual([{ kind: 'pick', bead: 1 }]);
    expect(type('A', 5000)).toEqual([{ kind: 'pick', bead: 0 }]);
    expect(type('A', 9000)).toEqual([{ kind: 'pick', bead: 0 }]);
    expect(keys.press(press('q'), top, legend).taken).toBe(false);
  });

  it('select with shift, from where the walk began', () => {
    const keys = new KeyReader();
    const first = keys.press(press('ArrowDown', { shift: true }), top, legend).intents.at(-1);
    const selection = { from: { column: 0, step: 0 }, to: { column: 0, step: 1 } };
    expect(first).toEqual({ kind: 'select', selection });
    const next = keys
      .press(press('ArrowRight', { shift: true }), { ...top, selection }, legend)
      .intents.at(-1);
    expect(next).toEqual({ kind: 'select', selection: { ...selection, to: { column: 1, step: 1 } } });
    expect(keys.press(press('Escape'), { ...top, selection }, legend).intents).toEqual([
      { kind: 'select', selection: undefined },
    ]);
    expect(keys.press(press('Escape'), top, legend).taken).toBe(false);
  });

  it('copy, cut and stamp', () => {
    const keys = new KeyReader();
    const selection = { from: { column: 0, step: 0 }, to: { column: 1, step: 1 } };
    const command = (key: string, more = {}) =>
      keys.press(press(key, { command: true }), { ...top, selection, ...more }, legend);
    expect(command('c').intents).toEqual([{ kind: 'copy', selection }]);
    expect(command('X').intents).toEqual([{ kind: 'cut', selection }]);
    expect(command('v').taken).toBe(false);
    const stamp = { columns: 1, edge: 1, beads: new Uint16Array([2]), shift: 0 };
    expect(command('v', { stamp }).intents).toEqual([{ kind: 'stamp', at: { column: 0, step: 0 } }]);
    expect(command('z').taken).toBe(false);
    expect(keys.press(press('c', { command: true }), top, legend).taken).toBe(false);
  });

  it('draw shapes with two presses, seen in between', () => {
    const keys = new KeyReader();
    const shapes = { ...top, tool: 'rectangle' as const };
    expect(keys.press(press('Enter'), shapes, legend).intents).toEqual([]);
    keys.press(press('ArrowDown'), shapes, legend);
    keys.press(press('ArrowRight'), shapes, legend);
    expect(keys.preview(shapes)?.beads.size).toBe(4);
    const stretch = { from: { column: 0, step: 0 }, to: { column: 1, step: 1 } };
    expect(keys.press(press('Enter'), shapes, legend).intents).toEqual([
      { kind: 'rectangle', stretches: [stretch], bead: 1, filled: true },
    ]);
    expect(keys.preview(shapes)).toBeUndefined();
    keys.press(press('Enter'), shapes, legend);
    expect(keys.press(press('Escape'), shapes, legend)).toEqual({ taken: true, intents: [] });
    expect(keys.began).toBeUndefined();
  });

  it('zoom', () => {
    const zooms = ['+', '=', '-', '0'].map((key) => new KeyReader().press(press(key), top, legend).zoom);
    expect(zooms).toEqual(['in', 'in', 'out', 'fit']);
  });

  it('leave to the page what is not theirs', () => {
    for (const key of ['Tab', 'F5', 'Shift'])
      expect(new KeyReader().press(press(key), top, legend).taken).toBe(false);
    expect(new KeyReader().press(press('ArrowDown', { alt: true }), top, legend).taken).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';

import { noBead } from '../band/cells';
import type { Patch, SavedProject } from '../engine/shapes';
import { applyPatch, documentOf } from './document';
import { valueAt, withValueAt } from './pointer';

const saved: SavedProject = {
  format: 1,
  title: 'Two',
  beads: [{ id: 'cylinder-11' }],
  legend: [
    { letter: 'A', name: 'night', colour: '#101030', bead: 'cylinder-11' },
    { letter: 'B', name: 'moon', colour: '#ffffee', bead: 'cylinder-11' },
  ],
  bands: [
    { name: 'One', technique: 'brick', bead: 'cylinder-11', columns: 3, edge: 2, cells: ['2A 1B', '1. 2B'] },
    { name: 'Two', technique: 'brick', bead: 'cylinder-11', columns: 1, edge: 1, cells: ['1A'] },
  ],
};
const beadsOf = (patch: Patch, band = 0) => [
  ...(applyPatch(documentOf(saved), patch).bands[band]?.beads ?? []),
];

describe('a project', () => {
  it('is read with its cells', () => {
    const { head, bands } = documentOf(saved);
    expect(head.title).toBe('Two');
    expect([...(bands[0]?.beads ?? [])]).toEqual([0, 0, 1, noBead, 1, 1]);
    expect(bands[0]?.head).toEqual({
      name: 'One',
      technique: 'brick',
      bead: 'cylinder-11',
      columns: 3,
      edge: 2,
    });
  });

  it('takes runs of cells, forwards and back', () => {
    expect(beadsOf({ cells: [{ band: 0, runs: [1, 1, 0, 1, 3, 1, -1, 0] }] })).toEqual([0, 1, 1, 0, 1, 1]);
    expect(beadsOf({ cells: [{ band: 0, runs: [0, 2, 0, -1] }] })).toEqual([noBead, noBead, 1, noBead, 1, 1]);
  });

  it('keeps its structure when only colours change, and no other band is touched', () => {
    const before = documentOf(saved);
    const coloured = applyPatch(before, { cells: [{ band: 0, runs: [0, 1, 0, 1] }] });
    expect(coloured.bands[0]?.structure).toBe(before.bands[0]?.structure);
    expect(coloured.bands[1]).toBe(before.bands[1]);
    const holed = applyPatch(before, { cells: [{ band: 0, runs: [0, 1, 0, -1] }] });
    expect(holed.bands[0]?.structure).not.toBe(before.bands[0]?.structure);
    expect([...(before.bands[0]?.beads ?? [])]).toEqual([0, 0, 1, noBead, 1, 1]);
  });

  it('takes bands that come, go and change their size', () => {
    const whole = {
      name: 'New',
      technique: 'brick',
      bead: 'cylinder-11',
      columns: 2,
      edge: 2,
      cells: [3, 1, 1, -1],
    };
    const more = applyPatch(documentOf(saved), { bands: [{ at: 1, of: 2, before: [], after: [whole] }] });
    expect(more.bands.map(({ head }) => head.name)).toEqual(['One', 'New', 'Two']);
    expect([...(more.bands[1]?.beads ?? [])]).toEqual([1, 1, 1, noBead]);
    const fewer = applyPatch(more, { bands: [{ at: 0, of: 3, before: [whole, whole], after: [] }] });
    expect(fewer.bands.map(({ head }) => head.name)).toEqual(['Two']);
  });

  it('takes values; of a band only its own', () => {
    const before = documentOf(saved);
    const named = applyPatch(before, { values: [{ at: '/bands/1/name', before: 'Two', after: 'Zwei' }] });
    expect(named.bands[1]?.head.name).toBe('Zwei');
    expect(named.bands[1]?.structure).toBe(before.bands[1]?.structure);
    const closed = applyPatch(before, { values: [{ at: '/bands/1/closure', after: 'zip' }] });
    expect(closed.bands[1]?.head.closure).toBe('zip');
    expect(closed.bands[1]?.structure).not.toBe(before.bands[1]?.structure);
    expect(closed.bands[0]).toBe(before.bands[0]);
  });

  it('knows what every band is made with', () => {
    const before = documentOf(saved);
    for (const [at, touches] of [
      ['/legend/0/colour', false],
      ['/legend/0/bead', true],
      ['/legend', true],
      ['/beads/0/diameter_mm', true],
      ['/forms', true],
      ['/title', false],
    ] as const) {
      const after = applyPatch(before, { values: [{ at, after: valueAt(before.head, at) ?? [] }] });
      expect(after.bands[0]?.structure !== before.bands[0]?.structure, at).toBe(touches);
    }
  });
});

describe('pointers', () => {
  it('set, add and take away, in copies', () => {
    const value = { list: [{ 'a/b': 1 }, { 'c~d': 2 }], gone: 3 };
    expect(withValueAt(value, '/list/0/a~1b', 5).list[0]).toEqual({ 'a/b': 5 });
    expect(withValueAt(value, '/list/1/c~0d', undefined).list[1]).toEqual({});
    expect(withValueAt(value, '/new', 1)).toEqual({ ...value, new: 1 });
    expect('gone' in withValueAt(value, '/gone', undefined)).toBe(false);
    expect(withValueAt(value, '', 7)).toBe(7);
    expect(value).toEqual({ list: [{ 'a/b': 1 }, { 'c~d': 2 }], gone: 3 });
  });
});

import { describe, expect, it } from 'vitest';

import type { PlacedElement, Placements } from '../../engine/strand_shapes';
import { mm } from '../../engine/units';
import type { PlacedBand } from '../../round/beads';
import { movedDirection, movedPoint } from '../../round/vectors';
import { placedPiece, transformOf } from './placed_piece';

const element = (change: Partial<PlacedElement>): PlacedElement => ({
  id: 'x',
  name: 'x',
  written: 'x',
  kind: 'bead',
  width_mm: 6,
  across_mm: 6,
  thickness_mm: 6,
  holes: 1,
  hole_mm: 1,
  apart_mm: 0,
  band: null,
  form: null,
  look: null,
  body: null,
  bead: null,
  ...change,
});
const body = {
  kind: 'lens',
  section: [
    [8, 0],
    [0, 2.5],
    [-8, 0],
    [0, -2.5],
  ] as const,
  length_mm: 9,
  together: 1,
  holes: [{ x_mm: -4.8, y_mm: 0, diameter_mm: 2 }],
};
const placements: Placements = {
  size: 'M',
  cord_mm: 0.6,
  cord_kind: 'braided',
  elements: [
    element({
      kind: 'form',
      band: 0,
      body,
      bead: { kind: 'cylinder', diameter_mm: 1.6, length_mm: 1.3, hole_mm: 0.8, rim_mm: 0.16 },
    }),
    element({ look: { colour: '#112233', finish: 'matte' } }),
    element({ kind: 'clasp', holes: 2, across_mm: 16, thickness_mm: 4, width_mm: 14 }),
    element({ kind: 'ring' }),
    element({ kind: 'knot' }),
  ],
  things: [0, 1, 2, 3, 4].map((i) => [i, 0, 10 * i, 0, 0, -1, 0, 0, 0, 1, 0, i === 2 ? 14 : 6]),
  cords: [[0, 0, 0, 1, 0, 0, 2, 0, 0]],
};
const document = {
  head: { name: 'One', technique: 'peyote-even-count', bead: 'cylinder-11', columns: 2, edge: 1 },
  beads: Uint16Array.of(0, 1),
  structure: 1,
};
const banded: PlacedBand = {
  lie: 'closed',
  seats: new Float32Array(12),
  cellOf: Uint32Array.of(0, 1),
  size: { kind: 'cylinder', diameter: mm(1.6), length: mm(1.3), hole: mm(0.8), rim: mm(0.16) },
};

describe('the strung piece', () => {
  it('has its own axes along the cord and outwards', () => {
    const transform = transformOf({ middle: [1, 2, 3], along: [-1, 0, 0], outwards: [0, 1, 0] });
    expect(movedPoint(transform, 0, 0, 5)).toEqual([-4, 2, 3]);
    expect(movedDirection(transform, 0, 1, 0)).toEqual([0, 1, 0]);
    // The inner cord, which is above.
    expect(movedDirection(transform, 1, 0, 0).map((part) => part + 0)).toEqual([0, 0, 1]);
  });

  it('shows the form until a band’s beads are told', () => {
    const { piece, bandOfItem } = placedPiece({
      placements,
      bands: [document],
      legend: [],
      settled: new Map(),
    });
    expect(piece.items[0]?.kind).toBe('form');
    expect(bandOfItem.size).toBe(0);
  });

  it('takes in bands, beads, findings and cords', () => {
    const settled = new Map([[0, banded]]);
    const { piece, bandOfItem } = placedPiece({ placements, bands: [document], legend: [], settled });
    expect([...bandOfItem]).toEqual([[0, 0]]);
    const [band, bead, ...rest] = piece.items;
    expect(band?.kind === 'band' && band.band).toBe(banded);
    expect(bead).toMatchObject({ kind: 'bead', colour: '#112233', finish: 'matte' });
    // Three bars fill the clasp's 14 mm with 4 mm of metal.
    expect(rest.map(({ kind }) => kind)).toEqual([
      'finding',
      'finding',
      'finding',
      'finding',
      'finding',
      'bead',
    ]);
    expect(piece.cords[0]?.points).toEqual(Float32Array.of(0, 0, 0, 1, 0, 0, 2, 0, 0));
    expect(piece.lie).toBe('hung');
  });

  it('leaves out what it is not told', () => {
    const odd = { ...placements, things: [[77, 0], []] };
    expect(
      placedPiece({ placements: odd, bands: [], legend: [], settled: new Map() }).piece.items,
    ).toHaveLength(1);
  });
});

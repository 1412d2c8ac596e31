import { describe, expect, it } from 'vitest';

import { operationsFor } from './piece';

describe('the operations of a new piece', () => {
  it('put the form before the band that goes round it', () => {
    const operations = operationsFor(
      {
        what: 'round',
        kind: 'lens',
        shape: 'lens:17x5x9',
        bead: 'cylinder-11',
        use: 'sliding',
        columns: 6,
        edge: 25,
      },
      'Band 1',
    );
    expect(operations.map((one) => one.do)).toEqual(['add_form', 'add_band']);
    expect(operations[1]).toMatchObject({ form: 'lens', use: 'sliding', columns: 6, edge: 25 });
  });

  it('bring the colours of a blank project into another bead', () => {
    const operations = operationsFor({ what: 'flat', bead: 'round-8', columns: 20, edge: 30 }, 'Piece');
    expect(operations.map((one) => one.do)).toEqual([
      'change_legend_entry',
      'change_legend_entry',
      'set_beads',
      'add_band',
    ]);
    expect(operations.at(-1)).not.toHaveProperty('form');
  });
});

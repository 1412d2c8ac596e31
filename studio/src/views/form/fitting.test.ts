import { describe, expect, it } from 'vitest';

import type { BandHead } from '../../engine/shapes';
import { fitAddress } from '../../parts/fit/question';
import {
  closesRound,
  decimalNumber,
  finishedWords,
  groupsOf,
  questionFor,
  swatchWords,
  wholeNumber,
} from './fitting';

const head: BandHead = {
  name: 'Moon',
  technique: 'peyote-even-count',
  bead: 'cylinder-11',
  form: 'lens',
  closure: 'zip',
  use: 'sliding',
  columns: 6,
  edge: 24,
};

describe('what is asked about a fit', () => {
  it('is of the band as it is, round the form as typed', () => {
    const question = questionFor('lens:18x5x9', head, 'round-8', undefined, {
      column_mm: 1.35,
      edge_mm: 1.66,
    });
    expect(fitAddress(question)).toBe(
      '/api/fit?form=lens%3A18x5x9&bead=cylinder-11&use=sliding&columns=6&stitch=peyote&gauge=1.35x1.66',
    );
    expect(fitAddress(questionFor(undefined, head, 'round-8', undefined, undefined))).toBeUndefined();
    expect(questionFor('lens:18x5x9', undefined, 'round-8', undefined, undefined).bead).toBe('round-8');
  });

  it('is asked of rings only', () => {
    expect(closesRound(head)).toBe(true);
    expect(closesRound({ form: 'lens', closure: 'open' })).toBe(false);
    expect(closesRound({ closure: 'zip' })).toBe(false);
  });

  it('is worded as the server reads it', () => {
    expect(swatchWords('12', '16,1', '20', '33.4 mm')).toBe(
      '12 columns = 16.1 mm, 20 along the edge = 33.4 mm',
    );
    expect(swatchWords('12', '', '20', '33.4')).toBeUndefined();
    expect(finishedWords('lens:17x5x9', '24', 'snug', true)).toBe('lens:17x5x9 took 24, snug, sliding');
    expect(finishedWords('lens:17x5x9', 'x', 'snug', true)).toBeUndefined();
  });
});

describe('forms and bands', () => {
  it('are grouped, with those that go round nothing at the end', () => {
    const forms = [
      { id: 'lens', shape: 'lens:17x5x9' },
      { id: 'tube', shape: 'round:12x20' },
    ];
    const flat: BandHead = { ...head, closure: 'open' };
    delete (flat as { form?: string }).form;
    expect(groupsOf(forms, [{ head: flat }, { head }, { head }]).map(({ bands }) => bands)).toEqual([
      [1, 2],
      [],
      [0],
    ]);
    expect(groupsOf(forms, [{ head }])).toHaveLength(2);
  });
});

describe('numbers', () => {
  it('are taken as they are written', () => {
    expect(wholeNumber('24')).toBe(24);
    expect(wholeNumber('0')).toBeUndefined();
    expect(wholeNumber('2.5')).toBeUndefined();
    expect(decimalNumber('1,35')).toBe(1.35);
    expect(decimalNumber('')).toBeUndefined();
  });
});

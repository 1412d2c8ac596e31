import { describe, expect, it } from 'vitest';

import { coloursIn, doneBy, nextStep, steps, type Seen, type Step } from './steps';

const nothing: Seen = { forms: 0, bandsRoundForms: 0, colours: 0, row: false, stop: 'band' };

describe('the guide', () => {
  it('begins at the beginning and ends when all is done', () => {
    expect(nextStep(new Set())).toBe('sizes');
    expect(nextStep(new Set<Step>(steps))).toBeUndefined();
  });

  it('sees by itself what is done', () => {
    expect(doneBy(nothing)).toEqual([]);
    expect(doneBy({ ...nothing, forms: 1 })).toEqual(['sizes']);
    expect(doneBy({ ...nothing, forms: 1, bandsRoundForms: 1, colours: 1 })).toEqual(['sizes', 'fit']);
    expect(doneBy({ forms: 1, bandsRoundForms: 1, colours: 2, row: true, stop: 'booklet' })).toEqual([
      'sizes',
      'fit',
      'draw',
      'words',
      'print',
    ]);
  });

  it('counts the colours of a band, not its empty places', () =>
    expect(coloursIn(Uint16Array.of(0, 0, 3, 9), 9)).toBe(2));
});

import { describe, expect, it } from 'vitest';

import type { Candidate } from '../../engine/shapes';
import { chanceText, mmText, slackText, strainText } from './figures';

const candidate: Candidate = {
  edge: 24,
  rows: 48,
  strain: 0.01828,
  slack_mm: -0.728,
  chance: 0.0745,
  verdict: 'too_tight',
  closes: false,
};

describe('figures of a fit', () => {
  it('carry their sign, but not a nought', () => {
    expect(strainText(candidate)).toBe('+1.8 %');
    expect(slackText(candidate)).toBe('−0.73 mm');
    expect(strainText({ ...candidate, strain: -0.0001 })).toBe('0.0 %');
  });
  it('never claim to be sure', () => {
    expect(chanceText(candidate)).toBe('7 %');
    expect(chanceText({ ...candidate, chance: 1 })).toBe('> 99 %');
    expect(chanceText({ ...candidate, chance: 0 })).toBe('< 1 %');
  });
  it('have no noughts at the end', () => expect(mmText(8.1)).toBe('8.1 mm'));
});

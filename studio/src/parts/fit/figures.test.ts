import { describe, expect, it } from 'vitest';

import type { Candidate } from '../../engine/shapes';
import { chanceText, mmText, slackText, strainText, trimmed } from './figures';

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
  it('take the paper off round a drawing, and leave other texts alone', () => {
    const page =
      '<svg xmlns="x" width="453.5pt" height="348pt" viewBox="0 0 453.5 348" version="1.1"><path/></svg>';
    expect(trimmed(page, 20)).toBe(
      '<svg xmlns="x" width="413.5" height="308" viewBox="20 20 413.5 308" version="1.1"><path/></svg>',
    );
    expect(trimmed('<svg/>')).toBe('<svg/>');
  });
  it('have no noughts at the end', () => expect(mmText(8.1)).toBe('8.1 mm'));
});

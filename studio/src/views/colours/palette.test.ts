import { describe, expect, it } from 'vitest';

import type { PalettePair } from '../../engine/shapes';
import { hexOf, moved, pairOf, pairsOf, troubled, troubleOf } from './palette';

const pair = (first: string, second: string, more: Partial<PalettePair> = {}): PalettePair => ({
  first,
  second,
  side_by_side: true,
  difference: 30,
  contrast: 4,
  alike: false,
  alike_in_grey: false,
  lost_to: null,
  left: null,
  ...more,
});

describe('pairs of the legend', () => {
  it('are found either way round', () => {
    const pairs = pairsOf([pair('A', 'B'), pair('A', 'C')]);
    expect(pairOf(pairs, 'C', 'A')).toBe(pairOf(pairs, 'A', 'C'));
    expect(pairOf(pairs, 'B', 'C')).toBeUndefined();
  });

  it('trouble only where they lie side by side', () => {
    expect(troubleOf(pair('A', 'B', { alike: true }))).toBe('alike');
    expect(troubleOf(pair('A', 'B', { alike: true, side_by_side: false }))).toBeUndefined();
    expect(troubleOf(pair('A', 'B', { lost_to: 'deutan', left: 2 }))).toBe('lost');
    expect(troubleOf(pair('A', 'B'))).toBeUndefined();
  });

  it('come worst first', () => {
    const list = [
      pair('A', 'B', { lost_to: 'protan', left: 1 }),
      pair('A', 'C', { alike: true, difference: 5 }),
      pair('B', 'C', { alike: true, difference: 2 }),
    ];
    expect(troubled(list).map((one) => one.pair.first + one.pair.second)).toEqual(['BC', 'AC', 'AB']);
  });
});

describe('colours and letters', () => {
  it('are taken as they are typed', () => {
    expect(hexOf('A1b2C3')).toBe('#a1b2c3');
    expect(hexOf('#12345')).toBeUndefined();
  });
  it('change places, but not beyond the ends', () => {
    expect(moved(['A', 'B', 'C'], 'B', 1)).toEqual(['A', 'C', 'B']);
    expect(moved(['A', 'B', 'C'], 'A', -1)).toEqual(['A', 'B', 'C']);
  });
});

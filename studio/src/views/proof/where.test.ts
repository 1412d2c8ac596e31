import { describe, expect, it } from 'vitest';

import type { FindingSaid } from '../../engine/shapes';
import { addressOf, routeOf } from '../../place/route';
import { routeTo } from './where';

const finding = (check: string, place: FindingSaid['place']): FindingSaid => ({
  severity: 'error',
  check,
  where: '',
  place,
  message: '',
});

describe('where a finding leads', () => {
  it('is the band, with the bead or row that it speaks of', () => {
    expect(routeTo('moon', 0, finding('passes', { band: 3, cell: [1, 17] }))).toEqual({
      at: 'project',
      project: 'moon',
      stop: 'band',
      band: 3,
      cell: [1, 17],
    });
    expect(routeTo('moon', 0, finding('plan', { band: 2, row: 14 }))).toMatchObject({
      stop: 'band',
      row: 14,
    });
    expect(routeTo('moon', 5, finding('title', {}))).toMatchObject({ stop: 'booklet', band: 5 });
  });

  it('is the form, the colours or the strand', () => {
    expect(routeTo('moon', 0, finding('fit', { band: 1 }))).toMatchObject({ stop: 'form', band: 1 });
    expect(routeTo('moon', 0, finding('difference', { letters: ['A', 'C'] })).stop).toBe('colours');
    expect(routeTo('moon', 0, finding('references', { letters: ['A'] })).stop).toBe('colours');
    expect(routeTo('moon', 0, finding('strand', { size: 'XS', band: 2 }))).toMatchObject({
      stop: 'strand',
      size: 'XS',
    });
  });

  it('is a guess by what is named, for a check of a later version', () => {
    expect(routeTo('moon', 0, finding('new', { letters: ['A'] })).stop).toBe('colours');
    expect(routeTo('moon', 0, finding('new', { line: 2 })).stop).toBe('strand');
    expect(routeTo('moon', 0, finding('new', {})).stop).toBe('band');
  });

  it('is an address that is read back', () => {
    const route = routeTo('moon', 0, finding('strand', { size: '45 cm', band: 2 }));
    const url = new URL(addressOf(route), 'http://127.0.0.1');
    expect(routeOf(url.pathname, url.search)).toEqual({ ...route, cell: undefined, row: undefined });
  });
});

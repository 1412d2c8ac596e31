import { describe, expect, it } from 'vitest';

import { measureText, partText, runText, timesText } from './written';

describe('written for the server', () => {
  it('writes parts', () => {
    const clasp = {
      kind: 'clasp',
      name: 'slide',
      width: '14',
      hole: '1,5 mm',
      holes: 2,
      apart: '9.6mm',
      printed: 'a "good" one',
    } as const;
    expect(partText(clasp)).toBe('clasp "slide" 14 holes 2 apart 9.6mm hole 1.5mm "a ""good"" one"');
    expect(
      partText({ ...clasp, kind: 'knot', holes: 1, printed: '', name: ' overhand ', width: '2 mm' }),
    ).toBe('knot "overhand" 2mm');
  });

  it('writes runs', () => {
    expect(runText({ name: 'sides', unit: 'round-8', from: '2', to: '9' })).toBe(
      'fill "sides" with round-8 from 2 to 9',
    );
    expect(runText({ name: '', unit: '(a, b)', from: '0', to: '', things: ['a', '3 b'] })).toBe(
      'between with (a, b) (a, 3 b)',
    );
    expect(timesText(3, '"Full moon"')).toBe('3 "Full moon"');
    expect(timesText(1, 'stop')).toBe('stop');
  });

  it('takes a bare number for millimetres', () => {
    expect(measureText(' 165 ')).toBe('165mm');
    expect(measureText('6,5 in')).toBe('6.5in');
    expect(measureText('16.5cm')).toBe('16.5cm');
  });
});

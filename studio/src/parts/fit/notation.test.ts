import { describe, expect, it } from 'vitest';

import { freeId, readForm, settingsOf, sizeNames, writeForm } from './notation';

describe('a form as it is written', () => {
  it('is the same again when nothing was changed', () => {
    for (const text of [
      'lens:17x5x9',
      'lens:17x5x9,holes=6.5,hole=2',
      'ring:us7',
      'ring:17.3mm',
      'wrist:165',
      'outline:pebble,length=9',
    ])
      expect(writeForm(readForm(text))).toBe(text);
  });

  it('takes units, blanks, crosses and decimal commas', () => {
    expect(readForm('lens: 0.67in × 5 x 9')).toEqual({
      kind: 'lens',
      sizes: ['0.67in', '5', '9'],
      settings: {},
    });
    expect(
      writeForm({ kind: 'lens', sizes: ['0.67 in', '5,2', ' 9 mm'], settings: { hole: '1,5', tip: '' } }),
    ).toBe('lens:0.67inx5.2x9mm,hole=1.5');
  });

  it('is no form while a size is missing', () => {
    expect(writeForm({ kind: 'round', sizes: ['12', ' '], settings: {} })).toBeUndefined();
    expect(writeForm(readForm('round'))).toBeUndefined();
  });

  it('has the sizes that the server names, and settings of its own', () => {
    expect(sizeNames('outer diameter x width')).toEqual(['outer diameter', 'width']);
    expect(sizeNames('inner circumference')).toEqual(['inner circumference']);
    expect(settingsOf('lens')).toContain('tip');
    expect(settingsOf('wrist')).toEqual([]);
  });

  it('gets an id that is free', () => {
    expect(freeId('lens', [])).toBe('lens');
    expect(freeId('lens', ['lens', 'lens-2'])).toBe('lens-3');
  });
});

import { describe, expect, it } from 'vitest';

import type { SuppliesAnswer } from '../../engine/supplies_shapes';
import {
  csvCell,
  csvOf,
  currencySign,
  firstOf,
  minorOf,
  moneyText,
  numberOf,
  plainMinor,
  priceText,
} from './figures';

describe('money', () => {
  it('is read as it is written', () => {
    for (const minor of [0, 5, 340, 1800, 123456]) expect(minorOf(plainMinor(minor))).toBe(minor);
    expect(minorOf('3,4')).toBe(340);
    for (const text of ['', 'x', '-1', '1.234', '1e5', '1 2']) expect(minorOf(text)).toBeUndefined();
    expect(numberOf('2,5')).toBe(2.5);
    expect(numberOf('.')).toBeUndefined();
  });

  it('shows its currency, also one that nobody knows', () => {
    expect(moneyText(340, 'EUR', 'en')).toBe('€3.40');
    expect(moneyText(null, 'EUR', 'en')).toBe('–');
    expect(moneyText(340, 'no', 'en')).toBe('3.40 no');
    expect(priceText(null, 'en')).toBe('–');
    expect(currencySign('EUR', 'de')).toBe('€');
    expect(currencySign('no', 'en')).toBe('no');
  });

  it('names the first of what has no price, and counts the others', () => {
    expect(firstOf(['a', 'b'], 2)).toBe('a; b');
    expect(firstOf(['a', 'b', 'c', 'd'], 2)).toBe('a; b … (+2)');
  });
});

describe('the table', () => {
  it('quotes what must be quoted, and holds no formulas', () => {
    expect(csvCell('a "b", c')).toBe('"a ""b"", c"');
    expect(csvCell('=1+1')).toBe("'=1+1");
    expect(csvCell(-3)).toBe('-3');
  });

  it('has a line for everything', () => {
    const purchase = {
      needed: 1,
      on_hand: 0,
      short: 1,
      buy: [],
      still_short: 1,
      left_over: 0,
      cost: { minor: 1900, currency: 'EUR' },
    };
    const answer: SuppliesAnswer = {
      kits: 2,
      beads: [
        {
          letter: 'A',
          name: 'night, blue',
          size: '11/0 cylinder bead',
          count: 1420,
          grams: 8.1,
          packs: 2,
          cost: { minor: 600, currency: 'EUR' },
          finish: 'opaque',
          colour: '#000000',
          code: '',
          purchase,
        },
      ],
      forms: [{ name: 'carrier', count: 16, unit: '' }],
      threads: [{ name: 'thread', count: 2400, unit: 'mm' }],
      findings: [{ name: 'clasp', count: 2, unit: '', purchase }],
      sizes: ['M'],
      tools: ['needle'],
      total: null,
    };
    const lines = csvOf(answer).split('\r\n');
    expect(lines).toHaveLength(7);
    expect(lines[1]).toBe('bead,A,"night, blue",11/0 cylinder bead,1420,,8.1,2,6,EUR');
    expect(lines[4]).toBe('finding,,clasp,,2,,,,19,EUR');
    for (const line of lines.slice(0, 1)) expect(line.split(',')).toHaveLength(10);
  });
});

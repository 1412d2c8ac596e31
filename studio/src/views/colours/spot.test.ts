import { describe, expect, it } from 'vitest';

import { centredAt, kept, nudged, rectangleText, sized } from './spot';

const picture = { width: 640, height: 400 };

describe('a square on a photograph', () => {
  it('stays inside, in whole pixels', () => {
    expect(kept({ left: -5, top: 390.4, size: 20 }, picture)).toEqual({ left: 0, top: 380, size: 20 });
    expect(kept({ left: 0, top: 0, size: 5000 }, picture).size).toBe(400);
    expect(centredAt(639, 399, 10, picture)).toEqual({ left: 630, top: 390, size: 10 });
  });
  it('keeps its middle when it grows', () =>
    expect(sized({ left: 100, top: 100, size: 20 }, 40, picture)).toEqual({ left: 90, top: 90, size: 40 }));
  it('moves by keys', () => {
    const spot = { left: 100, top: 100, size: 20 };
    expect(nudged(spot, 'ArrowRight', false, picture)?.left).toBe(103);
    expect(nudged(spot, 'ArrowUp', true, picture)?.top).toBe(81);
    expect(nudged(spot, '+', false, picture)?.size).toBeGreaterThan(20);
    expect(nudged(spot, 'a', false, picture)).toBeUndefined();
  });
  it('is written as the server reads it', () =>
    expect(rectangleText({ left: 1, top: 2, size: 3 })).toBe('1,2,3,3'));
});

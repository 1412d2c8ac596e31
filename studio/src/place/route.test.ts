import { describe, expect, it } from 'vitest';

import { addressOf, opening, routeOf, stops, type Route } from './route';

const back = (route: Route): Route => {
  const url = new URL(addressOf(route), 'http://127.0.0.1');
  return routeOf(url.pathname, url.search);
};

describe('addresses', () => {
  it('are read back, whatever stands in a name', () => {
    for (const stop of stops)
      for (const project of ['moonwatch', 'Ärmel & Co', '50 % off', 'a?b#c', '夜'])
        for (const band of [0, 7]) {
          const route: Route = { at: 'project', project, stop, band, cell: [3, 17], row: 12, size: 'M & L' };
          expect(back(route)).toEqual(route);
        }
    expect(back(opening)).toEqual(opening);
  });

  it('that mean nothing lead to the opening', () => {
    for (const path of [
      '/',
      '/p',
      '/p/moon/nowhere',
      '/p/moon/band/more',
      '/q/moon/band',
      '/p/%E0%A4%A/band',
    ])
      expect(routeOf(path, '')).toEqual(opening);
  });

  it('leave out what is no number', () => {
    expect(routeOf('/p/moon/band', '?band=-1&cell=1&row=x')).toEqual({
      at: 'project',
      project: 'moon',
      stop: 'band',
      band: 0,
      cell: undefined,
      row: undefined,
      size: undefined,
    });
  });
});

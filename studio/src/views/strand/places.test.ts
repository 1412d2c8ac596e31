import { describe, expect, it } from 'vitest';

import type { Item } from '../../engine/strand_shapes';
import type { Path } from '../../project/strand_operation';
import { afterTaking, isWithin, itemAt, landing, samePath, stepFrom, walk, within } from './places';

const single = (name: string): Item => ({ kind: 'single', text: name, name, times: 1, both: false });
const bracket = (...items: Item[]): Item => ({ kind: 'group', text: '', times: 2, items });

const list: readonly Item[] = [
  single('a'),
  bracket(single('b'), single('c')),
  single('d'),
  bracket(single('e'), bracket(single('f'), single('g'))),
];

/** As the server moves a thing. */
function moved(items: readonly Item[], from: Path, to: Path): Item[] {
  const copy = structuredClone(items) as Item[];
  const at = (path: Path): Item[] =>
    path.slice(0, -1).reduce<Item[]>((inner, place) => within(inner[place] as Item) as Item[], copy);
  const [item] = at(from).splice(from.at(-1) ?? 0, 1);
  if (item) at(to).splice(to.at(-1) ?? 0, 0, item);
  return copy;
}
const text = (items: readonly Item[]): string =>
  items.map((item) => (item.kind === 'single' ? item.name : `(${text(within(item))})`)).join(' ');

describe('places', () => {
  it('lead to what stands there', () => {
    for (const { path, item } of walk(list)) expect(itemAt(list, path)).toBe(item);
    expect([...walk(list)].map(({ item }) => (item.kind === 'single' ? item.name : '('))).toEqual(
      'a ( b c d ( e ( f g'.split(' '),
    );
    expect(itemAt(list, [0, 0])).toBeUndefined();
    expect(itemAt(list, [9])).toBeUndefined();
  });

  it('walk through the whole list to the right, and back', () => {
    let items: readonly Item[] = list;
    let at: Path = [0];
    const seen = [text(items)];
    for (let to = stepFrom(items, at, 1); to; to = stepFrom(items, at, 1)) {
      items = moved(items, at, to);
      at = to;
      seen.push(text(items));
    }
    expect(seen.at(-1)).toBe('(b c) d (e (f g)) a');
    expect(new Set(seen).size).toBe(seen.length);
    const back = [text(items)];
    for (let to = stepFrom(items, at, -1); to; to = stepFrom(items, at, -1)) {
      items = moved(items, at, to);
      at = to;
      back.push(text(items));
    }
    expect(back.reverse()).toEqual(seen);
  });

  it('step over brackets with brackets', () => {
    expect(stepFrom(list, [1], 1)).toEqual([2]);
    expect(stepFrom(list, [3], -1)).toEqual([2]);
    expect(stepFrom(list, [3], 1)).toBeUndefined();
    expect(stepFrom(list, [3, 1], 1)).toEqual([4]);
  });

  it('count without what is taken out', () => {
    expect(afterTaking([0], [3])).toEqual([2]);
    expect(afterTaking([2], [0])).toEqual([0]);
    expect(afterTaking([0], [3, 1, 0])).toEqual([2, 1, 0]);
    expect(afterTaking([3, 0], [3, 1, 1])).toEqual([3, 0, 1]);
    expect(afterTaking([3, 0], [1])).toEqual([1]);
    expect(afterTaking([1, 0], [3, 1])).toEqual([3, 1]);
  });

  it('are found again when a bracket has gone', () => {
    const alone = [single('a'), bracket(single('b')), single('c')];
    expect(landing(alone, [1, 0], stepFrom(alone, [1, 0], 1) ?? [])).toEqual([1]);
    expect(landing(alone, [1, 0], stepFrom(alone, [1, 0], -1) ?? [])).toEqual([1]);
    expect(landing(alone, [0], [1])).toEqual([1]);
    expect(landing(list, [3, 1, 0], [0])).toEqual([0]);
  });

  it('lie within each other', () => {
    expect(isWithin([3, 1, 0], [3, 1])).toBe(true);
    expect(isWithin([3], [3, 1])).toBe(false);
    expect(samePath([1, 2], [1, 2])).toBe(true);
    expect(samePath([1], undefined)).toBe(false);
    expect(samePath(undefined, undefined)).toBe(true);
  });
});

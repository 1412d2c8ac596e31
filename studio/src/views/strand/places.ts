/**
 * Places in a layout's list, as the server's operations count them. What may stand where is the server's to say; this is only where a
 * hand puts something down.
 *
 * Properties (places.test.ts): a thing walked to the right and back is where it was; walking visits every place of the list once.
 */
import type { Item } from '../../engine/strand_shapes';
import type { Path } from '../../project/strand_operation';

/** What stands in an item's brackets. */
export const within = (item: Item): readonly Item[] => ('items' in item ? item.items : []);
export const hasBrackets = (item: Item): boolean => 'items' in item;

export function itemAt(items: readonly Item[], path: Path): Item | undefined {
  const [first, ...rest] = path;
  const item = first === undefined ? undefined : items[first];
  return item && rest.length > 0 ? itemAt(within(item), rest) : item;
}

function listAt(items: readonly Item[], path: Path): readonly Item[] {
  const outer = path.slice(0, -1);
  if (outer.length === 0) return items;
  const item = itemAt(items, outer);
  return item ? within(item) : [];
}

const last = (path: Path): number => path.at(-1) ?? 0;
const beside = (path: Path, place: number): Path => [...path.slice(0, -1), place];

export const samePath = (a: Path | undefined, b: Path | undefined): boolean =>
  a?.length === b?.length && (a ?? []).every((place, i) => place === b?.[i]);

/** Whether `path` is `outer` or lies in its brackets. */
export const isWithin = (path: Path, outer: Path): boolean =>
  path.length >= outer.length && outer.every((place, i) => place === path[i]);

/** A place of the list as it is becomes a place of the list without what is taken from `from`. */
export function afterTaking(from: Path, to: Path): Path {
  const level = from.length - 1;
  const sameList = to.length > level && from.slice(0, level).every((place, i) => place === to[i]);
  const there = to[level];
  if (!sameList || there === undefined || there <= last(from)) return to;
  return [...to.slice(0, level), there - 1, ...to.slice(level + 1)];
}

/**
 * Where a thing goes with one step to the left or right: past its neighbour, into a bracket that stands there (brackets don't go into
 * each other), or out of its own. Undefined at the ends. Counted as `move_element` does, the thing taken out.
 */
export function stepFrom(items: readonly Item[], path: Path, direction: 1 | -1): Path | undefined {
  const list = listAt(items, path);
  const here = last(path);
  const item = list[here];
  const neighbour = list[here + direction];
  if (!item) return undefined;
  if (neighbour && hasBrackets(neighbour) && !hasBrackets(item))
    return direction > 0
      ? beside(path, here).concat(0)
      : beside(path, here - 1).concat(within(neighbour).length);
  if (neighbour) return beside(path, here + direction);
  const outer = path.slice(0, -1);
  if (outer.length === 0) return undefined;
  return direction > 0 ? beside(outer, last(outer) + 1) : outer;
}

/** Where a thing that was moved is found then: a bracket that nothing is left in goes. */
export function landing(items: readonly Item[], from: Path, to: Path): Path {
  const outer = from.slice(0, -1);
  if (outer.length === 0 || listAt(items, from).length > 1) return to;
  return isWithin(to, outer) ? to : afterTaking(outer, to);
}

/** Every place of a list with what stands there, brackets before what they hold. */
export function* walk(items: readonly Item[], outer: Path = []): Generator<{ path: Path; item: Item }> {
  for (const [i, item] of items.entries()) {
    const path = [...outer, i];
    yield { path, item };
    yield* walk(within(item), path);
  }
}

/** The legend's pairs, to look up and to speak about. */
import type { PalettePair } from '../../engine/shapes';

export type Pairs = ReadonlyMap<string, PalettePair>;

const key = (one: string, other: string): string => [one, other].sort().join(' ');

export const pairsOf = (pairs: readonly PalettePair[]): Pairs =>
  new Map(pairs.map((pair) => [key(pair.first, pair.second), pair]));

export const pairOf = (pairs: Pairs, one: string, other: string): PalettePair | undefined =>
  pairs.get(key(one, other));

/** What a maker would stumble over, worst first; only beads that lie side by side can be taken for each other. */
export type Trouble = 'alike' | 'alike_in_grey' | 'lost';
export function troubleOf(pair: PalettePair): Trouble | undefined {
  if (!pair.side_by_side) return undefined;
  if (pair.alike) return 'alike';
  if (pair.alike_in_grey) return 'alike_in_grey';
  return pair.lost_to === null ? undefined : 'lost';
}
const rank: readonly Trouble[] = ['alike', 'alike_in_grey', 'lost'];

export function troubled(pairs: readonly PalettePair[]): readonly { pair: PalettePair; trouble: Trouble }[] {
  return pairs
    .flatMap((pair) => {
      const trouble = troubleOf(pair);
      return trouble ? [{ pair, trouble }] : [];
    })
    .sort(
      (a, b) => rank.indexOf(a.trouble) - rank.indexOf(b.trouble) || a.pair.difference - b.pair.difference,
    );
}

/** "#a1B2c3", "a1b2c3": a colour as the server takes it. */
export function hexOf(text: string): string | undefined {
  const match = /^#?([0-9a-f]{6})$/i.exec(text.trim());
  return match?.[1] ? `#${match[1].toLowerCase()}` : undefined;
}

/** The letters in another order: one of them by `by` places. */
export function moved(letters: readonly string[], letter: string, by: number): readonly string[] {
  const from = letters.indexOf(letter);
  const to = from + by;
  if (from < 0 || to < 0 || to >= letters.length) return letters;
  const rest = letters.toSpliced(from, 1);
  return rest.toSpliced(to, 0, letter);
}

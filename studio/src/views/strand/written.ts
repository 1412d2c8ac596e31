/** Texts in the layout's language that the server is asked to put in: what a form on the page says, not what is read. */
import type { ElementKind } from '../../engine/strand_shapes';

export interface NewPart {
  readonly kind: ElementKind;
  readonly name: string;
  readonly width: string;
  readonly hole: string;
  readonly holes: 1 | 2;
  readonly apart: string;
  readonly printed: string;
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
const size = (text: string): string => text.trim().replace(',', '.').replaceAll(' ', '');

/** `clasp slide 14mm holes 2 apart 9.6mm "two-strand clasp"`. The server says what is wrong with it. */
export function partText(part: NewPart): string {
  const words: string[] = [part.kind, quoted(part.name.trim()), size(part.width) || '0'];
  if (part.holes === 2) words.push('holes', '2', 'apart', size(part.apart) || '0');
  if (part.hole.trim() && part.kind !== 'knot') words.push('hole', size(part.hole));
  if (part.printed.trim()) words.push(quoted(part.printed.trim()));
  return words.join(' ');
}

export interface NewRun {
  readonly name: string;
  /** What it repeats, as it is written. */
  readonly unit: string;
  readonly from: string;
  readonly to: string;
  /** What stands between its places, where it is a run between things. */
  readonly things?: readonly string[] | undefined;
}

/** `fill sides with round-8 from 2`. */
export function runText({ name, unit, from, to, things }: NewRun): string {
  const words = [things ? 'between' : 'fill'];
  if (name.trim()) words.push(quoted(name.trim()));
  words.push('with', unit);
  if (from.trim() && from.trim() !== '0') words.push('from', from.trim());
  if (to.trim()) words.push('to', to.trim());
  if (things) words.push(`(${things.join(', ')})`);
  return words.join(' ');
}

export const timesText = (times: number, written: string): string =>
  times === 1 ? written : `${times} ${written}`;

/** A measure that the server understands: a bare number is millimetres. */
export const measureText = (text: string): string => {
  const trimmed = size(text);
  return /^\d+(\.\d+)?$/.test(trimmed) ? `${trimmed}mm` : trimmed;
};

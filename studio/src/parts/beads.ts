/** Bead sizes to choose from: the known ones, then those that only the project has. */
import type { Bead, Tables } from '../engine/shapes';

export interface BeadOption {
  readonly value: string;
  readonly label: string;
}

export function beadOptions(tables: Tables, own: readonly Bead[] = []): readonly BeadOption[] {
  const known = tables.beads.map(({ id, name }) => ({ value: id, label: name }));
  const more = own.filter(({ id }) => !known.some(({ value }) => value === id));
  return [...known, ...more.map(({ id, name }) => ({ value: id, label: name ?? id }))];
}

export const beadName = (tables: Tables, own: readonly Bead[], id: string): string =>
  beadOptions(tables, own).find(({ value }) => value === id)?.label ?? id;

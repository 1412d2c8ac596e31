/** A project as the page holds it, and how the server's patches change it. */
import { cellsOfRuns, noBead } from '../band/cells';
import type { BandHead, Patch, ProjectHead, SavedProject, WholeBand } from '../engine/shapes';
import { withValueAt } from './pointer';

/** `beads[step * columns + column]` is a place in the legend, or noBead. A changed band is another object with other beads. */
export interface BandDocument {
  readonly head: BandHead;
  readonly beads: Uint16Array;
  /** Another number where anything but the colours of beads has changed: where beads are, and how the band is made. */
  readonly structure: number;
}
export interface ProjectDocument {
  readonly head: ProjectHead;
  readonly bands: readonly BandDocument[];
}

let structures = 0;
const anotherStructure = (): number => ++structures;

export function documentOf(saved: SavedProject): ProjectDocument {
  const { bands, ...head } = saved;
  const letters = head.legend.map(({ letter }) => letter);
  return {
    head,
    bands: bands.map(({ cells, ...band }) => ({
      head: band,
      beads: cellsOfRuns(band.columns, cells, letters).beads,
      structure: anotherStructure(),
    })),
  };
}

const beadOf = (place: number): number => (place < 0 ? noBead : place);

function bandOf({ cells, ...head }: WholeBand): BandDocument {
  const beads = new Uint16Array(head.columns * head.edge).fill(noBead);
  let at = 0;
  for (let i = 0; i + 1 < cells.length; i += 2) {
    const count = cells[i] ?? 0;
    beads.fill(beadOf(cells[i + 1] ?? -1), at, at + count);
    at += count;
  }
  return { head, beads, structure: anotherStructure() };
}

/** Four numbers a run: the first cell, how many, the bead before, the bead after. */
function withRuns(band: BandDocument, runs: readonly number[]): BandDocument {
  const beads = band.beads.slice();
  let holesMoved = false;
  for (let i = 0; i + 3 < runs.length; i += 4) {
    const [first = 0, count = 0, before = -1, after = -1] = runs.slice(i, i + 4);
    beads.fill(beadOf(after), first, first + count);
    holesMoved ||= before < 0 || after < 0;
  }
  return { ...band, beads, structure: holesMoved ? anotherStructure() : band.structure };
}

/** Names and notes of a band change nothing of how it lies; everything else may. */
const plainFields = new Set(['name', 'note', 'copies', 'series_mark']);

/** What a band is made with stands outside it: beads, the legend's sizes, the thread, forms and gauges. */
function touchesEveryBand(pointer: string): boolean {
  if (/^\/legend(\/\d+)?$/.test(pointer) || /^\/legend\/\d+\/bead$/.test(pointer)) return true;
  return /^\/(beads|forms|thread|gauges)(\/|$)/.test(pointer);
}

function withValue(
  document: ProjectDocument,
  change: { readonly at: string; readonly after?: unknown },
): ProjectDocument {
  const match = /^\/bands\/(\d+)\/([^/]+)/.exec(change.at);
  if (!match) {
    const bands = touchesEveryBand(change.at)
      ? document.bands.map((band) => ({ ...band, structure: anotherStructure() }))
      : document.bands;
    return { head: withValueAt(document.head, change.at, change.after), bands };
  }
  const [, place, field = ''] = match;
  const pointer = change.at.slice(`/bands/${place}`.length);
  return {
    head: document.head,
    bands: document.bands.map((band, i) =>
      i === Number(place)
        ? {
            head: withValueAt(band.head, pointer, change.after),
            beads: band.beads,
            structure: plainFields.has(field) ? band.structure : anotherStructure(),
          }
        : band,
    ),
  };
}

/** First cells, then bands, then values: the order in which the server made them. */
export function applyPatch(document: ProjectDocument, patch: Patch): ProjectDocument {
  let now = document;
  for (const { band, runs } of patch.cells ?? [])
    now = { ...now, bands: now.bands.map((one, i) => (i === band ? withRuns(one, runs) : one)) };
  for (const { at, before, after } of patch.bands ?? [])
    now = { ...now, bands: now.bands.toSpliced(at, before.length, ...after.map(bandOf)) };
  for (const change of patch.values ?? []) now = withValue(now, change);
  return now;
}

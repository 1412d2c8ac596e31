/** Where a finding leads: the stop at which it can be mended, with the band, bead or row in hand. */
import type { FindingSaid } from '../../engine/shapes';
import type { ProjectRoute, Stop } from '../../place/route';

/** The stop at which what a check looks at is changed. */
const stopOfCheck: Readonly<Record<string, Stop>> = {
  title: 'booklet',
  bands: 'form',
  references: 'band',
  plan: 'band',
  words: 'band',
  supplies: 'supplies',
  fit: 'form',
  width: 'form',
  strand: 'strand',
  thread: 'form',
  passes: 'band',
  unused: 'colours',
  colours: 'colours',
  difference: 'colours',
  contrast: 'colours',
};

/** A check that this page doesn't know leads to what it names. */
function stopOf({ check, place }: FindingSaid): Stop {
  const known = stopOfCheck[check];
  if (known) return check === 'references' && place.letters ? 'colours' : known;
  if (place.letters) return 'colours';
  if (place.size !== undefined || place.line !== undefined) return 'strand';
  return 'band';
}

export function routeTo(project: string, band: number, finding: FindingSaid): ProjectRoute {
  const { place } = finding;
  return {
    at: 'project',
    project,
    stop: stopOf(finding),
    band: place.band ?? band,
    ...(place.cell ? { cell: place.cell } : {}),
    ...(place.row === undefined ? {} : { row: place.row }),
    ...(place.size === undefined ? {} : { size: place.size }),
  };
}

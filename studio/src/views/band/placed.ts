/** The beads' places as the server sends them (docs/openapi.yaml, /positions), for the view in the round. */
import type { Lattice } from '../../band/lattice';
import type { Bead, KnownBead, ProjectHead, Tables } from '../../engine/shapes';
import { mm } from '../../engine/units';
import type { BeadSize, FormShape, LegendBead, PlacedBand } from '../../round/beads';
import { ringOf } from '../../round/slide';

export interface Positions {
  /** Column in the lower half, step in the upper. */
  readonly cells: Uint32Array;
  /** x y z and the hole's direction. */
  readonly seats: Float32Array;
  readonly closed: boolean;
  readonly mouths: Uint32Array;
}

const magic = 0x32427645; // "EvB2", the lower byte first
const headBytes = 20;

export function readPositions(bytes: ArrayBuffer): Positions {
  const head = new DataView(bytes);
  if (bytes.byteLength < headBytes || head.getUint32(0, true) !== magic)
    throw new Error('the places of beads are in another form than this page reads');
  const count = head.getUint32(4, true);
  const each = head.getUint32(8, true);
  const links = head.getUint32(16, true);
  const whole = headBytes + 4 * count * (1 + each) + 8 * links;
  if (each < 6 || bytes.byteLength !== whole)
    throw new Error(`the places of ${count} beads are ${bytes.byteLength} bytes, not ${whole}`);
  const cells = new Uint32Array(bytes, headBytes, count);
  const reals = new Float32Array(bytes, headBytes + 4 * count, count * each);
  const seats = new Float32Array(count * 6);
  for (let i = 0; i < count; i++) seats.set(reals.subarray(i * each, i * each + 6), i * 6);
  const mouths = new Uint32Array(bytes, headBytes + 4 * count * (1 + each), 2 * links);
  return { cells, seats, closed: head.getUint32(12, true) === 1, mouths };
}

/** As the server says it: the section of a form that a band goes round. */
export interface FormAnswer {
  readonly kind: string;
  readonly description: string;
  readonly length_mm: number | null;
  readonly hole_mm: number | null;
  readonly holes: readonly (readonly [number, number])[];
  readonly section: readonly (readonly [number, number])[];
}

/** A form without end (a wrist, a finger) is shown a little longer than the band is wide. */
export function formShape(form: FormAnswer, bandWidth: number): FormShape {
  const hole = form.hole_mm ?? 1.5; // mm, for the eye: where the project doesn't say
  return {
    kind: form.kind,
    section: form.section.map(([x, y]) => ({ x, y })),
    length: mm(form.length_mm ?? bandWidth * 1.6),
    holes: form.holes.map(([x, y]) => ({ x, y, diameter: hole })),
  };
}

/** A bead of the project, with what the tables know where the project doesn't say. */
export function sizeOf(bead: Bead | undefined, tables: Tables): BeadSize {
  const known: Partial<KnownBead> = tables.beads.find(({ id }) => id === bead?.id) ?? {};
  const kind = bead?.kind ?? known.kind ?? 'cylinder';
  const diameter = bead?.diameter_mm ?? known.diameter_mm ?? 1.6;
  const length = bead?.length_mm ?? known.length_mm ?? (kind === 'cylinder' ? 1.3 : 1.5);
  return {
    kind,
    diameter: mm(diameter),
    length: mm(length),
    hole: mm(bead?.hole_mm ?? known.hole_mm ?? diameter / 2),
    rim: mm(known.rim_mm ?? (kind === 'cylinder' ? diameter / 10 : length / 2)),
  };
}

/** Beads of other sizes than the band's own say so. */
export function legendBeads(head: ProjectHead, own: string | undefined, tables: Tables): LegendBead[] {
  return head.legend.map(({ letter, name, colour, finish, bead }) => ({
    letter,
    name,
    colour,
    finish: finish ?? 'opaque',
    ...(bead === own
      ? {}
      : {
          size: sizeOf(
            head.beads.find(({ id }) => id === bead),
            tables,
          ),
        }),
  }));
}

const threadColour = '#d9d2c3';

export function placedBand(
  positions: Positions,
  lattice: Lattice,
  size: BeadSize,
  form: FormShape | undefined,
  threadMm: number,
): PlacedBand {
  const cellOf = Uint32Array.from(
    positions.cells,
    (packed) => (packed >>> 16) * lattice.columns + (packed & 0xffff),
  );
  const lie = lattice.columnsRound ? 'round' : positions.closed ? 'closed' : 'flat';
  const ring = lie === 'flat' ? undefined : ringOf(lattice, cellOf);
  return {
    lie,
    seats: positions.seats,
    cellOf,
    size,
    ...(ring ? { ring } : {}),
    ...(form ? { form } : {}),
    thread: { mouths: positions.mouths, diameter: mm(threadMm), colour: threadColour },
  };
}

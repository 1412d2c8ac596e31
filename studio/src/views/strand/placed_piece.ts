/** The whole strung piece for the view in the round: what the server has placed, with each band's own beads. */
import type { Body, PlacedElement, Placements } from '../../engine/strand_shapes';
import { mm } from '../../engine/units';
import type { BandDocument } from '../../project/document';
import type {
  BeadSize,
  Cord,
  FindingShape,
  FormShape,
  LegendBead,
  Piece,
  PieceItem,
  PlacedBand,
  Transform,
} from '../../round/beads';
import { cross, plus, type Vec } from '../../round/vectors';

/** Strung beads that no colour of the legend is named after, metal, and cords. */
const plainBead = '#7f9aa1';
const metal = '#c9c2b2';
const cordColours = { elastic: '#d9d6cd', wire: '#a9a8a3', braided: '#5f4b3b', leather: '#5a3a26' };

interface Lying {
  readonly element: number;
  readonly middle: Vec;
  readonly along: Vec;
  readonly outwards: Vec;
  readonly length: number;
}

function lyingOf(numbers: readonly number[]): Lying {
  const [element = 0, , mx = 0, my = 0, mz = 0, ax = 0, ay = 0, az = 1, ox = 0, oy = 1, oz = 0, length = 0] =
    numbers;
  return { element, middle: [mx, my, mz], along: [ax, ay, az], outwards: [ox, oy, oz], length };
}

/** Its own z along the cord and y outwards. */
export function transformOf({ middle, along, outwards }: Omit<Lying, 'element' | 'length'>): Transform {
  return [...cross(outwards, along), 0, ...outwards, 0, ...along, 0, ...middle, 1];
}

const formOf = (body: Body): FormShape => ({
  kind: body.kind,
  section: body.section.map(([x, y]) => ({ x, y })),
  length: mm(body.length_mm * body.together),
  holes: body.holes.map(({ x_mm, y_mm, diameter_mm }) => ({ x: x_mm, y: y_mm, diameter: diameter_mm })),
});

const sizeOf = (bead: NonNullable<PlacedElement['bead']>): BeadSize => ({
  kind: bead.kind,
  diameter: mm(bead.diameter_mm),
  length: mm(bead.length_mm),
  hole: mm(bead.hole_mm),
  rim: mm(bead.rim_mm),
});

/** A bead that the layout itself describes is as wide across as it says, its rims rounded as glass is. */
function partBead(element: PlacedElement): BeadSize {
  const across = Math.max(0.2, element.across_mm);
  return {
    kind: 'round',
    diameter: mm(across),
    length: mm(element.width_mm),
    hole: mm(Math.min(element.hole_mm || across / 5, 0.8 * across)),
    rim: mm(Math.min(across, element.width_mm) / 2),
  };
}

/** Bars of metal stand for what is no bead: along the cord, or across two cords. */
function metalOf(element: PlacedElement, lying: Lying): PieceItem[] {
  const { middle, along, outwards } = lying;
  const put = (shape: FindingShape, at: Vec, way: Vec): PieceItem => ({
    kind: 'finding',
    shape,
    transform: transformOf({ middle: at, along: way, outwards }),
    colour: metal,
  });
  const bar = (length: number, diameter: number): FindingShape => ({
    kind: 'bar',
    length: mm(length),
    diameter: mm(diameter),
  });
  if (element.kind === 'ring') {
    const wire = Math.max(0.6, element.width_mm / 8);
    const flat = { middle, along: outwards, outwards: along };
    return [
      {
        kind: 'finding',
        shape: { kind: 'ring', diameter: mm(element.width_mm + 2 * wire), wire: mm(wire) },
        transform: transformOf(flat),
        colour: metal,
      },
    ];
  }
  if (element.holes < 2)
    return [put(bar(lying.length, Math.min(element.across_mm, element.thickness_mm)), middle, along)];
  const across = cross(outwards, along);
  const thick = Math.min(element.thickness_mm, lying.length);
  const count = Math.max(1, Math.round(lying.length / thick));
  return Array.from({ length: count }, (_, i) =>
    put(
      bar(element.across_mm, thick),
      plus(middle, along, count === 1 ? 0 : (i / (count - 1) - 0.5) * (lying.length - thick)),
      across,
    ),
  );
}

export interface ToPlace {
  readonly placements: Placements;
  readonly bands: readonly BandDocument[];
  readonly legend: readonly LegendBead[];
  /** By a band's place in the project; undefined until the server has told. */
  readonly settled: ReadonlyMap<number, PlacedBand>;
}

/** The piece, and which band of the project each of its items is. Things that aren't told yet are left out. */
export function placedPiece({ placements, bands, legend, settled }: ToPlace): {
  piece: Piece;
  bandOfItem: ReadonlyMap<number, number>;
} {
  const items: PieceItem[] = [];
  const bandOfItem = new Map<number, number>();
  for (const numbers of placements.things) {
    const lying = lyingOf(numbers);
    const element = placements.elements[lying.element];
    if (!element) continue;
    const transform = transformOf(lying);
    if (element.kind === 'form') {
      const band = element.band === null ? undefined : settled.get(element.band);
      const document = element.band === null ? undefined : bands[element.band];
      if (element.band !== null && band && document) {
        bandOfItem.set(items.length, element.band);
        items.push({ kind: 'band', transform, band, cells: document.beads, legend });
      } else if (element.body) {
        items.push({ kind: 'form', transform, form: formOf(element.body) });
      }
    } else if (element.kind === 'bead' || element.kind === 'knot') {
      items.push({
        kind: 'bead',
        transform,
        size: element.bead ? sizeOf(element.bead) : partBead(element),
        colour:
          element.look?.colour ?? (element.kind === 'knot' ? cordColours[placements.cord_kind] : plainBead),
        finish: element.look?.finish ?? 'opaque',
      });
    } else {
      items.push(...metalOf(element, lying));
    }
  }
  const cords = placements.cords.map((points): Cord => ({
    points: Float32Array.from(points),
    diameter: mm(placements.cord_mm),
    colour: cordColours[placements.cord_kind],
  }));
  return { piece: { lie: 'hung', items, cords }, bandOfItem };
}

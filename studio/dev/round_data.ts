/** Made-up seats to look at the view in the round with. In the studio the server's fabric gives them; nothing here is exact. */
import type { Lattice } from '../src/band/lattice';
import { shiftOf } from '../src/band/lattice';
import { mm } from '../src/engine/units';
import {
  type BandItem,
  type BeadSize,
  type Cord,
  finishes,
  type FormShape,
  type LegendBead,
  type Piece,
  type PieceItem,
  type PlacedBand,
  type Point,
} from '../src/round/beads';
import { ringOf } from '../src/round/slide';
import { alongAxis } from '../src/round/vectors';

export const cylinder: BeadSize = {
  kind: 'cylinder',
  diameter: mm(1.6),
  length: mm(1.3),
  hole: mm(0.8),
  rim: mm(0.16),
};
export const barrel: BeadSize = {
  kind: 'round',
  diameter: mm(2.2),
  length: mm(1.5),
  hole: mm(0.75),
  rim: mm(0.75),
};

/** Two arcs that meet at tips, counterclockwise from +x; `out` is how far it is moved outwards. */
export function lens(width: number, thickness: number, out: number): Point[] {
  const radius = (width * width + thickness * thickness) / (4 * thickness);
  const half = Math.asin(width / 2 / radius);
  const down = radius - thickness / 2;
  const points: Point[] = [];
  const arc = (cx: number, cy: number, r: number, from: number, to: number, steps: number) => {
    for (let i = 0; i < steps; i++) {
      const a = from + ((to - from) * i) / steps;
      points.push({ x: cx + r * Math.cos(a), y: cy + r * Math.sin(a) });
    }
  };
  const tip = out > 0 ? 12 : 1;
  arc(width / 2, 0, out, -Math.PI / 2 + half, Math.PI / 2 - half, tip);
  arc(0, -down, radius + out, Math.PI / 2 - half, Math.PI / 2 + half, 36);
  arc(-width / 2, 0, out, Math.PI / 2 + half, (3 * Math.PI) / 2 - half, tip);
  arc(0, down, radius + out, (3 * Math.PI) / 2 - half, (3 * Math.PI) / 2 + half, 36);
  return points;
}

export const carrier: FormShape = {
  kind: 'lens',
  section: lens(17, 5, 0),
  length: mm(9),
  holes: [
    { x: -3.25, y: 0, diameter: 1.4 },
    { x: 3.25, y: 0, diameter: 1.4 },
  ],
};

/** A point at a share of a closed line's length. */
function alongLine(line: readonly Point[], share: number): Point {
  const lengths = line.map((p, i) => {
    const next = line[(i + 1) % line.length] ?? p;
    return Math.hypot(next.x - p.x, next.y - p.y);
  });
  let left = share * lengths.reduce((a, b) => a + b, 0);
  for (const [i, p] of line.entries()) {
    const length = lengths[i] ?? 0;
    const next = line[(i + 1) % line.length] ?? p;
    if (left <= length && length > 0)
      return { x: p.x + ((next.x - p.x) * left) / length, y: p.y + ((next.y - p.y) * left) / length };
    left -= length;
  }
  return line[0] ?? { x: 0, y: 0 };
}

const peyote = (columns: number, edge: number, round: boolean): Lattice => ({
  columns,
  edge,
  drop: 1,
  holes: 'across',
  edgeRound: round,
  columnsRound: false,
  columnMm: mm(1.3),
  edgeMm: mm(1.6),
});

export function closedBand(
  columns: number,
  edge: number,
  size: BeadSize = cylinder,
  thread = true,
): PlacedBand {
  const lattice = peyote(columns, edge, true);
  const track = lens(17, 5, size.diameter / 2 + 0.05);
  const seats: number[] = [];
  const cellOf: number[] = [];
  for (let step = 0; step < edge; step++)
    for (let column = 0; column < columns; column++) {
      const place = 2 * step + shiftOf(lattice, column);
      const { x, y } = alongLine(track, place / (2 * edge));
      seats.push(x, y, (column - (columns - 1) / 2) * size.length, 0, 0, 1);
      cellOf.push(step * columns + column);
    }
  const mouths: number[] = [];
  for (let step = 0; step < edge; step++)
    for (let column = 0; column + 1 < columns; column++) {
      const other = shiftOf(lattice, column) === 0 ? step : step + 1;
      mouths.push((step * columns + column) * 2 + 1, ((other % edge) * columns + column + 1) * 2);
    }
  const cells = Uint32Array.from(cellOf);
  const ring = ringOf(lattice, cells);
  return {
    lie: 'closed',
    seats: Float32Array.from(seats),
    cellOf: cells,
    size,
    form: carrier,
    ...(ring ? { ring } : {}),
    ...(thread
      ? { thread: { mouths: Uint32Array.from(mouths), diameter: mm(0.15), colour: '#d8d2c2' } }
      : {}),
  };
}

export function flatBand(columns: number, edge: number, size: BeadSize = cylinder): PlacedBand {
  const lattice = peyote(columns, edge, false);
  const seats = new Float32Array(columns * edge * 6);
  const cellOf = new Uint32Array(columns * edge);
  for (let i = 0; i < cellOf.length; i++) {
    const [column, step] = [i % columns, Math.floor(i / columns)];
    cellOf[i] = i;
    seats.set(
      [column * size.length, -(step + shiftOf(lattice, column) / 2) * (size.diameter + 0.02), 0, 1, 0, 0],
      i * 6,
    );
  }
  return { lie: 'flat', seats, cellOf, size };
}

const colours = [
  '#1f3a5f',
  '#c8b27d',
  '#8a1f2b',
  '#f1ede2',
  '#2f6b57',
  '#d98c3f',
  '#101114',
  '#8f6fa8',
  '#3f9aa8',
];
export const legend: LegendBead[] = finishes.map((finish, i) => ({
  letter: String.fromCharCode(65 + i),
  name: finish,
  colour: colours[i] ?? '#888888',
  finish,
}));

/** A moon on the front face of a band. */
export function moonCells(columns: number, edge: number, sky = 0, moon = 1): Uint16Array {
  const cells = new Uint16Array(columns * edge).fill(sky);
  const [cx, cy] = [(columns - 1) / 2, edge * 0.25];
  for (let i = 0; i < cells.length; i++) {
    const [x, y] = [(i % columns) - cx, Math.floor(i / columns) + ((i % columns) % 2) / 2 - cy];
    if (Math.hypot(x * 0.85, y) < columns * 0.36 && Math.hypot(x * 0.85 + 1.6, y) > columns * 0.3)
      cells[i] = moon;
  }
  return cells;
}

export const stripes = (columns: number, edge: number, width: number, kinds: number): Uint16Array =>
  Uint16Array.from({ length: columns * edge }, (_, i) => Math.floor((i % columns) / width) % kinds);

export function waves(columns: number, edge: number, kinds: readonly number[]): Uint16Array {
  return Uint16Array.from({ length: columns * edge }, (_, i) => {
    const [x, y] = [i % columns, Math.floor(i / columns)];
    const v = Math.sin(x / 14 + 2 * Math.sin(y / 31)) + Math.sin(y / 17 + 1.7 * Math.sin(x / 23));
    return kinds[Math.floor(((v + 2) / 4) * kinds.length * 0.999)] ?? 0;
  });
}

/** Bands on two cords along an arc, beads between them, rings at the ends. */
export function necklace(bands: number, columns: number, edge: number): Piece {
  const items: PieceItem[] = [];
  const cords: Cord[] = [];
  const radius = 105;
  const place = (turn: number, off: number) => {
    const at = [(radius + off) * Math.sin(turn), 0, -(radius + off) * Math.cos(turn)] as const;
    return { at, way: [Math.cos(turn), 0, Math.sin(turn)] as const };
  };
  const gap = 0.135;
  for (let i = 0; i < bands; i++) {
    const turn = (i - (bands - 1) / 2) * gap;
    const { at, way } = place(turn, 0);
    const out = [-Math.sin(turn), 0, Math.cos(turn)] as const;
    // The holes along the cord, the front towards the viewer.
    const transform = [...out.map((v) => -v), 0, 0, 1, 0, 0, ...way, 0, ...at, 1];
    const band: BandItem = {
      kind: 'band',
      transform,
      band: closedBand(columns, edge, cylinder, false),
      cells: moonCells(columns, edge, i % 2 === 0 ? 0 : 4, i % 3 === 0 ? 1 : 3),
      legend,
    };
    items.push(band);
  }
  for (let i = 0; i <= bands; i++)
    for (const off of [-3.25, 3.25])
      for (const [k, finish] of (['galvanised', 'transparent', 'galvanised'] as const).entries()) {
        const { at, way } = place((i - bands / 2) * gap + (k - 1) * 0.017, off);
        items.push({
          kind: 'bead',
          transform: alongAxis(at, way),
          size: barrel,
          colour: k === 1 ? '#8a1f2b' : '#cfa24a',
          finish,
        });
      }
  for (const side of [-1, 1]) {
    const { at } = place(side * 0.98, 0);
    items.push({
      kind: 'finding',
      transform: alongAxis(at, [0, 1, 0]),
      shape: { kind: 'ring', diameter: mm(9), wire: mm(1) },
      colour: '#cfa24a',
    });
  }
  for (const off of [-3.25, 3.25]) {
    const points: number[] = [];
    for (let i = 0; i <= 80; i++)
      points.push(...place(-0.96 + (1.92 * i) / 80, off * Math.min(1, i / 8, (80 - i) / 8)).at);
    cords.push({ points: Float32Array.from(points), diameter: mm(0.6), colour: '#5a4632' });
  }
  return { lie: 'hung', items, cords };
}

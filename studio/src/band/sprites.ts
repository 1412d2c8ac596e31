/**
 * Beads as they are painted: small glass barrels, one picture for each colour, finish and size in pixels, painted once and
 * copied from then on.
 */
import { noBead } from './cells';
import { black, css, inkOn, mixed, type Rgb, rgbOf, white } from './colour';
import type { Lattice } from './lattice';
import type { Finish, LegendEntry } from './model';
import { type MakeSurface, type Pen, release, type Surface } from './surface';

/** How a finish takes the light; shares of 1, chosen by eye. */
interface Look {
  /** How bright the streak of light is, and how wide. */
  readonly streak: number;
  readonly width: number;
  /** How dark the sides turn. */
  readonly shade: number;
  /** Light that comes through from behind, on the side away from the lamp. */
  readonly glow: number;
  /** A colour seen darker along the hole. */
  readonly core: number;
}

const looks: Readonly<Record<Finish, Look>> = {
  opaque: { streak: 0.5, width: 0.14, shade: 0.24, glow: 0, core: 0 },
  transparent: { streak: 0.55, width: 0.12, shade: 0.14, glow: 0.3, core: 0.08 },
  lined: { streak: 0.5, width: 0.12, shade: 0.05, glow: 0.12, core: 0.24 },
  metallic: { streak: 0.8, width: 0.12, shade: 0.42, glow: 0.12, core: 0 },
  galvanised: { streak: 0.95, width: 0.16, shade: 0.45, glow: 0.2, core: 0 },
  matte: { streak: 0.07, width: 0.5, shade: 0.15, glow: 0, core: 0 },
  lustre: { streak: 0.6, width: 0.26, shade: 0.22, glow: 0.06, core: 0 },
  pearl: { streak: 0.42, width: 0.42, shade: 0.16, glow: 0.1, core: 0 },
  rainbow: { streak: 0.5, width: 0.2, shade: 0.24, glow: 0.08, core: 0 },
};

/** A rainbow coat's two tints, from memory: rose on the side of the light, green away from it. */
const rainbowTints: readonly [Rgb, Rgb] = [
  { red: 235, green: 120, blue: 190 },
  { red: 110, green: 220, blue: 170 },
];

/** From this size on (device pixels) a bead has its letter; below, it couldn't be read. */
const leastForLetter = 17;

export interface SpriteOptions {
  readonly holes: Lattice['holes'];
  readonly letters: boolean;
  /** Of empty places. */
  readonly outline: string;
  readonly font: string;
}

const runsAcross = (holes: Lattice['holes'], width: number, height: number): boolean =>
  holes === 'across' || (holes === 'squares' && width > height);

function shading(pen: Pen, width: number, height: number, across: boolean, base: Rgb, finish: Finish) {
  const look = looks[finish];
  const light = across ? pen.createLinearGradient(0, 0, 0, height) : pen.createLinearGradient(0, 0, width, 0);
  const dark = (share: number) => mixed(base, black, share);
  const lit = mixed(base, white, look.streak * 0.45);
  const [rose, green] = finish === 'rainbow' ? rainbowTints : [base, base];
  const at = 0.31;
  const stops: [number, Rgb][] = [
    [0, dark(look.shade * 0.8)],
    [Math.max(0.04, at - look.width * 1.3), mixed(base, rose, 0.35)],
    [at, lit],
    [Math.min(0.6, at + look.width * 1.5), mixed(dark(look.core), green, 0.25)],
    [0.66, dark(look.core)],
    [0.84, mixed(dark(look.shade * 0.5), white, look.glow)],
    [1, dark(look.shade * 1.15)],
  ];
  for (const [where, colour] of stops) light.addColorStop(where, css(colour));
  return light;
}

/** A rounded box; one that is a pixel or two large stays square. */
function barrel(pen: Pen, width: number, height: number, inset: number): void {
  const side = Math.min(width, height);
  pen.beginPath();
  pen.roundRect(inset, inset, width - 2 * inset, height - 2 * inset, side < 6 ? side * 0.2 : side * 0.26);
}

function paintBead(
  pen: Pen,
  width: number,
  height: number,
  entry: LegendEntry,
  options: SpriteOptions,
): void {
  const side = Math.min(width, height);
  const across = runsAcross(options.holes, width, height);
  const base = rgbOf(entry.colour);
  const look = looks[entry.finish];
  const inset = side < 8 ? 0.2 : Math.min(1.2, 0.3 + side * 0.012);
  barrel(pen, width, height, inset);
  pen.fillStyle = shading(pen, width, height, across, base, entry.finish);
  pen.fill();
  if (side < 9) return;
  // The ends of the barrel turn away from the light.
  const ends = across ? pen.createLinearGradient(0, 0, width, 0) : pen.createLinearGradient(0, 0, 0, height);
  const edge = css(black, Number((0.1 + look.shade * 0.45).toFixed(3)));
  for (const [where, colour] of [
    [0, edge],
    [0.16, css(black, 0)],
    [0.84, css(black, 0)],
    [1, edge],
  ] as const)
    ends.addColorStop(where, colour);
  pen.fillStyle = ends;
  pen.fill();
  pen.strokeStyle = css(mixed(base, black, 0.45), 0.55);
  pen.lineWidth = Math.max(0.6, side * 0.022);
  pen.stroke();
  if (entry.finish !== 'matte') paintStreak(pen, width, height, across, look);
  if (options.letters && side >= leastForLetter) paintLetter(pen, width, height, entry, base, options);
}

function paintStreak(pen: Pen, width: number, height: number, across: boolean, look: Look): void {
  const [long, thick] = across ? [width, height] : [height, width];
  const breadth = Math.max(1, thick * Math.min(0.16, look.width * 0.7));
  const start = long * 0.2;
  const length = long * 0.6;
  const off = thick * 0.29 - breadth / 2;
  pen.fillStyle = css(white, Number((look.streak * 0.7).toFixed(3)));
  pen.beginPath();
  if (across) pen.roundRect(start, off, length, breadth, breadth / 2);
  else pen.roundRect(off, start, breadth, length, breadth / 2);
  pen.fill();
}

function paintLetter(
  pen: Pen,
  width: number,
  height: number,
  entry: LegendEntry,
  base: Rgb,
  options: SpriteOptions,
): void {
  const side = Math.min(width, height);
  const size = Math.round(side * (entry.letter.length > 1 ? 0.46 : 0.58));
  pen.font = `700 ${size}px ${options.font}`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = css(inkOn(base), 0.92);
  pen.fillText(entry.letter, width / 2, height * 0.54);
}

function paintEmpty(pen: Pen, width: number, height: number, options: SpriteOptions): void {
  const side = Math.min(width, height);
  if (side < 4) return;
  barrel(pen, width, height, side < 8 ? 0.5 : 1.2);
  pen.strokeStyle = options.outline;
  pen.globalAlpha = 0.55;
  pen.lineWidth = 1;
  pen.stroke();
  pen.globalAlpha = 1;
}

/** A bead in pixels; `words` are the same bytes, a pixel each. */
export interface Sprite {
  readonly image: ImageData;
  readonly words: Uint32Array;
}

/** The beads of a legend for one raster, each painted when it is first wanted. */
export class SpriteSheet {
  readonly #scratch: Surface;
  readonly #made = new Map<number, Sprite>();
  readonly #sizes: ReadonlySet<number>;

  constructor(
    make: MakeSurface,
    private readonly legend: readonly LegendEntry[],
    sizes: readonly { width: number; height: number }[],
    private readonly options: SpriteOptions,
  ) {
    this.#sizes = new Set(sizes.map(({ width, height }) => sizeKey(width, height)));
    const widest = Math.max(1, ...sizes.map(({ width }) => width));
    const tallest = Math.max(1, ...sizes.map(({ height }) => height));
    this.#scratch = make(widest, tallest, true);
  }

  /** Nothing where the raster has no box of that size. */
  sprite(bead: number, width: number, height: number): Sprite | undefined {
    const size = sizeKey(width, height);
    const entry = this.legend[bead];
    const key = size * 65536 + (entry ? bead : noBead);
    const found = this.#made.get(key);
    if (found || !this.#sizes.has(size)) return found;
    const { pen } = this.#scratch;
    pen.clearRect(0, 0, width, height);
    if (entry) paintBead(pen, width, height, entry, this.options);
    else paintEmpty(pen, width, height, this.options);
    const image = pen.getImageData(0, 0, width, height);
    const made = { image, words: new Uint32Array(image.data.buffer) };
    this.#made.set(key, made);
    return made;
  }

  dispose(): void {
    this.#made.clear();
    release(this.#scratch);
  }
}

/** Boxes are smaller than this. */
const sizeKey = (width: number, height: number): number => width * 4096 + height;

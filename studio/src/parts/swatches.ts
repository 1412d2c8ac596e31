/** A band as a small picture: a dot for each half bead, so that shifted columns show as shifted. */
import { noBead } from '../band/cells';

type Rgb = readonly [red: number, green: number, blue: number];

export function rgbOf(colour: string): Rgb {
  const number = Number.parseInt(colour.slice(1), 16);
  return [(number >> 16) & 255, (number >> 8) & 255, number & 255];
}

export interface Swatch {
  readonly width: number;
  readonly height: number;
  /** RGBA, row after row. */
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
}

/** `shifts`: how many columns are shifted together, 0 for none. Columns run across, steps down. */
export function swatchOf(
  columns: number,
  edge: number,
  beads: Uint16Array,
  colours: readonly string[],
  shifts: number,
): Swatch {
  const height = 2 * edge + (shifts > 0 ? 1 : 0);
  const pixels = new Uint8ClampedArray(4 * columns * height);
  const rgb = colours.map(rgbOf);
  for (let step = 0; step < edge; step++)
    for (let column = 0; column < columns; column++) {
      const bead = beads[step * columns + column] ?? noBead;
      const colour = rgb[bead];
      if (!colour) continue;
      const shift = shifts > 0 ? Math.floor(column / shifts) % 2 : 0;
      for (const y of [2 * step + shift, 2 * step + shift + 1])
        pixels.set([...colour, 255], 4 * (y * columns + column));
    }
  return { width: columns, height, pixels };
}

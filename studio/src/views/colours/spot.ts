/** A square on a photograph, in its own pixels. */
export interface Spot {
  readonly left: number;
  readonly top: number;
  readonly size: number;
}
export interface Extent {
  readonly width: number;
  readonly height: number;
}

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));

/** Whole pixels, inside the picture. */
export function kept({ left, top, size }: Spot, picture: Extent): Spot {
  const side = Math.round(within(size, 4, Math.min(picture.width, picture.height)));
  return {
    left: Math.round(within(left, 0, picture.width - side)),
    top: Math.round(within(top, 0, picture.height - side)),
    size: side,
  };
}

/** With its middle at a place. */
export const centredAt = (x: number, y: number, size: number, picture: Extent): Spot =>
  kept({ left: x - size / 2, top: y - size / 2, size }, picture);

/** The same middle, another size. */
export const sized = (spot: Spot, size: number, picture: Extent): Spot =>
  centredAt(spot.left + spot.size / 2, spot.top + spot.size / 2, size, picture);

/** As the server reads a rectangle. */
export const rectangleText = ({ left, top, size }: Spot): string => [left, top, size, size].join(',');

/** What an arrow key does: a small step, a large one with Shift; plus and minus change the size. */
export function nudged(spot: Spot, key: string, large: boolean, picture: Extent): Spot | undefined {
  const step = Math.max(1, Math.round(Math.max(picture.width, picture.height) * (large ? 0.03 : 0.004)));
  const { left, top, size } = spot;
  if (key === 'ArrowLeft') return kept({ left: left - step, top, size }, picture);
  if (key === 'ArrowRight') return kept({ left: left + step, top, size }, picture);
  if (key === 'ArrowUp') return kept({ left, top: top - step, size }, picture);
  if (key === 'ArrowDown') return kept({ left, top: top + step, size }, picture);
  if (key === '+' || key === '=') return sized(spot, size + step, picture);
  if (key === '-') return sized(spot, size - step, picture);
  return undefined;
}

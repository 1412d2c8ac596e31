/**
 * What a piece takes up, found by looking in many directions for the point that lies farthest out.
 *
 * Properties (around.test.ts): every point lies within the ball; the outermost are points of the piece.
 */
import type { Around } from './gaze';
import { dot, plus, type Vec } from './vectors';

export interface Points {
  readonly numbers: ArrayLike<number>;
  /** Numbers a point, of which the first three are its place. */
  readonly width: number;
}

/** The sides, edges and corners of a cube. */
const directions: readonly Vec[] = [-1, 0, 1]
  .flatMap((x) => [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((z): Vec => [x, y, z])))
  .filter((way) => dot(way, way) > 0);

function eachPoint(lists: readonly Points[], does: (x: number, y: number, z: number) => void): void {
  for (const { numbers, width } of lists)
    for (let i = 0; i + 2 < numbers.length; i += width)
      does(numbers[i] ?? 0, numbers[i + 1] ?? 0, numbers[i + 2] ?? 0);
}

/** `edge`: how far beads reach beyond their middles. */
export function aroundOf(lists: readonly Points[], edge: number): Around {
  const farthest = directions.map((way) => ({ way, reach: -Infinity, at: [0, 0, 0] as Vec }));
  eachPoint(lists, (x, y, z) => {
    for (const found of farthest) {
      const reach = x * found.way[0] + y * found.way[1] + z * found.way[2];
      if (reach > found.reach) Object.assign(found, { reach, at: [x, y, z] });
    }
  });
  const outermost = farthest.filter((found) => found.reach > -Infinity).map((found) => found.at);
  if (outermost.length === 0) return { centre: [0, 0, 0], radius: 1, outermost: [[0, 0, 0]], edge };
  const middle = (j: 0 | 1 | 2): number => {
    const parts = outermost.map((point) => point[j]);
    return (Math.min(...parts) + Math.max(...parts)) / 2;
  };
  const centre: Vec = [middle(0), middle(1), middle(2)];
  let radius2 = 0;
  eachPoint(lists, (x, y, z) => {
    const from = plus([x, y, z], centre, -1);
    radius2 = Math.max(radius2, dot(from, from));
  });
  return { centre, radius: Math.sqrt(radius2) + edge, outermost, edge };
}

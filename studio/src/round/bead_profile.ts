/**
 * The outline of a bead's half section, written in the bead's own measures, so that one geometry serves every size: a corner lies at
 *   r = radius + hole * h + rim across * a + lip * l     along the hole at   z = half length * f + rim along * b + lip * m
 * and the shader puts in each bead's own numbers. A round bead is the same outline with rims that meet.
 *
 * Properties (bead_profile.test.ts): every corner lies within the bead's diameter and length and outside its hole; seen from outside
 * every side turns the same way; normals are unit.
 */
import type { Level } from './quality';

export interface Corner {
  /** Shares of half the diameter, of half the hole, of the rim across and of the lip. */
  readonly across: readonly [number, number, number, number];
  /** Shares of half the length, of the rim along and of the lip. */
  readonly along: readonly [number, number, number];
  /** The outline's normal, outwards and along. */
  readonly normal: readonly [number, number];
  /** How much light reaches it: the bore is dark. */
  readonly light: number;
}

interface Fineness {
  readonly sides: number;
  readonly rim: number;
  readonly lip: number;
  readonly bore: boolean;
  /** Only what faces the viewer: the shader turns the bead so that +x and its upper end do. */
  readonly facing: boolean;
}

export const fineness: Readonly<Record<Level, Fineness>> = {
  fine: { sides: 28, rim: 4, lip: 2, bore: true, facing: false },
  plain: { sides: 14, rim: 2, lip: 1, bore: true, facing: false },
  coarse: { sides: 10, rim: 1, lip: 0, bore: false, facing: true },
  rough: { sides: 6, rim: 0, lip: 0, bore: false, facing: true },
};

const boreLight = 0.22;
const mouthLight = 0.6;
const endLight = 0.8;

/** From the middle of the bore out over the upper end and half down the side. */
function upperHalf({ rim, lip, bore }: Fineness): Corner[] {
  const corners: Corner[] = [];
  if (bore) {
    corners.push({ across: [0, 1, 0, 0], along: [0, 0, 0], normal: [-1, 0], light: boreLight });
    for (let j = 0; j <= lip; j++) {
      const turn = ((1 - j / lip / 2) * 2 * Math.PI) / 2;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      corners.push({
        across: [0, 1, 0, 1 + c],
        along: [1, 0, s - 1],
        normal: [c, s],
        light: j < lip ? (boreLight + mouthLight) / 2 : mouthLight,
      });
    }
  } else {
    // The bore is closed by a dark funnel.
    corners.push({ across: [0, 0, 0, 0], along: [0.6, 0, 0], normal: [0, 1], light: boreLight });
    if (rim > 0) corners.push({ across: [0, 1, 0, 0], along: [1, 0, 0], normal: [0, 1], light: mouthLight });
  }
  if (rim === 0) {
    corners.push({ across: [1, 0, 0, 0], along: [1, 0, 0], normal: [0, 1], light: endLight });
    corners.push({ across: [1, 0, 0, 0], along: [1, 0, 0], normal: [1, 0], light: 1 });
    return corners;
  }
  for (let j = 0; j <= rim; j++) {
    const turn = ((1 - j / rim) * Math.PI) / 2;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    corners.push({
      across: [1, 0, c - 1, 0],
      along: [1, s - 1, 0],
      normal: [c, s],
      light: endLight + (1 - endLight) * (j / rim),
    });
  }
  return corners;
}

const mirrored = (corner: Corner): Corner => ({
  ...corner,
  along: [-corner.along[0], -corner.along[1], -corner.along[2]],
  normal: [corner.normal[0], -corner.normal[1]],
});

export function outlineOf(level: Level): Corner[] {
  const upper = upperHalf(fineness[level]);
  return [...upper, ...upper.toReversed().map(mirrored)];
}

/** Two corners at one place, whose normals differ: an edge, not a face. */
const sharp = (a: Corner | undefined, b: Corner | undefined): boolean =>
  String(a?.across) === String(b?.across) && String(a?.along) === String(b?.along);

/**
 * Triangles over a grid of `sides` times the outline's corners, seen from outside counterclockwise. With `facing` the end that is turned
 * away is left out, and of the side the half that is.
 */
export function trianglesOf(outline: readonly Corner[], sides: number, facing: boolean): Uint16Array {
  const list: number[] = [];
  const corners = outline.length;
  for (let side = 0; side < sides; side++) {
    const behind = Math.cos((2 * Math.PI * (side + 0.5)) / sides) < -1e-9;
    for (let k = 0; k + 1 < corners; k++) {
      const upper = k + 1 < corners / 2;
      const lowerEnd = !upper && (outline[k]?.normal[1] ?? 0) < 0 && outline[k]?.normal[0] === 0;
      if (facing && (lowerEnd || (behind && !upper))) continue;
      if (sharp(outline[k], outline[k + 1])) continue;
      const [a, b] = [side * corners + k, ((side + 1) % sides) * corners + k];
      const pole = outline[k]?.across.every((share) => share === 0) ?? false;
      const lastPole = outline[k + 1]?.across.every((share) => share === 0) ?? false;
      if (!lastPole) list.push(b, a + 1, b + 1);
      if (!pole) list.push(a, a + 1, b);
    }
  }
  return Uint16Array.from(list);
}

/** What the shader makes of a corner: r and z in millimetres. */
export function cornerAt(
  corner: Corner,
  radius: number,
  half: number,
  hole: number,
  rim: number,
): { r: number; z: number } {
  const lip = lipOf(radius, hole);
  const rimAcross = Math.min(rim, radius - hole - lip);
  const rimAlong = Math.min(rim, half);
  const [c, h, a, l] = corner.across;
  const [f, b, m] = corner.along;
  return { r: c * radius + h * hole + a * rimAcross + l * lip, z: f * half + b * rimAlong + m * lip };
}

/** The edge of the bore is rounded a little: a fifth of the wall, at most 0.06 mm, from memory. */
export const lipOf = (radius: number, hole: number): number => Math.min(0.06, 0.2 * (radius - hole));

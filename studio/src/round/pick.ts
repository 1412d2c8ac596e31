/** Which bead a line of sight meets first. */
import { type Seats, seatNumbers } from './beads';
import type { Ray } from './gaze';

/** Four numbers a bead: half its diameter, half its length, half its hole, its rim. */
export type Sizes = Float32Array;
export const sizeNumbers = 4;

/** Close enough to a bead's surface, in millimetres. */
const touch = 0.004;

/** Distance from a point to a cylinder with rounded rims, both measured from its middle: `r` across its axis, `z` along it. */
export function toRounded(r: number, z: number, radius: number, half: number, rim: number): number {
  const round = Math.min(rim, radius, half);
  const across = r - (radius - round);
  const along = Math.abs(z) - (half - round);
  return Math.min(Math.max(across, along), 0) + Math.hypot(Math.max(across, 0), Math.max(along, 0)) - round;
}

/** How far along the ray bead i is met; Infinity where it isn't, or not before `limit`. The bore counts as full. */
function meets(ray: Ray, seats: Seats, sizes: Sizes, i: number, limit: number): number {
  const s = i * seatNumbers;
  const [dx, dy, dz] = ray.along;
  const x = ray.from[0] - (seats[s] ?? 0);
  const y = ray.from[1] - (seats[s + 1] ?? 0);
  const z = ray.from[2] - (seats[s + 2] ?? 0);
  const radius = sizes[i * sizeNumbers] ?? 0;
  const half = sizes[i * sizeNumbers + 1] ?? 0;
  const nearest = -(x * dx + y * dy + z * dz);
  const ball2 = radius * radius + half * half;
  const off2 = x * x + y * y + z * z - nearest * nearest;
  if (off2 > ball2) return Infinity;
  const reach = Math.sqrt(ball2 - off2);
  if (nearest + reach < 0 || nearest - reach > limit) return Infinity;
  const rim = sizes[i * sizeNumbers + 3] ?? 0;
  const [ax, ay, az] = [seats[s + 3] ?? 0, seats[s + 4] ?? 0, seats[s + 5] ?? 0];
  // Steps that never overshoot: each as long as the way to the surface.
  let t = Math.max(0, nearest - reach);
  for (let step = 0; step < 64 && t <= nearest + reach; step++) {
    const [px, py, pz] = [x + t * dx, y + t * dy, z + t * dz];
    const along = px * ax + py * ay + pz * az;
    const across = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - along * along));
    const gap = toRounded(across, along, radius, half, rim);
    if (gap < touch) return t;
    t += gap;
  }
  return Infinity;
}

/** The bead that is met first, if any. Beads of no size are not there. */
export function firstBead(ray: Ray, seats: Seats, sizes: Sizes): number | undefined {
  let best: number | undefined;
  let least = Infinity;
  for (let i = 0; i < sizes.length / sizeNumbers; i++) {
    if ((sizes[i * sizeNumbers] ?? 0) <= 0) continue;
    const t = meets(ray, seats, sizes, i, least);
    if (t < least) [best, least] = [i, t];
  }
  return best;
}

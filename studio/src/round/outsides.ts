/** Which side of each bead is open to the light: away from the form, or both sides of a piece that lies flat. */
import { type PlacedBand, seatNumbers } from './beads';
import { onTrack, type Track } from './slide';
import type { Vec } from './vectors';

/** One side, and both sides, as the fourth byte says it. */
export const oneSide = 64;
export const bothSides = 127;

/** The open side of bead i of a band that has been slid by so many half beads. */
export function outsideOf(band: PlacedBand, track: Track | undefined, i: number, slid: number): Vec {
  if (band.ring && track) {
    const at = onTrack(track, (band.ring.placeOf[i] ?? 0) + slid);
    return [at.ty, -at.tx, 0];
  }
  if (band.lie === 'flat') return [0, 0, 1];
  const [x, y] = [band.seats[i * seatNumbers] ?? 0, band.seats[i * seatNumbers + 1] ?? 0];
  const from = Math.hypot(x, y) || 1;
  return [x / from, y / from, 0];
}

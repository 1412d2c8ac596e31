/** Figures of a fit as people read them. */
import type { Candidate } from '../../engine/shapes';
import { decimal, number } from '../../words/words.svelte';

const signed = (value: number, digits: number): string => {
  const text = decimal(Math.abs(value), digits);
  return Number(Math.abs(value).toFixed(digits)) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
};

export const strainText = ({ strain }: Candidate): string => `${signed(strain * 100, 1)} %`;
export const slackText = ({ slack_mm }: Candidate): string => `${signed(slack_mm, 2)} mm`;
/** Never said to be sure, or out of the question, by rounding alone. */
export function chanceText({ chance }: Candidate): string {
  if (chance > 0.995) return '> 99 %';
  if (chance < 0.005) return '< 1 %';
  return `${Math.round(chance * 100)} %`;
}
/** A printed drawing without most of the paper round it: `margin` of its own units are taken off each side. */
export const trimmed = (svg: string, margin = 20): string =>
  svg.replace(
    /(<svg\b[^>]*?) width="[^"]*" height="[^"]*" viewBox="0 0 ([\d.]+) ([\d.]+)"/,
    (_, start: string, width: string, height: string) => {
      const [across, down] = [Number(width) - 2 * margin, Number(height) - 2 * margin];
      return `${start} width="${across}" height="${down}" viewBox="${margin} ${margin} ${across} ${down}"`;
    },
  );
/** At most two decimals, without noughts at the end. */
export const mmText = (value: number): string => `${number(value, 2)} mm`;

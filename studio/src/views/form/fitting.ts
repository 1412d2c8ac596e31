/** What is asked of the server about a band's fit, and what of its settings can be chosen. */
import type { BandHead, Closure, Form, Gauge, Technique, Thread } from '../../engine/shapes';
import type { FitQuestion } from '../../parts/fit/question';

export const gaugeText = ({ column_mm, edge_mm }: Pick<Gauge, 'column_mm' | 'edge_mm'>): string =>
  `${column_mm}x${edge_mm}`;

/** Whether the band is a ring of beads round its form: zipped, or sewn together. */
export const closesRound = (head: Pick<BandHead, 'closure' | 'form'>): boolean =>
  head.form !== undefined && (head.closure === 'zip' || head.closure === 'sew');

/** `form` as typed; the gauge is the one that the server takes for the band. */
export function questionFor(
  form: string | undefined,
  head: BandHead | undefined,
  bead: string,
  thread: Thread | undefined,
  gauge: Pick<Gauge, 'column_mm' | 'edge_mm'> | undefined,
): FitQuestion {
  if (!head) return { form, bead, use: 'sliding' };
  return {
    form,
    bead: head.bead,
    use: head.use ?? 'fixed',
    columns: head.columns,
    stitch: head.closure === 'sew' ? 'square' : 'peyote',
    ...(gauge ? { gauge: gaugeText(gauge) } : { thread: thread?.id }),
  };
}

/** Forms with the places of the bands that go round them, then the bands that go round none. */
export interface Group {
  readonly form: Form | undefined;
  readonly bands: readonly number[];
}
export function groupsOf(
  forms: readonly Form[],
  bands: readonly { readonly head: BandHead }[],
): readonly Group[] {
  const placesOf = (id: string | undefined) => bands.flatMap(({ head }, i) => (head.form === id ? [i] : []));
  const groups: Group[] = forms.map((form) => ({ form, bands: placesOf(form.id) }));
  const loose = placesOf(undefined);
  return loose.length > 0 ? [...groups, { form: undefined, bands: loose }] : groups;
}

export const closuresOf = (techniques: readonly Technique[], id: string): readonly Closure[] =>
  techniques.find((one) => one.id === id)?.closures ?? [];

/** "3": a whole number from `least`; nothing else. */
export function wholeNumber(text: string, least = 1): number | undefined {
  const number = Number(text);
  return /^\d{1,6}$/.test(text) && number >= least ? number : undefined;
}
/** "1,35" and "1.35". */
export function decimalNumber(text: string): number | undefined {
  const number = Number(text.replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(number) ? number : undefined;
}

/** A worked swatch as it is counted and measured, in the words that the server reads. */
export const swatchWords = (
  columns: string,
  width: string,
  edge: string,
  length: string,
): string | undefined =>
  [columns, width, edge, length].some((text) => text.trim() === '')
    ? undefined
    : `${columns.trim()} columns = ${withUnit(width)}, ${edge.trim()} along the edge = ${withUnit(length)}`;

const withUnit = (text: string): string => {
  const trimmed = text.trim().replace(',', '.');
  return /^[\d.]+$/.test(trimmed) ? `${trimmed} mm` : trimmed;
};

/** A finished piece that fits: "lens:17x5x9 took 24, snug". */
export const finishedWords = (
  form: string | undefined,
  edge: string,
  verdict: string,
  slides: boolean,
): string | undefined =>
  form === undefined || wholeNumber(edge.trim()) === undefined
    ? undefined
    : `${form} took ${edge.trim()}, ${verdict}${slides ? ', sliding' : ''}`;

/** A form as it is written, KIND:SIZES,SETTING=VALUE (src/form/form.hpp), taken apart for fields and put together again. */

export interface WrittenForm {
  readonly kind: string;
  /** As typed: millimetres, or with a unit. */
  readonly sizes: readonly string[];
  readonly settings: Readonly<Record<string, string>>;
}

/** "width x thickness x length", as the server lists a kind's sizes. */
export const sizeNames = (sizes: string): readonly string[] => sizes.split(' x ');

/** Where one size ends and the next begins: "17x5x9", "0.67in x 5x9". No unit has an x in it. */
const between = /\s*[x×]\s*/i;

export function readForm(notation: string): WrittenForm {
  const colon = notation.indexOf(':');
  const kind = colon < 0 ? notation : notation.slice(0, colon);
  const [sizes = '', ...rest] = colon < 0 ? [] : notation.slice(colon + 1).split(',');
  const settings: Record<string, string> = {};
  for (const one of rest) {
    const equals = one.indexOf('=');
    if (equals > 0) settings[one.slice(0, equals).trim()] = one.slice(equals + 1).trim();
  }
  return { kind: kind.trim(), sizes: sizes.trim() === '' ? [] : sizes.trim().split(between), settings };
}

/** Decimal commas are taken for points: in the notation a comma parts. */
const plain = (text: string): string => text.trim().replace(',', '.').replace(/\s+/g, '');

/** Undefined while a size is still missing. */
export function writeForm({ kind, sizes, settings }: WrittenForm): string | undefined {
  if (sizes.length === 0 || sizes.some((size) => size.trim() === '')) return undefined;
  const given = Object.entries(settings).filter(([, value]) => value.trim() !== '');
  return [
    `${kind}:${sizes.map(plain).join('x')}`,
    ...given.map(([name, value]) => `${name}=${plain(value)}`),
  ].join(',');
}

/** What else can be said of a kind. */
export function settingsOf(kind: string): readonly string[] {
  const holes = ['holes', 'hole'];
  if (kind === 'lens') return [...holes, 'tip'];
  if (kind === 'dome') return [...holes, 'edge'];
  if (kind === 'outline') return ['length', ...holes];
  return ['round', 'oval', 'bar'].includes(kind) ? holes : [];
}

/** A free id for another form of a kind: "lens", "lens-2". */
export function freeId(kind: string, taken: readonly string[]): string {
  if (!taken.includes(kind)) return kind;
  for (let i = 2; ; i++) if (!taken.includes(`${kind}-${i}`)) return `${kind}-${i}`;
}

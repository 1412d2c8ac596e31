/** Amounts as people write them; what they are is the server's. */
import type { Money, SuppliesAnswer } from '../../engine/supplies_shapes';

/** Minor units are hundredths in every currency, as the engine takes them. */
const perUnit = 100;

export function moneyText(minor: number | null, currency: string, language: string): string {
  if (minor === null) return '–';
  const number = minor / perUnit;
  try {
    return new Intl.NumberFormat(language, { style: 'currency', currency }).format(number);
  } catch {
    return `${number.toFixed(2)} ${currency}`;
  }
}
export const priceText = (money: Money | null, language: string): string =>
  money ? moneyText(money.minor, money.currency, language) : '–';

/** What a currency is written with: its sign, or its letters where it has none. */
export function currencySign(currency: string, language: string): string {
  try {
    const parts = new Intl.NumberFormat(language, { style: 'currency', currency }).formatToParts(0);
    return parts.find(({ type }) => type === 'currency')?.value ?? currency;
  } catch {
    return currency;
  }
}

/** The first few of many things, and how many more there are: whatever is left out stands in the lists beside. */
export const firstOf = (things: readonly string[], most = 4): string =>
  things.length <= most
    ? things.join('; ')
    : `${things.slice(0, most).join('; ')} … (+${things.length - most})`;

/** "3.40" as 340; undefined for what is no amount. Both signs for decimals are understood. */
export function minorOf(text: string): number | undefined {
  const trimmed = text.trim().replace(',', '.');
  if (!/^\d{1,9}(\.\d{0,2})?$/.test(trimmed)) return undefined;
  return Math.round(Number(trimmed) * perUnit);
}
export const plainMinor = (minor: number): string => (minor / perUnit).toFixed(2);

export function numberOf(text: string): number | undefined {
  const trimmed = text.trim().replace(',', '.');
  return /^\d{1,9}(\.\d{1,6})?$/.test(trimmed) ? Number(trimmed) : undefined;
}

/** A cell of a table: quoted where it must be, and never taken for a formula. */
export function csvCell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",;\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

type Row = readonly (string | number)[];
const cost = (money: Money | null | undefined): string | number => (money ? money.minor / perUnit : '');

/** The list as a table that spreadsheets read (RFC 4180). */
export function csvOf(answer: SuppliesAnswer): string {
  const head: Row = ['kind', 'letter', 'name', 'size', 'count', 'unit', 'grams', 'packs', 'cost', 'currency'];
  const rows: Row[] = answer.beads.map((bead) => [
    'bead',
    bead.letter,
    bead.name,
    bead.size,
    bead.count,
    '',
    bead.grams,
    bead.packs ?? '',
    cost(bead.cost),
    bead.cost?.currency ?? '',
  ]);
  for (const [kind, lines] of [
    ['form', answer.forms],
    ['thread', answer.threads],
    ['finding', answer.findings],
  ] as const)
    for (const line of lines)
      rows.push([
        kind,
        '',
        line.name,
        '',
        line.count,
        line.unit,
        '',
        '',
        cost(line.purchase?.cost),
        line.purchase?.cost?.currency ?? '',
      ]);
  for (const tool of answer.tools) rows.push(['tool', '', tool, '', '', '', '', '', '', '']);
  return [head, ...rows].map((row) => row.map(csvCell).join(',')).join('\r\n') + '\r\n';
}

import { afterEach, describe, expect, it } from 'vitest';

import { de } from './de';
import { en } from './en';
import { es } from './es';
import { chooseLanguage, decimal, languages, number, t, tn } from './words.svelte';

const english = new Map<string, string>(Object.entries(en));
const others = { de, es };

/** Texts that are the same word in both languages, or no word at all. */
const alike: Readonly<Record<keyof typeof others, readonly string[]>> = {
  de: [
    'bandview.colour',
    'booklet.paper.a4',
    'booklet.pdfSize',
    'colours.finish.transparent',
    'colours.name',
    'fit.chance',
    'form.band',
    'form.form',
    'lettering.text',
    'opening.firstBand',
    'path.band',
    'path.form',
    'strand.kind.form',
    'strand.kind.ring',
    'studio.title',
    'tool.ellipse',
  ],
  es: [
    'bandview.colour',
    'booklet.paper.a4',
    'booklet.pdfSize',
    'proof.error',
    'path.findings.one',
    'studio.title',
    'supplies.kits',
  ],
};
const placeholders = (text: string): string[] => [...new Set(text.match(/\{\w+\}/g) ?? [])].sort();

describe.each(Object.entries({ en, ...others }))('the texts of %s', (name, catalogue) => {
  const texts = new Map<string, string>(Object.entries(catalogue));
  it('have the keys of the English ones, sorted', () =>
    expect([...texts.keys()]).toEqual([...english.keys()].sort()));
  it('put in the same', () => {
    for (const [key, text] of texts)
      expect([key, ...placeholders(text)]).toEqual([key, ...placeholders(english.get(key) ?? '')]);
  });
  it('say something, with nothing blank at their ends', () => {
    for (const [key, text] of texts) {
      expect(text, key).not.toBe('');
      expect(text, key).toBe(text.trim());
      expect(text, key).not.toContain('  ');
    }
  });
  it('have both forms of what is said of a count', () => {
    for (const key of texts.keys())
      if (/\.(one|other)$/.test(key))
        for (const form of ['one', 'other']) expect(texts.has(key.replace(/\w+$/, form)), key).toBe(true);
  });
  if (name === 'de' || name === 'es')
    it('are translated, but for the words that are alike', () => {
      const same = [...texts].filter(([key, text]) => text === english.get(key)).map(([key]) => key);
      expect(same).toEqual([...alike[name]].sort());
    });
});

describe('the keys', () => {
  const files = import.meta.glob<string>(['../**/*.{ts,svelte}', '!../**/*.test.ts', '!./*'], {
    query: '?raw',
    import: 'default',
    eager: true,
  });
  const sources = Object.values(files).join('\n');
  const quoted = new Set([...sources.matchAll(/'([\w.]+)'/g)].map(([, text]) => text));
  /** Keys that are put together, such as `fit.use.${use}`, with what asks for them. */
  const areas = new Set([...english.keys()].map((key) => key.split('.')[0]));
  const composed = [...sources.matchAll(/`([a-z]+\.(?:[\w.]|\$\{[^`{}]*(?:\([^`{}]*\))?[^`{}]*\})*)`/g)]
    .map(([, text = '']) => text)
    .filter((text) => text.includes('${') && areas.has(text.split('.')[0]))
    .map((text) => ({
      text,
      fits: new RegExp(`^${text.replaceAll('.', '\\.').replace(/\$\{[^}]*\}/g, '(\\w+)')}$`),
    }));
  const countless = (key: string): string => key.replace(/\.(one|other)$/, '');

  it('that are asked for by name are there', () => {
    const asked = [...sources.matchAll(/\b(tn?)\(\s*'([\w.]+)'/g)];
    expect(asked.length).toBeGreaterThan(300);
    for (const [, how, key = ''] of asked)
      for (const full of how === 'tn' ? [`${key}.one`, `${key}.other`] : [key])
        expect(english.has(full), full).toBe(true);
  });
  it('that are put together fit some that are there', () => {
    expect(composed.length).toBeGreaterThan(30);
    for (const { text, fits } of composed)
      expect(
        [...english.keys()].some((key) => fits.test(key)),
        text,
      ).toBe(true);
  });
  it('are all used', () => {
    const unused = [...english.keys()].filter(
      (key) =>
        !quoted.has(key) &&
        !quoted.has(countless(key)) &&
        // What stands in the place of ${…} is named in the sources, too; kinds and sizes of forms the server says.
        !composed.some(({ fits }) => {
          const parts = fits.exec(key)?.slice(1);
          return parts?.every((part) => key.startsWith('fit.') || quoted.has(part));
        }),
    );
    expect(unused).toEqual([]);
  });
});

describe('a text', () => {
  afterEach(() => chooseLanguage('en'));

  it('is said in the language that is chosen', () => {
    expect(languages()).toEqual(['en', 'de', 'es']);
    expect(t('tool.line')).toBe('Line');
    chooseLanguage('de');
    expect(t('tool.line')).toBe('Linie');
    chooseLanguage('es');
    expect(t('tool.line')).toBe('Línea');
    chooseLanguage('xx');
    expect(t('tool.line')).toBe('Línea');
  });
  it('has numbers as that language writes them', () => {
    expect(t('fit.beads', { beads: 12345 })).toBe('12,345 beads.');
    expect([decimal(1.5, 2), number(1.5), number(0.12345)]).toEqual(['1.50', '1.5', '0.123']);
    chooseLanguage('de');
    expect(t('fit.beads', { beads: 12345 })).toBe('12.345 Perlen.');
    expect([decimal(1.5, 2), number(1.5)]).toEqual(['1,50', '1,5']);
  });
  it('leaves a name that nothing is put in for, and takes text as it is', () =>
    expect([t('form.rows'), t('form.rows', { rows: '0012' })]).toEqual(['{rows} rows.', '0012 rows.']));
  it.each([
    ['en', '1 bead', '0 beads', '2 beads', '1 column'],
    ['de', '1 Perle', '0 Perlen', '2 Perlen', '1 Spalte'],
    ['es', '1 cuenta', '0 cuentas', '2 cuentas', '1 columna'],
  ])('of a count agrees with it in %s', (language, one, none, two, column) => {
    chooseLanguage(language);
    expect([1, 0, 2].map((count) => tn('bandview.rowCount', count))).toEqual([one, none, two]);
    expect(tn('rearrange.insertColumns', 1)).toContain(column);
    // Spanish has a further form for millions; the usual one serves.
    expect(tn('bandview.rowCount', 1_000_000)).toMatch(/0 \w+s|0 Perlen/);
  });
  it('of a count puts in more than the count', () =>
    expect(tn('supplies.toBuy', 3, { total: '€5' })).toBe('To buy for 3 kits: €5.'));
});

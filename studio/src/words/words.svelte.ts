import { de } from './de';
import { en, type Catalogue, type PluralKey, type WordKey } from './en';
import { es } from './es';
import { numberFormat, pluralForm } from './formats';

const catalogues: Readonly<Record<string, Catalogue>> = { en, de, es };

let language = $state('en');

type Put = Readonly<Record<string, string | number>>;

/** A number as it is written in the language that is chosen, with so many decimals. */
export const decimal = (value: number, digits: number): string =>
  numberFormat(language, digits, digits).format(value);
/** The same, with no noughts at the end. */
export const number = (value: number, most = 3): string => numberFormat(language, 0, most).format(value);

/** A text of the page in the language that is chosen, with what is put in for its {names}. */
export function t(key: WordKey, put: Put = {}): string {
  const text = (catalogues[language] ?? en)[key];
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = put[name];
    return value === undefined ? whole : typeof value === 'number' ? number(value) : value;
  });
}

/** What is said of `count` things; {count} is put in. */
export const tn = (key: PluralKey, count: number, put: Put = {}): string =>
  t(`${key}.${pluralForm(language, count)}`, { count, ...put });

export const languages = (): readonly string[] => Object.keys(catalogues);
export const currentLanguage = (): string => language;
export function chooseLanguage(name: string): void {
  if (name in catalogues) language = name;
}

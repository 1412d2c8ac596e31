import { en, type Catalogue, type WordKey } from './en';

const catalogues: Readonly<Record<string, Catalogue>> = { en };

let language = $state('en');

/** A text of the page in the language that is chosen, with what is put in for its {names}. */
export function t(key: WordKey, put: Readonly<Record<string, string | number>> = {}): string {
  const text = (catalogues[language] ?? en)[key];
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(put[name] ?? whole));
}

export const languages = (): readonly string[] => Object.keys(catalogues);
export const currentLanguage = (): string => language;
export function chooseLanguage(name: string): void {
  if (name in catalogues) language = name;
}

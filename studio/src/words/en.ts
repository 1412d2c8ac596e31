/** Every text of the page, in English. The other catalogues have the same keys. `{name}` stands for what is put in. */
export const en = {
  'studio.title': 'Evencount',
} as const;

export type WordKey = keyof typeof en;
export type Catalogue = Readonly<Record<WordKey, string>>;

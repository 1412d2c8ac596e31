/** How a language writes numbers and tells one from many. Each is made once: making one is slow. */
const formats = new Map<string, Intl.NumberFormat>();
const rules = new Map<string, Intl.PluralRules>();

/** With at least `least` and at most `most` decimals. */
export function numberFormat(language: string, least: number, most: number): Intl.NumberFormat {
  const name = `${language} ${least} ${most}`;
  const known = formats.get(name);
  if (known) return known;
  const made = new Intl.NumberFormat(language, { minimumFractionDigits: least, maximumFractionDigits: most });
  formats.set(name, made);
  return made;
}

/** Further forms of a language, such as the Spanish one for millions, are said as `other`. */
export function pluralForm(language: string, count: number): 'one' | 'other' {
  let rule = rules.get(language);
  if (!rule) rules.set(language, (rule = new Intl.PluralRules(language)));
  return rule.select(count) === 'one' ? 'one' : 'other';
}

/** What a person likes the page to be: kept in this browser, nowhere else. */
import { chooseLanguage, languages } from '../words/words.svelte';

export const lights = ['auto', 'light', 'dark'] as const;
export type Light = (typeof lights)[number];

const lightKey = 'evencount-light';
const languageKey = 'evencount-language';

function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
function keep(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // A browser that keeps nothing shows what it showed at first, next time.
  }
}

let light = $state<Light>(lights.find((one) => one === kept(lightKey)) ?? 'auto');

function show(): void {
  const root = document.documentElement;
  root.toggleAttribute('data-light', light === 'light');
  root.toggleAttribute('data-dark', light === 'dark');
}

export const settings = {
  get light(): Light {
    return light;
  },
  set light(chosen: Light) {
    light = chosen;
    keep(lightKey, chosen);
    show();
  },
  speak(language: string): void {
    chooseLanguage(language);
    keep(languageKey, language);
    document.documentElement.lang = language;
  },
  /** Once, before anything is shown. */
  begin(): void {
    show();
    const asked = [kept(languageKey), ...navigator.languages.map((tag) => tag.split('-')[0] ?? '')];
    const language = asked.find((one) => one !== null && languages().includes(one)) ?? 'en';
    chooseLanguage(language);
    document.documentElement.lang = language;
  },
};

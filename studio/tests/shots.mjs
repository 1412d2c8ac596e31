// Pictures of the studio: node tests/shots.mjs FOLDER [STOP …]. Every view in light, dark, on a tablet upright, at 200 %, and in German, whose words are longer; LOOKS=light,german for some.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

import { assertFits, enter, launch } from './support/browser.mjs';
import { StudioServer, examples } from './support/server.mjs';

const [folder, ...wanted] = process.argv.slice(2);
if (!folder) {
  console.error('usage: node tests/shots.mjs FOLDER [STOP …]');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });

const looks = {
  light: { viewport: { width: 1280, height: 800 }, colorScheme: 'light' },
  dark: { viewport: { width: 1280, height: 800 }, colorScheme: 'dark' },
  small: { viewport: { width: 1024, height: 768 }, colorScheme: 'light' },
  tablet: { viewport: { width: 820, height: 1180 }, colorScheme: 'light', hasTouch: true },
  zoomed: { viewport: { width: 640, height: 400 }, colorScheme: 'light', deviceScaleFactor: 2 },
  german: { viewport: { width: 1280, height: 800 }, colorScheme: 'light', language: 'de' },
  germanSmall: { viewport: { width: 1024, height: 768 }, colorScheme: 'light', language: 'de' },
  germanTablet: {
    viewport: { width: 820, height: 1180 },
    colorScheme: 'light',
    hasTouch: true,
    language: 'de',
  },
};
const lookNames = process.env.LOOKS?.split(',') ?? Object.keys(looks);
const stops = ['opening', 'form', 'band', 'colours', 'strand', 'supplies', 'proof', 'booklet'];

const server = await StudioServer.start({ projects: [join(examples, 'moonwatch.evencount.json')] });
const browser = await launch();
try {
  for (const look of lookNames) {
    const { language, ...options } = looks[look];
    const { page, context, faults } = await enter(browser, server, options);
    if (language)
      await page.evaluate((chosen) => localStorage.setItem('evencount-language', chosen), language);
    // As a person's browser shows it: tests draw the picture in the round simply.
    await page.addInitScript(() => Object.defineProperty(navigator, 'webdriver', { get: () => false }));
    for (const stop of stops.filter((one) => wanted.length === 0 || wanted.includes(one))) {
      await page.goto(`${server.origin}${stop === 'opening' ? '/' : `/p/moonwatch/${stop}`}`);
      await page.waitForSelector('main');
      await page.waitForTimeout(2500);
      await page.screenshot({ path: join(folder, `${stop}-${look}.png`) });
      await assertFits(page, `${stop} (${look})`).catch((error) => console.error(error.message));
    }
    for (const fault of faults) console.error(`${look}: ${fault}`);
    await context.close();
  }
} finally {
  await browser.close();
  await server.stop();
}

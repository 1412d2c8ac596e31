/**
 * Pictures of the view in the round and its figures, with vite's own server and Debian's Chromium:
 *   node dev/round_shots.mjs OUTPUT_FOLDER [shots|figures|memory ...] [NAME ...]
 * A NAME is one of the pictures below; none takes them all.
 */
import { mkdirSync } from 'node:fs';

import { chromium } from 'playwright-core';
import { createServer } from 'vite';

const [folder = 'shots', ...wanted] = process.argv.slice(2);
const parts = wanted.filter((part) => ['shots', 'figures', 'memory'].includes(part));
const named = wanted.filter((part) => !parts.includes(part));
const wants = (part) => parts.length === 0 || parts.includes(part);
mkdirSync(folder, { recursive: true });

const server = await createServer({ server: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
await server.listen();
const base = `http://127.0.0.1:${server.httpServer.address().port}/dev/round.html`;
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: [
    '--headless',
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--enable-unsafe-swiftshader',
  ],
});

async function open(query, { dark = false, width = 1024, height = 768, scale = 1, still = true } = {}) {
  const page = await browser.newPage({
    viewport: { width, height },
    deviceScaleFactor: scale,
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: still ? 'reduce' : 'no-preference',
  });
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type()) && !/GPU stall|GL Driver|404/.test(message.text()))
      console.log(query, message.text());
  });
  page.on('pageerror', (error) => console.log(query, String(error)));
  await page.goto(`${base}?${query}`, { timeout: 120_000 });
  await drawn(page, 0);
  return page;
}

/** Waits until frames have come in and then for a while none. */
async function drawn(page, before) {
  await page.waitForFunction(
    (n) => (window.drawnFrames?.length ?? 0) > n && Array.isArray(window.drawnFrames),
    before,
    {
      polling: 100,
      timeout: 180_000,
    },
  );
  let seen = -1;
  for (;;) {
    const now = await page.evaluate(() => window.drawnFrames.length);
    if (now === seen) return now;
    seen = now;
    await page.waitForTimeout(500);
  }
}

if (wants('shots')) {
  const shots = [
    ['band', 'show=band&full'],
    ['band-dark', 'show=band&full', { dark: true }],
    ['glass', 'show=glass&full'],
    ['barrels', 'show=barrels&full'],
    ['finishes', 'show=finishes&full'],
    ['finishes-dark', 'show=finishes&full', { dark: true }],
    ['round-finishes', 'show=roundFinishes&full'],
    ['flat', 'show=flat&full'],
    ['piece', 'show=piece&full'],
    ['piece-dark', 'show=piece&full', { dark: true }],
    ['panel', 'show=panel'],
    ['upright', 'show=band&full&slide=7', { width: 820, height: 1180 }],
    ['low', 'show=band&low'],
    ['narrow', 'show=band&full&narrow', { width: 480, height: 700, scale: 2 }],
  ];
  for (const [name, query, options] of shots) {
    if (named.length > 0 && !named.includes(name)) continue;
    const page = await open(query, options);
    await page.screenshot({ path: `${folder}/${name}.png` });
    await page.close();
  }
}

if (wants('figures')) {
  for (const [beads, show] of [
    [224, 'band'],
    [1200, 'twelveHundred'],
    [1110, 'piece'],
    [20000, 'twentyThousand'],
    [60000, 'panel'],
  ])
    for (const low of ['&full', '', '&low']) {
      const page = await open(`show=${show}${low}`);
      let count = await drawn(page, 0);
      for (let i = 0; i < 4; i++) {
        await page.keyboard.press('Tab');
        await page.locator('.hands').focus();
        await page.keyboard.press('ArrowRight');
        count = await drawn(page, count);
      }
      const frames = await page.evaluate(() => window.drawnFrames);
      console.log(
        show + low,
        beads,
        'beads;',
        frames.map((f) => `${f.level} ${f.calls} draws ${f.triangles} tri ${f.ms.toFixed(0)} ms`).join(' | '),
      );
      await page.close();
    }
}

if (wants('memory')) {
  // Fifty times there and gone: a page keeps at most sixteen contexts, so that any that is not given back would show.
  const page = await open('show=band&low');
  for (let i = 0; i < 50; i++) {
    await page.evaluate(() => window.toggle(false));
    const before = await page.evaluate(() => window.drawnFrames.length);
    await page.evaluate(() => window.toggle(true));
    await page.waitForFunction((n) => window.drawnFrames.length > n, before, {
      polling: 50,
      timeout: 180_000,
    });
  }
  await page.evaluate(() => window.toggle(false));
  await page.waitForTimeout(500);
  console.log(
    'after 50 mounts',
    await page.evaluate(() =>
      [window.held.length, ...new Set(window.held.map((h) => JSON.stringify(h)))].join(' '),
    ),
  );
  await page.close();
}

await browser.close();
await server.close();

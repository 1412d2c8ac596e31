// A browser without a network, and what a test of the stitch-along page does with it.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const home = fileURLToPath(new URL('../../', import.meta.url));
const require = createRequire(`${home}studio/package.json`);
const { chromium } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

const flags =
  '--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
export const telephone = { viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true };

export const launch = (browser) =>
  chromium.launch({ executablePath: browser, args: flags.split(' '), timeout: patience });

const patience = 180_000; // milliseconds: a machine that builds at the same time starves a browser
let shared = null;

const contextOf = async (browser, options) => {
  const context = await browser.newContext({ ...telephone, ...options });
  context.setDefaultTimeout(patience);
  await context.setOffline(true);
  return context;
};

/**
 * Opens a file offline, nothing kept of earlier visits. Any request beyond the file, error or message of the console is kept in `faults`.
 * Without options one page serves all tests: a new one takes the browser long.
 */
export const open = async (browser, file, options) => {
  const own = pathToFileURL(file).href;
  if (!options) shared ??= await (await contextOf(browser)).newPage();
  const page = options ? await (await contextOf(browser, options.context)).newPage() : shared;
  if (options?.before) await page.addInitScript(options.before);
  const faults = [];
  const listeners = {
    request: (request) => {
      if (request.url() !== own && !request.url().startsWith('data:'))
        faults.push(`asked for ${request.url()}`);
    },
    pageerror: (error) => faults.push(`error: ${error.message}`),
    console: (message) => {
      if (['error', 'warning'].includes(message.type())) faults.push(`console: ${message.text()}`);
    },
  };
  for (const [name, listener] of Object.entries(listeners)) page.on(name, listener);
  await page.goto(own);
  if (!options) {
    await page.evaluate(() => localStorage.clear());
    await page.reload();
  }
  const close = async () => {
    for (const [name, listener] of Object.entries(listeners)) page.off(name, listener);
    if (options) await page.context().close();
  };
  return { context: page.context(), page, faults, close };
};

/** Closes what a failed test left open. */
export const closeOthers = async (browser) => {
  for (const context of browser.contexts()) if (context !== shared?.context()) await context.close();
};

export const view = (page, name) => page.click(`nav button[data-view="${name}"]`);

/** Nothing wider than the window, and everything that is pressed large enough for a finger. */
export const assertFits = async (page, where) => {
  const found = await page.evaluate(() => {
    const least = 44; // WCAG 2.2, 2.5.5
    const small = [...document.querySelectorAll('button, select')]
      .map((each) => ({ name: each.id || each.textContent, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < least - 0.01 || box.height < least - 0.01))
      .map(({ name, box }) => `${name} ${box.width}x${box.height}`);
    return { wide: document.documentElement.scrollWidth - window.innerWidth, small };
  });
  assert.ok(found.wide <= 0, `${where}: ${found.wide} pixels wider than the window`);
  assert.deepEqual(found.small, [], `${where}: too small for a finger`);
};

export const assertAccessible = async (page, where) => {
  await page.evaluate(axe);
  const result = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  const told = result.violations.map(
    (each) => `${each.id}: ${each.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
  );
  assert.deepEqual(told, [], `${where}: axe`);
};

/** The row in work as it stands on the screen, written as a line of a word chart; null when all are done. */
const rowOnScreen = (page) =>
  page.evaluate(() => {
    const text = (id) => document.getElementById(id).textContent;
    const way = { left: 'L', right: 'R', down: 'D', up: 'U' }[
      document.getElementById('row-way').dataset.travel
    ];
    const ends = text('row-way')
      .split(', ')
      .slice(1)
      .map((each) => `, ${each}`)
      .join('');
    let beads = '';
    for (const item of document.querySelectorAll('#runs > li')) {
      const run = item.querySelector('.run');
      const count = run.querySelector('.count')?.textContent;
      const shown = count
        ? `(${count})${run.querySelector('.letter').textContent}`
        : run.querySelector('b').textContent;
      beads += (beads && (item.classList.contains('new-unit') ? '; ' : ', ')) + shown;
    }
    return document.getElementById('on').disabled ? null : `${text('row-name')} (${way})${ends}: ${beads}`;
  });

/** Walks a band from its first row to its end by `key`; what was seen, as a word chart. */
export const walk = async (page, key) => {
  const heading = await page.evaluate(() => {
    const words = document.querySelector('article.band:not([hidden]) .words:not([hidden])');
    return [words.querySelector('h3').textContent, words.querySelector('.facts').textContent];
  });
  const lines = [];
  for (let line = await rowOnScreen(page); line !== null; line = await rowOnScreen(page)) {
    lines.push(line);
    await page.keyboard.press(key);
    assert.ok(lines.length < 5000, 'the walk comes to an end');
  }
  return `${[...heading, ...lines].join('\n')}\n`;
};

export const chooseBand = (page, name) => page.selectOption('#band', { label: name });

/** The program itself. */
export const programOf = (evencount, folder) => {
  const run = (...words) =>
    execFileSync(evencount, words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  return {
    run,
    along: (project) => {
      const file = `${folder}/${project.replace(/.*\//, '')}.html`;
      run('along', `${home}examples/${project}.evencount.json`, '-o', file);
      return file;
    },
    read: (words, ...more) => {
      const file = `${folder}/words.txt`;
      writeFileSync(file, words);
      return run('read', file, ...more);
    },
  };
};

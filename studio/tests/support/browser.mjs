// Chromium as the tests use it: no network but the loopback address, nothing loaded from elsewhere.
import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const launch = () =>
  chromium.launch({ executablePath: process.env.EVENCOUNT_CHROMIUM ?? '/usr/bin/chromium', args: flags });

/**
 * A page that has entered the studio. Whatever it throws, logs as an error, or asks of another host fails the test that looks at `faults`.
 * `options` are Playwright's of a context.
 */
export async function enter(browser, server, options = {}) {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    ...options,
  });
  const page = await context.newPage();
  const faults = [];
  page.on('pageerror', (error) => faults.push(`thrown: ${error.stack}`));
  page.on('console', (said) => {
    // A refusal is an answer; the browser writes it down all the same.
    if (/status of 4(09|22)/.test(said.text())) return;
    if (said.type() === 'error') faults.push(`logged: ${said.text()} ${said.location().url}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol.startsWith('http') && url.origin !== server.origin)
      faults.push(`asked of ${url.origin}`);
  });
  await page.goto(server.entry);
  return { page, context, faults };
}

const axe = readFileSync(new URL('../../node_modules/axe-core/axe.min.js', import.meta.url), 'utf8');

/** No violation of any rule of axe-core on what is shown. */
export async function assertAccessible(page, what) {
  // The page's policy lets no script in, so it is put in from outside the page.
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: axe });
  await session.detach();
  const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  assert.deepEqual(
    violations.map(
      ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
    ),
    [],
    `${what} is not accessible`,
  );
}

/** No part of the page is wider than the window, unless it scrolls by itself. */
export async function assertFits(page, what) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  assert.ok(over <= 0, `${what} is ${over} px wider than the window`);
}

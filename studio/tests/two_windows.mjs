// Two windows on one project, edits of both at once by keyboard: the same beads in both, at the server and on disk.
// node tests/two_windows.mjs: 80 edits; 500 with EVENCOUNT_LONG=1.
import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { bandOn, lettersSeen } from './support/band.mjs';
import { enter, launch } from './support/browser.mjs';
import { pressAll } from './support/keys.mjs';
import { eventually } from './support/patience.mjs';
import { lettersOf, stateOf } from './support/project.mjs';
import { StudioServer, examples } from './support/server.mjs';

const id = 'moonwatch';
const [columns, edge, edits] = [6, 24, process.env.EVENCOUNT_LONG === '1' ? 250 : 40];
const server = await StudioServer.start({ projects: [join(examples, `${id}.evencount.json`)] });
const browser = await launch();

/** A stream of numbers that comes out the same every time. */
function numbers(seed) {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** The keys of a walk over the whole band that places beads; the two meet often. An undo now and then is refused where the other was quicker. */
function keysOf(seed) {
  const number = numbers(seed);
  const keys = [];
  for (let i = 0; i < edits; i++) {
    for (let steps = number(3) + 1; steps > 0; steps--)
      keys.push(['ArrowDown', 'ArrowUp', 'ArrowLeft', 'ArrowRight', 'ArrowDown'][number(5)]);
    keys.push('abcdefgh'[number(8)], 'Enter');
    if (number(12) === 0) keys.push('Control+z');
  }
  return keys;
}

/** As quickly as a frame each, so that both windows have changes under way at all times. */
async function work(page, seed) {
  await page.getByRole('application', { name: 'The band, unrolled' }).focus();
  await pressAll(page, keysOf(seed));
}

async function quiet(page) {
  await page.waitForLoadState('networkidle').catch(() => undefined);
  let revision = -1;
  for (;;) {
    await page.waitForTimeout(400);
    const now = (await stateOf(page, id)).revision;
    if (now === revision) return now;
    revision = now;
  }
}

try {
  // A context each, as two browsers would be.
  const windows = await Promise.all([enter(browser, server), enter(browser, server)]);
  for (const { page } of windows) {
    await page.goto(`${server.origin}/p/${id}/band`);
    await page.getByRole('application', { name: 'The band, unrolled' }).waitFor();
    await page.waitForTimeout(400);
  }
  const [one, other] = windows.map(({ page }) => page);
  await Promise.all([work(one, 1), work(other, 2)]);
  const revision = await quiet(one);
  assert.ok(
    revision > edits,
    `${revision} revisions of ${2 * edits} edits (a bead may get the colour that it has)`,
  );

  const { project } = await stateOf(one, id);
  const letters = await lettersOf(one, id, 0);
  for (const [name, page] of [
    ['one', one],
    ['the other', other],
  ]) {
    await eventually(
      page,
      async () => lettersSeen(page, await bandOn(page, columns, edge), project.legend),
      (seen) => assert.deepEqual(seen, letters, `${name} window`),
    );
  }
  await one.evaluate(
    (where) => fetch(where, { method: 'POST', headers: { 'X-Evencount': '1' } }),
    `/api/projects/${id}/save`,
  );
  assert.deepEqual(
    JSON.parse(readFileSync(join(server.folder, `${id}.evencount.json`), 'utf8')),
    project,
    'on disk',
  );

  // Every change that was confirmed is in the history, and undone one after the other it ends where it began.
  const undone = await one.evaluate(
    async ([address, from]) => {
      for (let [revision, more, count] = [from, true, 0]; ; count++) {
        if (!more) return count;
        const sent = { method: 'POST', headers: { 'X-Evencount': '1' } };
        const answer = await (await fetch(`${address}?revision=${revision}`, sent)).json();
        revision = answer.revision;
        more = answer.undo !== null;
      }
    },
    [`/api/projects/${id}/undo`, revision],
  );
  const before = JSON.parse(readFileSync(join(examples, `${id}.evencount.json`), 'utf8'));
  assert.deepEqual((await stateOf(one, id)).project.bands, before.bands);
  assert.deepEqual(
    windows.flatMap(({ faults }) => faults),
    [],
  );
  console.log(`two windows: ${2 * edits} edits, ${revision} revisions, ${undone} undone to the beginning`);
} finally {
  await browser.close();
  await server.stop();
}

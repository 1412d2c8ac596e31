// Memory of the page and of the server over many edits and changes of view: node tests/memory.mjs
// 250 edits and 14 changes; 10,000 and 200 with EVENCOUNT_LONG=1.
import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { enter, launch } from './support/browser.mjs';
import { pressAll } from './support/keys.mjs';
import { StudioServer, examples } from './support/server.mjs';

const long = process.env.EVENCOUNT_LONG === '1';
const [edits, changes, mostMiB, serverMostMiB] = long ? [10_000, 200, 4, 24] : [250, 14, 2, 12];
const id = 'moonwatch';
const stops = ['Form', 'Band', 'Colours', 'Strand', 'Supplies', 'Proof', 'Booklet'];
const mebibyte = 2 ** 20;

const server = await StudioServer.start({ projects: [join(examples, `${id}.evencount.json`)] });
const browser = await launch();
try {
  const { page, context, faults } = await enter(browser, server);
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  const heap = async () => {
    for (let i = 0; i < 3; i++) await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    const of = (name) => metrics.find((metric) => metric.name === name).value;
    return { bytes: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners') };
  };
  const resident = () =>
    1024 * Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${server.pid}/status`, 'utf8'))[1]);

  async function look(times) {
    const path = page.getByRole('navigation', { name: 'The project’s path' });
    for (let i = 0; i < times; i++) {
      await path.getByRole('link', { name: new RegExp(`^${stops[i % stops.length]}`) }).click();
      await page.waitForTimeout(250);
    }
    await path.getByRole('link', { name: 'Band' }).click();
    await page.getByRole('application', { name: 'The band, unrolled' }).waitFor();
  }
  async function edit(times) {
    await page.getByRole('application', { name: 'The band, unrolled' }).focus();
    const keys = [];
    for (let i = 0; i < times; i++)
      keys.push(i % 24 < 12 ? 'ArrowDown' : 'ArrowUp', 'abcdefgh'[(i * 5 + Math.floor(i / 24)) % 8], 'Enter');
    await pressAll(page, keys);
    await page.waitForTimeout(1500);
  }
  await page.goto(`${server.origin}/p/${id}/band`);
  await page.getByRole('application', { name: 'The band, unrolled' }).waitFor();
  // What is made once is made now: views' code, caches, the history's first pages.
  await edit(long ? 300 : 150);
  await look(long ? 14 : 7);
  const [before, serverBefore] = [await heap(), resident()];
  await edit(edits);
  await look(changes);
  const [after, serverAfter] = [await heap(), resident()];

  const of = (bytes) => `${(bytes / mebibyte).toFixed(1)} MiB`;
  console.log(
    `page: ${of(before.bytes)} before, ${of(after.bytes)} after ${edits} edits and ${changes} changes of view`,
  );
  console.log(
    `page: ${before.nodes} nodes before, ${after.nodes} after; listeners ${before.listeners}, ${after.listeners}`,
  );
  console.log(`server: ${of(serverBefore)} before, ${of(serverAfter)} after`);
  assert.ok(after.bytes - before.bytes < mostMiB * mebibyte, 'the page’s memory grows');
  assert.ok(after.nodes < before.nodes * 1.3 + 500, 'the page’s elements grow');
  assert.ok(serverAfter - serverBefore < serverMostMiB * mebibyte, 'the server’s memory grows');
  assert.deepEqual(faults, []);
} finally {
  await browser.close();
  await server.stop();
}

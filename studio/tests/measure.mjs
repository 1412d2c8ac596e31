// Times of the studio on a piece of 200 x 300 beads, and the draw calls of 60,000 beads in 3D: node tests/measure.mjs [strokes]
// Prints; what is timed is not judged. Draw calls are counted, so they are.
import { strict as assert } from 'node:assert';

import { bandOn, draw } from './support/band.mjs';
import { enter, launch } from './support/browser.mjs';
import { StudioServer } from './support/server.mjs';

const strokes = Number(process.argv[2] ?? 60);
const [columns, edge] = [200, 300];

const server = await StudioServer.start();
const browser = await launch();
try {
  const { page, faults } = await enter(browser, server);
  const post = (where, body) =>
    page.evaluate(
      async ([address, text]) => {
        const began = performance.now();
        const response = await fetch(address, {
          method: 'POST',
          headers: { 'X-Evencount': '1', 'Content-Type': 'application/json' },
          body: text,
        });
        const answer = await response.json();
        return { answer, ms: performance.now() - began };
      },
      [where, JSON.stringify(body)],
    );
  const { answer: made } = await post('/api/projects', { title: 'Large' });
  const where = `/api/projects/${made.id}`;
  const added = await post(`${where}/operations?revision=0`, {
    do: 'add_band',
    name: 'Panel',
    bead: 'cylinder-11',
    technique: 'peyote-even-count',
    closure: 'open',
    columns,
    edge,
  });
  assert.equal(added.answer.revision, 1, JSON.stringify(added.answer).slice(0, 300));

  // The server alone: from the sending of an operation to its answer, on disk, without a browser.
  const cookie = (await page.context().cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
  const trips = [];
  for (let i = 0; i < 300; i++) {
    const step = 4 + ((Math.floor(i / 2) * 7) % 280);
    const operation = {
      do: 'line',
      band: 0,
      from: [5, step],
      to: [190, step + 12],
      letter: i % 2 === 0 ? 'B' : 'A',
    };
    const began = performance.now();
    const response = await fetch(`${server.origin}${where}/operations?revision=${1 + i}`, {
      method: 'POST',
      headers: { cookie, 'X-Evencount': '1', 'Content-Type': 'application/json' },
      body: JSON.stringify(operation),
    });
    const answer = await response.json();
    trips.push(performance.now() - began);
    assert.equal(answer.revision, 2 + i, JSON.stringify(answer).slice(0, 300));
  }

  // From the lift of the pointer to the frame after the server's answer was taken in.
  await page.addInitScript(() => {
    const times = { screen: [], answer: [] };
    Object.assign(window, { strokeTimes: times });
    let lifted = 0;
    addEventListener('pointerup', () => (lifted = performance.now()), { capture: true });
    const plain = window.fetch;
    window.fetch = async (...asked) => {
      const began = performance.now();
      const response = await plain(...asked);
      if (String(asked[0]).includes('/operations')) {
        const body = await response.clone().text();
        times.answer.push(performance.now() - began);
        if (body)
          requestAnimationFrame(() =>
            requestAnimationFrame(() => times.screen.push(performance.now() - lifted)),
          );
      }
      return response;
    };
  });
  await page.goto(`${server.origin}/p/${made.id}/band`);
  await page.getByRole('application', { name: 'The band, unrolled' }).waitFor();
  // The picture in the round has settled: without a graphics chip its first frame takes seconds.
  await page.locator('[data-draws]').waitFor({ state: 'attached', timeout: 60_000 });
  await page.waitForTimeout(500);
  const band = await bandOn(page, columns, edge);
  await page.getByRole('group', { name: 'Beads at hand' }).getByRole('button').nth(1).click();
  for (let i = 0; i < strokes; i++) {
    const [column, step] = [10 + ((i * 37) % 150), 10 + ((i * 53) % 260)];
    await draw(page, band, [column, step], [column + 30, step + 20]);
    await page.waitForTimeout(60);
  }
  await page.waitForFunction((all) => window.strokeTimes.screen.length === all, strokes, { polling: 200 });
  const times = await page.evaluate(() => window.strokeTimes);
  assert.equal(times.answer.length, strokes);
  const percentile = (list, share) =>
    [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * share))];
  for (const [name, list] of Object.entries({ ...times, 'answer, without a browser': trips }))
    console.log(
      `stroke to ${name}: median ${percentile(list, 0.5).toFixed(1)} ms, 95th ${percentile(list, 0.95).toFixed(1)} ms of ${list.length}`,
    );

  const frames = page.locator('[data-draws]');
  await frames.waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Turn to the right' }).click();
  await page.waitForTimeout(3000);
  const [draws, milliseconds] = await frames.evaluate((one) =>
    [one.dataset.draws, one.dataset.ms].map(Number),
  );
  console.log(
    `3D: ${columns * edge} beads in ${draws} draw calls, ${milliseconds.toFixed(0)} ms a frame in software`,
  );
  assert.ok(draws > 0 && draws <= 12, `${draws} draw calls`);
  assert.deepEqual(faults, []);
} finally {
  await browser.close();
  await server.stop();
}

// Whoever comes without the printed address stays outside; a code of the terminal lets a tablet in: node tests/door.mjs
import { strict as assert } from 'node:assert';
import { join } from 'node:path';

import { assertAccessible, assertFits, launch } from './support/browser.mjs';
import { StudioServer, examples } from './support/server.mjs';

const browser = await launch();
const server = await StudioServer.start({ projects: [join(examples, 'moonwatch.evencount.json')] });
try {
  const context = await browser.newContext({ viewport: { width: 820, height: 1180 }, hasTouch: true });
  const page = await context.newPage();
  for (const path of ['/', '/p/moonwatch/band']) {
    await page.goto(server.origin + path);
    await page.getByRole('heading', { name: 'This studio is for its own table' }).waitFor();
    assert.equal(await page.getByText('Moonwatch').count(), 0, 'nothing of a project is told');
  }
  await assertAccessible(page, 'the door');
  await assertFits(page, 'the door');
  // This studio was not started with --lan: no code is the right one.
  await page.getByLabel('Six digits').fill('123456');
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByRole('alert').waitFor();
  assert.match(server.log, /POST \/api\/pair|not_allowed|code/);
  // The printed address opens it, also for the tab that stood outside.
  await page.goto(server.entry);
  await page.getByRole('heading', { name: 'Your projects' }).waitFor();

  // A tablet in the network: its own address, the wrong code, then the one that the terminal shows.
  const lan = await StudioServer.start({ options: ['--lan'] }).catch(() => undefined);
  if (lan) {
    const said = /other devices: (http:\S+) with the code (\d{6})/;
    for (let tries = 0; tries < 100 && !said.test(lan.log); tries++)
      await new Promise((done) => setTimeout(done, 20));
    const [, network, code] = said.exec(lan.log);
    const tablet = await (await browser.newContext({ viewport: { width: 820, height: 1180 } })).newPage();
    await tablet.goto(network);
    const give = async (digits) => {
      await tablet.getByLabel('Six digits').fill(digits);
      await tablet.getByRole('button', { name: 'Come in' }).click();
    };
    await give(code === '000000' ? '111111' : '000000');
    await tablet.getByRole('alert').waitFor();
    await give(code);
    await tablet.getByRole('heading', { name: 'A clean table. What will you cover?' }).waitFor();
    await lan.stop();
  } else {
    console.log('door: this machine has no network; --lan was not tried');
  }
  console.log('door: all well');
} finally {
  await browser.close();
  await server.stop();
}

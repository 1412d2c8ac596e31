// The band's view, worked as a person works it, by pointer and by keyboard: node tests/band_view.mjs [FOLDER for pictures]
import { strict as assert } from 'node:assert';
import { join } from 'node:path';

import { bandOn, draw, lettersSeen } from './support/band.mjs';
import { assertAccessible, enter, launch } from './support/browser.mjs';
import { atRest, eventually } from './support/patience.mjs';
import { lettersOf, stateOf, until } from './support/project.mjs';
import { StudioServer, examples } from './support/server.mjs';

const pictures = process.argv[2];
const id = 'moonwatch';
const columns = 6;
const edge = 24;
const cell = (column, step) => step * columns + column;

const server = await StudioServer.start({ projects: [join(examples, `${id}.evencount.json`)] });
const browser = await launch();
const { page, context, faults } = await enter(browser, server);
const { page: other, faults: otherFaults } = await enter(browser, server, {});
const address = `${server.origin}/p/${id}/band`;

const open = async (where, band = 0) => {
  await where.goto(`${address}?band=${band}`);
  await where.getByRole('application', { name: 'The band, unrolled' }).waitFor();
  await where.waitForTimeout(500);
};
const take = (name) =>
  page.getByRole('group', { name: 'Beads at hand' }).getByRole('button', { name }).click();
const tool = (name) =>
  page
    .getByRole('group', { name: 'What the pointer does' })
    .getByRole('button', { name, exact: true })
    .click();
const shot = (name) => pictures && page.screenshot({ path: join(pictures, `band-${name}.png`) });
/** Waits until the band on a page shows these letters. */
const shows = async (where, letters, legend, what) =>
  eventually(
    where,
    async () => lettersSeen(where, await bandOn(where, columns, edge), legend),
    (seen) => assert.deepEqual(seen, letters, what),
  );
/** What is tried on the band and isn't in the project. */
const tried = (band, legend, letters) =>
  atRest(
    page,
    () => lettersSeen(page, band, legend),
    (seen) => assert.notDeepEqual(seen, letters, 'what is tried is seen'),
  );
const revision = async () => (await stateOf(page, id)).revision;
/** Does something and waits for the revision that comes of it. */
async function change(work, what) {
  const before = await revision();
  await work();
  return until(page, id, (state) => state.revision > before, what);
}

try {
  await open(page);
  await open(other);
  const { project } = await stateOf(page, id);
  const first = await lettersOf(page, id, 0);
  await shows(page, first, project.legend, 'the canvas shows the chart');
  const band = await bandOn(page, columns, edge);

  // A stroke with the pointer; undo and redo by key and by button.
  await take('D, star gold');
  await change(() => draw(page, band, [1, 3], [1, 6]), 'a stroke');
  const stroked = await lettersOf(page, id, 0);
  for (const step of [3, 4, 5, 6]) assert.equal(stroked[cell(1, step)], 'D');
  assert.equal(stroked.filter((letter, i) => letter !== first[i]).length, 4);
  await shows(page, stroked, project.legend, 'the stroke is seen');
  await change(() => page.keyboard.press('Control+z'), 'undo');
  assert.deepEqual(await lettersOf(page, id, 0), first);
  await change(() => page.getByRole('button', { name: /^Redo: drew/ }).click(), 'redo');
  assert.deepEqual(await lettersOf(page, id, 0), stroked);

  // The other window has followed, through its own canvas.
  await shows(other, stroked, project.legend, 'two windows in step');

  // Shapes, fill, replace.
  await tool('Rectangle');
  await change(() => draw(page, band, [2, 9], [4, 11]), 'a rectangle');
  assert.equal(
    (await lettersOf(page, id, 0)).filter((letter) => letter === 'D').length,
    stroked.filter((letter) => letter === 'D').length + 9,
  );
  await tool('Fill');
  await take('H, morning sky');
  await change(() => draw(page, band, [3, 10]), 'a fill');
  assert.equal((await lettersOf(page, id, 0))[cell(2, 9)], 'H');
  await tool('Replace');
  await take('G, wet sand');
  await change(() => draw(page, band, [3, 10]), 'a replacement');
  assert.equal((await lettersOf(page, id, 0)).includes('H'), false);
  await shot('drawn');

  // Select, copy, stamp; move leaves the ground.
  await tool('Select');
  await draw(page, band, [2, 9], [3, 10]);
  await page.getByRole('application', { name: 'The band, unrolled' }).focus();
  await page.keyboard.press('Control+c');
  await change(() => draw(page, band, [2, 16]), 'a stamp');
  const stamped = await lettersOf(page, id, 0);
  for (const at of [cell(2, 16), cell(3, 16), cell(2, 17), cell(3, 17)]) assert.equal(stamped[at], 'G');
  await tool('Move');
  await change(() => draw(page, band, [2, 9], [4, 19]), 'a move');
  const moved = await lettersOf(page, id, 0);
  assert.equal(moved[cell(4, 19)], 'G');
  assert.notEqual(moved[cell(2, 9)], 'G');

  // By keyboard alone: walk, choose by letter, place; the row's words follow.
  await tool('Bead');
  await page.getByRole('application', { name: 'The band, unrolled' }).focus();
  await page.keyboard.press('Control+Home');
  for (const key of ['Home', 'Control+ArrowLeft', 'ArrowRight', 'ArrowDown', 'ArrowDown', 'b'])
    await page.keyboard.press(key);
  await change(() => page.keyboard.press('Enter'), 'a bead by key');
  assert.equal((await lettersOf(page, id, 0))[cell(1, 2)], 'B');
  await page.getByText(/^Row 6/).waitFor();
  await page.getByRole('button', { name: 'Next row' }).click();
  await page.getByText(/^Row 7/).waitFor();
  await assertAccessible(page, 'the words of a row');

  // Lettering is seen on the band before it is put there, and not in the project.
  await page.getByRole('radio', { name: 'Lettering' }).check({ force: true });
  await page.getByRole('radio', { name: 'Back' }).check({ force: true });
  const beforeText = await lettersOf(page, id, 0);
  await page.getByLabel('Text', { exact: true }).fill('7');
  const previewed = await tried(band, project.legend, beforeText);
  assert.deepEqual(await lettersOf(page, id, 0), beforeText);
  await shot('lettering');
  await assertAccessible(page, 'lettering');
  await change(() => page.getByRole('button', { name: 'Put it on the band' }).click(), 'lettering');
  assert.deepEqual(await lettersOf(page, id, 0), previewed, 'what was seen is what was put');
  await page.getByLabel('Text', { exact: true }).fill('MUCH TOO LONG FOR IT');
  await page.getByRole('alert').waitFor();
  await page.getByLabel('Text', { exact: true }).fill('');

  // Rearranging is seen while the pointer is on its button.
  await page.getByRole('radio', { name: 'Arrange' }).check({ force: true });
  const upright = await lettersOf(page, id, 0);
  await page.getByRole('button', { name: 'On by one bead' }).hover();
  const turned = await tried(band, project.legend, upright);
  await change(() => page.getByRole('button', { name: 'On by one bead' }).click(), 'a shift');
  assert.deepEqual(await lettersOf(page, id, 0), turned);
  await page.mouse.move(5, 400);
  await assertAccessible(page, 'arranging');

  // A picture: chosen, seen, put.
  await page.getByRole('radio', { name: 'Picture' }).check({ force: true });
  await page.getByLabel('A picture of yours').setInputFiles(join(examples, 'pictures/moon.png'));
  const put = page.getByRole('button', { name: 'Put it on the band' });
  await page.waitForFunction(
    () =>
      [...document.querySelectorAll('button')].some(
        (one) => one.textContent.includes('Put it') && !one.disabled,
      ),
    undefined,
    { polling: 100 },
  );
  const pictured = await tried(band, project.legend, turned);
  await shot('picture');
  await assertAccessible(page, 'a picture');
  await change(() => put.click(), 'a picture');
  assert.deepEqual(
    await lettersOf(page, id, 0),
    pictured,
    'the picture that was seen is the one that was put',
  );

  // In the round: the slide tells what comes to the front.
  const slide = page.getByRole('slider', { name: 'Slide round' });
  await slide.focus();
  for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight');
  assert.match(await slide.getAttribute('aria-valuetext'), /12 of 24 beads on, the back’s picture in front/);

  // Another band; a bead that another view speaks of.
  await page
    .getByRole('group', { name: 'Bands of this piece' })
    .getByRole('button', { name: 'Full moon' })
    .click();
  await page.waitForURL(/band=4/);
  await page.goto(`${address}?band=4&cell=2,5&row=12`);
  await page.getByText(/^Row 12/).waitFor();

  for (const look of ['dark', 'light']) {
    await page.emulateMedia({ colorScheme: look });
    await page.waitForTimeout(150);
    await assertAccessible(page, `the band, ${look}`);
  }
  assert.deepEqual([...faults, ...otherFaults], []);
  console.log('band view: all well');
} finally {
  await context.close();
  await browser.close();
  await server.stop();
}

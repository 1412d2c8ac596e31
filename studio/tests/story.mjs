// A piece from the first size to the printed booklet, as a person makes it: once with a pointer, once by keyboard alone.
// node tests/story.mjs [pointer|keyboard] [FOLDER for pictures]
import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { bandOn, lettersSeen } from './support/band.mjs';
import { assertAccessible, assertFits, enter, launch } from './support/browser.mjs';
import { keyboardOn, pointerOn } from './support/hands.mjs';
import { eventually } from './support/patience.mjs';
import { lettersOf, stateOf, until } from './support/project.mjs';
import { examples, program, StudioServer } from './support/server.mjs';

const [only, pictures] = process.argv.slice(2);
const data = mkdtempSync(join(tmpdir(), 'evencount-story-'));
process.env.XDG_DATA_HOME = join(data, 'share');
const id = 'tides';

/** The bands of a booklet, read back from its words by the program. */
function bandsOf(pdf) {
  const text = execFileSync('pdftotext', ['-layout', pdf, '-']);
  return JSON.parse(execFileSync(program, ['read', '-', '--json'], { input: text, encoding: 'utf8' })).bands;
}

async function tell(browser, handOn) {
  const server = await StudioServer.start();
  const { page, context, faults } = await enter(browser, server, { acceptDownloads: true });
  const hand = handOn(page);
  const shot = async (name) => {
    if (pictures) await page.screenshot({ path: join(pictures, `story-${hand.name}-${name}.png`) });
  };
  /** In light and in dark no rule of axe-core is broken and nothing is wider than the window. */
  const looksWell = async (what) => {
    for (const colorScheme of ['dark', 'light']) {
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(120);
      await assertAccessible(page, `${what}, ${colorScheme}`);
      await assertFits(page, what);
    }
    await shot(what);
  };
  const walk = async (stop) => {
    await hand.press('link', new RegExp(`^${stop}`));
    await page.waitForURL(new RegExp(`/p/${id}/${stop.toLowerCase()}`));
  };
  const change = async (work, what) => {
    const before = (await stateOf(page, id)).revision;
    await work();
    return until(page, id, ({ revision }) => revision > before, what);
  };

  try {
    // A new project: a carrier bead's sizes, and the fit as they are typed.
    await page.getByRole('heading', { name: 'A clean table. What will you cover?' }).waitFor();
    await hand.write('Width', '17', false);
    await hand.write('Thickness', '5', false);
    await hand.write('Length along the holes', '9', false);
    await page.getByText('easy: slides freely').first().waitFor();
    await hand.write('What shall it be called? (You can say so later.)', 'Tides', false);
    await looksWell('opening');
    await hand.press('button', 'Begin');
    await page.waitForURL(/\/p\/tides\/band/);
    const { project: begun } = await until(
      page,
      id,
      ({ project }) => project.bands.length === 1,
      'the first band',
    );
    const { columns, edge } = begun.bands[0];
    assert.deepEqual([begun.forms[0].shape, columns], ['lens:17x5x9', 6]);
    // How many beads close freely is the engine's to say; the page shows no other number.
    const fit = JSON.parse(
      execFileSync(program, ['fit', 'lens:17x5x9', '--bead', 'cylinder-11', '--use', 'sliding', '--json'], {
        encoding: 'utf8',
      }),
    );
    assert.equal(edge, fit.edge);

    // A letter on the front, in the second bead of the legend.
    await page.getByRole('application', { name: 'The band, unrolled' }).waitFor();
    await hand.press('button', /^B, /);
    await hand.choose('Beside the band', 'Lettering');
    await hand.choose('Where', 'Front');
    await change(() => hand.write('Text', '7'), 'the letter on the front');
    const lettered = await lettersOf(page, id, 0);
    assert.ok(lettered.includes('B'));
    await looksWell('lettering');

    // A picture on the back.
    await hand.choose('Beside the band', 'Picture');
    await hand.file('A picture of yours', join(examples, 'pictures/moon.png'));
    await hand.choose('Where', 'Back');
    const put = page.getByRole('button', { name: 'Put it on the band' });
    for (let tries = 0; tries < 200 && !(await put.isEnabled()); tries++) await page.waitForTimeout(50);
    await page.waitForTimeout(400);
    await looksWell('picture');
    await change(() => hand.press('button', 'Put it on the band'), 'the picture on the back');
    const front = lettered.filter((_, i) => i < 12 * columns);
    assert.deepEqual(
      (await lettersOf(page, id, 0)).filter((_, i) => i < 12 * columns),
      front,
      'the front is as it was',
    );

    // Recolour: the moon turns gold.
    await walk('Colours');
    await hand.press('button', /^B, /);
    await looksWell('colours');
    await change(() => hand.write('As a number', '#d8a63a'), 'another colour');
    await change(() => hand.write('Name', 'harvest gold'), 'another name');

    // Slide it: half way round the back comes to the front.
    await walk('Band');
    const faces = await page.evaluate(
      async (where) => (await fetch(where)).json(),
      `/api/projects/${id}/bands/0/faces`,
    );
    const half = faces.windows.find(({ side }) => side === 'back').slide_to_front;
    await page.getByRole('slider', { name: 'Slide round' }).waitFor();
    await hand.slide('Slide round', half);
    await page.getByText('the back’s picture in front').waitFor();
    await looksWell('band');

    // String it for a wrist of 165 mm.
    await walk('Strand');
    await looksWell('strand-empty');
    await change(() => hand.press('button', 'String the bands'), 'a strand');
    await hand.write('Or a measure of its own', '165 mm');

    await page
      .getByText(/Closes: \d/)
      .first()
      .waitFor();
    await looksWell('strand');

    // Supplies for ten kits.
    await walk('Supplies');
    await hand.write('Kits', '10');
    await page.getByRole('heading', { name: 'Supplies for 10 kits' }).waitFor();
    const beads = await page.evaluate(
      async (where) => (await fetch(where)).json(),
      `/api/projects/${id}/supplies?kits=10`,
    );
    assert.equal(beads.kits, 10);
    assert.equal(beads.beads.reduce((sum, { count }) => sum + count, 0) % (columns * edge), 0);
    await looksWell('supplies');

    // The proof is clean.
    await walk('Proof');
    await page
      .getByText(/^(All is well|Ready for the booklet)/)
      .first()
      .waitFor();
    await looksWell('proof');

    // The booklet, and its words back into the chart that the canvas shows.
    await walk('Booklet');
    await looksWell('booklet-empty');
    await hand.press('button', 'Make the booklet');
    await page.getByRole('link', { name: /Booklet \(PDF\)/ }).waitFor({ timeout: 120_000 });
    await looksWell('booklet');
    const coming = page.waitForEvent('download');
    await hand.press('link', /Booklet \(PDF\)/);
    const pdf = join(data, `${hand.name}.pdf`);
    await (await coming).saveAs(pdf);

    await walk('Band');
    const { project } = await stateOf(page, id);
    const [read, ...others] = bandsOf(pdf);
    assert.equal(others.length, 0);
    const printed = read.cells.flatMap((step) =>
      step.split(' ').flatMap((run) => {
        const [, count, letter] = /^(\d+)(.+)$/.exec(run);
        return Array(Number(count)).fill(letter);
      }),
    );
    await eventually(
      page,
      async () => lettersSeen(page, await bandOn(page, columns, edge), project.legend),
      (seen) => assert.deepEqual(printed, seen, 'the printed words rebuild what the canvas shows'),
    );
    assert.deepEqual(printed, await lettersOf(page, id, 0));
    console.log(
      `story by ${hand.name}: ${columns} x ${edge}, ${(await stateOf(page, id)).revision} changes, all well`,
    );
  } finally {
    await context.close();
    await server.stop();
  }
  assert.deepEqual(faults, []);
}
const browser = await launch();
try {
  if (only !== 'keyboard') await tell(browser, pointerOn);
  if (only !== 'pointer') await tell(browser, keyboardOn);
} finally {
  await browser.close();
  rmSync(data, { recursive: true, force: true });
}

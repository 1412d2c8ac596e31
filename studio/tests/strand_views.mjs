// The strand, the supplies, the proof and the booklet, worked by pointer and by keyboard: what was done is in the project.
import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { assertAccessible, assertFits, enter, launch } from './support/browser.mjs';
import { StudioServer, examples } from './support/server.mjs';

const moon = JSON.parse(readFileSync(join(examples, 'moonwatch.evencount.json'), 'utf8'));
const server = await StudioServer.start({ projects: [join(examples, 'moonwatch.evencount.json')] });
const put = (id, project) =>
  writeFileSync(join(server.folder, `${id}.evencount.json`), JSON.stringify(project, null, 2));
put('unstrung', { ...moon, title: 'Unstrung', strand: undefined });
put('small', { ...moon, title: 'Small', bands: moon.bands.slice(0, 2), strand: undefined });
put('faulty', {
  ...moon,
  title: '',
  bands: [
    { ...moon.bands[0], technique: 'peyote-odd-count' },
    { ...moon.bands[1], name: 'New moon' },
  ],
  strand: undefined,
});
const browser = await launch();

/** The project as the server has it. */
const saved = (page, id) =>
  page.evaluate(async (name) => (await (await fetch(`/api/projects/${name}`)).json()).project, id);
const layoutOf = async (page, id) => (await saved(page, id)).strand.layout.join('\n');
async function until(what, test) {
  const end = Date.now() + 20_000;
  while (!(await test())) {
    assert.ok(Date.now() < end, what);
    await new Promise((done) => setTimeout(done, 60));
  }
}
const open = (page, id, stop) => page.goto(`${server.origin}/p/${id}/${stop}`);

/** Light and dark: every rule of axe, and nothing wider than the window. */
async function assertGood(page, what) {
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ colorScheme });
    await assertAccessible(page, `${what} (${colorScheme})`);
    await assertFits(page, `${what} (${colorScheme})`);
  }
}

async function strand(page) {
  await open(page, 'unstrung', 'strand');
  await page.getByRole('heading', { name: 'Nothing is strung yet' }).waitFor();
  await assertGood(page, 'a project that is not strung');
  await page.getByRole('button', { name: 'String the bands' }).click();
  const row = page.getByRole('group', { name: 'On the cords' });
  await row.getByRole('button', { name: 'New moon' }).waitFor();
  assert.match(await layoutOf(page, 'unstrung'), /elastic/);
  await page.getByText('Closes:').waitFor();

  /** What the row shows: it is acted on when it shows what the server has. */
  const shows = (...names) =>
    until(`the row does not show ${names}`, async () => {
      const texts = (await row.getByRole('button').allTextContents()).map((text) => text.trim());
      return texts.join('|').includes(names.join('|'));
    });

  // By pointer: a band is dragged before another.
  const [from, to] = [
    row.getByRole('button', { name: 'First quarter' }),
    row.getByRole('button', { name: 'New moon' }),
  ];
  const [a, b] = [await from.boundingBox(), await to.boundingBox()];
  await page.mouse.move(a.x + a.width / 2, a.y + a.height / 2);
  await page.mouse.down();
  await page.mouse.move(b.x + 30, b.y + 20, { steps: 6 });
  await page.mouse.move(b.x + 6, b.y + b.height / 2, { steps: 4 });
  await page.mouse.up();
  await until('the band was not moved', async () =>
    /\("First quarter", "New moon", /.test(await layoutOf(page, 'unstrung')),
  );

  await shows('First quarter', 'New moon');

  // By keyboard: back to where it was, then one more of it, then that off again.
  await page.keyboard.press('Tab');
  await row.getByRole('button', { name: 'First quarter' }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await until('the band was not moved back', async () =>
    /\("New moon", "First quarter", /.test(await layoutOf(page, 'unstrung')),
  );
  await shows('New moon', 'First quarter');
  await until('the focus was lost', () =>
    page.evaluate(() => document.activeElement?.textContent?.includes('First quarter') ?? false),
  );
  await page.getByRole('button', { name: 'Once more' }).click();
  await until('it is not there twice', async () =>
    /"First quarter", "First quarter"/.test(await layoutOf(page, 'unstrung')),
  );
  await shows('First quarter', 'First quarter');
  await until('the copy is not in hand', () =>
    page.evaluate(() => document.activeElement?.textContent?.includes('First quarter') ?? false),
  );
  await page.keyboard.press('Delete');
  await until(
    'it is still there twice',
    async () => !/"First quarter", "First quarter"/.test(await layoutOf(page, 'unstrung')),
  );
  await assertGood(page, 'the strand with a thing chosen');

  // A run is counted to at least so many; a clasp, a bead and a size of the designer's own.
  await row
    .getByRole('button', { name: /^run of/ })
    .first()
    .click();
  await page.getByLabel('At least').fill('2');
  await page.keyboard.press('Enter');
  await until(
    'the runs have no least',
    async () => (await layoutOf(page, 'unstrung')).match(/from 2/g)?.length === 2,
  );
  await page.getByRole('button', { name: 'A new part' }).click();
  await page.getByLabel('Short name').fill('drop');
  await page.getByLabel('Along the cord (mm)').fill('7');
  await page.getByRole('button', { name: 'Make and add it' }).click();
  await until('the part is not strung', async () => /bead "?drop"? 7/.test(await layoutOf(page, 'unstrung')));
  await page.getByLabel('Closed with').selectOption({ label: 'A new clasp …' });
  await page.getByLabel('Short name').fill('hook');
  await page.getByLabel('Along the cord (mm)').fill('15');
  await page.getByLabel('Hole (mm)').fill('2');
  await assertGood(page, 'a new clasp');
  await page.getByRole('button', { name: 'Close with it' }).click();
  await until('it is not closed', async () => /close with hook/.test(await layoutOf(page, 'unstrung')));

  await page.getByLabel('Or a measure of its own').fill('172');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'In size 172 mm', exact: true }).waitFor();
  await page.getByLabel('Or a measure of its own').fill('');
  await page.keyboard.press('Enter');
  await page.getByText('XL', { exact: true }).click();
  await page.getByRole('heading', { name: 'In size XL', exact: true }).waitFor();
  await page.getByText('The sizes of this pattern').click();
  await page.getByLabel('Measure', { exact: true }).first().fill('150');
  await page.keyboard.press('Enter');
  await until(
    'the size was not kept',
    async () => (await saved(page, 'unstrung')).strand.sizes?.[0].measure_mm === 150,
  );

  // The drawings, and the round view with a band that slides.
  await page.getByText('Drawing, worn').click();
  await page.getByRole('img', { name: /as it is worn/ }).waitFor();
  await page.getByText('In the round', { exact: true }).click();
  await page.getByRole('application', { name: /in the round/ }).waitFor();
  await page.getByLabel('Slide a band round its form').selectOption('Full moon');
  await page.getByRole('button', { name: 'One bead on' }).click();
  await page.getByText('1 of 24 beads on').waitFor();

  // The text: a mistake is said where it is, and undone.
  await page.getByText('As text').click();
  const text = page.getByLabel('The same strand in words', { exact: false });
  const before = await text.inputValue();
  await text.fill('string nothing-known');
  await page.getByRole('button', { name: 'Keep the text' }).click();
  await page.getByText('can’t be read').waitFor();
  await assertGood(page, 'a strand that can’t be read');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await until('the text did not come back', async () => (await text.inputValue()) === before);

  // A band of another name keeps its place.
  const band = (await saved(page, 'unstrung')).bands.findIndex(({ name }) => name === 'Full moon');
  await page.evaluate(async (place) => {
    const { revision } = await (await fetch('/api/projects/unstrung')).json();
    await fetch(`/api/projects/unstrung/operations?revision=${revision}`, {
      method: 'POST',
      headers: { 'X-Evencount': '1' },
      body: JSON.stringify({ do: 'change_band', band: place, name: 'Harvest moon' }),
    });
  }, band);
  await row.getByRole('button', { name: 'Harvest moon' }).waitFor();
}

async function supplies(page) {
  await open(page, 'moonwatch', 'supplies');
  await page.getByRole('heading', { name: 'Supplies for one kit' }).waitFor();
  await page.getByLabel('Grams in a pack of A').fill('7,5');
  await page.keyboard.press('Enter');
  await until(
    'the pack was not kept',
    async () => (await saved(page, 'moonwatch')).legend[0].pack?.grams === 7.5,
  );
  await page.getByLabel('Price of a pack of A in EUR').fill('4.20');
  await page.keyboard.press('Enter');
  await until(
    'the price was not kept',
    async () => (await saved(page, 'moonwatch')).legend[0].pack?.price_minor === 420,
  );
  await page.getByRole('cell', { name: '€4.20' }).first().waitFor();
  await page.getByLabel('Kits', { exact: true }).fill('12');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Supplies for 12 kits' }).waitFor();
  await page.getByRole('cell', { name: '3,204' }).waitFor();
  await page.getByLabel('Strung for').selectOption('XL');
  await page.getByText('strung for size XL').waitFor();
  await page.getByText('Your rates').click();
  await page.getByLabel('An hour’s pay').fill('20');
  await page.keyboard.press('Enter');
  await until(
    'the rate was not kept',
    async () => (await saved(page, 'moonwatch')).costing?.hour_minor === 2000,
  );
  await page.getByLabel('Retail ×').fill('3');
  await page.keyboard.press('Enter');
  await page.getByRole('rowheader', { name: /^own rule/ }).waitFor();
  await page.getByText('Try another bead').click();
  await page.getByLabel('Replace').selectOption({ index: 1 });
  await page.getByLabel('By', { exact: true }).selectOption({ index: 1 });
  await page.getByText('Packs for all kits').waitFor();
  await page.getByText('Add what isn’t counted').click();
  await page.getByLabel('What', { exact: true }).fill('gift box');
  await page.getByRole('button', { name: 'Add it' }).click();
  await until(
    'it is not on the list',
    async () => (await saved(page, 'moonwatch')).findings[0]?.name === 'gift box',
  );
  await page.getByRole('rowheader', { name: 'gift box' }).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'As a table (CSV)' }).click(),
  ]);
  const table = readFileSync(await download.path(), 'utf8');
  assert.match(download.suggestedFilename(), /^Moonwatch.*12 kits\.csv$/);
  assert.match(table, /^bead,A,night blue,11\/0 cylinder bead,3204,/m);
  assert.match(table, /^finding,,gift box,,12,/m);
  await page.getByText('One kit, as it is packed').click();
  await assertGood(page, 'the supplies');
  await page.emulateMedia({ media: 'print' });
  assert.equal(await page.getByRole('navigation').isVisible(), false, 'the path is printed');
  await page.emulateMedia({ media: null });
}

async function proof(page) {
  await open(page, 'moonwatch', 'proof');
  await page.getByRole('heading', { name: 'All is well' }).waitFor();
  await page.getByText('The written rows, read back, make the chart.').waitFor();
  await assertGood(page, 'a clean proof');
  await open(page, 'faulty', 'proof');
  await page.getByRole('heading', { name: /errors to mend/ }).waitFor();
  const errors = page.getByRole('article').filter({ hasText: 'Error' });
  const count = await errors.count();
  assert.ok(count >= 2);
  await page.getByRole('link', { name: `Proof ${count} errors` }).waitFor();
  await assertGood(page, 'a proof with findings');
  await page.getByRole('link', { name: 'To Form: band New moon' }).first().focus();
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/p\/faulty\/form\?band=1$/);
  await open(page, 'faulty', 'proof');
  await page.getByRole('link', { name: /^To Booklet/ }).click();
  await page.waitForURL(/\/p\/faulty\/booklet/);
  await page.getByText('A booklet is made when').waitFor();
  assert.ok(await page.getByRole('button', { name: 'Make the booklet' }).isDisabled());
  await page.getByLabel('Title', { exact: true }).fill('Mended');
  await page.keyboard.press('Enter');
  await until('the title was not kept', async () => (await saved(page, 'faulty')).title === 'Mended');
  await assertGood(page, 'a booklet that is refused');
  await page.getByRole('button', { name: 'To the proof' }).click();
  await page.waitForURL(/\/p\/faulty\/proof/);
}

async function booklet(page) {
  await open(page, 'small', 'booklet');
  await page.getByRole('heading', { name: 'No pages yet' }).waitFor();
  await page.getByText('Letter', { exact: true }).click();
  await page.getByText('Symbols', { exact: true }).click();
  await page.getByRole('button', { name: 'Make the booklet' }).click();
  const pdf = page.getByRole('link', { name: 'Booklet (PDF)' });
  await pdf.waitFor({ timeout: 90_000 });
  const sheets = page.getByRole('img', { name: /^Page \d+ of \d+ of the booklet Small$/ });
  assert.ok((await sheets.count()) >= 3);
  await until('a page is not shown', () =>
    sheets.first().evaluate((image) => image.complete && image.naturalWidth > 0),
  );
  const [download] = await Promise.all([page.waitForEvent('download'), pdf.click()]);
  assert.equal(download.suggestedFilename(), 'Small.pdf');
  assert.equal(
    readFileSync(await download.path())
      .subarray(0, 4)
      .toString(),
    '%PDF',
  );
  await page.getByRole('button', { name: 'Look at page 2 from nearer' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Put page 2 back among the others' }).waitFor();
  await assertGood(page, 'a booklet');
  const [words] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'All words (text)' }).click(),
  ]);
  assert.equal(words.suggestedFilename(), 'Small, words.txt');
  assert.match(readFileSync(await words.path(), 'utf8'), /New moon[\s\S]*Waxing crescent/);
  await page.getByText('Charts as drawings (SVG)').click();
  const [chart] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'New moon' }).click(),
  ]);
  assert.match(readFileSync(await chart.path(), 'utf8'), /<svg/);
  await page.getByRole('button', { name: 'Make the stitch-along page' }).click();
  await page.getByRole('link', { name: 'Stitch-along page (HTML)' }).waitFor({ timeout: 60_000 });

  // In another language and for the other hand.
  await page.getByLabel('Language', { exact: true }).selectOption('de');
  await page.getByText('Left-handed makers', { exact: true }).click();
  await page.getByRole('button', { name: 'Make it again' }).click();
  await pdf.waitFor({ timeout: 90_000 });
  const [german] = await Promise.all([page.waitForEvent('download'), pdf.click()]);
  const text = execFileSync('pdftotext', ['-layout', await german.path(), '-'], { encoding: 'utf8' });
  assert.match(text, /Ausgabe für Linkshänder/);
  assert.match(text, /Reihe 3 \(L\)/);
  await page.getByRole('button', { name: 'Make the stitch-along page again' }).waitFor();
  await assertGood(page, 'a booklet in German');

  // The catalogue picture is shown from the first rough one on; it can be stopped, and kept.
  await page.getByText('Catalogue picture', { exact: true }).click();
  await page.getByLabel('Shows', { exact: true }).selectOption('Waxing crescent');
  await page.getByText('Square', { exact: true }).click();
  await page.getByText('Fine', { exact: true }).click();
  await page.getByRole('button', { name: 'Make the picture' }).click();
  const picture = page.getByRole('img', { name: 'Catalogue picture of Waxing crescent' });
  await picture.waitFor({ timeout: 60_000 });
  await assertGood(page, 'a picture on its way');
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByText('Quick', { exact: true }).click();
  await page.getByRole('button', { name: 'Make the picture' }).click();
  const kept = page.getByRole('link', { name: 'Picture (PNG)' });
  await kept.waitFor({ timeout: 120_000 });
  const [png] = await Promise.all([page.waitForEvent('download'), kept.click()]);
  assert.equal(png.suggestedFilename(), 'Small.png');
  assert.equal(readFileSync(await png.path()).toString('latin1', 1, 4), 'PNG');
  await assertGood(page, 'a picture');

  // One of the whole piece can be on the cover; one of a band can't.
  const onCover = page.getByLabel('With the catalogue picture on the cover');
  assert.equal(await onCover.count(), 0, 'a band on the cover');
  await page.getByLabel('Shows', { exact: true }).selectOption('');
  await page.getByRole('button', { name: 'Make the picture' }).click();
  await onCover.waitFor({ timeout: 120_000 });
  assert.ok(await onCover.isChecked());
  const sent = page.waitForRequest((request) => /\/booklet\?.*cover=/.test(request.url()));
  await page.getByRole('button', { name: 'Make it again' }).click();
  await sent;
  await pdf.waitFor({ timeout: 90_000 });
  const [covered] = await Promise.all([page.waitForEvent('download'), pdf.click()]);
  const images = execFileSync('pdfimages', ['-list', '-l', '1', await covered.path()], { encoding: 'utf8' });
  assert.match(images, /1600\s+1600|1200\s+1200/, 'the picture is not on the cover');
  await assertGood(page, 'a booklet with a picture');

  // What is changed here makes it out of date; it is found again after another stop, and after the page is opened anew.
  await page.getByLabel('The next step').fill('Tie a surgeon’s knot.');
  await page.keyboard.press('Enter');
  await until(
    'the step was not kept',
    async () => (await saved(page, 'small')).assembly.at(-1) === 'Tie a surgeon’s knot.',
  );
  await page.getByText('has changed since these pages were made').waitFor();
  await page.getByRole('link', { name: 'Proof' }).click();
  await page.getByRole('link', { name: 'Booklet', exact: true }).click();
  await sheets.first().waitFor();
  await page.reload();
  await sheets.first().waitFor();
  await page.getByText('has changed since these pages were made').waitFor();
  await page.getByRole('button', { name: 'Make it again' }).click();
  await page.getByText('has changed since these pages were made').waitFor({ state: 'hidden' });
  await pdf.waitFor({ timeout: 90_000 });
}

/** A tablet upright: nothing is wider than it. */
async function tablet() {
  const { page, context, faults } = await enter(browser, server, {
    viewport: { width: 820, height: 1180 },
    hasTouch: true,
  });
  for (const stop of ['strand', 'supplies', 'proof', 'booklet']) {
    await open(page, 'moonwatch', stop);
    await page.waitForSelector('main h2');
    await assertFits(page, `${stop} on a tablet`);
  }
  await context.close();
  assert.deepEqual(faults, []);
}

try {
  const { page, faults } = await enter(browser, server);
  const only = process.argv.slice(2);
  const works = [strand, supplies, proof, booklet];
  for (const work of works.filter(({ name }) => only.length === 0 || only.includes(name))) {
    await work(page).catch(async (error) => {
      if (process.env.SHOT) await page.screenshot({ path: process.env.SHOT });
      throw error;
    });
    console.log(`${work.name}: done`);
  }
  assert.deepEqual(faults, []);
  await tablet();
  console.log('strand, supplies, proof and booklet work');
} finally {
  await browser.close();
  await server.stop();
}

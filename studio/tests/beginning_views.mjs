// The opening, the guide, Form and Colours, worked as a person does: node tests/beginning_views.mjs [folder for pictures]
import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';

import { assertAccessible, assertFits, enter, launch } from './support/browser.mjs';
import { StudioServer, examples, program } from './support/server.mjs';

const pictures = process.argv[2];
if (pictures) mkdirSync(pictures, { recursive: true });
// The designer's own stock is not this test's.
const data = mkdtempSync(join(tmpdir(), 'evencount-data-'));
process.env.XDG_DATA_HOME = data;

/** In light and in dark: no rule of axe-core is broken, nothing is wider than the window. */
async function looksWell(page, what) {
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ colorScheme });
    await assertAccessible(page, `${what} (${colorScheme})`);
    await assertFits(page, what);
    if (pictures)
      await page.screenshot({
        path: join(pictures, `${what.replaceAll(' ', '-')}-${colorScheme}.png`),
        fullPage: true,
      });
  }
  await page.emulateMedia({ colorScheme: 'light' });
}
/** What the page may complain of: sizes that were typed and are none. */
const serious = (faults) => faults.filter((fault) => !/Failed to load resource.*\/api\/fit/.test(fault));

async function projectOf(page, id) {
  const state = await page.evaluate(async (one) => (await fetch(`/api/projects/${one}`)).json(), id);
  assert.ok(state.project, JSON.stringify(state));
  return state.project;
}
/** Waits until the project is so. */
async function until(page, id, is, what) {
  for (let tries = 0; tries < 80; ++tries) {
    const project = await projectOf(page, id);
    if (is(project)) return project;
    await page.waitForTimeout(50);
  }
  assert.fail(`${what}: ${JSON.stringify(await projectOf(page, id)).slice(0, 1500)}`);
}
const button = (page, name) => page.getByRole('button', { name, exact: true });
const field = (page, name) => page.getByLabel(name, { exact: true });
async function put(page, name, text) {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}
/** Goes on with the Tab key until that is in focus. */
async function tabTo(page, role, name) {
  for (let tries = 0; tries < 80; ++tries) {
    await page.keyboard.press('Tab');
    const there = await page
      .getByRole(role, { name, exact: true })
      .evaluateAll((found) => found.some((one) => one === document.activeElement));
    if (there) return;
  }
  assert.fail(`the Tab key doesn't come to ${role} ${name}`);
}

async function firstProject(browser) {
  const server = await StudioServer.start();
  const { page, context, faults } = await enter(browser, server);
  try {
    await page.getByRole('heading', { name: 'A clean table. What will you cover?' }).waitFor();
    await page.getByText('easy: slides freely').first().waitFor();
    await looksWell(page, 'empty opening');

    // It fits while one types, in any unit; what is no size is said in words.
    await field(page, 'Width').fill('0.67in');
    await page
      .getByRole('radio', { name: /along the edge, (snug|easy)/ })
      .first()
      .waitFor();
    await field(page, 'Width').fill('1');
    await page.getByRole('alert').waitFor();
    await looksWell(page, 'sizes that are none');
    await field(page, 'Width').fill('');
    await page.getByText('Fill in the sizes, and the fit shows here.').waitFor();
    await page.getByText('A flat piece', { exact: true }).click();
    await field(page, 'Columns').waitFor();
    await looksWell(page, 'flat piece');

    // All of it by the keyboard alone.
    await page.goto(server.origin);
    await page.getByText('easy: slides freely').first().waitFor();
    await tabTo(page, 'radio', 'A two-hole carrier bead');
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowLeft']) await page.keyboard.press(key);
    assert.ok(await page.getByRole('radio', { name: 'A tube or round bead' }).isChecked());
    await tabTo(page, 'textbox', 'Across');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('14');
    await tabTo(page, 'radio', 'Slides');
    await page.keyboard.press('ArrowRight');
    await tabTo(page, 'textbox', 'What shall it be called? (You can say so later.)');
    await page.keyboard.type('Tide');
    await page
      .getByText(/^(tight|snug|easy): closes/)
      .first()
      .waitFor();
    await tabTo(page, 'button', 'Begin');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/p\/tide\/band$/);
    const made = await until(page, 'tide', ({ bands }) => bands.length === 1, 'the first band');
    assert.deepEqual(
      [
        made.title,
        made.forms[0].shape,
        made.bands[0].form,
        made.bands[0].use ?? 'fixed',
        made.bands[0].closure,
      ],
      ['Tide', 'round:14x20', 'round', 'fixed', 'zip'],
    );

    await guided(page);
    assert.deepEqual(serious(faults), []);
  } finally {
    await context.close();
    await server.stop();
  }
}

/** The guide has come along, and sees for itself what is done. */
async function guided(page) {
  const guide = page.getByRole('complementary', { name: 'Guide to a first band' });
  await guide.getByText('Draw on the front.').waitFor();
  await looksWell(page, 'guide');
  await page.evaluate(() =>
    fetch('/api/projects/tide/operations?revision=1', {
      method: 'POST',
      headers: { 'X-Evencount': '1' },
      body: JSON.stringify({ do: 'set', band: 0, cells: [[0, 0]], letter: 'B' }),
    }),
  );
  await guide.getByText('Slide it.').waitFor();
  await guide.getByRole('button', { name: 'Done, next' }).click();
  await guide.getByText('Look at the words.').waitFor();
  await button(page, 'Put the guide away').click();
  assert.equal(await guide.count(), 0);
  await page.reload();
  await page.getByText('Settings', { exact: true }).click();
  assert.equal(await guide.count(), 0, 'what was put away stays away');
  await button(page, 'Guide to a first band').click();
  await guide.getByText('Look at the words.').waitFor();
  await page.keyboard.press('Escape');
  await guide.getByRole('button', { name: 'Done, next' }).click();
  await guide.getByRole('button', { name: 'Go to Proof' }).click();
  await page.waitForURL(/\/p\/tide\/proof$/);
  await page.getByRole('link', { name: 'Booklet', exact: true }).click();
  await guide.getByText('That is a band.').waitFor();
}

async function shelf(browser) {
  const server = await StudioServer.start({ projects: [join(examples, 'moonwatch.evencount.json')] });
  writeFileSync(join(server.folder, 'torn.evencount.json'), '{"format": 1, ');
  const { page, context, faults } = await enter(browser, server);
  try {
    await page.getByRole('link', { name: 'Moonwatch', exact: true }).waitFor();
    await page.getByText(/This file can’t be read/).waitFor();
    await looksWell(page, 'shelf');
    await button(page, 'Duplicate Moonwatch').click();
    await page.getByRole('link', { name: 'Moonwatch (copy)' }).waitFor();
    await button(page, 'Move Moonwatch (copy) to the bin').click();
    const back = button(page, 'Put back Moonwatch (copy)');
    await back.waitFor();
    assert.ok(await back.evaluate((one) => one === document.activeElement), 'the way back is in hand');
    await page.getByRole('link', { name: 'Moonwatch (copy)' }).waitFor({ state: 'detached' });
    await looksWell(page, 'binned');
    await page.keyboard.press('Enter');
    await page.getByRole('link', { name: 'Moonwatch (copy)' }).waitFor();
    await button(page, 'A new project').click();
    await button(page, 'Not now').click();
    assert.equal(await button(page, 'Begin').count(), 0);

    await field(page, 'Open a file').setInputFiles({
      name: 'notes.json',
      mimeType: 'application/json',
      buffer: Buffer.from('no project'),
    });
    await page.getByRole('alert').getByText('notes.json is no project file').waitFor();
    await field(page, 'Open a file').setInputFiles(join(examples, 'collection/dusk.evencount.json'));
    await page.waitForURL(/\/p\/dusk\/band$/);
    await page.getByRole('link', { name: 'Evencount' }).click();
    await button(page, 'Begin with a copy of Moonwatch Necklace').click();
    await page.waitForURL(/\/p\/moonwatch-necklace\/band$/);
    assert.deepEqual(serious(faults), []);
  } finally {
    await context.close();
    await server.stop();
  }
}

const moon = 'moonwatch';

async function form(page, origin) {
  await page.goto(`${origin}/p/${moon}/form`);
  await page.getByText('easy: slides freely').first().waitFor();
  await looksWell(page, 'form');
  const before = await projectOf(page, moon);

  // The drawing answers before anything is changed.
  await Promise.all([
    page.waitForResponse(/fit\/section\?form=lens%3A18x5x9/),
    field(page, 'Width').fill('18'),
  ]);
  await page.getByText('As typed. Leave the field').waitFor();
  assert.equal((await projectOf(page, moon)).forms[0].shape, before.forms[0].shape);
  await looksWell(page, 'form typed');
  await field(page, 'Width').press('Enter');
  await until(page, moon, ({ forms }) => forms[0].shape.startsWith('lens:18x5x9,'), 'another width');
  const better = page.getByRole('radio', { name: /along the edge, (snug|easy|tight):/ }).first();
  const edge = Number(await better.getAttribute('value'));
  assert.notEqual(edge, before.bands[0].edge);
  await better.check();
  await until(page, moon, ({ bands }) => bands[0].edge === edge, 'another length');
  await page.keyboard.press('Control+Z');
  await until(page, moon, ({ bands }) => bands[0].edge === before.bands[0].edge, 'undone');

  await put(page, 'Name of the band', 'Dark moon');
  await put(page, 'How many', '3');
  await put(page, 'Note for the maker', 'Twice waxed thread.');
  await field(page, 'How many').focus();
  await page.getByText('Stays fixed').click();
  await put(page, 'Columns', '8');
  const changed = await until(page, moon, ({ bands }) => bands[0].columns === 8, 'wider');
  assert.deepEqual(
    [changed.bands[0].name, changed.bands[0].copies, changed.bands[0].note, changed.bands[0].use ?? 'fixed'],
    ['Dark moon', 3, 'Twice waxed thread.', 'fixed'],
  );

  await page.getByText('Gauge', { exact: true }).click();
  await field(page, 'Their width, mm').fill('16,4');
  await field(page, 'Their length, mm').fill('33.6');
  await button(page, 'Use it for this band').waitFor();
  await looksWell(page, 'gauge');
  await button(page, 'Use it for this band').click();
  const measured = await until(page, moon, ({ bands }) => bands[0].gauge, 'a measured gauge');
  assert.equal(measured.bands[0].gauge.edge_mm, 1.68);
  await button(page, 'Back to the usual gauge').click();
  await until(page, moon, ({ bands }) => !bands[0].gauge, 'the usual gauge');

  await button(page, 'Duplicate').click();
  await until(page, moon, ({ bands }) => bands[1].name === 'Dark moon 2', 'a duplicate');
  await button(page, 'Later').click();
  await until(page, moon, ({ bands }) => bands[2].name === 'Dark moon 2', 'moved');
  await button(page, 'Remove').click();
  await until(page, moon, ({ bands }) => bands.every(({ name }) => name !== 'Dark moon 2'), 'removed');

  await button(page, 'Add a form').click();
  await page.getByText('No band goes round this form yet.', { exact: false }).waitFor();
  await field(page, 'What it is').selectOption('wrist');
  await until(page, moon, ({ forms }) => forms[1]?.shape === 'wrist:165', 'a wrist');
  await button(page, 'Add a band').click();
  await looksWell(page, 'another band');
  await button(page, 'Add it').click();
  const added = await until(page, moon, ({ bands }) => bands.length === before.bands.length + 1, 'a band');
  assert.equal(added.bands.at(-1).form, added.forms[1].id);
  await page.getByRole('button', { name: /^wrist 165 mm round/ }).waitFor();

  await page.getByRole('heading', { name: 'The whole piece in another size' }).click();
  await field(page, 'Instead of 11/0 cylinder bead').selectOption('cylinder-10');
  await page.getByRole('columnheader', { name: 'Beads then' }).waitFor();
  await looksWell(page, 'resize');
  await button(page, 'Resize the piece').click();
  const resized = await until(page, moon, ({ bands }) => bands[0].bead === 'cylinder-10', 'resized');
  assert.ok(resized.bands[0].edge < edge);
}

/** White paper on the left, a bead's colour on the right. */
function photograph() {
  const [width, height] = [320, 200];
  const row = Buffer.alloc(1 + 3 * width);
  for (let x = 0; x < width; ++x) row.set(x < width / 2 ? [200, 200, 200] : [120, 40, 60], 1 + 3 * x);
  const number = (value) => {
    const bytes = Buffer.alloc(4);
    bytes.writeUInt32BE(value >>> 0);
    return bytes;
  };
  const part = (name, bytes) => {
    const named = Buffer.concat([Buffer.from(name), bytes]);
    return Buffer.concat([number(bytes.length), named, number(crc32(named))]);
  };
  const head = Buffer.concat([number(width), number(height), Buffer.from([8, 2, 0, 0, 0])]);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    part('IHDR', head),
    part('IDAT', deflateSync(Buffer.concat(Array(height).fill(row)))),
    part('IEND', Buffer.alloc(0)),
  ]);
}

async function colours(page, origin) {
  await page.goto(`${origin}/p/${moon}/colours`);
  await page.getByRole('heading', { name: 'Together' }).waitFor();
  const images = page.locator('figure img');
  await page.waitForFunction(
    () => [...document.querySelectorAll('figure img')].filter((one) => one.naturalWidth > 0).length === 4,
  );
  assert.equal(new Set(await images.evaluateAll((all) => all.map((one) => one.src))).size, 4);
  await looksWell(page, 'colours');
  const before = await projectOf(page, moon);
  const [first, second] = before.legend;

  // What is being typed stays while another window changes something else of the same bead.
  await field(page, 'As a number').fill('#202845');
  await page.evaluate(
    ([id, letter]) =>
      fetch(`/api/projects/${id}`)
        .then((answer) => answer.json())
        .then(({ revision }) =>
          fetch(`/api/projects/${id}/operations?revision=${revision}`, {
            method: 'POST',
            headers: { 'X-Evencount': '1' },
            body: JSON.stringify({ do: 'change_legend_entry', letter, entry: { name: 'midnight' } }),
          }),
        ),
    [moon, first.letter],
  );
  await page.waitForFunction(() =>
    [...document.querySelectorAll('input')].some(({ value }) => value === 'midnight'),
  );
  await field(page, 'As a number').press('Enter');
  await until(page, moon, ({ legend }) => legend[0].colour === '#202845', 'another colour');
  await put(page, 'Name', 'dark midnight');
  await page.getByText('pearl', { exact: true }).click();
  const changed = await until(page, moon, ({ legend }) => legend[0].finish === 'pearl', 'pearl');
  assert.deepEqual([changed.legend[0].name, changed.legend[0].colour], ['dark midnight', '#202845']);
  await button(page, 'Later in the legend').click();
  await until(page, moon, ({ legend }) => legend[1].letter === first.letter, 'another order');
  const uses = ({ bands }, letter) =>
    bands.some(({ cells }) => cells.some((line) => new RegExp(`\\d${letter}\\b`).test(line)));
  await field(page, /^In place of its/).selectOption(second.letter);
  await button(page, 'Replace in all bands').click();
  await until(page, moon, (now) => !uses(now, first.letter), 'replaced');
  await field(page, 'No band uses this bead. In its place').waitFor();
  await button(page, `Take ${first.letter} off the legend`).click();
  await until(page, moon, ({ legend }) => legend.every(({ letter }) => letter !== first.letter), 'taken off');
  await button(page, 'Add a bead').click();
  await until(page, moon, ({ legend }) => legend.at(-1).name === 'new bead', 'added');

  await page.getByText('From the stock', { exact: true }).click();
  await field(page, 'Size of bead').selectOption('');
  await page.getByText(/beads in the stock\./).waitFor();
  await looksWell(page, 'stock');
  const use = page.getByRole('button', { name: /^Use for A: / }).first();
  const name = (await use.getAttribute('aria-label')).replace('Use for A: ', '');
  await use.click();
  await until(page, moon, ({ legend }) => legend.at(-1).name === name, 'a bead of the stock');
  await field(page, 'Words').fill('nothing is called so');
  await page.getByText('No bead of the stock is like that.', { exact: false }).waitFor();

  await page.getByText('From a photograph', { exact: true }).click();
  await field(page, 'Open a photograph').setInputFiles({
    name: 'beads.png',
    mimeType: 'image/png',
    buffer: photograph(),
  });
  await page.getByText(/^The bead is #/).waitFor();
  await looksWell(page, 'photograph');
  // The square on the bead is moved by its keys, dragged onto the card, where nothing can be measured, and tapped back.
  const square = button(page, 'Square on the bead');
  const left = await square.evaluate((one) => one.style.left);
  await square.focus();
  await page.keyboard.press('Shift+ArrowRight');
  assert.notEqual(await square.evaluate((one) => one.style.left), left);
  const box = await page.getByRole('img', { name: 'The photograph' }).boundingBox();
  const bead = await square.boundingBox();
  await page.mouse.move(bead.x + bead.width / 2, bead.y + bead.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.2, box.y + box.height * 0.5, { steps: 5 });
  await page.mouse.up();
  await page.getByRole('alert').waitFor();
  await page.mouse.click(box.x + box.width * 0.8, box.y + box.height * 0.4);
  await page.getByText(/^The bead is #/).waitFor();
  await button(page, 'Add it as a new bead').click();
  const added = await until(
    page,
    moon,
    ({ legend }) => legend.length === before.legend.length + 1,
    'measured',
  );
  assert.match(added.legend.at(-1).colour, /^#[89][0-9a-f][23][0-9a-f]4[0-9a-f]$/);
}

execFileSync(program, ['stock', 'import', join(examples, 'stock/beads.csv')], { stdio: 'ignore' });
const browser = await launch();
try {
  await firstProject(browser);
  await shelf(browser);
  const server = await StudioServer.start({ projects: [join(examples, `${moon}.evencount.json`)] });
  const { page, context, faults } = await enter(browser, server);
  try {
    await form(page, server.origin);
    await colours(page, server.origin);
    const kept = JSON.parse(readFileSync(join(server.folder, `${moon}.evencount.json`), 'utf8'));
    assert.equal(kept.bands[0].name, 'Dark moon', 'it is in the file');
    // A colour can't be measured where there is none.
    assert.deepEqual(
      serious(faults).filter((fault) => !/\/api\/pictures\/\d+\/colour/.test(fault)),
      [],
    );
  } finally {
    await context.close();
    await server.stop();
  }
  console.log('opening, guide, form and colours work as they should');
} finally {
  await browser.close();
  rmSync(data, { recursive: true, force: true });
}

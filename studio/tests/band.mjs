// Works on the band by itself as a person would: node tests/band.mjs [folder for pictures]
import { readFileSync } from 'node:fs';
import { strict as assert } from 'node:assert';

import { withBrowser } from './serve.mjs';

const pictures = process.argv[2];
const axe = readFileSync(new URL('../node_modules/axe-core/axe.min.js', import.meta.url), 'utf8');
const table = '[role=application]';

async function open(browser, url, asked, more = {}) {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, ...more });
  const page = await context.newPage();
  page.on('pageerror', (error) => assert.fail(`${asked}: ${error.stack}`));
  await page.goto(`${url}/dev/band.html?${asked}`);
  await page.waitForSelector(table);
  await page.waitForFunction(() => 'bench' in window);
  await page.waitForTimeout(400);
  return page;
}

const picture = async (page, name) => {
  if (pictures) await page.screenshot({ path: `${pictures}/band-${name}.png` });
};
const beads = (page) => page.evaluate(() => window.bench.beads());
const said = (page) => page.locator('[aria-live=polite]').textContent();

/** The colour that is seen at a place of the window. */
const seenAt = (page, x, y) =>
  page.evaluate(
    ([atX, atY]) => {
      const canvas = document.querySelector('[role=application] canvas');
      const box = canvas.getBoundingClientRect();
      const pen = canvas.getContext('2d');
      const ratio = canvas.width / box.width;
      return [...pen.getImageData((atX - box.left) * ratio, (atY - box.top) * ratio, 1, 1).data];
    },
    [x, y],
  );

/** Where the moon band's cells are seen, from what was painted. */
async function cellsOf(page) {
  return page.evaluate(() => {
    const canvas = document.querySelector('[role=application] canvas');
    const box = canvas.getBoundingClientRect();
    const pen = canvas.getContext('2d');
    const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height);
    let [left, top, right, bottom] = [width, height, 0, 0];
    for (let y = 0; y < height; ++y)
      for (let x = 0; x < width; ++x)
        if (data[4 * (y * width + x) + 3] > 128) {
          [left, right] = [Math.min(left, x), Math.max(right, x + 1)];
          [top, bottom] = [Math.min(top, y), Math.max(bottom, y + 1)];
        }
    const ratio = box.width / width;
    return {
      x: box.left + left * ratio,
      y: box.top + top * ratio,
      width: (right - left) * ratio,
      height: (bottom - top) * ratio,
    };
  });
}

const middle = (band, columns, edge, column, step) => ({
  x: band.x + ((column + 0.5) / columns) * band.width,
  y: band.y + ((step + 0.5 + (column % 2) / 2) / (edge + 0.5)) * band.height,
});

async function keyboard(browser, url) {
  const page = await open(browser, url, 'band=moon&which=4');
  await page.focus(table);
  await page.keyboard.press('ArrowDown');
  assert.match(await said(page), /^column 0, step 1, night blue, row 3$/);
  await page.keyboard.press('ArrowRight');
  assert.match(await said(page), /^column 1, step 1, night blue, row 4$/);
  await page.keyboard.press('e');
  assert.equal(await said(page), 'shallow water');
  await page.keyboard.press('Enter');
  assert.equal((await beads(page))[7], 4);
  await page.keyboard.press('b');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press(' ');
  assert.equal((await beads(page))[13], 1);
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowRight');
  assert.match(await said(page), /^selected: 2 by 2 from column 1, step 2$/);
  await picture(page, 'keyboard');
  await page.keyboard.press('+');
  await page.keyboard.press('+');
  await page.waitForSelector('[role=scrollbar]');
  await page.keyboard.press('0');
  await page.waitForSelector('[role=scrollbar]', { state: 'detached' });
  await page.addScriptTag({ content: axe });
  const found = await page.evaluate(() => window.axe.run('.band .table'));
  assert.deepEqual(
    found.violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]),
    [],
  );
  await page.context().close();
}

async function mouse(browser, url) {
  const page = await open(browser, url, 'band=moon&which=0&colour=3');
  const band = await cellsOf(page);
  assert.ok(Math.abs(band.width / band.height - (6 * 1.35) / (24.5 * 1.66)) < 0.005, 'true proportion');
  const at = (column, step) => middle(band, 6, 24, column, step);
  const [from, to] = [at(0, 3), at(5, 14)];
  const before = await beads(page);
  const wasSeen = await seenAt(page, to.x, to.y);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y);
  await page.mouse.up();
  const after = await beads(page);
  const drawn = after.flatMap((bead, i) => (bead === 3 && before[i] !== 3 ? [i % 6] : []));
  for (let column = 0; column < 6; ++column)
    assert.ok(drawn.includes(column), `column ${column} was crossed`);
  await page.waitForTimeout(100);
  assert.notDeepEqual(await seenAt(page, to.x, to.y), wasSeen);
  await picture(page, 'stroke');
  const hold = await page.locator('.hold').boundingBox();
  await page.mouse.move(hold.x + 10, hold.y + 10);
  await page.mouse.down();
  await page.waitForTimeout(100);
  assert.deepEqual(await seenAt(page, to.x, to.y), wasSeen);
  await page.mouse.up();
  await page.waitForTimeout(100);
  assert.notDeepEqual(await seenAt(page, to.x, to.y), wasSeen);
  await page.mouse.click(at(2, 22).x, at(2, 22).y, { button: 'right' });
  assert.equal(await page.evaluate(() => window.bench.colour()), after[22 * 6 + 2]);
  await page.context().close();
}

async function fingers(browser, url) {
  const page = await open(browser, url, 'band=large', {
    viewport: { width: 820, height: 1180 },
    hasTouch: true,
    deviceScaleFactor: 2,
  });
  const before = await beads(page);
  const device = await page.context().newCDPSession(page);
  const touch = (type, ...points) =>
    device.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map(([x, y], id) => ({ x, y, id })),
    });
  await touch('touchStart', [350, 500]);
  await touch('touchStart', [350, 500], [450, 600]);
  for (let i = 1; i <= 6; ++i)
    await touch('touchMove', [350 - 20 * i, 500 - 20 * i], [450 + 20 * i, 600 + 20 * i]);
  await touch('touchEnd');
  await page.waitForSelector('[role=scrollbar]');
  assert.deepEqual(await beads(page), before, 'a pinch draws nothing');
  await page.waitForTimeout(600);
  await picture(page, 'pinched');
  await touch('touchStart', [300, 400]);
  await touch('touchMove', [420, 440]);
  await touch('touchEnd');
  assert.notDeepEqual(await beads(page), before, 'one finger draws');
  await touch('touchStart', [500, 800]);
  await page.waitForTimeout(700);
  await touch('touchEnd');
  assert.match(await page.evaluate(() => window.bench.last()), /"pick"/);
  const strip = page.locator('[role=scrollbar]');
  const was = await strip.getAttribute('aria-valuenow');
  await strip.focus();
  await page.keyboard.press('PageDown');
  await page.waitForTimeout(100);
  assert.notEqual(await strip.getAttribute('aria-valuenow'), was);
  await page.context().close();
}

await withBrowser(async (browser, url) => {
  for (const work of [keyboard, mouse, fingers]) {
    await work(browser, url);
    console.log(`${work.name}: as it should be`);
  }
});

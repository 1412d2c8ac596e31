// The stitch-along page as a maker meets it: a telephone, no network. along_in_browser.mjs EVENCOUNT BROWSER FOLDER

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';

import {
  assertAccessible,
  assertFits,
  chooseBand,
  closeOthers,
  home,
  launch,
  open,
  programOf,
  view,
  walk,
} from './along_browser.mjs';

const [evencount, browserPath, folder] = process.argv.slice(2);
const program = programOf(evencount, folder);
const browser = await launch(browserPath);
const views = ['work', 'words', 'steps', 'supplies'];

const demo = program.along('moonwatch');
const demoProject = `${home}examples/moonwatch.evencount.json`;
const bezel = program.along('techniques/peyote-bezel');

const tests = {
  'every row of a band, by keys, is what its chart holds': async () => {
    const { page, faults, close } = await open(browser, demo);
    assert.equal(await page.locator('#band option').count(), 8);
    let words = '';
    for (const [name, key] of [
      ['Full moon', 'ArrowRight'],
      ['New moon', ' '],
    ]) {
      await chooseBand(page, name);
      words += await walk(page, key);
      assert.equal(await page.textContent('#row-name'), 'All rows are done');
      assert.match(await page.textContent('#row-way'), /zip/);
    }
    // The words that the program writes are proved elsewhere; what was seen must be the same, word for word.
    const written = ['Full moon', 'New moon'].map((name) =>
      program.run('words', demoProject, '--band', name),
    );
    const rowsOf = (text) => text.split('\n').filter((line) => /^Rows? \d/.test(line));
    assert.deepEqual(rowsOf(words), written.flatMap(rowsOf));
    assert.equal(rowsOf(words).length, 2 * 47);
    await page.keyboard.press('ArrowLeft');
    assert.equal(await page.textContent('#row-name'), 'Row 48');
    assert.match(await page.textContent('#row-after'), /zip them/);
    assert.deepEqual(faults, []);
    await close();
  },

  'rows along, squares and rounds, right-handed and left-handed': async () => {
    const techniques = ['brick-shaped', 'right-angle', 'tubular-odd-count'];
    for (const technique of techniques) {
      const { page, faults, close } = await open(browser, program.along(`techniques/${technique}`));
      const right = await walk(page, 'ArrowRight');
      program.read(right, '--against', `${home}examples/techniques/${technique}.evencount.json`);
      await page.selectOption('#hand', 'left');
      assert.ok(await page.locator('#left-help').isVisible(), technique);
      const left = await walk(page, 'ArrowRight');
      const cells = (words) => JSON.parse(program.read(words, '--json')).bands[0].cells;
      const beads = (row) =>
        [...row.matchAll(/(\d+)([A-Z.]+)/g)].flatMap(([, count, letter]) =>
          Array(Number(count)).fill(letter),
        );
      assert.deepEqual(
        cells(left).map((row) => beads(row).reverse()),
        cells(right).map(beads),
        technique,
      );
      assert.deepEqual(faults, [], technique);
      await close();
    }
  },

  'a band that can not be mirrored has no left-handed mode and says so': async () => {
    const { page, faults, close } = await open(browser, bezel);
    await page.selectOption('#hand', 'left');
    assert.ok(await page.locator('#no-left').isVisible());
    program.read(
      await walk(page, 'ArrowRight'),
      '--against',
      `${home}examples/techniques/peyote-bezel.evencount.json`,
    );
    assert.deepEqual(faults, []);
    await close();
  },

  'ticks and the place are kept over a visit, for each band and hand': async () => {
    const { page, faults, close } = await open(browser, demo);
    await chooseBand(page, 'Full moon');
    for (let i = 0; i < 9; i++) await page.keyboard.press('ArrowRight');
    await page.locator('#runs .run').first().tap();
    const counter = await page.textContent('#counter');
    assert.doesNotMatch(counter, /^0 of/);
    const name = await page.textContent('#row-name');
    // The browser hands what is kept to its store a moment later; nobody opens the page anew within that moment.
    await page.waitForTimeout(1000);
    await page.reload();
    assert.equal(await page.textContent('#row-name'), name);
    assert.equal(await page.textContent('#counter'), counter);
    assert.equal(await page.locator('#runs .run').first().getAttribute('aria-pressed'), 'true');
    await page.selectOption('#hand', 'left');
    assert.equal(await page.textContent('#row-name'), 'Rows 1–2');
    await page.selectOption('#hand', 'right');
    assert.equal(await page.textContent('#row-name'), name);
    await chooseBand(page, 'New moon');
    assert.equal(await page.textContent('#row-name'), 'Rows 1–2');
    await chooseBand(page, 'Full moon');
    assert.equal(await page.textContent('#counter'), counter);
    page.once('dialog', (dialog) => dialog.accept());
    await page.click('#again');
    assert.equal(await page.textContent('#row-name'), 'Rows 1–2');
    assert.deepEqual(faults, []);
    await close();
  },

  'single beads are ticked in their order': async () => {
    const { page, close } = await open(browser, demo);
    await page.click('#each');
    const singles = page.locator('#runs .single');
    assert.equal(await singles.count(), 6);
    await singles.nth(3).tap();
    assert.equal(await page.textContent('#counter'), '4 of 6 beads');
    await singles.nth(3).tap();
    assert.equal(await page.textContent('#counter'), '3 of 6 beads');
    await page.locator('#runs .run').tap();
    assert.equal(await page.textContent('#counter'), '6 of 6 beads');
    await assertFits(page, 'single beads');
    await close();
  },

  'it works where nothing may be kept, and says so': async () => {
    const before = () =>
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('no', 'SecurityError');
        },
      });
    const { page, faults, close } = await open(browser, demo, { before });
    assert.ok(await page.locator('#not-kept').isVisible());
    await page.keyboard.press('ArrowRight');
    await chooseBand(page, 'Full moon');
    await chooseBand(page, 'New moon');
    assert.equal(await page.textContent('#row-name'), 'Row 3');
    assert.deepEqual(faults, []);
    await close();
    const usual = await open(browser, demo);
    assert.ok(!(await usual.page.locator('#not-kept').isVisible()));
    await usual.close();
  },

  'damaged notes of an earlier visit do no harm': async () => {
    const { page, faults, close } = await open(browser, demo);
    await page.keyboard.press('ArrowRight');
    await page.evaluate(() => {
      for (const key of Object.keys(localStorage))
        localStorage.setItem(
          key,
          key.endsWith('.0') ? '{"row":-7.5,"ticks":"x"}' : '{"band":99,"view":"nowhere","copies":null}',
        );
    });
    await page.reload();
    assert.equal(await page.textContent('#row-name'), 'Rows 1–2');
    await page.evaluate(() => Object.keys(localStorage).forEach((key) => localStorage.setItem(key, '{')));
    await page.reload();
    assert.equal(await page.textContent('#row-name'), 'Rows 1–2');
    assert.deepEqual(faults, []);
    await close();
  },

  'taps and wipes move on': async () => {
    const { context, page, close } = await open(browser, demo);
    const touch = await context.newCDPSession(page);
    const wipe = async (from, to) => {
      const at = (x) => [{ x, y: 200 }];
      await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(from) });
      for (let i = 1; i <= 5; i++)
        await touch.send('Input.dispatchTouchEvent', {
          type: 'touchMove',
          touchPoints: at(from + ((to - from) * i) / 5),
        });
      await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    };
    await page.locator('#on').tap();
    await page.locator('#on').tap();
    await page.locator('#back').tap();
    assert.equal(await page.textContent('#row-name'), 'Row 3');
    await wipe(300, 120);
    assert.equal(await page.textContent('#row-name'), 'Row 4');
    await wipe(100, 290);
    assert.equal(await page.textContent('#row-name'), 'Row 3');
    const halves = await page.evaluate(() =>
      ['back', 'on'].map((id) => document.getElementById(id).getBoundingClientRect().toJSON()),
    );
    for (const half of halves) assert.ok(half.width === 180 && half.height >= 64 && half.bottom === 640);
    await close();
  },

  'the row is announced, and spoken where there is a voice on the device': async () => {
    const before = () => {
      window.spoken = [];
      const voices = [
        { lang: 'en-GB', localService: false, name: 'far' },
        { lang: 'en-GB', localService: true, name: 'near', default: false },
      ];
      window.SpeechSynthesisUtterance = class {
        constructor(text) {
          this.text = text;
        }
      };
      Object.defineProperty(window, 'speechSynthesis', {
        value: {
          getVoices: () => voices,
          cancel: () => {},
          speak: (each) => window.spoken.push(`${each.voice.name}: ${each.text}`),
        },
      });
    };
    const { page, close } = await open(browser, demo, { before });
    for (let i = 0; i < 2; i++) await page.keyboard.press('ArrowRight');
    assert.equal(await page.textContent('#said'), 'Row 4, to the left: three A night blue.');
    assert.equal(await page.getAttribute('#said', 'aria-live'), 'polite');
    await page.click('#speak');
    await page.click('#always-speak');
    await page.keyboard.press('ArrowLeft');
    const spoken = await page.evaluate(() => window.spoken);
    assert.equal(spoken[0], 'near: Row 4, to the left: three A night blue.');
    assert.match(spoken.at(-1), /^near: Row 3, to the right: /);
    await close();
    const mute = await open(browser, demo, {
      before: () => Object.defineProperty(window, 'speechSynthesis', { value: undefined }),
    });
    await mute.page.click('#speak');
    assert.match(await mute.page.textContent('#remark'), /can’t read aloud/);
    await mute.close();
  },

  'the screen is kept on, or it says that it can not be': async () => {
    const before = () =>
      Object.defineProperty(navigator, 'wakeLock', {
        value: { request: async () => ({ release: async () => {} }) },
      });
    const awake = await open(browser, demo, { before });
    await awake.page.click('#awake');
    assert.equal(await awake.page.getAttribute('#awake', 'aria-pressed'), 'true');
    await awake.page.click('#awake');
    assert.match(await awake.page.textContent('#remark'), /may go dark/);
    await awake.close();
    const refused = () =>
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          request: async () => {
            throw new Error('no');
          },
        },
      });
    const tired = await open(browser, demo, { before: refused });
    await tired.page.click('#awake');
    await tired.page.waitForFunction(() =>
      document.getElementById('remark').textContent.includes('can’t keep the screen on'),
    );
    assert.equal(await tired.page.getAttribute('#awake', 'aria-pressed'), 'false');
    await tired.close();
  },

  'it fits a small window and breaks no rule of access, light and dark': async () => {
    for (const colorScheme of ['light', 'dark']) {
      const { page, faults, close } = await open(browser, demo, {
        context: { colorScheme, reducedMotion: 'reduce' },
      });
      for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
      await page.locator('#runs .run').first().tap();
      for (const name of views) {
        await view(page, name);
        await assertFits(page, `${name}, ${colorScheme}`);
        await assertAccessible(page, `${name}, ${colorScheme}`);
      }
      await view(page, 'work');
      assert.equal(
        await page.evaluate(() => getComputedStyle(document.querySelector('.run')).transitionDuration),
        '0s',
      );
      assert.deepEqual(faults, []);
      await close();
    }
    for (const project of ['moonwatch-necklace', 'techniques/right-angle', 'techniques/loom']) {
      const { page, close } = await open(browser, program.along(project));
      for (const name of views) {
        await view(page, name);
        await assertFits(page, `${project}, ${name}`);
      }
      await close();
    }
  },

  'the chart shows every bead in its colour, the row in work lit': async () => {
    const { page, close } = await open(browser, demo, {
      context: { viewport: { width: 820, height: 1180 } },
    });
    const ink = (x, y) =>
      page.evaluate(
        ([x, y]) => {
          const canvas = document.getElementById('chart');
          const dots = canvas.width / canvas.clientWidth;
          return [
            ...canvas
              .getContext('2d')
              .getImageData(Math.round(x * dots), Math.round(y * dots), 1, 1)
              .data.slice(0, 3),
          ];
        },
        [x, y],
      );
    await page.click('#find-row');
    await page.evaluate(() => (document.getElementById('chart-room').scrollTop = 0));
    await page.waitForTimeout(200); // a frame or two
    // A bead of 26 pixels to the column lies in the middle of its room, 1.6 pitches from the top; a fifth of a bead is clear of its letter.
    const place = await page.evaluate(() => {
      const { shape, hands } = JSON.parse(document.getElementById('design').textContent).bands[0];
      const room = document.getElementById('chart-room').clientWidth;
      const inset = (room - 26 * (shape.width + 3.2)) / 2;
      const [x, y] = hands.right.rows[5].places;
      return [inset + 26 * (2.1 + x / 2) - 7, 26 * 1.6 + 26 * shape.ratio * (0.5 + y / 2) - 9];
    });
    const colour = await page.evaluate(() => {
      const { legend } = JSON.parse(document.getElementById('design').textContent);
      return [1, 3, 5].map((at) => parseInt(legend[0].colour.slice(at, at + 2), 16));
    });
    assert.deepEqual(await ink(...place), colour);
    const label = await page.getAttribute('#chart', 'aria-label');
    assert.match(label, /New moon.*Rows 1–2/);
    await close();
  },

  'on paper it is the words with boxes to tick': async () => {
    const { page, close } = await open(browser, demo);
    await chooseBand(page, 'Full moon');
    await page.keyboard.press('ArrowRight');
    await page.emulateMedia({ media: 'print' });
    assert.ok(!(await page.locator('#work').isVisible()) && !(await page.locator('.bar').isVisible()));
    assert.equal(await page.locator('.box:visible').count(), 47);
    const pdf = `${folder}/print.pdf`;
    writeFileSync(
      pdf,
      await page.pdf({ format: 'A4', margin: { top: '15mm', bottom: '15mm', left: '15mm', right: '15mm' } }),
    );
    const text = execFileSync('pdftotext', ['-raw', pdf, '-'], { encoding: 'utf8' });
    const read = JSON.parse(program.read(text, '--json')).bands;
    const all = JSON.parse(program.read(program.run('words', demoProject), '--json')).bands;
    assert.deepEqual(
      read.map((band) => band.cells),
      [all.find((band) => band.name === 'Full moon').cells],
    );
    await page.emulateMedia({ media: null });
    await close();
  },

  'without its script it is still a page of words': async () => {
    const { page, close } = await open(browser, demo, { context: { javaScriptEnabled: false } });
    assert.equal(await page.locator('article.band:visible').count(), 8);
    assert.ok(!(await page.locator('.bar').isVisible()));
    await close();
  },
};

let failed = 0;
for (const [name, test] of Object.entries(tests)) {
  const begun = performance.now();
  try {
    await test();
    console.log(`ok      ${name} (${Math.round((performance.now() - begun) / 100) / 10} s)`);
  } catch (error) {
    failed++;
    console.log(`FAILED  ${name}\n${error.stack}`);
  }
  await closeOthers(browser);
}
await browser.close();
process.exitCode = failed ? 1 : 0;

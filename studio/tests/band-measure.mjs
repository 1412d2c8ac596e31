// Prints how long painting 200 x 300 beads takes in Chromium: node tests/band-measure.mjs
import { withBrowser } from './serve.mjs';

await withBrowser(async (browser, url) => {
  const page = await browser.newPage({ viewport: { width: 1024, height: 768 } });
  await page.goto(`${url}/dev/band.html`);
  await page.waitForFunction(() => 'measure' in window);
  for (const [width, height, density, bead] of [
    [1024, 700, 1, 0],
    [1024, 700, 1, 6],
    [1024, 700, 1, 24],
    [820, 1100, 2, 0],
    [820, 1100, 2, 24],
  ])
    console.log(
      JSON.stringify(
        await page.evaluate((asked) => window.measure(...asked), [width, height, density, bead]),
      ),
    );
  await page.close();
});

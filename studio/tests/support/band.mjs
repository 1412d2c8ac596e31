// The unrolled band as it is seen on a page: where its beads are, and what colour they show.

/** Where the beads of a band that is seen whole are painted: `at(column, step)` is the middle of one, in the window. */
export async function bandOn(page, columns, edge) {
  await page.waitForSelector('.table [role=application] canvas');
  const box = await page.evaluate(() => {
    const canvas = document.querySelector('.table [role=application] canvas');
    const frame = canvas.getBoundingClientRect();
    const pen = canvas.getContext('2d');
    const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height);
    let [left, top, right, bottom] = [width, height, 0, 0];
    for (let y = 0; y < height; ++y)
      for (let x = 0; x < width; ++x)
        if (data[4 * (y * width + x) + 3] > 128) {
          left = Math.min(left, x);
          right = Math.max(right, x + 1);
          top = Math.min(top, y);
          bottom = Math.max(bottom, y + 1);
        }
    const ratio = canvas.width / frame.width;
    return {
      x: frame.left + left / ratio,
      y: frame.top + top / ratio,
      width: (right - left) / ratio,
      height: (bottom - top) / ratio,
    };
  });
  const across = box.width / columns;
  const along = box.height / (edge + 0.5);
  return {
    columns,
    edge,
    at: (column, step) => ({
      x: box.x + (column + 0.5) * across,
      y: box.y + (step + (column % 2) / 2 + 0.5) * along,
    }),
  };
}

/** The legend's letter that each bead shows, read from the canvas: the nearest colour, off the glint of the bead. */
export async function lettersSeen(page, band, legend) {
  const places = [];
  for (let step = 0; step < band.edge; step++)
    for (let column = 0; column < band.columns; column++) places.push(band.at(column, step));
  return page.evaluate(
    ([points, colours]) => {
      const canvas = document.querySelector('.table [role=application] canvas');
      const frame = canvas.getBoundingClientRect();
      const pen = canvas.getContext('2d');
      const ratio = canvas.width / frame.width;
      const rgb = colours.map(({ colour }) => [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16)));
      return points.map(({ x, y }) => {
        const seen = pen.getImageData((x - frame.left) * ratio, (y - frame.top) * ratio, 1, 1).data;
        const far = rgb.map((one) => Math.hypot(...one.map((value, i) => value - seen[i])));
        return colours[far.indexOf(Math.min(...far))].letter;
      });
    },
    [places, legend],
  );
}

/** Presses, moves and lifts over beads, [column, step] each. */
export async function draw(page, band, ...cells) {
  const [first, ...rest] = cells.map(([column, step]) => band.at(column, step));
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (const { x, y } of rest) await page.mouse.move(x, y, { steps: 6 });
  await page.mouse.up();
}

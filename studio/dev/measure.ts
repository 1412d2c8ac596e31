/** How long painting takes in this browser, with what it put off counted in: a pixel is read back after each piece. */
import { BandPainter } from '../src/band/painter';
import { Raster } from '../src/band/raster';
import { screenSurface } from '../src/band/surface';
import { fit, panBy, type View, zoomAbout } from '../src/band/view';
import { px } from '../src/engine/units';
import { large } from './bands';

const margin = { left: 46, right: 46, top: 22, bottom: 22 };

function spread(times: number[]) {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => Number((sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(2));
  return { median: at(0.5), p95: at(0.95) };
}

/** `bead`: how large a bead is, in pixels along the edge; 0 the whole band in the window. */
export function measure(width: number, height: number, density: number, bead: number) {
  const { lattice, beads, legend } = large();
  const frame = { width: px(width), height: px(height), margin };
  const whole = fit(lattice, frame);
  const by = bead === 0 ? 1 : bead / lattice.edgeMm / whole.scale;
  const view: View = zoomAbout(whole, { x: width / 2, y: height / 2 }, by, lattice, frame);
  const { canvas, pen } = screenSurface(width * density, height * density);
  const scene = { lattice, beads, legend, letters: false, outline: '#888', font: 'Lato' };
  const options = { budget: 1e9, now: () => performance.now(), moving: false };
  const timed = (what: () => void): number => {
    const start = performance.now();
    what();
    pen.getImageData(0, 0, 1, 1);
    return performance.now() - start;
  };
  const full: number[] = [];
  const slices: number[] = [];
  let painter = new BandPainter(screenSurface);
  for (let i = 0; i < 15; ++i) {
    painter.dispose();
    painter = new BandPainter(screenSurface);
    full.push(
      timed(() => {
        painter.update(scene);
        while (painter.unfinished(view, frame, density)) painter.work(view, frame, density, options);
        painter.compose(pen, view, frame, density);
      }),
    );
  }
  const sliced = new BandPainter(screenSurface);
  sliced.update(scene);
  while (sliced.unfinished(view, frame, density))
    slices.push(
      timed(() => {
        sliced.work(view, frame, density, { ...options, budget: 7 });
        sliced.compose(pen, view, frame, density);
      }),
    );
  const one: number[] = [];
  for (let i = 0; i < 60; ++i)
    one.push(
      timed(() => {
        const index = (i * 7919) % beads.length;
        beads[index] = ((beads[index] ?? 0) + 1) % legend.length;
        painter.update(scene);
        painter.compose(pen, view, frame, density);
      }),
    );
  const pans: number[] = [];
  let now = view;
  for (let i = 0; i < 120; ++i)
    pans.push(
      timed(() => {
        now = panBy(now, i % 40 < 20 ? -9 : 9, i % 60 < 30 ? -13 : 13, lattice, frame);
        if (painter.unfinished(now, frame, density))
          painter.work(now, frame, density, { ...options, budget: 7 });
        painter.compose(pen, now, frame, density);
      }),
    );
  const zooms: number[] = [];
  for (let i = 0; i < 40; ++i)
    zooms.push(
      timed(() => {
        now = zoomAbout(now, { x: width / 2, y: height / 2 }, i % 20 < 10 ? 1.04 : 1 / 1.04, lattice, frame);
        painter.compose(pen, now, frame, density);
      }),
    );
  const raster = new Raster(lattice, view.scale * density);
  painter.dispose();
  sliced.dispose();
  return {
    window: `${width}x${height} @${density}`,
    beadPx: Number((raster.beadSize / density).toFixed(1)),
    canvas: canvas.width * canvas.height,
    full: spread(full),
    slice: { ...spread(slices), count: slices.length },
    oneBead: spread(one),
    panFrame: spread(pans),
    zoomFrame: spread(zooms),
  };
}

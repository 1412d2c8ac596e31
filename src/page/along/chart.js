// The chart on a canvas: only what is seen is painted, so that a large panel is no slower than a narrow band.

const smallestColumn = 4,
  largestColumn = 64; // pixels
const usualBead = 26; // pixels; no larger at first, however much room there is
const chartMargin = 1.6; // pitches on every side, for numbers and arrows

/** Places and beads of all rows as flat arrays. */
const chartCells = (band, rows, runsOfRow) => {
  const total = rows.reduce((sum, row) => sum + row.places.length / 2, 0);
  const cells = {
    x: new Int32Array(total),
    y: new Int32Array(total),
    bead: new Int16Array(total),
    firstOfRow: [],
  };
  let next = 0;
  rows.forEach((row, index) => {
    cells.firstOfRow.push(next);
    let inRow = 0;
    for (const run of runsOfRow[index])
      for (let i = 0; i < run.count; i++, inRow++, next++) {
        cells.x[next] = row.places[2 * inRow];
        cells.y[next] = row.places[2 * inRow + 1];
        cells.bead[next] = run.bead;
      }
  });
  cells.firstOfRow.push(next);
  return cells;
};

const chartOf = (design, words) => {
  const room = document.getElementById('chart-room');
  const size = document.getElementById('chart-size');
  const canvas = document.getElementById('chart');
  const pen = canvas.getContext('2d');
  let band = null,
    rows = [],
    cells = null;
  let work = { row: 0, ticked: 0 };
  let column = 0; // pixels; 0 until it is fitted
  let waiting = 0;

  const looks = new Map(); // read once a painting: asking for each bead takes longer than painting it
  const look = (name) => {
    if (!looks.has(name))
      looks.set(name, getComputedStyle(document.documentElement).getPropertyValue(name).trim());
    return looks.get(name);
  };
  const step = () => column * band.shape.ratio;
  const left = (i) => (chartMargin + band.shape.origin + cells.x[i] / 2) * column;
  const top = (i) => chartMargin * column + (band.shape.origin + cells.y[i] / 2) * step();
  const sides = (i) => band.shape.sides[Math.abs(cells.y[i]) % 2];
  const isDark = (colour) => {
    const [red, green, blue] = [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16));
    return 0.299 * red + 0.587 * green + 0.114 * blue < 140; // ITU-R BT.601 luma; 140 by eye
  };

  const paintBead = (i, state) => {
    const [wide, high] = sides(i);
    const width = wide * column,
      height = high * step();
    const x = left(i) - width / 2,
      y = top(i) - height / 2;
    const entry = design.legend[cells.bead[i]];
    const gap = Math.min(1, column / 20);
    pen.globalAlpha = state === 'done' ? 0.28 : 1;
    pen.fillStyle = entry.colour;
    pen.beginPath();
    pen.roundRect(x + gap / 2, y + gap / 2, width - gap, height - gap, 0.16 * Math.min(width, height));
    pen.fill();
    pen.lineWidth = 1;
    pen.strokeStyle = look('--bead-edge');
    pen.stroke();
    pen.globalAlpha = 1;
    if (Math.min(width, height) >= 17 && state !== 'done') {
      pen.fillStyle = isDark(entry.colour) ? '#fff' : '#000';
      pen.font = `${Math.round(0.5 * Math.min(width, height))}px system-ui, sans-serif`;
      pen.textAlign = 'center';
      pen.textBaseline = 'middle';
      pen.fillText(entry.letter, x + width / 2, y + height / 2, width - 2);
    }
  };

  /** A double outline, dark and light, that stands out from every colour; a ticked bead has a stroke through it. */
  const outlineBead = (i, ticked) => {
    const [wide, high] = sides(i);
    const width = wide * column,
      height = high * step();
    const x = left(i) - width / 2,
      y = top(i) - height / 2;
    const thick = Math.min(4, Math.max(1.2, Math.min(width, height) / 10));
    pen.lineWidth = thick;
    pen.strokeStyle = look('--lit');
    pen.strokeRect(x, y, width, height);
    pen.lineWidth = Math.max(1, thick / 2);
    pen.strokeStyle = look('--lit-edge');
    pen.strokeRect(x + 0.75 * thick, y + 0.75 * thick, width - 1.5 * thick, height - 1.5 * thick);
    if (!ticked) return;
    pen.beginPath();
    pen.moveTo(x + 0.25 * width, y + 0.75 * height);
    pen.lineTo(x + 0.75 * width, y + 0.25 * height);
    for (const [ink, weight] of [
      ['--lit-edge', 2 * thick],
      ['--lit', thick],
    ]) {
      pen.strokeStyle = look(ink);
      pen.lineWidth = weight;
      pen.stroke();
    }
  };

  /** A row's number where it begins, and for the row in work an arrow. */
  const paintStart = (index, lit) => {
    if (!lit && column < 14) return;
    const first = cells.firstOfRow[index],
      end = cells.firstOfRow[index + 1];
    if (first === end) return;
    const [dx, dy] = { left: [1, 0], right: [-1, 0], down: [0, -1], up: [0, 1] }[rows[index].travel];
    const span = (at) => {
      let low = at(first),
        high = low;
      for (let i = first + 1; i < end; i++) [low, high] = [Math.min(low, at(i)), Math.max(high, at(i))];
      return { low, high, middle: (low + high) / 2 };
    };
    const across = span(left),
      along = span(top);
    const x = dx === 0 ? across.middle : (dx > 0 ? across.high : across.low) + dx * 1.1 * column;
    const y = dy === 0 ? along.middle : (dy > 0 ? along.high : along.low) + dy * 1.1 * step();
    pen.fillStyle = look(lit ? '--lit' : '--ink-quiet');
    if (lit) {
      const reach = Math.max(5, 0.34 * column);
      pen.beginPath();
      pen.moveTo(x - dx * reach, y - dy * reach);
      pen.lineTo(x + dx * reach + dy * reach, y + dy * reach + dx * reach);
      pen.lineTo(x + dx * reach - dy * reach, y + dy * reach - dx * reach);
      pen.fill();
      return;
    }
    pen.font = `${Math.min(12, Math.round(0.5 * column))}px system-ui, sans-serif`;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText(String(rows[index].last), x, y);
  };

  const paint = () => {
    waiting = 0;
    looks.clear();
    if (!band || room.clientWidth === 0) return;
    const dots = window.devicePixelRatio || 1;
    const width = room.clientWidth,
      height = room.clientHeight;
    canvas.width = Math.round(width * dots);
    canvas.height = Math.round(height * dots);
    canvas.style.width = `${width}px`;
    canvas.style.height = `${height}px`;
    pen.setTransform(dots, 0, 0, dots, inset() - room.scrollLeft * dots, -room.scrollTop * dots);
    const [first, end] = [
      cells.firstOfRow[work.row] ?? cells.x.length,
      cells.firstOfRow[work.row + 1] ?? cells.x.length,
    ];
    const low = room.scrollTop - step() - 2,
      high = room.scrollTop + height + step() + 2;
    for (let i = 0; i < cells.x.length; i++)
      if (top(i) > low && top(i) < high) paintBead(i, i < first ? 'done' : 'open');
    for (let i = first; i < end; i++) outlineBead(i, i - first < work.ticked);
    rows.forEach((row, index) => {
      const y = top(cells.firstOfRow[index]);
      if (y > low && y < high) paintStart(index, index === work.row);
    });
  };
  const repaint = () => {
    if (!waiting) waiting = requestAnimationFrame(paint);
  };

  const fullWidth = () => (band.shape.width + 2 * chartMargin) * column;
  /** A narrow chart stands in the middle of its room. In device pixels. */
  const inset = () => Math.max(0, (room.clientWidth - fullWidth()) / 2) * (window.devicePixelRatio || 1);
  const fitting = () => room.clientWidth / (band.shape.width + 2 * chartMargin);

  const setColumn = (pixels) => {
    column = Math.min(largestColumn, Math.max(smallestColumn, pixels));
    size.style.width = `${fullWidth()}px`;
    size.style.height = `${band.shape.height * step() + 2 * chartMargin * column}px`;
    repaint();
  };

  /** Brings the row in work to the middle of the room. */
  const findRow = () => {
    const first = cells.firstOfRow[work.row],
      end = cells.firstOfRow[work.row + 1];
    if (end === undefined || first === end || !column) return;
    const middle = (at) => (at(first) + at(end - 1)) / 2;
    room.scrollTop = middle(top) - room.clientHeight / 2;
    room.scrollLeft = middle(left) - room.clientWidth / 2;
    repaint();
  };

  const fit = () => {
    if (!band || !room.clientWidth) return;
    const [wide, high] = band.shape.sides[0];
    const usual = usualBead / Math.sqrt(wide * high);
    setColumn(Math.min(usual, Math.max(9, fitting())));
  };

  room.addEventListener('scroll', repaint, { passive: true });
  new ResizeObserver(() => (column ? repaint() : fit())).observe(room);
  window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', repaint);

  return {
    show: (newBand, newRows, runsOfRow) => {
      band = newBand;
      rows = newRows;
      cells = chartCells(band, rows, runsOfRow);
      column = 0;
      fit();
    },
    /** The row in work and how many of its beads are ticked. */
    light: (row, ticked) => {
      const moved = row !== work.row;
      work = { row, ticked };
      canvas.setAttribute(
        'aria-label',
        row < rows.length
          ? words.say('chart_at', { band: band.name, row: words.rowName(rows[row]) })
          : words.say('chart_done', { band: band.name }),
      );
      if (moved) findRow();
      repaint();
    },
    findRow,
    zoom: (factor) => {
      setColumn(column * factor);
      findRow();
    },
    wholeWidth: () => setColumn(fitting()),
    /** Called when the chart comes into sight. */
    appear: () => {
      if (!column) fit();
      findRow();
    },
  };
};

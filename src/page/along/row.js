// The row in work: its beads as runs to tick off, and what comes next.

const element = (tag, className, ...children) => {
  const made = document.createElement(tag);
  if (className) made.className = className;
  made.append(...children);
  return made;
};

/** A name of the design's, kept from turning what stands beside it. */
const isolated = (text, className) => element('bdi', className, text);

/** A bead's colour. What it is stands beside it in words. */
const swatchOf = (bead) => {
  const swatch = element('span', `swatch bead-${bead}`);
  swatch.setAttribute('aria-hidden', 'true');
  return swatch;
};

const rowPanelOf = (design, words, onTick) => {
  const { texts, say } = words;
  const at = (id) => document.getElementById(id);
  const list = at('runs');
  let runs = [],
    ticks = [],
    parts = [];

  const most = (run) => (run.leftOut ? 1 : run.count);
  const ticked = (index) => Math.min(ticks[index] ?? 0, most(runs[index]));
  const sumTicked = () => runs.reduce((sum, run, index) => sum + (run.leftOut ? 0 : ticked(index)), 0);

  const setTicks = (index, count) => {
    ticks = runs.map((_, i) => (i === index ? count : ticked(i)));
    refresh();
    onTick(ticks, sumTicked());
  };

  const button = (className, label, onClick, ...children) => {
    const made = element('button', className, ...children);
    made.type = 'button';
    if (label) made.setAttribute('aria-label', label);
    made.addEventListener('click', onClick);
    return made;
  };

  const wholeRun = (run, index) => {
    const toggle = () => setTicks(index, ticked(index) === most(run) ? 0 : most(run));
    if (run.leftOut)
      return button(
        'run',
        null,
        toggle,
        element('b', '', texts.left_out_short),
        ' ',
        element('span', 'name', texts.left_out),
      );
    return button(
      'run',
      null, // its name is what stands in it, so that what is seen can be spoken to it
      toggle,
      element('b', 'count', String(run.count)),
      ' ',
      swatchOf(run.bead),
      element('b', 'letter', run.letter),
      ' ',
      isolated(design.legend[run.bead].name, 'name'),
    );
  };

  /** A tick stands at a bead's place in the run: ticking the third ticks the first two as well. */
  const singleBead = (run, index, number) =>
    button(
      'single',
      say('bead_of_run', {
        number,
        count: run.count,
        letter: run.letter,
        name: design.legend[run.bead].name,
      }),
      () => setTicks(index, ticked(index) >= number ? number - 1 : number),
      swatchOf(run.bead),
      element('span', 'letter', run.letter),
    );

  const partsOf = (run, index, each) => {
    const item = element('li', run.newUnit ? 'new-unit' : '');
    const whole = wholeRun(run, index);
    const singles =
      each && !run.leftOut && run.count > 1
        ? Array.from({ length: run.count }, (_, i) => singleBead(run, index, i + 1))
        : [];
    item.append(whole, ...singles);
    return { item, whole, singles };
  };

  const refresh = () => {
    const now = runs.findIndex((run, index) => ticked(index) < most(run));
    parts.forEach(({ item, whole, singles }, index) => {
      const done = ticked(index) === most(runs[index]);
      whole.setAttribute('aria-pressed', String(done));
      singles.forEach((single, i) => single.setAttribute('aria-pressed', String(i < ticked(index))));
      item.classList.toggle('done', done);
      if (index === now) item.setAttribute('aria-current', 'step');
      else item.removeAttribute('aria-current');
    });
    const beads = runs.reduce((sum, run) => sum + run.count, 0);
    at('counter').textContent = runs.length ? say('counter', { ticked: sumTicked(), beads }) : '';
  };

  const remark = (id, text) => {
    at(id).textContent = text;
    at(id).hidden = !text;
  };

  const showNext = (row, nextRuns) => {
    const place = at('next-row');
    place.replaceChildren();
    if (!row) {
      place.textContent = texts.nothing_next;
      return;
    }
    place.append(element('b', '', words.rowName(row)), ` ${words.wayOf(row)}: `);
    for (const run of nextRuns) {
      const shown = run.leftOut
        ? [texts.left_out_short]
        : [String(run.count), swatchOf(run.bead), run.letter];
      place.append(element('span', 'next-run', ...shown), ' ');
    }
  };

  return {
    /** Shows a row of a band; none when all are done. */
    show: ({ row, rowRuns, nextRow, nextRuns, keptTicks, each, before, after, closing, place, progress }) => {
      runs = rowRuns;
      ticks = keptTicks;
      parts = runs.map((run, index) => partsOf(run, index, each));
      list.replaceChildren(...parts.map((part) => part.item));
      at('row-name').textContent = row ? words.rowName(row) : texts.all_done;
      at('row-way').textContent = row ? words.wayOf(row) : closing;
      at('row-way').dataset.travel = row ? row.travel : '';
      remark('row-before', before);
      remark('row-after', after);
      at('next').hidden = !row;
      if (row) showNext(nextRow, nextRuns);
      at('place').textContent = place;
      at('progress').value = progress;
      refresh();
    },
    ticked: sumTicked,
  };
};

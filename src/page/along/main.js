// The page put together: which band, which hand, which row, and the ways to move on.

const design = JSON.parse(document.getElementById('design').textContent);
const words = wordsOf(design);
const keeping = keepingOf(design);
const chart = chartOf(design, words);
const wakefulness = wakefulnessOf();
const voice = voiceOf(words.texts.language);
const at = (id) => document.getElementById(id);
const views = ['work', 'words', 'steps', 'supplies'];

const choices = {
  band: 0,
  hand: 'right',
  view: 'work',
  each: false,
  always: false,
  copies: {},
  ...keeping.choices(),
};
let work = { row: 0, ticks: [] };
let rows = [],
  runsOfRow = [],
  lines = [];

const band = () => design.bands[choices.band];
const hasLeft = () => 'left' in band().hands;
const hand = () => (choices.hand === 'left' && hasLeft() ? 'left' : 'right');
const handOfBand = () => band().hands[hand()];
const copy = () => Math.min(choices.copies[band().key] ?? 0, band().copies - 1);
const keepChoices = () => keeping.keepChoices(choices);

const panel = rowPanelOf(design, words, (ticks, ticked) => {
  work.ticks = ticks;
  chart.light(work.row, ticked);
  keepWork();
});

const keepWork = () => {
  keeping.keepWork(choices.band, hand(), copy(), work);
  at('not-kept').hidden = keeping.works();
};

const closingWords = () => {
  const closing = handOfBand().closing;
  return closing ? `${closing} ${words.texts.all_done_way}` : words.texts.all_done_open;
};

const spoken = () =>
  work.row < rows.length
    ? words.rowInWords(rows[work.row], runsOfRow[work.row])
    : `${words.texts.all_done}. ${closingWords()}`;

const beforeRow = (row) =>
  row?.thread ? words.say(row === rows[0] ? 'thread_first' : 'thread_new', { length: row.thread }) : '';

const markLines = () => {
  lines.forEach((line, index) => {
    line.classList.toggle('done', index < work.row);
    if (index === work.row) line.setAttribute('aria-current', 'step');
    else line.removeAttribute('aria-current');
  });
};

const showRow = () => {
  const last = work.row === rows.length - 1;
  panel.show({
    row: rows[work.row],
    rowRuns: runsOfRow[work.row] ?? [],
    nextRow: rows[work.row + 1],
    nextRuns: runsOfRow[work.row + 1] ?? [],
    keptTicks: work.ticks,
    each: choices.each,
    before: beforeRow(rows[work.row]),
    after: last ? handOfBand().closing : '',
    closing: closingWords(),
    place: words.say('place', {
      rows: work.row ? rows[work.row - 1].last : 0,
      all: rows[rows.length - 1].last,
    }),
    progress: work.row / rows.length,
  });
  chart.light(work.row, panel.ticked());
  markLines();
  at('back').disabled = work.row === 0;
  at('on').disabled = work.row === rows.length;
};

const goTo = (row) => {
  if (row < 0 || row > rows.length || row === work.row) return;
  work = { row, ticks: [] };
  keepWork();
  showRow();
  at('said').textContent = spoken();
  if (choices.always && !voice.say(spoken())) at('remark').textContent = words.texts.speech_never;
};

/** The word chart in the page is what is followed: its lines are taken apart, nothing is written a second time. */
const openBand = () => {
  document.querySelectorAll('article.band').forEach((article) => {
    const chosen = Number(article.dataset.band) === choices.band;
    article.hidden = !chosen;
    if (!chosen) return;
    article.querySelectorAll('.words').forEach((part) => (part.hidden = part.dataset.hand !== hand()));
    lines = [...article.querySelectorAll(`.words[data-hand="${hand()}"] li`)];
  });
  document.querySelectorAll('figure').forEach((figure) => {
    const bands = figure.dataset.bands.split(' ').map(Number);
    figure.hidden = figure.dataset.hand !== hand() || !bands.includes(choices.band);
    figure.querySelector('.with').hidden = Number(figure.dataset.with) === choices.band;
  });
  rows = handOfBand().rows;
  runsOfRow = lines.map((line) => words.runsIn(line.querySelector('.beads').textContent));
  work = keeping.work(choices.band, hand(), copy(), rows.length);
  at('band').value = String(choices.band);
  at('hand').value = choices.hand;
  at('no-left').hidden = choices.hand !== 'left' || hasLeft();
  at('left-help').hidden = hand() !== 'left';
  at('copy-choice').hidden = band().copies === 1;
  const copies = Array.from(
    { length: band().copies },
    (_, i) => new Option(words.say('copy_of', { number: i + 1, copies: band().copies }), String(i)),
  );
  at('copy').replaceChildren(...copies);
  at('copy').value = String(copy());
  chart.show(band(), rows, runsOfRow);
  showRow();
};

const showView = (view) => {
  choices.view = views.includes(view) ? view : 'work';
  for (const name of views) at(name).classList.toggle('away', name !== choices.view);
  document.querySelectorAll('nav button').forEach((button) => {
    if (button.dataset.view === choices.view) button.setAttribute('aria-current', 'page');
    else button.removeAttribute('aria-current');
  });
  if (choices.view === 'work') chart.appear();
};

const choose = (change) => {
  Object.assign(choices, change);
  keepChoices();
  openBand();
};

const wireChoices = () => {
  at('band').replaceChildren(...design.bands.map((each, index) => new Option(each.name, String(index))));
  at('band').addEventListener('change', () => choose({ band: Number(at('band').value) }));
  at('hand').addEventListener('change', () => choose({ hand: at('hand').value }));
  at('copy').addEventListener('change', () =>
    choose({ copies: { ...choices.copies, [band().key]: Number(at('copy').value) } }),
  );
  document.querySelectorAll('nav button').forEach((button) =>
    button.addEventListener('click', () => {
      showView(button.dataset.view);
      keepChoices();
      window.scrollTo(0, 0);
    }),
  );
  at('words').addEventListener('click', (event) => {
    const line = event.target.closest('li');
    if (!event.target.closest('.label') || !lines.includes(line)) return;
    goTo(lines.indexOf(line));
    showView('work');
    keepChoices();
    window.scrollTo(0, 0);
    at('row-name').focus();
  });
};

const wireSwitches = () => {
  const remark = (name) => (at('remark').textContent = words.texts[name]);
  const press = (id, on) => at(id).setAttribute('aria-pressed', String(on));
  press('each', choices.each);
  press('always-speak', choices.always);
  at('each').addEventListener('click', () => {
    choices.each = !choices.each;
    press('each', choices.each);
    keepChoices();
    showRow();
  });
  at('speak').addEventListener('click', () => {
    if (!voice.say(spoken())) remark('speech_never');
  });
  at('always-speak').addEventListener('click', () => {
    choices.always = !choices.always;
    press('always-speak', choices.always);
    keepChoices();
    if (!choices.always) voice.stop();
    else if (!voice.say(spoken())) remark('speech_never');
  });
  at('awake').addEventListener('click', async () => {
    const wanted = at('awake').getAttribute('aria-pressed') !== 'true';
    const awake = await wakefulness.set(wanted);
    press('awake', awake);
    remark(awake ? 'awake_on' : wanted ? 'awake_never' : 'awake_off');
  });
  at('again').addEventListener('click', () => {
    if (!window.confirm(words.texts.begin_again_sure)) return;
    work = { row: 0, ticks: [] };
    keepWork();
    showRow();
  });
  at('smaller').addEventListener('click', () => chart.zoom(1 / 1.25));
  at('larger').addEventListener('click', () => chart.zoom(1.25));
  at('whole').addEventListener('click', chart.wholeWidth);
  at('find-row').addEventListener('click', chart.findRow);
};

const wireMoves = () => {
  at('back').addEventListener('click', () => goTo(work.row - 1));
  at('on').addEventListener('click', () => goTo(work.row + 1));
  document.addEventListener('keydown', (event) => {
    if (choices.view !== 'work' || event.ctrlKey || event.altKey || event.metaKey || event.isComposing)
      return;
    const target = event.target instanceof Element ? event.target : document.body;
    if (target.closest('select, input, textarea, #chart-room')) return; // they have uses of their own for these keys
    const space = event.key === ' ' && !target.closest('button');
    const on = event.key === 'ArrowRight' || (space && !event.shiftKey);
    const back = event.key === 'ArrowLeft' || (space && event.shiftKey);
    if (!on && !back) return;
    event.preventDefault();
    goTo(work.row + (on ? 1 : -1));
  });
  let from = null;
  const sheet = at('row-sheet');
  sheet.addEventListener('pointerdown', (event) => {
    from = event.isPrimary && event.pointerType === 'touch' ? { x: event.clientX, y: event.clientY } : null;
  });
  sheet.addEventListener('pointercancel', () => (from = null));
  sheet.addEventListener('pointerup', (event) => {
    if (!from) return;
    const [across, down] = [event.clientX - from.x, event.clientY - from.y];
    from = null;
    const leastWipe = 56; // pixels; by feel
    if (Math.abs(across) < leastWipe || Math.abs(across) < 2 * Math.abs(down)) return;
    goTo(work.row + (across < 0 ? 1 : -1));
  });
};

const begin = () => {
  if (!Number.isInteger(choices.band) || !design.bands[choices.band]) choices.band = 0;
  if (typeof choices.copies !== 'object' || choices.copies === null) choices.copies = {};
  document.body.classList.remove('plain');
  document.querySelectorAll('.choices, nav, #work, .bar').forEach((part) => (part.hidden = false));
  wireChoices();
  wireSwitches();
  wireMoves();
  openBand();
  showView(choices.view);
  keepChoices(); // and so learn whether anything is kept here
  at('not-kept').hidden = keeping.works();
};
begin();

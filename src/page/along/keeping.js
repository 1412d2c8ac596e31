// What is remembered from one visit to the next. Keys carry the design's own fingerprint, so that a changed design begins afresh.

const keepingOf = (design) => {
  const memory = new Map();
  let works = true;
  const storage = () => {
    try {
      return window.localStorage;
    } catch {
      return null; // forbidden to this page
    }
  };

  const read = (key) => {
    if (memory.has(key)) return memory.get(key);
    try {
      return JSON.parse(storage()?.getItem(key) ?? 'null');
    } catch {
      return null; // not ours, or damaged
    }
  };

  const write = (key, value) => {
    memory.set(key, value);
    try {
      const place = storage();
      if (!place) throw new Error('none');
      place.setItem(key, JSON.stringify(value));
    } catch {
      works = false; // full or forbidden: it is kept until the page is closed
    }
  };

  const designKey = `evencount.along.${design.key}`;
  const workKey = (band, hand, copy) => `${designKey}.${design.bands[band].key}.${hand}.${copy}`;
  const whole = (value, most) => (Number.isInteger(value) && value >= 0 && value <= most ? value : 0);

  return {
    works: () => works,
    /** What is chosen: band, copy, hand, view, switches. */
    choices: () => read(designKey) ?? {},
    keepChoices: (choices) => write(designKey, choices),
    /** How far a band has come: rows done, and of the row in work how many beads of each run are ticked. */
    work: (band, hand, copy, rows) => {
      const kept = read(workKey(band, hand, copy)) ?? {};
      const ticks = Array.isArray(kept.ticks)
        ? kept.ticks.map((count) => whole(count, Number.MAX_SAFE_INTEGER))
        : [];
      return { row: whole(kept.row, rows), ticks };
    },
    keepWork: (band, hand, copy, work) => write(workKey(band, hand, copy), work),
  };
};

// Rows in words: what the word chart says, taken apart, and said again. Nothing here touches the page.

/** @typedef {{count: number, bead: number, letter: string, leftOut: boolean, newUnit: boolean}} Run */

const wordsOf = (design) => {
  const texts = design.texts;
  const beadOfLetter = new Map(design.legend.map((entry, bead) => [entry.letter, bead]));
  const counts = texts.counts.split(' ');

  /** A text of the catalogue with its {names} filled in. */
  const say = (name, values = {}) =>
    texts[name].replace(/\{(\w+)\}/g, (whole, key) => (key in values ? values[key] : whole));

  const runPattern = new RegExp(`(^|[,;])\\s*(?:\\((\\d+)\\)([A-Z]+)|${texts.left_out_short})`, 'g');

  /** "(2)A, (1)B; dec" as runs. @returns {Run[]} */
  const runsIn = (text) => {
    const runs = [];
    for (const [, before, count, letter] of text.matchAll(runPattern)) {
      const leftOut = count === undefined;
      runs.push({
        count: leftOut ? 0 : Number(count),
        bead: leftOut ? -1 : beadOfLetter.get(letter),
        letter: leftOut ? '' : letter,
        leftOut,
        newUnit: before === ';',
      });
    }
    return runs;
  };

  const rowName = (row) =>
    say(row.first === row.last ? row.kind : `${row.kind}s`, { first: row.first, last: row.last });

  const wayOf = (row) => {
    const ways = { left: 'to_the_left', right: 'to_the_right', down: 'downwards', up: 'upwards' };
    const parts = [texts[ways[row.travel]]];
    if (row.begins) parts.push(texts[`begins_${row.begins}`]);
    if (row.ends) parts.push(texts[`ends_${row.ends}`]);
    if (row.back) parts.push(texts.on_the_back);
    return parts.join(texts.way_comma);
  };

  const countInWords = (count) => counts[count] ?? String(count);

  const runInWords = (run, count = countInWords(run.count)) =>
    run.leftOut
      ? texts.left_out
      : say('run', { count, letter: run.letter, name: design.legend[run.bead].name });

  /** "Row 12, to the right: two A night blue, one B moon ivory." */
  const rowInWords = (row, runs) =>
    say('spoken_row', {
      row: rowName(row),
      way: wayOf(row),
      runs: runs.map((run) => (run.newUnit ? texts.unit + texts.way_comma : '') + runInWords(run)).join(texts.way_comma),
    });

  return { texts, say, runsIn, rowName, wayOf, runInWords, rowInWords };
};

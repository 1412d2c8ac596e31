// Reads what print_colour_pairs prints and compares every number with two independent libraries.
import { readFileSync } from 'node:fs';
import { converter, differenceCiede2000 } from 'culori';
import Color from 'colorjs.io';

const lab65 = converter('lab65');
const lab50 = converter('lab');
const oklab = converter('oklab');
const culoriDifference = differenceCiede2000();

// The most a quantity may differ. Where that is more than rounding, the libraries differ from one another as much:
const limits = {
  'Lab D65, culori': 1e-12,
  'Lab D65, colorjs.io': 1e-12,
  'Lab D50, culori': 1e-4, // an older edition of CSS's adaptation matrix, 3e-8 off
  'Lab D50, colorjs.io': 1e-12,
  'OKLab, culori': 1e-12,
  'OKLab, colorjs.io': 1e-12,
  'CIEDE2000 (D65), culori': 1e-9,
  'CIEDE2000 (D50), colorjs.io': 1e-5, // its greys keep a trace of a hue
  'contrast, colorjs.io': 2e-3, // takes luminance from XYZ, where WCAG rounds its coefficients to 4 figures
};
const worst = Object.fromEntries(Object.keys(limits).map((quantity) => [quantity, { off: 0, at: '' }]));

function compare(quantity, ours, theirs, line) {
  const off = Math.max(...ours.map((value, i) => Math.abs(value - theirs[i])));
  if (off > worst[quantity].off || Number.isNaN(off)) worst[quantity] = { off, at: line };
}

const lines = readFileSync(0, 'utf8').trim().split('\n');
for (const line of lines) {
  const n = line.split(' ').map(Number);
  const [a, b] = [n.slice(0, 3), n.slice(3, 6)].map((rgb) => rgb.map((v) => v / 255));
  const [ca, cb] = [a, b].map(([r, g, b]) => ({ mode: 'rgb', r, g, b }));
  const [ja, jb] = [a, b].map((rgb) => new Color('srgb', rgb));
  const fields = ({ l, a, b }) => [l, a, b];

  compare('Lab D65, culori', n.slice(6, 9), fields(lab65(ca)), line);
  compare('Lab D65, colorjs.io', n.slice(6, 9), ja.to('lab-d65').coords, line);
  compare('Lab D50, culori', n.slice(9, 12), fields(lab50(ca)), line);
  compare('Lab D50, colorjs.io', n.slice(9, 12), ja.to('lab').coords, line);
  compare('OKLab, culori', n.slice(12, 15), fields(oklab(ca)), line);
  compare('OKLab, colorjs.io', n.slice(12, 15), ja.to('oklab').coords, line);
  compare('CIEDE2000 (D65), culori', [n[15]], [culoriDifference(ca, cb)], line);
  compare('CIEDE2000 (D50), colorjs.io', [n[16]], [ja.deltaE2000(jb)], line);
  compare('contrast, colorjs.io', [n[17]], [ja.contrastWCAG21(jb)], line);
}

let bad = lines.length === 10000 ? 0 : 1;
console.log(`${lines.length} pairs, largest differences:`);
for (const [quantity, limit] of Object.entries(limits)) {
  const { off, at } = worst[quantity];
  const within = off <= limit;
  if (!within) bad = 1;
  console.log(`  ${quantity}: ${off.toExponential(2)} (at most ${limit})${within ? '' : `  TOO FAR at ${at}`}`);
}
process.exit(bad);

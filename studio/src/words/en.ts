/** Every text of the page, in English. The other catalogues have the same keys. `{name}` stands for what is put in. */
export const en = {
  'band.back': 'back',
  'band.cell': 'column {column}, step {step}, {name}',
  'band.compare': 'Hold to see it before',
  'band.edge': 'edge',
  'band.empty': 'no bead',
  'band.fit': 'See the whole band',
  'band.front': 'front',
  'band.fromHere': 'from here',
  'band.keys':
    'Arrow keys walk from bead to bead. Enter or the space bar works with the tool in hand; what takes two places takes two presses. Letters choose a colour. Shift with arrows selects, Escape lets go. Plus and minus change the size, 0 shows the whole band.',
  'band.larger': 'Larger',
  'band.name': 'The band, unrolled',
  'band.overview': 'Part of the band that is seen',
  'band.row': 'row {row}',
  'band.seam': 'seam',
  'band.selected': 'selected: {columns} by {steps} from column {column}, step {step}',
  'band.selectedNothing': 'nothing selected',
  'band.smaller': 'Smaller',
  'band.summary': 'Band of {columns} columns and {edge} beads along the edge.',
  'band.summaryColours': 'Colours: {colours}.',
  'band.summaryFace': 'The {side} is steps {first} to {last}.',
  'band.summaryRows': '{rows} rows.',
  'band.summarySeam': 'Zipped before step 0.',
  'band.tapered': 'tapered edge',
  'band.unknown': 'unknown colour',
  'studio.title': 'Evencount',
} as const;

export type WordKey = keyof typeof en;
export type Catalogue = Readonly<Record<WordKey, string>>;

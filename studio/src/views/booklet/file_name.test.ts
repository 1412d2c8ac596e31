import { describe, expect, it } from 'vitest';

import { fileName } from './file_name';

describe('file names', () => {
  it('keep what every system takes', () => {
    expect(fileName('Moonwatch', '.pdf')).toBe('Moonwatch.pdf');
    expect(fileName('Ärmel & Co: "50 %"', '.pdf')).toBe('Ärmel & Co 50 %.pdf');
    expect(fileName('../../etc/passwd', ' words.txt')).toBe('etc passwd words.txt');
    expect(fileName(' . ', '.svg')).toBe('project.svg');
    expect(fileName('a'.repeat(500), '.pdf')).toHaveLength(84);
  });
});

/** How a drawing follows its band into another size. */
export const carries = ['centre', 'repeat', 'resample'] as const;
export type Carry = (typeof carries)[number];

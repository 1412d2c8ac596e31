/** Numbers that can't be mistaken for one another. */
declare const unit: unique symbol;
export type Mm = number & { readonly [unit]: 'mm' };
export type Px = number & { readonly [unit]: 'px' };

export const mm = (value: number): Mm => value as Mm;
export const px = (value: number): Px => value as Px;

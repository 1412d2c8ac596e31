/** "#rrggbb" or "#rgb" as three bytes; anything else is a middle grey. */
export function bytesOf(colour: string): [number, number, number] {
  const digits = /^#(?:[0-9a-f]{3}){1,2}$/i.test(colour.trim()) ? colour.trim().slice(1) : '808080';
  const long = digits.length === 3 ? digits.replace(/./g, '$&$&') : digits;
  const whole = parseInt(long, 16);
  return [whole >> 16, (whole >> 8) & 255, whole & 255];
}

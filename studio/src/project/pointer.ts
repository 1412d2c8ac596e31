/** JSON pointers (RFC 6901) into plain values; nothing is changed in place. */

const stepsOf = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'));

function put(value: unknown, steps: readonly string[], after: unknown): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return after;
  if (Array.isArray(value)) {
    const list: unknown[] = [...(value as readonly unknown[])];
    list[Number(step)] = put(list[Number(step)], rest, after);
    return list;
  }
  const object = { ...(value as Readonly<Record<string, unknown>>) };
  const changed = put(object[step], rest, after);
  if (changed !== undefined) return { ...object, [step]: changed };
  return Object.fromEntries(Object.entries(object).filter(([name]) => name !== step));
}

/** The value with another one at a place; undefined takes a member away. */
export const withValueAt = <T>(value: T, pointer: string, after: unknown): T =>
  put(value, stepsOf(pointer), after) as T;

export function valueAt(value: unknown, pointer: string): unknown {
  let at = value;
  for (const step of stepsOf(pointer)) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Readonly<Record<string, unknown>>)[step];
  }
  return at;
}

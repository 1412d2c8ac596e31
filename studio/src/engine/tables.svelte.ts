/** What the engine knows of beads, threads, forms and techniques: asked for once, it does not change while the studio runs. */
import { address, ask } from './api';
import type { Tables } from './shapes';

const none: Tables = { beads: [], threads: [], forms: [], techniques: [], finishes: [] };
let known = $state.raw<Tables>(none);
let asked: Promise<void> | undefined;

async function read(): Promise<void> {
  const tables = await ask<Tables>(address(['tables']));
  if (tables.ok) known = tables.value;
  else asked = undefined;
}

/** Empty until the answer is there. */
export function tables(): Tables {
  asked ??= read();
  return known;
}

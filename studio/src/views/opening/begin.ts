/** A project made on the server, and where to go then. */
import { address, ask } from '../../engine/api';
import { done, type Outcome } from '../../engine/outcome';
import type { Accepted } from '../../engine/shapes';
import { place } from '../../place/place.svelte';
import type { Stop } from '../../place/route';
import { operationsFor, type NewPiece } from './piece';

export function goTo(project: string, stop: Stop = 'band'): void {
  place.go({ at: 'project', project, stop, band: 0 });
}

export async function begin(
  title: string,
  piece: NewPiece,
  bandName: string,
  sentence: string,
): Promise<Outcome<string>> {
  const made = await ask<{ id: string }>('/api/projects', { method: 'POST', body: { title } });
  if (!made.ok) return made;
  const { id } = made.value;
  const filled = await ask<Accepted>(address(['projects', id, 'operations'], { revision: 0 }), {
    method: 'POST',
    body: { do: 'several', operations: operationsFor(piece, bandName), sentence },
  });
  if (filled.ok) return done(id);
  await ask(address(['projects', id]), { method: 'DELETE' });
  return filled;
}

export async function copyOf(body: { example: string } | { project: unknown }): Promise<Outcome<string>> {
  const made = await ask<{ id: string }>('/api/projects', { method: 'POST', body });
  return made.ok ? done(made.value.id) : made;
}

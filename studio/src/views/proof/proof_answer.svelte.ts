/** What the proof says of a project, asked for again when a change has come to rest. */
import { answerTo, type Answer } from '../../engine/answer.svelte';
import { address } from '../../engine/api';
import type { Proof } from '../../engine/shapes';
import type { Stop } from '../../place/route';
import type { OpenProject } from '../../project/open_project.svelte';

/** Long enough that a stroke and the next one are one question. */
const restMs = 1200;

export const proofOf = (project: () => OpenProject, pause = restMs): Answer<Proof> =>
  answerTo<Proof>({
    where: () => address(['projects', project().id, 'proof']),
    since: () => project().revision,
    pause,
  });

export const errorsOf = (proof: Proof | undefined): number =>
  (proof?.findings ?? []).filter(({ severity }) => severity === 'error').length;

/** For the path: how many errors wait at the proof. */
export const marksOf = (proof: Proof | undefined): Partial<Record<Stop, number>> => ({
  proof: errorsOf(proof),
});

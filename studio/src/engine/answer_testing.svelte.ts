/** An answer outside a component, for tests. */
import { type Answer, answerTo } from './answer.svelte';

export interface Asked {
  readonly answer: Answer<number>;
  since: number;
  end(): void;
}

export function asking(where: string, pause: number): Asked {
  let since = $state(0);
  let answer: Answer<number> | undefined;
  const end = $effect.root(() => {
    answer = answerTo<number>({ where: () => where, since: () => since, pause });
  });
  if (!answer) throw new Error('an effect that did not run');
  return {
    answer,
    get since() {
      return since;
    },
    set since(to) {
      since = to;
    },
    end,
  };
}

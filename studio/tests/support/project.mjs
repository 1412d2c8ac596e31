// A project as the server has it, asked for from the page.

const get = (page, address) => page.evaluate(async (where) => (await fetch(where)).json(), address);

export const stateOf = (page, id) => get(page, `/api/projects/${id}`);

/** Letters of a band's cells, step after step. */
export async function lettersOf(page, id, band) {
  const { project } = await stateOf(page, id);
  return project.bands[band].cells.flatMap((step) =>
    step.split(' ').flatMap((run) => {
      const [, count, letter] = /^(\d+)(.+)$/.exec(run);
      return Array(Number(count)).fill(letter);
    }),
  );
}

/** Waits until something the server says of the project is so. */
export async function until(page, id, so, what) {
  for (const end = Date.now() + 20_000; Date.now() < end;) {
    const state = await stateOf(page, id);
    if (so(state)) return state;
    await page.waitForTimeout(50);
  }
  throw new Error(`${what}: it did not come to be`);
}

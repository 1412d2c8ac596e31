// What a page shows comes a moment after what was done, on a slow machine some seconds after.

/** Looks again and again until `check` finds nothing wrong with what was seen; what it found wrong at last, otherwise. */
export async function eventually(page, look, check, patience = 20_000) {
  for (const end = Date.now() + patience; ;) {
    const seen = await look();
    try {
      check(seen);
      return seen;
    } catch (wrong) {
      if (Date.now() > end) throw wrong;
    }
    await page.waitForTimeout(50);
  }
}

/** The same, and seen twice: what is still being painted changes. */
export async function atRest(page, look, check, patience = 20_000) {
  let before;
  return eventually(
    page,
    look,
    (seen) => {
      const now = JSON.stringify(seen);
      const [settled, was] = [now === before, before];
      before = now;
      check(seen);
      if (!settled) throw new Error(`still changing: ${was ?? 'nothing'}, then ${now}`);
    },
    patience,
  );
}

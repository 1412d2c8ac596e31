// Two ways of working on a page, with the same words: a pointer, and a keyboard alone.
import { strict as assert } from 'node:assert';

const focused = (target) =>
  target.evaluateAll((found) => found.some((one) => one === document.activeElement));

/** A person with a pointer, who types into fields. */
export const pointerOn = (page) => ({
  name: 'pointer',
  press: (role, name) =>
    page
      .getByRole(role, { name, exact: typeof name === 'string' })
      .first()
      .click(),
  choose: (group, option) =>
    page.getByRole('group', { name: group, exact: true }).getByText(option, { exact: true }).first().click(),
  /** Enter ends it, unless the field is one of a form that is sent off as a whole. */
  async write(label, text, enter = true) {
    const field = page.getByLabel(label, { exact: true });
    await field.fill(text);
    if (enter) await field.press('Enter');
  },
  file: (label, path) => page.getByLabel(label, { exact: true }).setInputFiles(path),
  async slide(label, by) {
    const slider = page.getByRole('slider', { name: label });
    await slider.focus();
    for (let i = 0; i < by; i++) await page.keyboard.press('ArrowRight');
  },
});

/** A person with a keyboard alone: Tab, Enter, arrows and letters. */
export function keyboardOn(page) {
  async function reach(target, what) {
    await target.first().waitFor();
    for (let tries = 0; tries < 220; tries++) {
      if (await focused(target)) return;
      await page.keyboard.press('Tab');
    }
    assert.fail(`the Tab key doesn’t come to ${what}`);
  }
  return {
    name: 'keyboard',
    async press(role, name) {
      await reach(page.getByRole(role, { name, exact: typeof name === 'string' }), `${role} ${name}`);
      await page.keyboard.press('Enter');
    },
    async choose(group, option) {
      const radios = page.getByRole('group', { name: group, exact: true }).getByRole('radio');
      await reach(radios, `the choice ${group}`);
      const wanted = page
        .getByRole('group', { name: group, exact: true })
        .getByRole('radio', { name: option, exact: true });
      // In a group of one the choice is made by the space bar.
      if ((await radios.count()) === 1 && !(await wanted.isChecked())) await page.keyboard.press('Space');
      for (let tries = 0; tries < 20 && !(await wanted.isChecked()); tries++)
        await page.keyboard.press('ArrowRight');
      assert.ok(await wanted.isChecked(), `${group}: ${option}`);
    },
    async write(label, text, enter = true) {
      await reach(page.getByLabel(label, { exact: true }), label);
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text);
      if (enter) await page.keyboard.press('Enter');
    },
    async file(label, path) {
      const field = page.getByLabel(label, { exact: true });
      let chooser;
      page.once('filechooser', (opened) => (chooser = opened));
      // Chromium now and then lets the first press after a change of the page pass; a person presses again.
      for (let tries = 0; tries < 8 && !chooser; tries++) {
        await reach(field, label);
        await page.keyboard.press('Space');
        for (let waited = 0; waited < 2000 && !chooser; waited += 50) await page.waitForTimeout(50);
      }
      assert.ok(chooser, `${label}: no file can be chosen`);
      await chooser.setFiles(path);
    },
    async slide(label, by) {
      await reach(page.getByRole('slider', { name: label }), label);
      for (let i = 0; i < by; i++) await page.keyboard.press('ArrowRight');
    },
  };
}

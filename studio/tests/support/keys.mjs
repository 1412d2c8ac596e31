// Keys pressed from within the page, as quickly as it takes them.

/** `keys`: "a", "Enter", "Control+z"; pressed on what has the focus. `pause` milliseconds follow each Enter. */
export const pressAll = (page, keys, pause = 8) =>
  page.evaluate(
    async ([names, wait]) => {
      for (const name of names) {
        const [key, ctrlKey] = name.startsWith('Control+') ? [name.slice(8), true] : [name, false];
        for (const type of ['keydown', 'keyup'])
          document.activeElement.dispatchEvent(
            new KeyboardEvent(type, { key, ctrlKey, bubbles: true, cancelable: true }),
          );
        if (key === 'Enter') await new Promise((done) => setTimeout(done, wait));
      }
    },
    [keys, pause],
  );

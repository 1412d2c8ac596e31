// What the device may or may not offer: a screen that stays on, and a voice.

/** Keeps the screen on. Browsers let go of it whenever the page is hidden, so it is asked for again. */
const wakefulnessOf = () => {
  let wanted = false,
    held = null;
  const ask = async () => {
    try {
      held = await navigator.wakeLock.request('screen');
      return true;
    } catch {
      return false; // not now: a low battery, say
    }
  };
  document.addEventListener('visibilitychange', () => {
    if (wanted && document.visibilityState === 'visible') void ask();
  });
  return {
    /** @returns {Promise<boolean>} whether the screen stays on */
    set: async (on) => {
      wanted = on && 'wakeLock' in navigator;
      if (!on) {
        await held?.release().catch(() => {});
        held = null;
        return false;
      }
      wanted = wanted && (await ask());
      return wanted;
    },
  };
};

/** Reads aloud with a voice that lives on the device; others would send the words away. */
const voiceOf = (language) => {
  const speech = window.speechSynthesis;
  const chosen = () => {
    const voices = speech.getVoices().filter((voice) => voice.localService);
    return (
      voices.find((voice) => voice.lang.toLowerCase().startsWith(language)) ??
      voices.find((voice) => voice.default) ??
      voices[0]
    );
  };
  return {
    /** @returns {boolean} whether it is said */
    say: (sentence) => {
      const voice = speech && chosen();
      if (!voice) return false;
      speech.cancel();
      const utterance = new SpeechSynthesisUtterance(sentence);
      utterance.voice = voice;
      utterance.lang = voice.lang;
      speech.speak(utterance);
      return true;
    },
    stop: () => speech?.cancel(),
  };
};

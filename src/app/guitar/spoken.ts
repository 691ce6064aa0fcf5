/** A question, said by the platform's own speech. */

const SAID: readonly [RegExp, string][] = [
  [/♭/g, ' flat '],
  [/♯/g, ' sharp '],
  [/maj7/g, ' major seventh '],
  [/ø7?/g, ' half-diminished '],
  [/°7/g, ' diminished seventh '],
  [/°/g, ' diminished '],
  [/\+/g, ' augmented '],
  [/(?<=[A-H](?: flat | sharp )?)m(?=7| |$)/g, ' minor '],
  [/7/g, ' seventh '],
];

/** As it is spoken: `Place B♭maj7` → `Place B flat major seventh`. */
export function spokenWords(question: string): string {
  const said = SAID.reduce((text, [sign, word]) => text.replace(sign, word), question);
  return said.replace(/\s+/g, ' ').trim();
}

/** Longest wait for a voice to begin, and to come to an end, ms. */
const BEGINS = 1500;
const ENDS = 10_000;

/**
 * Says something. Only a voice that is on the phone itself is used: others send away what they are to say.
 *
 * @returns when it was said, or is clear that it cannot be
 */
export function speak(words: string): Promise<void> {
  const speech = globalThis.speechSynthesis;
  const voice = speech && localVoice(speech.getVoices());
  if (!voice) return Promise.resolve();
  return new Promise((resolve) => {
    const utterance = new SpeechSynthesisUtterance(words);
    utterance.voice = voice;
    utterance.lang = voice.lang;
    let patience = setTimeout(resolve, BEGINS);
    utterance.addEventListener('start', () => {
      clearTimeout(patience);
      patience = setTimeout(resolve, ENDS);
    });
    const over = () => {
      clearTimeout(patience);
      resolve();
    };
    utterance.addEventListener('end', over);
    utterance.addEventListener('error', over);
    speech.cancel();
    speech.speak(utterance);
  });
}

/** Whether the phone has an English voice of its own. Some tell only a moment after they were first asked. */
export const canSpeak = (): boolean =>
  localVoice(globalThis.speechSynthesis?.getVoices() ?? []) !== undefined;

const localVoice = (voices: readonly SpeechSynthesisVoice[]) =>
  voices.find(({ localService, lang }) => localService && /^en\b/.test(lang));

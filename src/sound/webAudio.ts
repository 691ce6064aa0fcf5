/**
 * Web Audio as every browser has it that this app is built for. Tone asks a library of 30 kB (gzipped) for it, which also
 * does for older browsers what they lack; `host/tone.ts` gives it this instead. Names and meanings are that library's.
 */
const { AudioBuffer, AudioContext, AudioWorkletNode, OfflineAudioContext } = globalThis;

export { AudioBuffer, AudioContext, AudioWorkletNode, OfflineAudioContext };

export const isSupported = (): Promise<boolean> => Promise.resolve(true);

export const isAnyAudioContext = (it: unknown): boolean => it instanceof AudioContext;
export const isAnyOfflineAudioContext = (it: unknown): boolean => it instanceof OfflineAudioContext;
export const isAnyAudioNode = (it: unknown): boolean => it instanceof AudioNode;
export const isAnyAudioParam = (it: unknown): boolean => it instanceof AudioParam;

/** Sends on every block that passes, with the frame it begins at. */
registerProcessor(
  'recorder',
  class extends AudioWorkletProcessor {
    process([[samples]]) {
      if (samples) this.port.postMessage({ frame: currentFrame, samples: samples.slice() });
      return true;
    }
  },
);

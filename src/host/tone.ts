import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

/** Of Tone only what is used: neither what makes up for old browsers, nor what its other files do when they are read. */
export function tone(): Plugin {
  const webAudio = fileURLToPath(new URL('../sound/webAudio.ts', import.meta.url));
  return {
    name: 'tone',
    config: () => ({
      // It asks for a library for what old browsers lack: those for whom this is built lack none of it.
      resolve: { alias: { 'standardized-audio-context': webAudio } },
      build: {
        rolldownOptions: {
          // Its package does not say that its files may be left out; one of them opens a context of its own.
          treeshake: { moduleSideEffects: (id: string) => !id.includes('/node_modules/tone/') },
        },
      },
    }),
  };
}

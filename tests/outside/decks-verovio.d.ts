/** What the checks use of verovio, which brings no types. */
declare module 'verovio/wasm' {
  export default function createModule(): Promise<unknown>;
}

declare module 'verovio/esm' {
  export class VerovioToolkit {
    constructor(module: unknown);
    loadData(musicXml: string): boolean | number;
    /** A Standard MIDI File in base64. */
    renderToMIDI(): string;
  }
}

declare module 'teoria' {
  interface Note {
    chroma(): number;
    toString(withoutOctave?: boolean): string;
    scale(kind: string): Scale;
  }
  interface Scale {
    notes(): Note[];
  }
  const teoria: { note(name: string): Note };
  export default teoria;
}

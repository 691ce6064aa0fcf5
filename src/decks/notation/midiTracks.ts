/** What a Standard MIDI File holds, as the library `midi-file` parses and writes it, and the notes in it. */
import { parseMidi, writeMidi, type MidiEvent } from 'midi-file';

/** A note from its beginning to its end, in ticks. */
export interface SoundedNote {
  readonly midi: number;
  readonly ticks: number;
  readonly durationTicks: number;
}

/** The notes of one instrument on one channel of one track, in the order in which they end. */
interface Part {
  readonly channel: number;
  readonly notes: readonly SoundedNote[];
}

interface Parsed {
  /** Ticks of a quarter note; none where the file counts in film frames. */
  readonly ticks: number | undefined;
  /** Quarter notes a minute, in the order in which they begin to hold. */
  readonly tempos: readonly number[];
  /** Those with notes, in the order of the file. */
  readonly parts: readonly Part[];
}

/** What happens in a track, each with the ticks from the track's beginning. */
type Timed<E> = E & { readonly at: number };

/** The notes and tempos of a file, or null where it cannot be parsed. */
export function parsedMidi(file: Uint8Array): Parsed | null {
  let data;
  try {
    data = parseMidi(file);
  } catch {
    // The parser throws at anything that is no MIDI file, each time another kind of error.
    return null;
  }
  const tracks = data.tracks.map(timed);
  const tempos = tracks
    .flat()
    .filter((event) => event.type === 'setTempo')
    .toSorted((a, b) => a.at - b.at)
    .map(({ microsecondsPerBeat }) => 60_000_000 / microsecondsPerBeat);
  return { ticks: data.header.ticksPerBeat, tempos, parts: tracks.flatMap(partsOf) };
}

function timed(track: readonly MidiEvent[]): Timed<MidiEvent>[] {
  let at = 0;
  return track.map((event) => Object.assign(event, { at: (at += event.deltaTime) }));
}

/** A track may hold several channels, and a channel one instrument after another: each is a part by itself. */
function partsOf(track: readonly Timed<MidiEvent>[]): Part[] {
  const parts = new Map<string, { channel: number; notes: SoundedNote[] }>();
  const programs = new Map<number, number>();
  const begun: (SoundedNote & { readonly part: string })[] = [];
  for (const event of track) {
    if (event.type === 'programChange') programs.set(event.channel, event.programNumber);
    if (event.type !== 'noteOn' && event.type !== 'noteOff') continue;
    const { channel, noteNumber: midi, at } = event;
    const part = `${channel} ${programs.get(channel) ?? 0}`;
    if (event.type === 'noteOn') {
      if (!parts.has(part)) parts.set(part, { channel, notes: [] });
      begun.push({ part, midi, ticks: at, durationTicks: 0 });
      continue;
    }
    const first = begun.findIndex((note) => note.part === part && note.midi === midi);
    if (first < 0) continue;
    const { ticks } = begun.splice(first, 1)[0]!;
    parts.get(part)!.notes.push({ midi, ticks, durationTicks: at - ticks });
  }
  return [...parts.values()].filter(({ notes }) => notes.length > 0);
}

/** What a written file says of a line of notes. */
interface Line {
  readonly name: string;
  /** Ticks of a quarter note. */
  readonly ticks: number;
  /** Quarter notes a minute. */
  readonly tempo: number;
  readonly beatsPerBar: number;
  /** In the order in which they begin. */
  readonly notes: readonly SoundedNote[];
}

/** The file of a line: format 1, tempo and bar in a track before that of the notes. */
export function midiFileOf({
  name,
  ticks,
  tempo,
  beatsPerBar,
  notes,
}: Line): Uint8Array<ArrayBuffer> {
  const named: MidiEvent = { deltaTime: 0, meta: true, type: 'trackName', text: name };
  const end: MidiEvent = { deltaTime: 0, meta: true, type: 'endOfTrack' };
  const head: MidiEvent[] = [
    named,
    {
      deltaTime: 0,
      meta: true,
      type: 'setTempo',
      microsecondsPerBeat: Math.floor(60_000_000 / tempo),
    },
    {
      deltaTime: 0,
      meta: true,
      type: 'timeSignature',
      numerator: beatsPerBar,
      denominator: 4,
      metronome: 24,
      thirtyseconds: 8,
    },
    end,
  ];
  const header = { format: 1, numTracks: 2, ticksPerBeat: ticks } as const;
  return Uint8Array.from(writeMidi({ header, tracks: [head, [named, ...noteEvents(notes), end]] }));
}

/** Strength of every note, of 127. */
const VELOCITY = 101;

function noteEvents(notes: readonly SoundedNote[]): MidiEvent[] {
  const all = notes.flatMap(({ midi, ticks, durationTicks }) => [
    { type: 'noteOn' as const, midi, at: ticks, velocity: VELOCITY },
    { type: 'noteOff' as const, midi, at: ticks + durationTicks, velocity: 0 },
  ]);
  let before = 0;
  // Stable: a note that ends where the next begins, of the same pitch, ends first.
  return all
    .toSorted((a, b) => a.at - b.at)
    .map(({ type, midi, at, velocity }) => {
      const deltaTime = at - before;
      before = at;
      return { deltaTime, type, channel: 0, noteNumber: midi, velocity };
    });
}

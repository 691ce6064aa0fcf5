/**
 * Walks a Standard MIDI File before the library builds anything of it: a forged length turns the library in circles, and
 * finding the ends of notes takes time with the square of those that sound together. Costs a few ms for the largest file.
 */

/**
 * A phrase has 200 notes; these are whole songs. What passes takes 5 to 115 ms on a busy desktop; what does not is refused
 * in 2 ms.
 */
const MOST = { tracks: 100, events: 10_000, notes: 1000 };

/** What is wrong with a file, as a sentence; null where the library may read it. */
export function midiFault(file: Uint8Array): string | null {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  let [tracks, events, notes] = [0, 0, 0];
  for (let at = 0; at + 8 <= file.length;) {
    const name = String.fromCharCode(...file.subarray(at, at + 4));
    const end = at + 8 + view.getUint32(at + 4);
    if (end > file.length) return NOT_WHOLE;
    if (name === 'MTrk') {
      const track = walk(file, at + 8, end, MOST.events - events);
      if (track === null) return NOT_WHOLE;
      tracks++;
      events += track.events;
      notes = Math.max(notes, track.notes);
      if (tracks > MOST.tracks || events >= MOST.events || notes > MOST.notes) return TOO_MUCH;
    }
    at = end;
  }
  return tracks === 0 ? NOT_WHOLE : null;
}

/** Said of what is no such file, or only a part of one. */
export const NOT_WHOLE =
  'This is not a whole MIDI file: save it again as a Standard MIDI File (.mid).';
const TOO_MUCH = `This MIDI file holds far more than a phrase (up to ${MOST.notes} notes a track, ${MOST.events} events and ${MOST.tracks} tracks are read): cut the phrase out first.`;

/** How many events and notes a track has, up to so many events; null where it is not whole. */
function walk(
  file: Uint8Array,
  from: number,
  end: number,
  most: number,
): { readonly events: number; readonly notes: number } | null {
  let [events, notes, status] = [0, 0, 0];
  for (let at = from; at < end && events < most; events++) {
    at = afterNumber(file, at).at;
    const first = file[at] ?? 0;
    if (first === 0xff || first === 0xf0 || first === 0xf7) {
      const length = afterNumber(file, at + (first === 0xff ? 2 : 1));
      at = length.at + length.value;
    } else {
      if (first >= 0x80) status = first;
      // With running status the byte that would say what it is is left out.
      at += DATA_BYTES[(status >> 4) & 7]! + (first >= 0x80 ? 1 : 0);
      if (status < 0x80 || status > 0xef) return null;
      if (status >> 4 === 9) notes++;
    }
    if (at > end) return null;
  }
  return { events, notes };
}

/** How many bytes follow a channel message's first, from note off (8) to pitch bend (E). */
const DATA_BYTES = [2, 2, 2, 2, 1, 1, 2, 0];

/** A number of up to four bytes of seven bits, and where it ends; a longer one passes every end. */
function afterNumber(file: Uint8Array, from: number): { readonly at: number; value: number } {
  let value = 0;
  for (let at = from; at < from + 4; at++) {
    const byte = file[at] ?? 0;
    value = value * 128 + (byte & 0x7f);
    if (byte < 0x80) return { at: at + 1, value };
  }
  return { at: from, value: Infinity };
}

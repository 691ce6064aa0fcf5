/** Follows a performance event by event, and says what is settled. */
import { Alignment } from './align.ts';
import { SHARP } from './attack.ts';
import { clearness, doubted } from './doubt.ts';
import { EXPLAINED, likeliest, noteOdds, type Event } from './event.ts';
import type { Extra, Performance, NoteVerdict } from './listening.ts';
import { heardBeside, heardFor } from './readings.ts';

/**
 * By how much (log odds) a reading has to be better than the best other before it is told; more where it is wrong by an
 * octave, which shares half its partials with the note itself.
 */
export const SURE = { right: 0, atOnce: 1, wrong: 1, octave: 2, missing: 1, extra: 0.5 };

/** What is heard less clearly than this (log odds) has to be so much plainer before anyone is accused. */
export const UNCLEAR = { below: 3, more: 1.5 };

/** A note is settled when so many notes after it were heard, or so many seconds have passed; sooner where it is plain. */
const NOTES_LATER = 2;
const LATER = 0.8;
const PLAIN = 2;

/**
 * Of several events that may be one note: within so many seconds the sharpest is its pluck, if it is at least so likely
 * that note, and less likely where it is sharper by so much; farther apart the first is, and the others are the same note
 * again.
 */
const ECHO = { seconds: 0.09, odds: -1.5, sharper: { by: 0.3, odds: -5 } };
const AGAIN = 1;

/** Whether an event a moment before another, with these log odds of the same note, is the pluck of it. */
function isPluckOf(later: Event, { jump }: Event, odds: number): boolean {
  const { by, odds: least } = ECHO.sharper;
  return odds >= ECHO.odds ? jump > later.jump : odds >= least && jump > later.jump + by;
}

/** What follows a performance, in order or not. */
export interface Following {
  /** What is settled by now, or at the end. */
  settle(now: number, finished?: boolean): Performance;
}

/** Follows notes in a given order. */
export class LineFollower implements Following {
  private readonly alignment: Alignment;
  private verdicts: (NoteVerdict | null)[];
  private begins = 0;
  private restarts = 0;
  private performance: Performance;
  /** Whether an event has come since things were last settled. */
  private news = false;

  constructor(
    private readonly notes: readonly number[],
    due: readonly number[] = [],
  ) {
    this.verdicts = notes.map(() => null);
    this.alignment = new Alignment(notes, due);
    this.performance = this.performed();
  }

  /**
   * Takes the next event; one in place of the last where both are one pluck.
   * @returns the expected note that was heard right just now, or −1
   */
  add(event: Event, replaces: boolean): number {
    this.alignment.add(event, replaces);
    this.news = true;
    const { label, margin, note } = this.alignment.events.at(-1)!;
    return label === 'right' && margin >= SURE.atOnce ? note : -1;
  }

  /** What is settled by now: the same as before where nothing is new. */
  settle(now: number, finished = false): Performance {
    const open = this.open();
    // After the last note nothing is waited for.
    const ended = finished || (open.length > 0 && this.ripe(this.notes.length - 1, now));
    if (ended) {
      this.alignment.finish();
      this.news = true;
    }
    if (this.alignment.begins !== this.begins) this.beginAnew();
    const ripe = this.open().filter((i) => ended || (this.ripe(i, now) && this.sure(i)));
    for (const i of ripe) this.verdicts[i] = this.verdictOf(i);
    if (this.news || ripe.length > 0) this.performance = this.performed();
    this.news = false;
    return this.performance;
  }

  private beginAnew(): void {
    this.begins = this.alignment.begins;
    this.restarts++;
    this.verdicts = this.notes.map(() => null);
  }

  private open(): number[] {
    return this.verdicts.flatMap((verdict, i) => (verdict === null ? [i] : []));
  }

  private performed(): Performance {
    return {
      notes: this.verdicts.slice(),
      extras: this.extras(),
      restarts: this.restarts,
      over: this.verdicts.every((verdict) => verdict !== null),
    };
  }

  private ripe(i: number, now: number): boolean {
    const reading = this.alignment.notes[i]!;
    if (reading.label === 'open') return false;
    const later = this.alignment.notes.slice(i + 1).filter(({ event }) => event >= 0);
    const plain = reading.label === 'right' && reading.margin >= PLAIN;
    if (later.length >= NOTES_LATER - Number(plain)) return true;
    const since = this.eventAt(reading.event) ?? this.eventAt(later[0]?.event ?? -1);
    return since !== undefined && now - since.time > LATER;
  }

  private eventAt(t: number): Event | undefined {
    return this.alignment.candidates[t]?.event;
  }

  /** Whether what is read of a note can be told; what cannot may become plainer. */
  private sure(i: number): boolean {
    const { label, margin } = this.alignment.notes[i]!;
    if (label === 'right') return margin >= SURE.right;
    // With nothing right there is no line to have left a note out of.
    if (label === 'open') return this.wentOn() && !doubted(this.alignment, this.notes[i]!, i);
    const unclear = clearness(this.alignment, this.notes) < UNCLEAR.below ? UNCLEAR.more : 0;
    const least = SURE[this.isOctave(i) ? 'octave' : label] + unclear;
    return margin >= least && !doubted(this.alignment, this.notes[i]!, i);
  }

  /** Whether an octave of a note was heard in its place. */
  private isOctave(i: number): boolean {
    const candidate = this.alignment.candidates[this.alignment.notes[i]!.event];
    const midi = this.notes[i]!;
    return candidate !== undefined && Math.abs(heardFor(candidate, midi) - midi) === 12;
  }

  private verdictOf(i: number): NoteVerdict {
    if (!this.sure(i)) return { verdict: 'unheard' };
    const { label, event } = this.alignment.notes[i]!;
    if (label === 'right') {
      return { verdict: 'right', time: this.pluckedAt(event, this.notes[i]!) };
    }
    if (label !== 'wrong') return { verdict: 'missing' };
    const candidate = this.alignment.candidates[event]!;
    // A string struck dead is no other note.
    if (candidate.event.explained < EXPLAINED) return { verdict: 'unheard' };
    const heard = heardFor(candidate, this.notes[i]!);
    return { verdict: 'wrong', time: candidate.event.plucked, heard };
  }

  /** When the note was plucked that an event tells of. */
  private pluckedAt(last: number, midi: number): number {
    let first = this.eventAt(last)!;
    for (let t = last - 1; this.alignment.events[t]?.label === 'ignored'; t--) {
      const event = this.eventAt(t)!;
      if (t < this.alignment.begins) break;
      const odds = noteOdds(event, midi);
      const near = first.time - event.time < ECHO.seconds;
      if (near ? isPluckOf(first, event, odds) : odds >= AGAIN) first = event;
    }
    return first.plucked;
  }

  /** Whether anything was heard for sure: in silence nothing is missing. */
  private wentOn(): boolean {
    return this.verdicts.some((verdict) => verdict?.verdict === 'right');
  }

  private extras(): Extra[] {
    return this.alignment.events.flatMap(({ label, margin, note }, t) => {
      if (label !== 'extra' || margin < SURE.extra) return [];
      const candidate = this.alignment.candidates[t]!;
      if (candidate.event.explained < EXPLAINED) return [];
      const heard = heardBeside(candidate, this.notes[note]);
      return [{ time: candidate.event.plucked, heard, after: note }];
    });
  }
}

/**
 * What a note in any order needs (log odds) to be right, to be an extra, and to be still possible at the end; and what an
 * event that is none of these needs to be a pluck that cannot be told, if it begins sharply.
 */
const ANY = { right: 0.5, extra: 2.5, possible: -4, pluck: -0.6 };
/** Seconds after a pluck in which what comes belongs to it: its ringing, the finger that leaves the string. */
const BELONGS = 0.25;

/** Follows notes that come in whatever order, several at a time too. */
export class SetFollower implements Following {
  private readonly verdicts: (NoteVerdict | null)[];
  private readonly most: number[];
  private readonly extras: Extra[] = [];
  private untold = 0;
  private last = -Infinity;

  constructor(private readonly notes: readonly number[]) {
    this.verdicts = notes.map(() => null);
    this.most = notes.map(() => -Infinity);
  }

  /**
   * Takes an event, or what is left of it without the notes found in it.
   * @param first whether nothing was found in it before: only then can it be an extra
   * @returns the expected note that it is: by its index, or −1
   */
  add(event: Event, first: boolean): number {
    const odds = this.notes.map((midi) => noteOdds(event, midi));
    odds.forEach((value, i) => (this.most[i] = Math.max(this.most[i]!, value)));
    const open = odds.map((value, i) => (this.verdicts[i] === null ? value : -Infinity));
    const best = open.indexOf(Math.max(...open));
    const isNote = !first || event.explained >= EXPLAINED;
    if (isNote && open[best]! >= ANY.right && this.stands(event, best)) {
      this.verdicts[best] = { verdict: 'right', time: event.plucked };
      this.last = event.time;
      return best;
    }
    if (first) this.addUnfound(event);
    return -1;
  }

  /** Takes an event in which no note was found that is still open. */
  private addUnfound(event: Event): void {
    const heard = likeliest(event);
    const odds = noteOdds(event, heard);
    const isAsked = this.notes.includes(heard);
    const isTold = event.explained >= EXPLAINED && odds >= (isAsked ? ANY.right : ANY.extra);
    const isPluck = odds >= ANY.pluck && event.jump >= SHARP && event.time > this.last + BELONGS;
    if (isTold && !isAsked) this.extras.push({ time: event.plucked, heard, after: -1 });
    if (!isTold && isPluck) this.untold++;
    if (isTold || isPluck) this.last = event.time;
  }

  /** Whether no other note explains the event much better than this one does. */
  private stands(event: Event, index: number): boolean {
    const other = likeliest(event, this.notes[index]);
    if (this.notes.includes(other)) return true;
    return noteOdds(event, this.notes[index]!) >= noteOdds(event, other) - ANY.right;
  }

  settle(_now: number, finished = false): Performance {
    if (finished) this.finish();
    return {
      notes: this.verdicts.slice(),
      extras: this.extras.slice(),
      restarts: 0,
      untold: this.untold,
      over: this.verdicts.every((verdict) => verdict !== null),
    };
  }

  private finish(): void {
    const heard = this.extras.length > 0 || this.verdicts.some((verdict) => verdict !== null);
    this.verdicts.forEach((verdict, i) => {
      if (verdict) return;
      const missing = heard && this.most[i]! < ANY.possible;
      this.verdicts[i] = { verdict: missing ? 'missing' : 'unheard' };
    });
  }
}

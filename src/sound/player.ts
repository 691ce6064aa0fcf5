import { Context } from 'tone';
import { CLICK_PEAK, renderClick } from './click.ts';
import { planOf, type Arrangement, type Click, type Plan, type Pluck } from './plan.ts';
import type { Rendered } from './render.ts';
import { heardAt } from './heardAt.ts';
import { type Happening, Sequence } from './sequence.ts';
import { ENOUGH_NOTES, RENDERED_NOTES } from './string.ts';
import type { Sounding } from './sounding.ts';
import { Strings } from './strings.ts';

/** What can be turned while a plan is played. */
export interface Controls {
  /** How fast, as a part of the plan's tempo. */
  speed: number;
  /** Whether the click is heard after the count-in. */
  click: boolean;
  /** Whether the phrase is silent and only the click goes on. */
  muted: boolean;
}

/** Who is told of what is heard, at the moment when it is. */
export interface Observer {
  note(index: number): void;
  /** Told of those clicks that sound. */
  click(index: number): void;
  end(): void;
}

/**
 * Above the knee the strings are bent down, and never pass the ceiling: six notes and a click stay under full scale. A
 * note alone never comes there.
 */
const KNEE = 0.5;
const CEILING = 0.74;
/** Strength of a tap on the neck. */
const TAP = 0.8;
/** Strings for taps that name none. */
const SPARE = 6;
/** Seconds from the end of the look-ahead to the first note or click. */
export const LEAD = 0.02;

/** A curve over −2…2 (the shaper's input is halved): straight up to the knee, then ever flatter, up to the ceiling. */
function bend(): Float32Array<ArrayBuffer> {
  const size = 4097;
  const curve = new Float32Array(size);
  const room = CEILING - KNEE;
  for (let n = 0; n < size; n++) {
    const x = (4 * n) / (size - 1) - 2;
    const over = Math.abs(x) - KNEE;
    curve[n] = over <= 0 ? x : Math.sign(x) * (KNEE + room * Math.tanh(over / room));
  }
  return curve;
}

/** Plays strings and clicks in a context: taps at once, plans a look-ahead before they are heard. */
export class Player {
  /** A4 in Hz. */
  reference = 440;
  private readonly strings: Strings;
  private readonly level: GainNode;
  private readonly click: AudioBuffer;
  private spare = 0;
  /** What is played, and the tempo of its plan. */
  private sequence: Sequence | undefined;
  private tempo = 0;
  /** What is to be told when it is heard, in the order in which it was scheduled. */
  private telling: { readonly due: number; readonly call: () => void }[] = [];

  constructor(private readonly context: Context) {
    this.level = context.createGain();
    this.level.connect(context.rawContext.destination as AudioNode);
    const half = context.createGain();
    half.gain.value = 0.5;
    const shaper = context.createWaveShaper();
    shaper.curve = bend();
    half.connect(shaper).connect(this.level);
    this.strings = new Strings(context, half);
    const click = renderClick(context.sampleRate);
    this.click = context.createBuffer(1, click.length, context.sampleRate);
    this.click.copyToChannel(click, 0);
    context.on('tick', () => this.sequence?.callUntil(context.now()));
  }

  /** Takes in a rendered note of the string. */
  add(note: Rendered): void {
    this.strings.add(note);
  }

  /** Bytes that the rendered notes hold. */
  get bytes(): number {
    return this.strings.bytes;
  }

  /** How loud all is, 0 to 1 in amplitude. */
  setLevel(level: number): void {
    this.level.gain.setTargetAtTime(level, this.context.immediate(), 0.01);
  }

  /** A tap: sounds at once, without the look-ahead that phrases have. */
  pluck(midi: number, string?: number): void {
    // Notes without a string ring on beside each other, as many as there are spare strings.
    this.spare = (this.spare + 1) % SPARE;
    const on = string ?? 100 + this.spare;
    this.strings.pluck(
      { midi, strength: TAP, string: on },
      this.context.immediate(),
      this.reference,
    );
  }

  /**
   * Plays a plan from its beginning. What sounds ends, strings that were tapped as well: a wrong note that rings on would
   * sound into the right ones.
   *
   * @returns when a beat of the plan is heard at the tempo it began with, in ms on the clock of `event.timeStamp`; to be
   * asked once sound comes out
   */
  play(plan: Plan, controls: Controls, observer: Observer): (beat: number) => number {
    this.stop();
    const happenings: Happening[] = [
      ...plan.plucks.map((pluck) => ({
        at: pluck.at,
        call: (time: number) => this.sound(pluck, time, controls, observer),
      })),
      ...plan.dampings.map(({ at, string }) => ({
        at,
        call: (time: number) => this.strings.damp(string, time),
      })),
      ...plan.clicks.map((click, index) => ({
        at: click.at,
        call: (time: number) => {
          if (!click.counted && !controls.click) return;
          this.sounds(click, time);
          this.whenHeard(time, () => observer.click(index));
        },
      })),
      { at: plan.end, call: (time) => this.whenHeard(time, () => observer.end()) },
    ];
    const loop = plan.loop ? { from: plan.start, to: plan.end } : undefined;
    const start = this.context.now() + LEAD;
    this.tempo = plan.tempo;
    const tempo = plan.tempo * controls.speed;
    this.sequence = new Sequence(happenings, start, tempo, loop);
    const raw = this.context.rawContext as AudioContext;
    return (beat) => heardAt(raw, start + (beat * 60) / tempo);
  }

  /** Plays a sounding as it is arranged; as `play`. */
  playSounding(
    sounding: Sounding,
    arrangement: Arrangement,
    controls: Controls,
    observer: Observer,
  ): (beat: number) => number {
    return this.play(planOf(sounding, arrangement), controls, observer);
  }

  /** From now on, from where the look-ahead ends, so fast as a part of the plan's tempo. */
  setSpeed(part: number): void {
    this.sequence?.setTempo(this.tempo * part);
  }

  /** Stops what is played, and what was about to be. */
  stop(): void {
    this.sequence = undefined;
    this.telling = [];
    this.strings.silence();
  }

  private sound(pluck: Pluck, time: number, controls: Controls, observer: Observer): void {
    if (!controls.muted) this.strings.pluck(pluck, time, this.reference);
    const { index } = pluck;
    if (index !== undefined) this.whenHeard(time, () => observer.note(index));
  }

  private sounds({ accent }: Click, time: number): void {
    const source = this.context.createBufferSource();
    source.buffer = this.click;
    const gain = this.context.createGain();
    gain.gain.value = CLICK_PEAK[accent];
    source.connect(gain).connect(this.level);
    source.start(time);
  }

  /** Calls when what is scheduled for `time` comes out of the loudspeaker; in the order in which it was asked for. */
  private whenHeard(time: number, call: () => void): void {
    const raw = this.context.rawContext as AudioContext;
    const latency = raw.outputLatency || raw.baseLatency || 0;
    const ahead = 1000 * (time + latency - this.context.immediate());
    const due = performance.now() + ahead;
    this.telling.push({ due, call });
    // Timers that are due within a millisecond of each other come in any order: the first tells for all that are due.
    setTimeout(() => this.tell(due), ahead);
  }

  private tell(until: number): void {
    while (this.telling[0] && this.telling[0].due <= until) this.telling.shift()!.call();
  }
}

let rendering: readonly Promise<Rendered>[] | undefined;

/** Has the strings rendered, each note in its turn. Needs no sound. */
export function renderStrings(): readonly Promise<Rendered>[] {
  if (rendering) return rendering;
  const worker = new Worker(new URL('./render.ts', import.meta.url), { type: 'module' });
  const notes = RENDERED_NOTES.map(
    (midi) =>
      new Promise<Rendered>((resolve, reject) => {
        worker.addEventListener('message', ({ data }: MessageEvent<Rendered>) => {
          if (data.midi === midi) resolve(data);
        });
        worker.addEventListener('error', ({ message }) => {
          reject(new Error(`The strings could not be rendered. ${message}`));
        });
      }),
  );
  Promise.all(notes)
    .catch(() => (rendering = undefined))
    .finally(() => worker.terminate());
  rendering = notes;
  return notes;
}

/** Lets the page draw a frame. */
const pause = () => new Promise<void>((resolve) => setTimeout(resolve));

/**
 * A player on a context, as soon as every pitch can be played; the notes between come in by and by. It is made in
 * pieces, so that a slow phone goes on drawing.
 *
 * @throws Error when the strings cannot be rendered
 */
export async function openPlayer(native: AudioContext): Promise<Player> {
  const notes = renderStrings();
  // A look-ahead of 0.1 s outlasts a stall of 60 ms only if no more than 40 ms pass between two looks.
  const [lookAhead, updateInterval] = [0.1, 0.02];
  // Its clock, a worker, is made apart from it: together they would hold a slow page up.
  const context = new Context({
    context: native,
    lookAhead,
    updateInterval,
    clockSource: 'offline',
  });
  await pause();
  context.clockSource = 'worker';
  await pause();
  const player = new Player(context);
  for (const note of notes.slice(0, ENOUGH_NOTES)) {
    await pause();
    player.add(await note);
  }
  const others = async () => {
    for (const note of notes.slice(ENOUGH_NOTES)) {
      await pause();
      player.add(await note);
    }
  };
  others().catch(() => {
    // Those between do not come, then: what is there is bent to their pitches.
  });
  return player;
}

/** Carries out orders over the blocks that come in. The Worker is this and its wiring; Node uses it as it is. */
import { BETWEEN, LONGEST, agreed, clickIn } from './delay.ts';
import { Ear, type Said } from './ear.ts';
import { FreeEar } from './free.ts';
import { PATIENCE, type Expected, type FreeNote, type FreePlaying } from './listening.ts';
import type { Block, Request, Reply } from './orders.ts';
import { StrikeEar } from './strikes.ts';
import { Track } from './track.ts';
import { StringTuner, rootMeanSquare } from './tuner.ts';

/** Seconds of the opening silence. */
export const SILENT_SECONDS = 0.5;
/** A hole in what comes in is filled with silence up to so many seconds; after a longer one it begins anew. */
const HOLE = 1;

/** Something that listens: takes a block that begins at a frame of the clock. */
interface Job {
  hear(block: Float32Array, frame: number): void;
  restart?(): void;
  finish?(): void;
}

export class Attendant {
  private job: Job | null = null;
  private id = -1;
  private silence = new Float32Array(0);
  private next = -1;

  constructor(
    private readonly rate: number,
    private readonly tell: (told: Reply) => void,
  ) {}

  order(order: Request): void {
    switch (order.do) {
      case 'restart':
      case 'finish':
        if (order.id === this.id) this.job?.[order.do]?.();
        return;
      case 'stop':
        if (order.id === this.id) this.end();
        return;
      default:
        this.id = order.id;
        this.job = this.jobFor(order);
    }
  }

  private jobFor(order: Exclude<Request, { do: 'restart' | 'finish' | 'stop' }>): Job {
    switch (order.do) {
      case 'silence':
        return this.measuringSilence();
      case 'follow':
        return this.following(order.expected);
      case 'free':
        return this.hearingFreely(order.playing);
      case 'strikes':
        return this.hearingStrikes();
      case 'tune':
        return this.tuning(order.strings, order.reference);
      case 'delay':
        return this.measuringDelay(order.click, order.times);
    }
  }

  hear({ frame, samples }: Block): void {
    const hole = frame - this.next;
    if (this.next >= 0 && hole > 0 && hole < HOLE * this.rate) {
      this.job?.hear(new Float32Array(hole), this.next);
    }
    this.next = frame + samples.length;
    this.job?.hear(samples, frame);
  }

  private end(): void {
    this.job = null;
    this.id = -1;
  }

  private measuringSilence(): Job {
    const { id } = this;
    const heard: number[] = [];
    return {
      hear: (block) => {
        heard.push(...block);
        if (heard.length < SILENT_SECONDS * this.rate) return;
        this.silence = Float32Array.from(heard);
        this.end();
        const level = 20 * Math.log10(rootMeanSquare(this.silence) + 1e-9);
        this.tell({ told: 'silence', id, level });
      },
    };
  }

  private following(expected: Expected): Job {
    const { id } = this;
    let ear: Ear | null = null;
    let lastWord = Infinity;
    const pass = (said: readonly Said[], now: number) => {
      for (const word of said) {
        lastWord = now;
        if (word.said === 'right')
          this.tell({ told: 'right', id, index: word.index, time: word.time });
        else this.tell({ told: 'settled', id, performance: word.performance });
      }
    };
    const finish = () => {
      const said = ear?.finish() ?? [];
      pass(said, 0);
      if (ear) this.tell({ told: 'over', id, performance: ear.performance });
      this.end();
    };
    return {
      hear: (block, frame) => {
        ear ??= new Ear(this.rate, expected, this.silence, frame / this.rate);
        const now = frame / this.rate;
        pass(ear.hear(block), now);
        if (ear.performance.over || now - lastWord > PATIENCE) finish();
      },
      restart: () => {
        ear = null;
        lastWord = Infinity;
      },
      finish,
    };
  }

  private hearingFreely(playing: FreePlaying): Job {
    const { id } = this;
    const notes: FreeNote[] = [];
    let ear: FreeEar | null = null;
    const pass = (heard: readonly FreeNote[]) => {
      for (const note of heard) this.tell({ told: 'note', id, note });
      notes.push(...heard);
    };
    return {
      hear: (block, frame) => {
        ear ??= new FreeEar(this.rate, playing, this.silence, frame / this.rate);
        pass(ear.hear(block));
      },
      restart: () => {
        ear = null;
        notes.length = 0;
      },
      finish: () => {
        pass(ear?.finish() ?? []);
        this.tell({ told: 'played', id, notes });
        this.end();
      },
    };
  }

  private hearingStrikes(): Job {
    const { id } = this;
    let ear: StrikeEar | null = null;
    return {
      hear: (block, frame) => {
        ear ??= new StrikeEar(this.rate, this.silence, frame / this.rate);
        for (const time of ear.hear(block)) this.tell({ told: 'strike', id, time });
      },
    };
  }

  private tuning(strings: readonly number[], reference: number): Job {
    const { id } = this;
    let tuner: StringTuner | null = null;
    return {
      hear: (block, frame) => {
        tuner ??= new StringTuner(
          this.rate,
          strings,
          reference,
          rootMeanSquare(this.silence),
          frame / this.rate,
        );
        const tuning = tuner.hear(block);
        if (tuning) this.tell({ told: 'string', id, tuning });
      },
    };
  }

  private measuringDelay(click: Float32Array, times: readonly number[]): Job {
    const { id, rate } = this;
    const track = new Track((times.length * BETWEEN + 2) * rate);
    let first = -1;
    return {
      hear: (block, frame) => {
        if (first < 0) first = frame;
        track.add(block);
        const until = times.at(-1)! + LONGEST;
        if ((frame + block.length) / rate < until) return;
        const found = times.map((time) => {
          const from = Math.round(time * rate) - first;
          const at = clickIn(track.slice(from, from + Math.round(LONGEST * rate)), click);
          return at === null ? null : (from + at + first) / rate - time;
        });
        this.end();
        this.tell({ told: 'delay', id, seconds: agreed(found) });
      },
    };
  }
}

/** Something to tell of a text or a file that was read: where it is, and what about it. */
export interface Remark {
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
  /** One sentence: what is there, and what to do. */
  readonly sentence: string;
}

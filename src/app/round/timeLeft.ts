import { secondsLeft, type Round } from '../../practice/round.ts';

/** `about 3 minutes left`; how many cards there were where no minutes were agreed on. */
export function timeLeft(round: Round): string {
  const seconds = secondsLeft(round);
  if (seconds === null) return `${round.asked.length} so far`;
  const minutes = Math.ceil(seconds / 60);
  return minutes < 1 ? 'last card' : `${minutes} min left`;
}

import { secondsLeft, type Round } from '../../practice/round.ts';

/** `3 min left`; `until enough` where no minutes were agreed on. A count that grows would only press. */
export function timeLeft(round: Round): string {
  if (round.goal === 'enough') return 'until enough';
  if ('cards' in round.goal) return `${round.goal.cards - round.asked.length} to go`;
  const minutes = Math.ceil(secondsLeft(round)! / 60);
  return minutes < 1 ? 'last card' : `${minutes}\u00a0min\u00a0left`;
}

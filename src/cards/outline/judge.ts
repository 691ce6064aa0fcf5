export { degreeAnswers as answers, judgeNamed as judge } from '../arpeggio/named.ts';

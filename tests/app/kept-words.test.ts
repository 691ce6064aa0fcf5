import { expect, it } from 'vitest';
import { keptWords, onIPhone } from '../../src/app/settings/keptWords.ts';

it('what the device answered about keeping the data is said as it answered, with what to do', () => {
  expect(keptWords(true, false)).toBe(keptWords(true, true));
  expect(keptWords(true, false)).toMatch(/has agreed to keep/);
  expect(keptWords(false, false)).toMatch(/has not agreed .* Ask it to/);
  expect(keptWords(false, true)).toMatch(/^Asked, the device has not agreed.* save it to a file/i);
  expect(keptWords('silent', false)).toMatch(/does not say/);
});

it('on an iPhone it is said which keeps it: the home screen, or a tab for a week', () => {
  expect(onIPhone(true)).toMatch(/home screen, which keeps/);
  expect(onIPhone(false)).toMatch(/tab for a week .* Add to Home Screen/);
});

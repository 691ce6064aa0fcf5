import { expect, it } from 'vitest';
import { itemsListed } from '../../src/app/today/itemsListed.ts';

it('says once what is said of all items', () => {
  expect(itemsListed([])).toBe('');
  expect(itemsListed(['vii° on strings 3–2'])).toBe('vii° on strings 3–2');
  expect(itemsListed(['I on strings 5–4', 'ii on strings 5–4'])).toBe('I and ii on strings 5–4');
  expect(itemsListed(['IV by ear', 'iii by ear'])).toBe('IV and iii by ear');
  expect(itemsListed(['I on strings 5–4', 'I on strings 4–3'])).toBe(
    'I on strings 5–4 and I on strings 4–3',
  );
  expect(itemsListed(['V in inversion on strings 5–4', 'I on strings 5–4'])).toBe(
    'V in inversion on strings 5–4 and I on strings 5–4',
  );
});

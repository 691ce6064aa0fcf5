import { describe, expect, it } from 'vitest';
import { USUAL } from '../../src/app/settings.ts';
import { readSettings } from '../../src/app/storedSettings.ts';

describe('settings as they were stored', () => {
  it('come back as they were', () => {
    const chosen = { ...USUAL, naming: 'german', volume: 0, theme: 'dark' } as const;
    expect(readSettings(JSON.parse(JSON.stringify(chosen)))).toEqual(chosen);
  });

  it('are as usual, each by itself, where they are missing or not understood', () => {
    for (const name of Object.keys(USUAL)) {
      for (const odd of [null, NaN, -1, 'constructor', '__proto__', {}, []]) {
        expect(readSettings({ ...USUAL, muted: true, [name]: odd })).toEqual({
          ...USUAL,
          muted: name !== 'muted',
        });
      }
    }
    for (const odd of [null, undefined, 'settings', 5, [], {}]) {
      expect(readSettings(odd)).toEqual(USUAL);
    }
  });
});

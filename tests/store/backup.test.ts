import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { BackupFault, readBackup, writeBackup } from '../../src/store/backup.ts';
import { reviewOf } from '../memory/reviews.ts';
import { anyReview } from './reviews.ts';

const NOW = Date.UTC(2026, 11, 1);

const backup = {
  reviews: [reviewOf({ n: 1 }), reviewOf({ n: 2, right: false, takenFor: '4' })],
  decks: [{ id: 'd1', document: { title: 'Ü – “B♭”\n' }, added: 5, away: true }],
  aside: [{ device: 'phone', text: '[2,"later"]', flaw: 'newer' as const }],
};

const faultOf = (text: string): string => {
  try {
    readBackup(text);
  } catch (error) {
    if (error instanceof BackupFault) return error.message;
    throw error;
  }
  return '';
};

describe('a backup', () => {
  it('comes back as it went', () => {
    fc.assert(
      fc.property(fc.array(anyReview, { maxLength: 20 }), (reviews) => {
        const whole = { ...backup, reviews };
        expect(readBackup(writeBackup(whole, NOW))).toEqual(whole);
      }),
    );
  });

  it('can be read by a person, and after an editor has changed its line ends', () => {
    const text = writeBackup(backup, NOW);
    expect(text.split('\n')[0]).toContain('"written":"2026-12-01T00:00:00.000Z"');
    expect(text).toContain('"takenFor":"4"');
    expect(readBackup(`\uFEFF${text.replaceAll('\n', '\r\n')}`)).toEqual(backup);
  });

  it('is refused with the line that is wrong', () => {
    const lines = writeBackup(backup, NOW).split('\n');
    expect(faultOf(lines.with(2, lines[2]!.replace('"grade":3', '"grade":7')).join('\n'))).toMatch(
      /^Line 3 /,
    );
    expect(faultOf(lines.with(3, '{"review":').join('\n'))).toMatch(/^Line 4 /);
  });

  it('is refused when cut short, when from a later version, and when it is something else', () => {
    const lines = writeBackup(backup, NOW).split('\n');
    expect(faultOf(lines.slice(0, 3).join('\n'))).toMatch(/cut short after line 3/);
    expect(
      faultOf(lines.with(0, lines[0]!.replace('"version":1', '"version":2')).join('\n')),
    ).toMatch(/later version/);
    for (const text of ['', '{}', 'null', '\u0000\u0001', '<html>']) {
      expect(faultOf(text)).toMatch(/not a backup/);
    }
  });

  it('is read or refused, whatever was done to it', () => {
    const text = writeBackup(backup, NOW);
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(40), fc.string(), (at, length, put) => {
        const damaged = text.slice(0, at) + put + text.slice(at + length);
        const fault = faultOf(damaged);
        expect(fault === '' || fault.endsWith('.')).toBe(true);
      }),
    );
  });
});

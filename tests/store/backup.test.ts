import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { BackupFault, readBackup as read, writeBackup } from '../../src/store/backup.ts';
import { reviewOf } from '../memory/reviews.ts';
import { anyReview } from './reviews.ts';

const NOW = Date.UTC(2026, 11, 1);

const whole = { draft: () => true, report: () => true };
const readBackup = (text: string) => read(text, whole);

const draft = {
  id: 'a1',
  document: { title: 'Quay' },
  changed: 7,
  away: false,
  shared: [{ deck: 'd1', at: 6 }],
};
const report = { sender: 0xffffffff, deck: 2, day: 20_700, minute: 1439, link: '#/report/x' };

const backup = {
  reviews: [reviewOf({ n: 1 }), reviewOf({ n: 2, right: false, takenFor: '4' })],
  decks: [{ id: 'd1', document: { title: 'Ü – “B♭”\n' }, added: 5, away: true }],
  drafts: [draft],
  reports: [report],
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
        const all = { ...backup, reviews };
        expect(readBackup(writeBackup(all, NOW))).toEqual(all);
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
    expect(faultOf(lines.with(4, lines[4]!.replace('"grade":3', '"grade":7')).join('\n'))).toMatch(
      /^Line 5 /,
    );
    expect(faultOf(lines.with(3, '{"review":').join('\n'))).toMatch(/^Line 4 /);
  });

  it('is refused with the line of a draft or a report that is none', () => {
    const lines = writeBackup(backup, NOW).split('\n');
    for (const bad of [
      { draft: { ...draft, id: '' } },
      { draft: { ...draft, changed: -1 } },
      { draft: { ...draft, away: 1 } },
      { draft: { ...draft, shared: [null] } },
      { report: { ...report, day: 70_000 } },
      { report: { ...report, sender: 0.5 } },
      { report: { ...report, minute: 1440 } },
      { report: { ...report, link: 5 } },
    ]) {
      const at = 'draft' in bad ? 2 : 3;
      expect(faultOf(lines.with(at, JSON.stringify(bad)).join('\n'))).toMatch(
        new RegExp(`^Line ${at + 1} of this backup is damaged. Nothing was changed`),
      );
    }
    const text = lines.join('\n');
    expect(() => read(text, { ...whole, draft: () => false })).toThrow(/^Line 3 /);
    expect(() => read(text, { ...whole, report: () => false })).toThrow(/^Line 4 /);
  });

  it('of the first version, without drafts and reports, is read still', () => {
    const old = [
      '{"skipwise":"backup","version":1,"written":"2026-11-02T10:00:00.000Z","decks":1,"reviews":1,"aside":0}',
      JSON.stringify({ deck: backup.decks[0] }),
      JSON.stringify({ review: backup.reviews[0] }),
      '',
    ].join('\n');
    expect(readBackup(old)).toEqual({
      decks: backup.decks,
      reviews: backup.reviews.slice(0, 1),
      drafts: [],
      reports: [],
      aside: [],
    });
  });

  it('is refused when cut short, when from a later version, and when it is something else', () => {
    const lines = writeBackup(backup, NOW).split('\n');
    expect(faultOf(lines.slice(0, 3).join('\n'))).toMatch(/cut short after line 3/);
    expect(
      faultOf(lines.with(0, lines[0]!.replace('"version":2', '"version":3')).join('\n')),
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

import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { BackupFault, readBackup as read, writeBackup } from '../../src/store/backup.ts';
import { LATEST, MOST_COUNT } from '../../src/store/review.ts';
import { reviewOf } from '../memory/reviews.ts';
import { anyReview } from './reviews.ts';

const NOW = Date.UTC(2026, 11, 1);

const whole = {
  decks: () => true,
  minutes: () => true,
  timings: () => true,
  drafts: () => true,
  reports: () => true,
};
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
  minutes: [] as { lesson: string; at: number; document: unknown }[],
  timings: [] as { figure: string; timing: unknown }[],
  quarantined: [{ device: 'phone', text: '[2,"later"]', flaw: 'newer' as const }],
};

const faultOf = async (text: string, checks = whole): Promise<string> => {
  try {
    await read(text, checks);
  } catch (error) {
    if (error instanceof BackupFault) return error.message;
    throw error;
  }
  return '';
};

describe('a backup', () => {
  it('comes back as it went', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyReview, { maxLength: 20 }), async (reviews) => {
        const all = { ...backup, reviews };
        expect(await readBackup(writeBackup(all, NOW))).toEqual(all);
      }),
    );
  });

  it('has the form of before while it holds no free minutes, and else one that older pages refuse', async () => {
    const first = (text: string) => JSON.parse(text.split('\n')[0]!) as unknown;
    expect(first(writeBackup(backup, NOW))).toMatchObject({ version: 2 });
    const minutes = [{ lesson: 'd1', at: NOW, document: { figures: {}, line: null } }];
    const text = writeBackup({ ...backup, minutes }, NOW);
    expect(first(text)).toMatchObject({ version: 3, minutes: 1 });
    expect(await readBackup(text)).toEqual({ ...backup, minutes });
    expect(await faultOf(text, { ...whole, minutes: () => false })).toMatch(
      /^Line 5 of this backup holds no minute that can be read/,
    );
    expect(await faultOf(text.replace(`"at":${NOW}`, '"at":-1'))).toMatch(/^Line 5 .* damaged/);
  });

  it('takes along what was sure of figures in time, in a form that older pages refuse', async () => {
    const timings = [
      { figure: 'pulse:Bb major:1:triad:guitar:triplets', timing: { spread: 0.08 } },
      { figure: 'pulse:Bb major:1:triad:guitar:eighths', timing: { spread: null } },
    ];
    const text = writeBackup({ ...backup, timings }, NOW);
    expect(JSON.parse(text.split('\n')[0]!)).toMatchObject({ version: 4, timings: 2 });
    expect(await readBackup(text)).toEqual({ ...backup, timings });
    expect(await faultOf(text, { ...whole, timings: () => false })).toMatch(
      /^Line 5 of this backup holds no timing that can be read/,
    );
    expect(await faultOf(text.replace('"figure":"pulse', '"figures":"pulse'))).toMatch(
      /^Line 5 .* damaged/,
    );
  });

  it('can be read by a person, and after an editor has changed its line ends', async () => {
    const text = writeBackup(backup, NOW);
    expect(text.split('\n')[0]).toContain('"written":"2026-12-01T00:00:00.000Z"');
    expect(text).toContain('"takenFor":"4"');
    expect(await readBackup(`\uFEFF${text.replaceAll('\n', '\r\n')}`)).toEqual(backup);
  });

  it('is refused with the line that is wrong', async () => {
    const lines = writeBackup(backup, NOW).split('\n');
    expect(
      await faultOf(lines.with(4, lines[4]!.replace('"grade":3', '"grade":7')).join('\n')),
    ).toMatch(/^Line 5 /);
    expect(await faultOf(lines.with(3, '{"review":').join('\n'))).toMatch(/^Line 4 /);
  });

  it('is refused with the line of a draft or a report that is none', async () => {
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
      expect(await faultOf(lines.with(at, JSON.stringify(bad)).join('\n'))).toMatch(
        new RegExp(`^Line ${at + 1} of this backup is damaged. Nothing was changed`),
      );
    }
    const text = lines.join('\n');
    for (const [sort, line] of [
      ['decks', 2],
      ['drafts', 3],
      ['reports', 4],
    ] as const) {
      expect(await faultOf(text, { ...whole, [sort]: () => false })).toMatch(
        new RegExp(`^Line ${line} of this backup holds no (lesson|report) that can be read`),
      );
    }
  });

  it('is refused with the line of a count or a time that no phone reaches', async () => {
    const lines = writeBackup(backup, NOW).split('\n');
    for (const bad of [
      { n: Number.MAX_SAFE_INTEGER },
      { n: MOST_COUNT + 1 },
      { at: LATEST + 1 },
      { ms: 1e15 },
      { sounded: 1e15 },
    ]) {
      const line = JSON.stringify({ review: { ...backup.reviews[0], ...bad } });
      expect(await faultOf(lines.with(4, line).join('\n'))).toMatch(/^Line 5 .* is damaged/);
    }
  });

  it('gives way now and then, says how far it is, and can be stopped', async () => {
    const reviews = Array.from({ length: 2000 }, (_, k) => reviewOf({ n: k + 1 }));
    const text = writeBackup({ ...backup, reviews }, NOW);
    const shares: number[] = [];
    await read(text, whole, async (done) => void shares.push(done));
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    const stopped = new Error('enough');
    await expect(read(text, whole, () => Promise.reject(stopped))).rejects.toBe(stopped);
  });

  it('is refused when cut short, when from a later version, and when it is something else', async () => {
    const lines = writeBackup(backup, NOW).split('\n');
    expect(await faultOf(lines.slice(0, 3).join('\n'))).toMatch(/cut short after line 3/);
    expect(
      await faultOf(lines.with(0, lines[0]!.replace('"version":2', '"version":5')).join('\n')),
    ).toMatch(/newer version of Skipwise/);
    for (const text of ['', '{}', 'null', '\u0000\u0001', '<html>']) {
      expect(await faultOf(text)).toMatch(/not a backup/);
    }
  });

  it('is read or refused, whatever was done to it', async () => {
    const text = writeBackup(backup, NOW);
    await fc.assert(
      fc.asyncProperty(fc.nat(text.length), fc.nat(40), fc.string(), async (at, length, put) => {
        const damaged = text.slice(0, at) + put + text.slice(at + length);
        const fault = await faultOf(damaged);
        expect(fault === '' || fault.endsWith('.')).toBe(true);
      }),
    );
  });
});

import { describe, expect, it } from 'vitest';
import { deckOf, PLAIN_DRAFT, type Draft } from '../../src/making/draft.ts';
import { readDraft, writeDraft } from '../../src/making/draftDocument.ts';
import type { Finding, Taken } from '../../src/making/finding.ts';
import { takenForm, takenMarks, toggled } from '../../src/making/taken.ts';

const { drills } = deckOf(PLAIN_DRAFT);
const ITEM = 'spot:Bb major:3:triad:guitar:5-4:1-8';
const finding = (part: Partial<Finding>): Finding => ({
  says: '',
  used: true,
  degrees: [],
  strings: [],
  drills: [],
  marks: {},
  ...part,
});
const TAKEN: Taken = {
  drills,
  findings: [
    finding({ says: 'iii seen as vi, twice', degrees: [3, 6] }),
    finding({ says: 'V least known', degrees: [5] }),
    finding({ says: 'Least known on strings 5–4', strings: [[5, 4]] }),
    finding({ says: '1 item marked easy or hard', marks: { [ITEM]: 5 } }),
  ],
};
const made: Draft = { ...PLAIN_DRAFT, ...takenForm(TAKEN), marks: takenMarks(TAKEN), taken: TAKEN };

describe('what a lesson takes from reports', () => {
  it('is the degrees, string sets and marks of what is used', () => {
    expect(made).toMatchObject({ degrees: [3, 5, 6], strings: [[5, 4]], marks: { [ITEM]: 5 } });
    expect(made.drills).toEqual(['spot', 'place', 'trace']);
  });

  it('has the marks of what is used alone', () => {
    const other = 'place:Bb major:3:triad:guitar:5-4:1-8';
    const findings = [
      finding({ marks: { [ITEM]: 5 }, used: false }),
      finding({ marks: { [other]: 1 } }),
    ];
    expect(takenMarks({ drills, findings })).toEqual({ [other]: 1 });
  });

  it('leaves degrees and string sets as they were where nothing is said of these', () => {
    const [only] = TAKEN.findings.slice(3);
    const { degrees, strings } = takenForm({ drills, findings: [only!] });
    expect(degrees).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(strings).toEqual([
      [5, 4],
      [4, 3],
    ]);
    const onStrings = takenForm({ drills, findings: [finding({ strings: [[4, 3]] })] });
    expect(onStrings).toMatchObject({ degrees: [1, 2, 3, 4, 5, 6, 7], strings: [[4, 3]] });
    const onDegrees = takenForm({ drills, findings: [finding({ degrees: [2, 7] })] });
    expect(onDegrees).toMatchObject({ degrees: [2, 7], strings });
    expect(onDegrees.drills).toEqual(['spot', 'place', 'trace']);
  });

  it('is left out and used again, finding by finding', () => {
    const without = { ...made, ...toggled(made, TAKEN, 0) };
    expect(without.degrees).toEqual([5]);
    const easier = { ...without, ...toggled(without, without.taken!, 3) };
    expect(easier.marks).toEqual({});
    const again = { ...easier, ...toggled(easier, easier.taken!, 0) };
    expect({ ...again, ...toggled(again, again.taken!, 3) }).toEqual(made);
  });

  it('is the whole lesson before where nothing of it is used', () => {
    const none = TAKEN.findings.reduce<Draft>(
      (now, _, i) => ({ ...now, ...toggled(now, now.taken!, i) }),
      made,
    );
    expect(deckOf(none).drills).toEqual(drills);
  });

  it('leaves alone what the teacher changed since', () => {
    const changed: Draft = { ...made, drills: ['trace'], degrees: [1, 3, 5, 6] };
    const after = { ...changed, ...toggled(changed, TAKEN, 0) };
    expect(after.drills).toEqual(['trace']);
    expect(after.degrees).toEqual([1, 5]);
  });

  it('is kept with the draft, and drafts from before have none', () => {
    const document = JSON.parse(JSON.stringify(writeDraft(made))) as Record<string, unknown>;
    expect(readDraft(document)).toEqual({ draft: made });
    const { taken: _, ...former } = document;
    expect(readDraft(former)).toEqual({ draft: { ...made, taken: null } });
  });
});

/** The teacher's lessons on this device: made here, shared or not, put away or not; one of them is open in the form. */
import { effect, signal, untracked } from '../../../signals/signal.ts';
import { isPlain, PLAIN_DRAFT, titleOf, type Draft } from '../../../making/draft.ts';
import { readDraft, writeDraft } from '../../../making/draftDocument.ts';
import { copyOf } from '../../../making/fromDeck.ts';
import { newId } from '../../../store/newId.ts';
import {
  keepDraft,
  listDrafts,
  makeOpen,
  openDraft,
  watchDrafts,
  type StoredDraft,
} from '../../../store/drafts.ts';
import { reportingTrouble } from '../../state.ts';
import { unreadable } from '../../trouble.ts';
import { draft } from './openDraft.ts';

/** A lesson that the teacher made on this device. */
export interface KeptDraft extends Omit<StoredDraft, 'document'> {
  readonly draft: Draft;
}

/** All of them, the one changed last first; null until they were read from the device. */
export const kept = signal<readonly KeptDraft[] | null>(null);

/** Which one is open; null where it is the plain lesson, which is kept once something of it was chosen. */
export const openId = signal<string | null>(null);

/** Counts how often another lesson was brought into the form: what the form unfolded belongs to one of them. */
export const opening = signal(0);

/** Whether the lesson in the form has just come from another tab, where it was changed. */
export const fromElsewhere = signal(false);

let reading: Promise<void> | null = null;

/** Reads them from the device, once. */
export function openKept(): Promise<void> {
  return (reading ??= readKept());
}

/** Reads them from the device, as after a backup was taken in. */
export async function readKept(): Promise<void> {
  const stored = (await reportingTrouble(listDrafts())) ?? [];
  const faults: string[] = [];
  const all = stored.flatMap(({ document, ...rest }): KeptDraft[] => {
    const read = readDraft(document);
    if ('draft' in read) return [{ ...rest, draft: read.draft }];
    faults.push(read.fault);
    return [];
  });
  const id = openId.value ?? (isPlain(draft.value) ? await reportingTrouble(openDraft()) : null);
  kept.value = all;
  const open = all.find((one) => one.id === id);
  if (open) show(open);
  const [fault] = faults;
  if (fault) unreadable.value = `A lesson of yours on this device cannot be read: ${fault}`;
}

function show({ id, draft: made }: KeptDraft): void {
  openId.value = id;
  draft.value = made;
  opening.value++;
  fromElsewhere.value = false;
}

watchDrafts(() => void catchUp());

/** Takes in what another tab has changed since: also in the form, or the next tap here would undo it. */
async function catchUp(): Promise<void> {
  if (kept.value === null) return;
  const stored = (await reportingTrouble(listDrafts())) ?? [];
  const before = kept.value;
  const unread = before.filter((here) => !stored.some(({ id }) => id === here.id));
  const known = stored.flatMap(
    (one) =>
      newest(
        one,
        before.find(({ id }) => id === one.id),
      ) ?? [],
  );
  kept.value = [...unread, ...known].toSorted((a, b) => b.changed - a.changed);
  const open = openOne();
  if (!open || open.draft === draft.value) return;
  show(open);
  fromElsewhere.value = true;
}

/** A draft as it was changed last: as this tab has it or, where it can be read, as it is kept. */
function newest(one: StoredDraft, here: KeptDraft | undefined): KeptDraft | undefined {
  const { document, ...rest } = one;
  if (here && here.changed >= one.changed) return here;
  if (here && JSON.stringify(writeDraft(here.draft)) === JSON.stringify(document)) {
    return { ...rest, draft: here.draft };
  }
  const read = readDraft(document);
  return 'draft' in read ? { ...rest, draft: read.draft } : here;
}

// Whatever is changed in the form is kept at once.
effect(() => {
  const made = draft.value;
  untracked(() => {
    const before = openOne();
    if (kept.value === null || isPlain(made) || before?.draft === made) return;
    fromElsewhere.value = false;
    if (before) put({ ...before, draft: made, changed: Date.now() });
    else add(made);
  });
});

function openOne(): KeptDraft | undefined {
  return kept.value?.find(({ id }) => id === openId.value);
}

function put(one: KeptDraft): void {
  const { draft: made, ...rest } = one;
  kept.value = [one, ...(kept.value ?? []).filter(({ id }) => id !== one.id)];
  void reportingTrouble(keepDraft({ ...rest, document: writeDraft(made) }));
}

function add(made: Draft): void {
  const one = { id: newId(), draft: made, changed: Date.now(), away: false, shared: [] };
  openId.value = one.id;
  put(one);
  void reportingTrouble(makeOpen(one.id));
}

/** Opens one of them in the form. */
export function openAgain(one: KeptDraft): void {
  show(one);
  void reportingTrouble(makeOpen(one.id));
}

/** Begins another lesson in the form: the plain one, or a draft to go on from. The one before stays kept. */
export function beginDraft(made: Draft = PLAIN_DRAFT): void {
  openId.value = null;
  draft.value = made;
  opening.value++;
  fromElsewhere.value = false;
  if (isPlain(made)) void reportingTrouble(makeOpen(null));
}

/** A copy of one of them, open in the form. */
export function copy(one: KeptDraft): void {
  beginDraft(copyOf(one.draft));
}

/** Puts one out of sight, or takes it back. If it is open, the form begins anew. */
export function setAway(one: KeptDraft, away: boolean): void {
  put({ ...one, away, changed: Date.now() });
  if (away && one.id === openId.value) beginDraft();
}

/** Gives one another title; an empty one follows the key again. */
export function rename(one: KeptDraft, title: string): void {
  const made = { ...one.draft, title };
  put({ ...one, draft: made, changed: Date.now() });
  if (one.id === openId.value) draft.value = made;
}

/** Remembers that the open lesson was shared, as this deck. */
export function markShared(deck: string): void {
  if (kept.value === null) return;
  if (!openOne()) add(draft.value);
  const one = openOne()!;
  if (one.shared.at(-1)?.deck === deck) return;
  const now = Date.now();
  put({ ...one, changed: now, shared: [...one.shared, { deck, at: now }] });
}

/** What a teacher finds a lesson by. */
export function keptTitle({ draft: made }: KeptDraft): string {
  return titleOf(made);
}

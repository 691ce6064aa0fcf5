import { useRef, useState } from 'preact/hooks';
import { listed } from '../../parts/english.ts';
import { BackupFault } from '../../store/backup.ts';
import { StoreTrouble } from '../../store/trouble.ts';
import { AskedTwice } from '../AskedTwice.tsx';
import { download } from '../download.ts';
import { counted } from '../figures.ts';
import { log } from '../state.ts';
import { KeptHere } from './KeptHere.tsx';
import { backupText, eraseAll, takeBackup, type TakenIn } from './keeping.ts';

/** Where nothing was answered yet. */
const NOTHING = { reviews: [], quarantined: [] };

/** The log as a file, back from a file, and erased: asked twice, the file offered first. */
export function BackupForm() {
  const [said, setSaid] = useState('');
  const { reviews, quarantined } = log.value ?? NOTHING;
  const saying = async (not: string, work: () => Promise<string>) =>
    setSaid(await outcome(not, work));
  const save = () => saying('Nothing was saved.', saveToFile);
  const erase = () => saying('Nothing was erased.', () => eraseAll().then(() => ''));
  return (
    <section class="keeping" aria-label="Your answers">
      <h2>Your answers</h2>
      <p class="soft">
        {counted(reviews.length, 'answer')} on this device, and nowhere else. The file has them,
        your lessons, your free minutes, how you kept time last, and what a teacher keeps here:
        lessons made and reports received.
      </p>
      <KeptHere />
      {quarantined.length > 0 && (
        <p class="notice">
          {counted(quarantined.length, 'record')} could not be read. Nothing of it is lost: it stays
          here and goes into the file.
        </p>
      )}
      <div class="buttons">
        <button type="button" class="button" onClick={() => void save()}>
          Save to a file
        </button>
        <Reading saying={saying} />
      </div>
      <p role="status">{said}</p>
      <AskedTwice
        name="Erase everything"
        first="This erases every answer, every lesson and every report on this device. Save them to a file first."
        second="Sure? Without a file nothing can bring them back."
        keep="Keep it all"
        doIt={['Erase', 'Yes, erase everything']}
        done={() => void erase()}
      />
    </section>
  );
}

/** Saves everything to a file, and says what is in it. */
async function saveToFile(): Promise<string> {
  const { text, left, isWhole } = await backupText(Date.now());
  download(new Blob([text], { type: 'text/plain' }), 'skipwise-backup.txt');
  const without =
    left === 0
      ? ''
      : ` What cannot be read here (${left} of the lessons and reports) is not in it.`;
  const memory = isWhole ? '' : ' The device gave nothing, so it has what this page still knows.';
  return `Saved. Keep the file where you will find it again.${without}${memory}`;
}

/** Takes a file in, shows how far it is, and can be stopped. */
function Reading({ saying }: { saying(not: string, work: () => Promise<string>): Promise<void> }) {
  /** How much of a file is read, 0 to 1; null while none is. */
  const [reading, setReading] = useState<number | null>(null);
  const stopped = useRef(false);
  /** Shows how far the reading is, and lets the page breathe. */
  const pace = async (done: number) => {
    setReading(done);
    await new Promise((resume) => setTimeout(resume));
    if (stopped.current) throw new BackupFault('Stopped. Nothing was changed.');
  };
  const read = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    stopped.current = false;
    setReading(0);
    await saying('Not all of this file was taken in.', async () =>
      takenWords(await takeBackup(await file.text(), pace)),
    );
    setReading(null);
    input.value = '';
  };
  return (
    <>
      <label class="button file">
        Read a file
        <input type="file" onChange={(event) => void read(event.currentTarget)} />
      </label>
      {reading !== null && (
        <div class="buttons">
          <progress value={reading} aria-label="How much of the file is read" />
          <button type="button" class="button small" onClick={() => (stopped.current = true)}>
            Stop
          </button>
        </div>
      )}
    </>
  );
}

/** Does it: what came of it, or what did not happen, and why. */
async function outcome(not: string, work: () => Promise<string>): Promise<string> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof BackupFault) return error.message;
    if (error instanceof StoreTrouble) return `${not} ${error.message}`;
    throw error;
  }
}

/** `3 answers and 1 lesson more than before.` */
function takenWords({ reviews, decks, minutes, timings, drafts, reports }: TakenIn): string {
  const all = [
    [reviews, 'answer'],
    [decks, 'lesson'],
    [minutes, 'free minute'],
    [timings, 'timed figure'],
    [drafts, 'own lesson'],
    [reports, 'report'],
  ] as const;
  const some = all.filter(([count]) => count > 0).map(([count, one]) => counted(count, one));
  return some.length === 0
    ? 'Everything in this file is here already.'
    : `${listed(some)} more than before.`;
}

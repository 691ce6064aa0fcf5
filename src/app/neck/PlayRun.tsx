import { arpeggioSound } from '../../cards/frame/sounds.ts';
import { fretsAround } from '../../neck/place.ts';
import { PlayAlong } from '../../parts/PlayAlong.tsx';
import { spell } from '../../theory/spell.ts';
import { noteLabel } from '../../theory/naming.ts';
import { settings } from '../state.ts';
import { viewDots, type upAndDown } from './dots.ts';
import type { View } from './view.ts';

interface PlayRunProps {
  view: View;
  /** At least one note. */
  run: ReturnType<typeof upAndDown>;
  close(): void;
}

/** What is looked at, up and down, to be played along with. */
export function PlayRun({ view, run, close }: PlayRunProps) {
  const { naming } = settings.value;
  const { key, instrument } = view;
  const [low, high] = fretsAround(run.map(({ place }) => place));
  const sounding = arpeggioSound(run.map(({ midi }) => midi));
  return (
    <PlayAlong
      neck={{
        instrument,
        musicKey: key,
        naming,
        frets: [low, high],
        label: 'Neck with the notes on it',
        dots: viewDots(view, naming).filter(({ fret }) => fret >= low && fret <= high),
        beside: false,
      }}
      sounding={{
        ...sounding,
        notes: sounding.notes.map((note, i) => ({ ...note, string: run[i]!.place.string })),
      }}
      notes={run.map(({ midi, place }, i) => ({
        ...place,
        label: noteLabel(spell(key, midi), 'degrees', key),
        at: sounding.notes[i]!.at,
      }))}
      groups={[0]}
      close={close}
    />
  );
}

import * as v from 'valibot';
import {
  isPhraseDrill,
  TEMPOS,
  WAYS,
  type Deck,
  type PlayDrill,
  type PlayPhrasesDrill,
  type Way,
} from '../deck.ts';
import { list, objectFault, oneOf, whole } from '../fields.ts';
import { kindsOf } from '../kinds.ts';
import { writeNeck } from './chordWords.ts';
import { bounds, type DrillForm, type Extent } from './drillForm.ts';
import { neck, neckEntries } from './neck.ts';
import { behindStar, between, foldPhrases } from './orPhrases.ts';
import { phrase, phraseEntries, writePhrases } from './phrase.ts';

const KIND = v.picklist(kindsOf('played'));
const AT_TEMPO = { tempo: v.exactOptional(whole(...TEMPOS, 'the tempo')) };

/** Of the degrees of the key. */
export function playedOnNeck(extent: Extent) {
  const ways = list(
    oneOf(WAYS, 'each way'),
    WAYS.length,
    'list different ways to play it, like ["up", "down"]',
    bounds(extent, WAYS.length).least,
  );
  return v.strictObject({ kind: KIND, ...neckEntries(extent), ways, ...AT_TEMPO }, objectFault);
}

/** Of the deck's phrases. */
export function playedFromPhrases(extent: Extent) {
  return v.strictObject({ kind: KIND, ...phraseEntries(extent), ...AT_TEMPO }, objectFault);
}

type Written =
  | v.InferInput<ReturnType<typeof playedOnNeck>>
  | v.InferInput<ReturnType<typeof playedFromPhrases>>;

/** In a link a letter for each way and the tempo behind the frets, or the tempo behind the phrases: `0.54.1aud72`, `*13@72`. */
export const played = {
  schema: (extent) => v.union([playedOnNeck(extent), playedFromPhrases(extent)]),
  write(drill) {
    const atTempo = drill.tempo === undefined ? {} : { tempo: drill.tempo };
    if (isPhraseDrill(drill)) return { kind: drill.kind, ...writePhrases(drill), ...atTempo };
    return { kind: drill.kind, ...writeNeck(drill), ways: [...drill.ways], ...atTempo };
  },
  fold(written) {
    const { tempo = '' } = written;
    if (!('ways' in written)) return foldPhrases(written, tempo === '' ? '' : `@${tempo}`);
    const [sizes, strings, frets, ...degrees] = neck.fold(written).split('.');
    const ways = written.ways.map((way) => way[0]).join('');
    return [sizes, strings, `${frets}${ways}${tempo}`, ...degrees].join('.');
  },
  unfold(letters) {
    const starred = behindStar(letters);
    if (starred !== null) {
      const [phrases = '', tempo = ''] = starred.split('@');
      return { ...phrase.unfold(phrases), ...tempoOf(tempo) };
    }
    const [sizes, strings, range = '', ...degrees] = letters.split('.');
    const [, frets, ways = '', tempo = ''] = /^(..[ri]?)([a-z]*)(.*)$/.exec(range) ?? [];
    return {
      ...neck.unfold([sizes, strings, frets, ...degrees].join('.')),
      ways: Array.from(ways, (letter): Way | undefined => WAYS.find((way) => way[0] === letter)),
      ...tempoOf(tempo),
    };
  },
  misfit: (drill, deck: Deck) =>
    isPhraseDrill(drill) ? phrase.misfit(drill, deck) : neck.misfit(drill, deck),
  between,
} satisfies DrillForm<PlayDrill | PlayPhrasesDrill, Written>;

const tempoOf = (digits: string) => (digits === '' ? {} : { tempo: Number(digits) });

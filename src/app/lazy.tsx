import type { ComponentType, VNode } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import { lostSentence } from './lost.ts';
import { isNewerThere } from './newer.ts';
import { takeUpdate, update } from './update.ts';

type LazyType<P> = ComponentType<P> & {
  /** Fetches it, so that it can be drawn at once. Rejects where it cannot be fetched. */
  fetched(): Promise<void>;
};

/** A screen, or a part of one, that is fetched when it is first shown; and what is shown until it is here. */
export function lazy<P extends object>(
  load: () => Promise<{ default: ComponentType<P> }>,
  waiting: VNode | null = <main class="screen" aria-busy="true" />,
): LazyType<P> {
  let Loaded: ComponentType<P> | null = null;
  const fetched = async () => {
    Loaded = (await load()).default;
  };
  function Lazy(props: P) {
    const [fault, setFault] = useState(false);
    const [, setReady] = useState(Loaded !== null);
    useLayoutEffect(() => {
      if (Loaded) return;
      fetched().then(
        () => setReady(true),
        async () => {
          // The files of this window's version are gone; a round that is open is on the device, and goes on.
          if (update.value !== null) takeUpdate();
          else if (await isNewerThere()) location.reload();
          else setFault(true);
        },
      );
    }, []);
    if (Loaded) return <Loaded {...props} />;
    return fault ? (
      <main class="screen">
        <p class="notice bad" role="alert">
          {lostSentence('This screen could not be fetched')}{' '}
          <button type="button" class="button small" onClick={() => location.reload()}>
            Load again
          </button>
        </p>
      </main>
    ) : (
      waiting
    );
  }
  return Object.assign(Lazy, { fetched });
}

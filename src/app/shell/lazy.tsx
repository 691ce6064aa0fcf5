import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A screen that is fetched when it is first shown. */
export function lazy(load: () => Promise<{ default: ComponentType }>): ComponentType {
  let Loaded: ComponentType | null = null;
  return function Lazy() {
    const [fault, setFault] = useState(false);
    const [, setReady] = useState(Loaded !== null);
    useEffect(() => {
      if (Loaded) return;
      load().then(
        (module) => {
          Loaded = module.default;
          setReady(true);
        },
        () => setFault(true),
      );
    }, []);
    if (Loaded) return <Loaded />;
    return fault ? (
      <main class="screen">
        <p class="notice bad" role="alert">
          This screen could not be fetched. Go online, then load the page again; nothing that you
          did is lost.{' '}
          <button type="button" class="button small" onClick={() => location.reload()}>
            Load again
          </button>
        </p>
      </main>
    ) : (
      <main class="screen" aria-busy="true" />
    );
  };
}

/** Components are drawn anew when a signal changes that they read as they were drawn last: `tellComponents` sees to it. */
import { options, type Component, type VNode } from 'preact';
import { Reader } from './signal.ts';

/** What Preact 11.2 calls on its way: before an element is looked at, before a component is drawn, when one has thrown. */
type Call = '__b' | '__r' | '__e' | 'diffed' | 'unmount';
type Drawn = VNode & { readonly __c?: Component };

const calls = options as Partial<Record<Call, (...told: unknown[]) => void>>;

/** Does something too when Preact calls. */
function when(call: Call, also: (element: Drawn) => void): void {
  const own = calls[call];
  calls[call] = (...told) => {
    // Hooks first: they may be done with what was drawn before.
    if (call === '__r') own?.(...told);
    also(told[0] as Drawn);
    if (call !== '__r') own?.(...told);
  };
}

const readers = new WeakMap<Component, Reader>();

/** Ends what the component reads that is being drawn. */
let end: (() => void) | null = null;

function drawn(): void {
  end?.();
  end = null;
}

/** Has them drawn so from here on. */
export function tellComponents(): void {
  when('__r', ({ __c: component }) => {
    drawn();
    if (!component) return;
    let reader = readers.get(component);
    if (!reader) readers.set(component, (reader = new Reader(() => component.setState({}))));
    end = reader.begin();
  });
  // Its children are looked at as soon as it is drawn.
  when('__b', drawn);
  when('diffed', drawn);
  when('__e', drawn);
  when('unmount', ({ __c: component }) => component && readers.get(component)?.forget());
}

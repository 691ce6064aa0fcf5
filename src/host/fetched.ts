/** The style sheets that were asked for; one that could not be fetched is asked for anew the next time. */
const sheets = new Map<string, Promise<void>>();

/**
 * A script that comes later, with its styles: what `import()` becomes in the built page.
 *
 * @param styles names of style sheets beside this script, as `./screen.css`; left out where it has none
 */
export async function fetched<M>(
  load: () => Promise<M>,
  styles: readonly string[] = [],
): Promise<M> {
  const [module] = await Promise.all([load(), ...styles.map(added)]);
  return module;
}

function added(name: string): Promise<void> | undefined {
  const known = sheets.get(name);
  if (known) return known;
  // The page comes with some.
  if (document.querySelector(`link[href$="${name.slice(1)}"]`)) return undefined;
  const sheet = new Promise<void>((resolve, reject) => {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.href = new URL(name, import.meta.url).href;
    link.addEventListener('load', () => resolve());
    link.addEventListener('error', () => {
      sheets.delete(name);
      link.remove();
      reject(new Error(`${name} could not be fetched.`));
    });
    document.head.append(link);
  });
  sheets.set(name, sheet);
  return sheet;
}

/**
 * Whether the host has a newer page by now than the one that is open: the script that it begins with bears another name. Not so
 * where nobody answers, and where a worker keeps the page, which knows of newer ones by itself.
 */
export async function isNewerThere(): Promise<boolean> {
  const own = document.querySelector('script[type="module"]')?.getAttribute('src');
  const response = await fetch('./', { cache: 'no-cache' }).catch(() => null);
  return !!own && response?.ok === true && !(await response.text()).includes(own);
}

/**
 * What a device's answer about keeping the data comes to (Storage Standard, storage.spec.whatwg.org).
 *
 * @param answer whether it keeps it; `silent` where the browser does not say
 * @param asked whether the student has just asked it to
 */
export function keptWords(answer: boolean | 'silent', asked: boolean): string {
  if (answer === 'silent') {
    return 'This browser does not say whether it keeps what is here: save it to a file now and then.';
  }
  if (answer) return 'This device has agreed to keep what is here, also when space runs short.';
  return asked
    ? 'Asked, the device has not agreed: it may clear what is here when space runs short. Save it to a file now and then.'
    : 'This device has not agreed to keep what is here when space runs short. Ask it to, or save to a file now and then.';
}

/**
 * What Apple's browsers keep (webkit.org, "Full Third-Party Cookie Blocking and More", 2020): a tab's data for seven days of
 * use without a visit; that of a page on the home screen is kept apart from it, and is not counted so.
 *
 * @param onHomeScreen whether the page was opened from there
 */
export function onIPhone(onHomeScreen: boolean): string {
  return onHomeScreen
    ? 'It was opened from the home screen, which keeps what is here.'
    : 'An iPhone or iPad keeps what is in a browser’s tab for a week without a visit only; the home screen keeps it. To move there: save to a file, tap Share, then Add to Home Screen, open it, and read the file.';
}

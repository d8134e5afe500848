// Fast lights: what is said before they play, and from how many turns a second on.

/** WCAG 2.3.1: more than three flashes in a second. */
export const FLASHES = 3;

export const CARE = {
  title: 'Fast lights',
  text: 'At this speed a light passes the same place more than three times a second. Moving lights like that can trouble people with photosensitive epilepsy.',
  slow: 'Play slower',
  full: 'Play at this speed',
  stay: 'Stay paused',
};

/** What a dialog is answered with. @param {HTMLDialogElement} dialog @returns {Promise<string>} */
export function asked(dialog) {
  return new Promise((resolve) => {
    dialog.onclose = () => resolve(dialog.returnValue);
    dialog.returnValue = '';
    dialog.showModal();
  });
}

// Every key of the page, once: what it does, and what the list of keys says of it.

/** @typedef {import('./main.js').Desk} Desk */
/** @typedef {{ shows: string, says: string, does?: Record<string, (desk: Desk, event: KeyboardEvent) => void> }} Key */

const act = (/** @type {Parameters<Desk['act']>[0]} */ what) => (/** @type {Desk} */ desk) => desk.act(what);
const door = (/** @type {string} */ tab) => (/** @type {Desk} */ desk) => desk.side.turn(tab);

const looped = (/** @type {Desk} */ desk) => (desk.player.on ? desk.player : desk.clock);

/** Keys that do nothing here belong to what has the focus. @type {[title: string, keys: Key[]][]} */
export const KEYS = [
  ['Play', [
    { shows: 'Space', says: 'play or pause', does: { ' ': act('play') } },
    { shows: '[  ]', says: 'slower, faster', does: { '[': (desk) => desk.clock.slower(1), ']': (desk) => desk.clock.slower(-1) } },
    { shows: ',  .', says: 'a moment back, a moment on', does: { ',': (desk) => desk.step(-1), '.': (desk) => desk.step(1) } },
    { shows: '(  )', says: 'loop from this moment, to this moment', does: { '(': (desk) => looped(desk).loopFrom(), ')': (desk) => looped(desk).loopTo() } },
    { shows: '\\', says: 'the whole cycle again, or the whole set', does: { '\\': (desk) => looped(desk).whole() } },
    { shows: 'C', says: 'count out loud', does: { c: act('count') } },
    { shows: 'B', says: 'tap the tempo', does: { b: act('tap') } },
  ]],
  ['Pattern', [
    { shows: '/', says: 'to the phrase', does: { '/': (desk) => desk.phrase.focusField() } },
    { shows: 'S', says: 'swap hands', does: { s: act('swap') } },
    { shows: 'R', says: 'reverse', does: { r: act('reverse') } },
    { shows: 'T', says: 'step timing', does: { t: act('step-timing') } },
    { shows: 'D', says: 'step direction', does: { d: act('step-direction') } },
    { shows: 'F', says: 'fit', does: { f: act('fit') } },
    { shows: 'A', says: 'fit to my arms', does: { a: act('arms') } },
    { shows: 'Ctrl Z', says: 'undo' },
    { shows: 'Ctrl Shift Z', says: 'redo' },
    { shows: 'P  Ctrl S', says: 'save on the shelf', does: { p: act('save') } },
  ]],
  ['Stage', [
    { shows: 'K', says: 'ideal, keep the figure, keep the hand path', does: { k: act('keep') } },
    { shows: 'G', says: 'let go, or back; Escape goes back too', does: { g: act('let-go') } },
    { shows: 'V  Shift V', says: 'next view, the one before', does: { v: (desk, event) => desk.stage.nextView(event.shiftKey ? -1 : 1) } },
    { shows: 'L', says: 'the light alone, or hands and cords', does: { l: (desk) => desk.stage.ask(!desk.stage.always) } },
    { shows: 'X', says: 'nothing but the figure, and back', does: { x: (desk) => desk.alone() } },
    { shows: 'J', says: 'the lesson look, for students, and back', does: { j: (desk) => desk.lesson.turn() } },
    { shows: 'arrows', says: 'turn, with the stage in focus' },
    { shows: '+  −', says: 'nearer, further' },
    { shows: '0', says: 'straight on' },
    { shows: 'H', says: 'next handle', does: { h: (desk, event) => desk.nextHandle(event.shiftKey ? -1 : 1) } },
    { shows: 'arrows', says: 'move the handle in focus by 1 cm; with Shift 5 cm, with Alt 1 mm' },
  ]],
  ['In the set', [
    { shows: '←  →', says: 'the pattern before, the one after' },
    { shows: 'Shift ←  →', says: 'move it sooner, later' },
    { shows: '↑  ↓', says: 'longer, shorter by counts of eight; with Shift by one' },
    { shows: 'Z', says: 'a turn of the body in it: quarter, half, to the left, to the right, none' },
    { shows: 'Enter', says: 'play from there' },
    { shows: 'Delete', says: 'take it out' },
  ]],
  ['Page', [
    { shows: 'Q', says: 'figures to pick from', does: { q: act('gallery') } },
    { shows: 'M', says: 'the menu', does: { m: act('tools') } },
    { shows: 'O', says: 'open or shut the strip', does: { o: act('strip') } },
    { shows: '1 2 3', says: 'can I spin it, sizes, shelf; once more shuts the drawer', does: { 1: door('reading'), 2: door('sizes'), 3: door('shelf') } },
    { shows: 'N', says: 'plain words, or all the numbers', does: { n: (desk) => desk.turnDepth() } },
    { shows: '4 5 6', says: 'what could come next, seek, map', does: { 4: door('next'), 5: door('seek'), 6: door('map') } },
    { shows: '7 8', says: 'the set; put what is on the stage into it', does: { 7: door('set'), 8: act('set-add') } },
    { shows: '9', says: 'play the set, or pause it', does: { 9: act('set-play') } },
    { shows: 'A', says: 'save the find in focus on the shelf' },
    { shows: 'Y', says: 'share: what fits where it goes', does: { y: act('share') } },
    { shows: 'E', says: 'save as a file: pictures, sheets, clips, pages', does: { e: act('take') } },
    { shows: 'I  Shift I', says: 'watch a film of practice; the beats of a song', does: { i: (desk, event) => desk.act(event.shiftKey ? 'song' : 'film') } },
    { shows: 'U  Shift U', says: 'practice over the weeks; an order to learn in', does: { u: (desk, event) => desk.act(event.shiftKey ? 'learn' : 'practice') } },
    { shows: 'W', says: 'words a phrase can say, each with its picture', does: { w: act('words') } },
    { shows: '?', says: 'the guide, and this list', does: { '?': act('guide') } },
  ]],
];

const DOES = Object.assign({}, ...KEYS.flatMap(([, keys]) => keys.map((key) => key.does || {})));

/**
 * Does what a key asks for, unless somebody is writing.
 *
 * @param {Desk} desk
 * @param {KeyboardEvent} event
 */
export function press(desk, event) {
  const at = /** @type {Element} */ (event.target);
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  if ((event.ctrlKey || event.metaKey) && !event.altKey) {
    if (key === 'z' || key === 'y') {
      event.preventDefault();
      if (key === 'y' || event.shiftKey) desk.redo();
      else desk.undo();
    } else if (key === 's') {
      event.preventDefault();
      desk.act('save');
    }
    return;
  }
  const asked = document.querySelector('dialog[open]');
  if (key === 'Escape' && !asked) {
    if (desk.gallery.isOpen) {
      desk.gallery.turn();
    } else if (desk.session.aside) {
      event.preventDefault();
      desk.session.back();
    } else if (desk.lesson.on) {
      desk.lesson.turn(false);
    }
    return;
  }
  const writing = at.closest?.('input:not([type=radio]):not([type=checkbox]):not([type=range]), textarea');
  if (writing || event.altKey || asked) return;
  // Before the gallery there is nothing to act on: letters are the beginning of a phrase.
  if (desk.gallery.isOpen && key !== 'q' && key !== '?') {
    if (/^[a-z0-9]$/.test(key)) desk.phrase.focusField();
    else if (key === '/') DOES[key](desk, event);
    if (key === '/') event.preventDefault();
    return;
  }
  if (key === ' ' && at.closest?.('button, summary, a, input')) return;
  if (!desk.singleKeys && key !== '?') return;
  const does = DOES[key];
  if (!does) return;
  event.preventDefault();
  does(desk, event);
}

import { fetched } from './take.js';

/** A file that is asked for and written elsewhere; it goes to the downloads once it is there. */
export class Saving {
  progress = 'Writing …';
  /** @type {any} */
  error = null;
  /** @type {any} */
  file = null;

  /**
   * @param {import('./live.js').Live} live
   * @param {any} question
   * @param {() => void} tell called whenever it has come on
   */
  constructor(live, question, tell) {
    this.question = question;
    live.stream(question, (part) => {
      if (part.progress) this.progress = part.progress.told;
      if (part.error) this.error = part.error;
      if (part.done || part.dropped || part.error) this.progress = '';
      if (part.file) {
        this.file = part;
        fetched(part);
      }
      tell();
    });
  }
}

// Questions to the server and their answers, over one socket; by POST where there is no socket.
//
// A question is either one of a stream of which each is to be answered (the moves of a drag, changes: they queue and go one at a
// time), or the newest of its kind (typing: a newer one takes the place of one that still waits).

const QUEUE = 12; // moves that may wait; when more come, the oldest waiting one is given up and counted

/**
 * A question, what hears its answer, and when it was seen to be asked and sent, milliseconds of the page.
 *
 * @typedef {{ id: number, asks: Protocol.Question | (() => Protocol.Question), answered: (answer: any, times: any) => void, kind: string,
 *   seen: number, sent: number }} Waiting
 */

export class Live extends EventTarget {
  constructor() {
    super();
    this.next = 1;
    /** @type {Waiting[]} */
    this.waiting = [];
    /** @type {Waiting | null} */
    this.asked = null; // the question now with the server
    this.givenUp = 0;
    this.open = false;
    this.shut = false; // whether this page's key has died
    this.told = false; // whether it was told that nobody answers
    this.tries = 0;
    this.streams = new Map(); // by id, who hears the parts of an answer
    this.#connect();
  }

  /**
   * A question that is answered in parts, beside all others; `heard(part)` is called with each, the last of them marked `done` (or
   * `dropped`, or with an `error`). Where there is no socket it is answered in one.
   *
   * @param {Protocol.Question} body
   * @param {(part: any) => void} heard
   */
  stream(body, heard) {
    const id = this.next++;
    if (this.open) {
      this.streams.set(id, heard);
      this.#put({ ...body, id });
      return;
    }
    post({ ...body, id }).then(
      (whole) => {
        for (const answer of whole.answers || []) heard({ answer });
        heard({ ...whole, done: true });
      },
      () => heard({ error: UNREACHED, done: true }),
    );
  }

  /**
   * Ends a question that is answered in parts with what there is.
   *
   * @param {Protocol.Of} of
   */
  stop(of) {
    if (this.open) this.#put({ ask: 'stop', of });
  }

  /** @param {Protocol.Question} body */
  #put(body) {
    /** @type {WebSocket} */ (this.socket).send(JSON.stringify(body));
  }

  /**
   * Asks; `answered(answer, times)` is called with the answer. Of questions of one `kind`, other than 'move' and 'change', only the
   * newest waits. A body may be a function: it is called when the question goes out, after all earlier answers have been taken.
   *
   * @param {Protocol.Question | (() => Protocol.Question)} body
   * @param {(answer: any, times: any) => void} answered
   */
  ask(body, answered, kind = 'move', seen = performance.now()) {
    const question = { id: this.next++, asks: body, answered, kind, seen, sent: 0 };
    if (kind !== 'move' && kind !== 'change') this.waiting = this.waiting.filter((q) => q.kind !== kind);
    this.waiting.push(question);
    const moves = this.waiting.filter((q) => q.kind === 'move');
    if (moves.length > QUEUE) {
      this.waiting.splice(this.waiting.indexOf(moves[0]), 1);
      this.givenUp++;
    }
    this.#send();
  }

  /**
   * Forgets what waits; an answer still on its way is thrown away.
   *
   * @param {string} kind
   */
  forget(kind) {
    this.waiting = this.waiting.filter((q) => q.kind !== kind);
    if (this.asked && this.asked.kind === kind) this.asked.answered = () => {};
  }

  get busy() {
    return this.asked !== null || this.waiting.length > 0;
  }

  #send() {
    if (!this.waiting.length || this.connecting) return;
    if (this.asked) {
      // What is dear and only wanted while nothing newer is asked makes way.
      if (this.asked.kind !== 'settled' || this.waiting[0].kind === 'settled') return;
    }
    const question = /** @type {Waiting} */ (this.waiting.shift());
    const { id, asks } = question;
    const body = { ...(typeof asks === 'function' ? asks() : asks), id };
    question.sent = performance.now();
    this.asked = question;
    if (this.open) this.#put(body);
    else post(body).then((answer) => this.#answer(answer), () => this.#hold(question));
  }

  // What nobody answers waits, and is asked again as often as the socket is tried again; a newer one of its kind takes its place.
  /** @param {Waiting} question */
  #hold(question) {
    if (this.asked !== question) return;
    this.asked = null;
    if (question.kind === 'move' || question.kind === 'change' || !this.waiting.some((q) => q.kind === question.kind)) this.waiting.unshift(question);
    this.#away();
  }

  #away() {
    if (this.told) return;
    this.told = true;
    this.dispatchEvent(new Event('close'));
  }

  /** @param {any} answer */
  #answer(answer) {
    const heard = this.streams.get(answer.id);
    if (heard) {
      if (answer.done || answer.dropped || answer.error) this.streams.delete(answer.id);
      heard(answer);
      return;
    }
    if (answer.waiting) return; // it is told how many are before it
    const question = this.asked;
    if (!question || question.id !== answer.id) return; // an answer to a question that made way
    this.asked = null;
    if (!answer.dropped) question.answered(answer, { seen: question.seen, sent: question.sent, answered: performance.now() });
    this.#send();
  }

  #connect() {
    this.connecting = true;
    const url = new URL('api/live', document.baseURI);
    url.protocol = url.protocol.replace('http', 'ws');
    const socket = new WebSocket(url);
    this.socket = socket;
    socket.onopen = () => {
      this.open = true;
      this.connecting = false;
      this.tries = 0;
      this.told = false;
      this.dispatchEvent(new Event('open'));
      this.#send();
    };
    socket.onmessage = (event) => this.#answer(JSON.parse(event.data));
    socket.onclose = () => {
      const was = this.open;
      this.open = false;
      this.connecting = false;
      if (this.asked) {
        this.waiting.unshift(this.asked);
        this.asked = null;
      }
      for (const heard of this.streams.values()) heard({ error: UNREACHED, done: true });
      this.streams.clear();
      if (was) this.#away();
      this.tries++;
      if (!was) this.#seeWhetherShut();
      setTimeout(() => this.shut || this.#connect(), Math.min(8000, 400 * 2 ** this.tries));
      this.#send();
    };
  }

  // A studio that was started anew has other keys: then no asking helps.
  async #seeWhetherShut() {
    const reply = await fetch('api/live').catch(() => null);
    if (reply?.status !== 403 || this.shut) return;
    this.shut = true;
    this.dispatchEvent(new Event('shut'));
  }
}

const UNREACHED = {
  what: 'does not answer',
  where: 'the studio',
  right: 'see that it still runs in its terminal; the page asks again by itself',
};

/**
 * One question by POST: for what must not be dropped when a newer one is asked.
 *
 * @param {Protocol.Question} body
 */
export async function post(body) {
  const reply = await fetch('api/ask', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  return reply.json();
}

// A scene as the server sends it, unpacked once and kept in the same arrays from answer to answer.

export const TRACKS = ['left.hand', 'left.head', 'right.hand', 'right.head'];

export class Scene {
  constructor() {
    this.period = 1;
    this.count = 0;
    this.closed = true;
    this.items = [];
    this.tracks = {};
    this.shape = ''; // which items there are; a new shape asks a drawer to build anew
  }

  /** Takes over an answer's scene. */
  read(sent) {
    this.period = sent.period_s;
    this.closed = sent.periodic !== false;
    if (this.count !== sent.count) {
      this.count = sent.count;
      for (const track of TRACKS) this.tracks[track] = new Float32Array(3 * sent.count);
    }
    for (const side of ['left', 'right']) {
      unpack(sent.samples[side].hand, this.tracks[side + '.hand']);
      unpack(sent.samples[side].head, this.tracks[side + '.head']);
    }
    this.items = sent.items;
    let shape = '' + sent.count;
    for (const item of sent.items) shape += '|' + item.id + item.form + (item.points ? item.points.length : '');
    this.shape = shape;
  }

  /** Where a track stands at a phase in [0, 1), between its two nearest samples. */
  at(track, phase, out, offset = 0) {
    const xyz = this.tracks[track];
    const n = this.count;
    const share = this.closed ? phase * n : phase * (n - 1);
    const i = Math.floor(share) % n;
    const f = share - Math.floor(share);
    const j = this.closed ? (i + 1) % n : Math.min(n - 1, i + 1);
    for (let k = 0; k < 3; k++) out[offset + k] = xyz[3 * i + k] * (1 - f) + xyz[3 * j + k] * f;
    return out;
  }

  /** Corners of the box that holds every path. */
  box() {
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (const track of TRACKS) {
      const xyz = this.tracks[track];
      for (let i = 0; i < xyz.length; i++) {
        const k = i % 3;
        if (xyz[i] < least[k]) least[k] = xyz[i];
        if (xyz[i] > most[k]) most[k] = xyz[i];
      }
    }
    return { least, most };
  }

  /** Turns a second of the faster poi at full speed: how often its light passes the same way. */
  turnsPerSecond() {
    let most = 0;
    for (const side of ['left', 'right']) {
      const hand = this.tracks[side + '.hand'];
      const head = this.tracks[side + '.head'];
      let angle = 0;
      const n = this.count;
      for (let i = 0; i < n; i++) {
        const j = 3 * ((i + 1) % n);
        let cos = 0;
        let a = 0;
        let b = 0;
        for (let k = 0; k < 3; k++) {
          const u = head[3 * i + k] - hand[3 * i + k];
          const v = head[j + k] - hand[j + k];
          cos += u * v;
          a += u * u;
          b += v * v;
        }
        angle += Math.acos(Math.max(-1, Math.min(1, cos / Math.sqrt(a * b))));
      }
      most = Math.max(most, angle / (2 * Math.PI) / this.period);
    }
    return most;
  }
}

const bytes = [];

function unpack(base64, into) {
  const text = atob(base64);
  const view = bytes[text.length] || (bytes[text.length] = new Uint8Array(text.length));
  for (let i = 0; i < text.length; i++) view[i] = text.charCodeAt(i);
  into.set(new Float32Array(view.buffer));
}

// @ts-check
// The line to the server: sends what is kept until it is acknowledged, and asks what stands.
import { drop, keep, note } from "./bench-store.js";
/** @typedef {import("./bench-kinds.js").Kept} Kept */
/** @typedef {import("./bench-kinds.js").Scene} Scene */

/** Waits between tries (s), each with up to a fifth more so that thirty devices do not knock at once. */
const WAITS = [1, 2, 4, 8, 15, 30];
/** Without a stream of events, it is asked this often (ms). */
const ASK_EVERY = 15_000;
/** A stream says at least every 20 s that it is there; one that was silent so long is dead (ms). */
const SILENT = 50_000;
/** An answer that takes longer will not come (ms). */
const PATIENCE = 8_000;
/** Answers that say that what was sent cannot be read, and will not be next time. */
const UNREAD = ["400", "413", "415", "422"];
/** The most that is sent at once. */
const AT_ONCE = 40;

export class Line {
  /**
   * @param {object} with_
   * @param {() => Kept[]} with_.kept everything that this device keeps
   * @param {() => Scene} with_.scene what the server said last
   * @param {(scene: Scene) => void} with_.heard the server has said something new
   * @param {import("./bench-clock.js").Skew} with_.skew
   * @param {() => void} with_.changed something is saved, or the line is up or down
   */
  constructor({ kept, scene, heard, skew, changed }) {
    this.kept = kept;
    this.scene = scene;
    this.heard = heard;
    this.skew = skew;
    this.changed = changed;
    this.up = true;
    this.out = false;
    this.tries = 0;
    this.busy = false;
    this.again = false;
    /** How many go at once; one by one while something among them cannot be read there. */
    this.atOnce = AT_ONCE;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    /** @type {EventSource | null} */
    this.events = null;
    /** When the stream was heard last, or began (ms). */
    this.heardAt = 0;
    this.ended = false;
  }

  start() {
    this.heardAt = performance.now();
    this.listen();
    this.go();
    setInterval(() => {
      const is = this.events?.readyState;
      // A line that broke without a word stays open for ever.
      const silent = performance.now() - this.heardAt > SILENT;
      // What time alone brings, no stream tells.
      if (is !== EventSource.OPEN || silent || this.scene().stand_in === "simulated") this.go();
      if ((is === EventSource.CLOSED || silent) && !this.out) this.listen();
    }, ASK_EVERY);
    addEventListener("online", () => this.soon());
    document.addEventListener("visibilitychange", () => {
      if (!document.hidden) this.soon();
    });
  }

  /** Nothing is asked, sent or noted any more. */
  end() {
    this.ended = true;
    this.events?.close();
  }

  listen() {
    this.events?.close();
    this.events = new EventSource("/bench/events");
    const heard = () => (this.heardAt = performance.now());
    this.events.addEventListener("alive", heard);
    this.events.addEventListener("changed", () => {
      heard();
      this.soon();
    });
  }

  /** Tries now, whatever the wait was. */
  soon() {
    this.tries = 0;
    this.go();
  }

  async go() {
    if (this.ended) return;
    if (this.busy) {
      this.again = true;
      return;
    }
    clearTimeout(this.timer);
    this.busy = true;
    this.again = false;
    let fine = true;
    try {
      while (await this.sendSome()) {
        // One handful after the other.
      }
      await this.ask();
    } catch {
      fine = false;
    }
    this.busy = false;
    const was = [this.up, this.out].join();
    this.up = fine;
    if (fine) this.out = false;
    if (was !== [this.up, this.out].join() || !fine) this.changed();
    if (fine) {
      this.tries = 0;
      this.atOnce = AT_ONCE;
      if (this.again || this.waiting().length > 0) this.timer = setTimeout(() => this.go(), 300);
      return;
    }
    const wait = WAITS[Math.min(this.tries, WAITS.length - 1)];
    this.tries += 1;
    this.timer = setTimeout(() => this.go(), wait * 1000 * (1 + Math.random() / 5));
  }

  waiting() {
    const seat = this.scene().seat;
    return this.kept().filter((one) => one.state === "kept" && one.seat === seat);
  }

  /** @returns {Promise<boolean>} whether more is to be sent */
  async sendSome() {
    const waiting = this.waiting();
    const some = waiting.slice(0, this.atOnce);
    if (some.length === 0) return false;
    const offset = this.skew.offset;
    const entries = some.map(({ entry }) => ({ ...entry, offset: entry.offset ?? offset ?? 0 }));
    const said = await this.call("/bench/entries", { entries }).catch((error) => {
      if (!UNREAD.includes(error.message)) throw error;
      // Nothing that cannot be read may hold up what can.
      if (some.length === 1) return { saved: [], refused: [some[0].key] };
      this.atOnce = 1;
      return null;
    });
    if (said === null) return true;
    const saved = new Set(said.saved);
    const refused = new Set(said.refused);
    const done = some.filter(({ key }) => saved.has(key) || refused.has(key));
    for (const one of done) one.state = saved.has(one.key) ? "saved" : "refused";
    await keep(done);
    this.changed();
    return done.length > 0 && waiting.length > done.length;
  }

  async ask() {
    const scene = /** @type {Scene} */ (await this.call("/bench/state"));
    if (this.ended) return;
    const known = new Set(scene.keys);
    await note("scene", scene);
    await note("contact", this.skew.best());
    const past = this.kept().filter((one) => known.has(one.key) && one.state !== "refused");
    this.heard(scene);
    if (past.length > 0) await drop(past.map((one) => one.key));
  }

  /**
   * @param {string} path
   * @param {object} [body]
   */
  async call(path, body) {
    const sent = Date.now();
    const answer = await fetch(path, {
      method: body ? "POST" : "GET",
      headers: { "x-barm": "1", accept: "application/json", ...(body ? { "content-type": "application/json" } : {}) },
      body: body ? JSON.stringify(body) : undefined,
      redirect: "error",
      cache: "no-store",
      signal: AbortSignal.timeout(PATIENCE),
    });
    if (answer.status === 401 || answer.status === 403) this.out = true;
    if (!answer.ok) throw new Error(String(answer.status));
    const back = Date.now();
    const said = await answer.json();
    this.skew.hear(sent, back, said.now_ms, said.speed);
    return said;
  }
}

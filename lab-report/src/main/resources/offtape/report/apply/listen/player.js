/** How far ahead things are set, so that both sources begin at the same frame, seconds. */
const LEAD_SECONDS = 0.06;
const RISE_SECONDS = 0.03;
/** The shortest part that can be repeated, seconds. */
const SHORTEST_LOOP = 0.25;

/**
 * Plays both sounds in lockstep: each start gives both the same moment and the same place.
 *
 * @param {AudioContext} context
 * @param {{A: Float32Array[], B: Float32Array[]}} sounds
 * @param {number} rate frames a second of the sounds
 * @param {boolean} dips as for the desk
 */
function makePlayer(context, sounds, rate, dips) {
  const desk = makeDesk(context, dips);
  const frames = sounds.A[0].length;
  const whole = { from: 0, to: frames };
  let loop = whole;
  let buffers = null;
  let running = null;
  let offset = 0;
  let level = 0;
  desk.master.setValueAtTime(0, 0);

  const onFrame = (time) => Math.ceil(time * context.sampleRate) / context.sampleRate;

  function madeBuffers() {
    const made = {};
    for (const name of ['A', 'B']) {
      made[name] = loopBuffer(context, sounds[name], rate, loop.from, loop.to);
    }
    return made;
  }

  function start() {
    buffers ??= madeBuffers();
    const when = onFrame(context.currentTime + LEAD_SECONDS);
    const sources = ['A', 'B'].map((name) => {
      const source = context.createBufferSource();
      source.buffer = buffers[name];
      source.loop = true;
      source.connect(desk.input(name));
      source.start(when, offset / rate);
      return source;
    });
    desk.master.cancelScheduledValues(when);
    desk.master.setValueAtTime(0, when);
    desk.master.linearRampToValueAtTime(level, when + RISE_SECONDS);
    running = { when, offset, sources };
  }

  function place() {
    if (!running) {
      return offset;
    }
    const gone = Math.max(0, context.currentTime - running.when) * rate;
    return Math.round(running.offset + gone) % (loop.to - loop.from);
  }

  function stop() {
    if (!running) {
      return;
    }
    offset = place();
    const now = context.currentTime;
    desk.master.cancelScheduledValues(now);
    const risen = Math.min(1, Math.max(0, (now - running.when) / RISE_SECONDS));
    desk.master.setValueAtTime(level * risen, now);
    desk.master.linearRampToValueAtTime(0, now + RISE_SECONDS);
    running.sources.forEach((source) => source.stop(now + RISE_SECONDS));
    running = null;
  }

  return {
    isPlaying: () => running !== null,
    start,
    stop,
    frames,
    loop: () => loop,
    /** The place in the whole sound, frames. */
    place: () => loop.from + place(),
    /** Makes A or B the one that is heard. */
    hear: (name) => desk.select(name, onFrame(context.currentTime + LEAD_SECONDS / 6)),
    /** From the start of the loop. */
    rewind() {
      const wasPlaying = running !== null;
      stop();
      offset = 0;
      if (wasPlaying) {
        start();
      }
    },
    /** Repeats another part from now on; false if it is too short. */
    repeat(from, to) {
      if (!(from >= 0 && to <= frames && to - from >= Math.min(frames, SHORTEST_LOOP * rate))) {
        return false;
      }
      const wasPlaying = running !== null;
      stop();
      loop = { from, to };
      buffers = null;
      offset = 0;
      if (wasPlaying) {
        start();
      }
      return true;
    },
    /** Sets the level, a factor of 0 to 1. */
    setLevel(to) {
      level = to;
      if (running) {
        const now = Math.max(context.currentTime, running.when + RISE_SECONDS);
        desk.master.setTargetAtTime(level, now, RISE_SECONDS);
      }
    },
  };
}

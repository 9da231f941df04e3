/** How long a switch takes, seconds. */
const SWITCH_SECONDS = 0.01;
/** Two switches are at least so far apart. */
const APART_SECONDS = 0.001;

/**
 * Faders for A and B, which always run side by side; switching moves gains and nothing else.
 *
 * Where A and B are alike the one blends into the other. Where they are not, a blend would be heard
 * (two unlike waves cancel while both are up) and would tell what X is; there each switch dips, and
 * does so between any two choices, also where X is the very sound that was heard before.
 *
 * @param {BaseAudioContext} context
 * @param {boolean} dips
 */
function makeDesk(context, dips) {
  const master = context.createGain();
  const shade = context.createGain();
  const faders = { A: context.createGain(), B: context.createGain() };
  faders.A.connect(shade);
  faders.B.connect(shade);
  shade.connect(master);
  master.connect(context.destination);
  const lines = { A: makeLine(faders.A.gain, 1), B: makeLine(faders.B.gain, 0) };
  const shading = makeLine(shade.gain, 1);
  let last = 0;

  function blend(name, when) {
    for (const each of ['A', 'B']) {
      lines[each].turn(when, [{ time: when + SWITCH_SECONDS, value: each === name ? 1 : 0 }]);
    }
  }

  function dip(name, when) {
    const low = when + SWITCH_SECONDS / 2;
    shading.turn(when, [{ time: low, value: 0 }, { time: when + SWITCH_SECONDS, value: 1 }]);
    // nothing is heard at this moment
    for (const each of ['A', 'B']) {
      faders[each].gain.cancelScheduledValues(when);
      faders[each].gain.setValueAtTime(each === name ? 1 : 0, low);
    }
  }

  return {
    /** Where a source of A or of B goes in. */
    input: (name) => faders[name],
    /** The gain behind everything: level, and silence at start and end. */
    master: master.gain,
    /** Makes A or B the one that is heard, from a moment of the context's time on. */
    select(name, when) {
      last = Math.max(when, last + APART_SECONDS);
      (dips ? dip : blend)(name, last);
    },
  };
}

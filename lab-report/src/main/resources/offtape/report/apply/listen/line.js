/**
 * A gain that moves in straight lines and may be turned at any moment, also halfway. Cancelling takes a
 * whole line away, also its part before the moment, so that part is drawn again: nothing jumps.
 *
 * @param {AudioParam} gain
 * @param {number} value from the beginning on
 */
function makeLine(gain, value) {
  let points = [{ time: 0, value }];
  gain.setValueAtTime(value, 0);

  function valueAt(when) {
    const next = points.findIndex((point) => point.time > when);
    if (next < 0) {
      return points[points.length - 1].value;
    }
    const [from, to] = [points[Math.max(0, next - 1)], points[next]];
    const share = to.time > from.time ? (when - from.time) / (to.time - from.time) : 1;
    return from.value + (to.value - from.value) * share;
  }

  return {
    /** From a moment on goes to these points instead; earlier moments stay. */
    turn(when, next) {
      const here = { time: when, value: valueAt(when) };
      gain.cancelScheduledValues(when);
      // what is past is needed no longer than one point back
      points = [...points.filter((point) => point.time < when).slice(-1), here, ...next];
      [here, ...next].forEach((point) => gain.linearRampToValueAtTime(point.value, point.time));
    },
  };
}

/**
 * The picture of the sound over time, of A alone so that it tells nothing of X, with the part that is
 * repeated and the place that is heard.
 *
 * @param {HTMLCanvasElement} canvas
 * @param {Float32Array[]} sound A
 * @param {(from: number, to: number) => void} chosen told in frames when a part was dragged over
 */
function makeOverview(canvas, sound, chosen) {
  const frames = sound[0].length;
  const brush = canvas.getContext('2d');
  let peaks = [];
  let drag = null;

  function measure() {
    const width = Math.max(1, Math.round(canvas.clientWidth * devicePixelRatio));
    if (canvas.width === width && peaks.length === width) {
      return;
    }
    canvas.width = width;
    canvas.height = Math.round(96 * devicePixelRatio);
    peaks = Array.from({ length: width }, (_, column) => {
      const end = Math.floor(((column + 1) * frames) / width);
      let peak = 0;
      for (let i = Math.floor((column * frames) / width); i < end; i += 1) {
        for (const channel of sound) {
          peak = Math.max(peak, Math.abs(channel[i]));
        }
      }
      return peak;
    });
  }

  const column = (frame) => (frame / frames) * canvas.width;

  function draw(loop, place) {
    measure();
    const colour = (name) => getComputedStyle(canvas).getPropertyValue(name);
    const { width, height } = canvas;
    const part = drag ? { from: Math.min(drag.from, drag.to), to: Math.max(drag.from, drag.to) } : loop;
    brush.fillStyle = colour('--ground');
    brush.fillRect(0, 0, width, height);
    brush.fillStyle = colour('--band');
    brush.fillRect(column(part.from), 0, column(part.to - part.from), height);
    const most = Math.max(...peaks, 1e-6);
    brush.fillStyle = colour('--wave');
    peaks.forEach((peak, x) => {
      const half = Math.max(0.5, (0.46 * height * peak) / most);
      brush.fillRect(x, height / 2 - half, 1, 2 * half);
    });
    brush.fillStyle = colour('--ink');
    brush.fillRect(column(place) - devicePixelRatio / 2, 0, 2 * devicePixelRatio, height);
  }

  const frameAt = (event) => {
    const box = canvas.getBoundingClientRect();
    return Math.round(Math.min(1, Math.max(0, (event.clientX - box.left) / box.width)) * frames);
  };
  canvas.addEventListener('pointerdown', (event) => {
    drag = { from: frameAt(event), to: frameAt(event) };
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener('pointermove', (event) => {
    if (drag) {
      drag.to = frameAt(event);
    }
  });
  canvas.addEventListener('pointerup', () => {
    if (drag && drag.to !== drag.from) {
      chosen(Math.min(drag.from, drag.to), Math.max(drag.from, drag.to));
    }
    drag = null;
  });
  canvas.addEventListener('pointercancel', () => {
    drag = null;
  });
  return { draw };
}

const FADE_SECONDS = 0.01;
const FULL_SCALE = 8388608;

/** Bytes of a base64 text, without any request. */
function bytesOf(text) {
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i += 1) {
    bytes[i] = binary.charCodeAt(i);
  }
  return bytes;
}

/**
 * Samples of 24 bits, little end first, channel by channel in each frame, as numbers of ±1. Each is
 * exact: 24 bits fit a single-precision float. No decoder of the browser that might resample takes part.
 */
function unpack(bytes, channels) {
  const frames = bytes.length / (3 * channels);
  const sound = Array.from({ length: channels }, () => new Float32Array(frames));
  for (let i = 0, at = 0; i < frames; i += 1) {
    for (let c = 0; c < channels; c += 1, at += 3) {
      const code = ((bytes[at] << 8) | (bytes[at + 1] << 16) | (bytes[at + 2] << 24)) >> 8;
      sound[c][i] = code / FULL_SCALE;
    }
  }
  return sound;
}

/**
 * A part of a sound as a buffer that can be repeated: it begins and ends in a short fade, so that the
 * seam does not click.
 *
 * @param {BaseAudioContext} context
 * @param {Float32Array[]} sound one array a channel
 * @param {number} rate frames a second
 * @param {number} from first frame
 * @param {number} to frame behind the last
 */
function loopBuffer(context, sound, rate, from, to) {
  const buffer = context.createBuffer(sound.length, to - from, rate);
  const fade = Math.min(Math.round(FADE_SECONDS * rate), Math.floor((to - from) / 4));
  sound.forEach((channel, c) => {
    const part = channel.slice(from, to);
    for (let i = 0; i < fade; i += 1) {
      const gain = 0.5 - 0.5 * Math.cos((Math.PI * (i + 0.5)) / fade);
      part[i] *= gain;
      part[part.length - 1 - i] *= gain;
    }
    buffer.copyToChannel(part, c);
  });
  return buffer;
}

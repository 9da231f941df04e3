/** What is heard: play, stop, the choice of sound, the level and the loop. */
function makeListening(facts, say) {
  const byId = (id) => document.getElementById(id);
  const rate = facts.sampleRateHz;
  const calm = matchMedia('(prefers-reduced-motion: reduce)');
  const sounds = { A: takenOut('sound-A'), B: takenOut('sound-B') };

  // the letters are needed no longer once they are samples
  function takenOut(id) {
    const letters = byId(id);
    const sound = unpack(bytesOf(letters.textContent), facts.channels);
    letters.remove();
    return sound;
  }

  const seconds = sounds.A[0].length / rate;
  let player = null;
  let chosen = 'A';
  let shown = { from: 0, to: sounds.A[0].length };

  const overview = makeOverview(byId('overview'), sounds.A, (from, to) => repeat(from, to));
  const place = () => (player ? player.place() : shown.from);

  function madePlayer(behind) {
    let context;
    try {
      context = new AudioContext({ sampleRate: rate });
    } catch {
      // a browser that has no such rate converts both sounds alike
      context = new AudioContext();
    }
    const made = makePlayer(context, sounds, rate, facts.switching === 'dip');
    made.setLevel(10 ** (byId('level').valueAsNumber / 20));
    made.hear(behind(chosen));
    made.repeat(shown.from, shown.to);
    made.resume = () => context.resume();
    return made;
  }

  function showLoop() {
    byId('loop-from').value = (shown.from / rate).toFixed(2);
    byId('loop-to').value = (shown.to / rate).toFixed(2);
    for (const id of ['loop-from', 'loop-to']) {
      byId(id).max = seconds.toFixed(2);
    }
  }

  function repeat(from, to) {
    const fits = to - from >= Math.min(sounds.A[0].length, SHORTEST_LOOP * rate);
    if (fits && from >= 0 && to <= sounds.A[0].length) {
      shown = { from, to };
      player?.repeat(from, to);
      say(said('repeats', number((from / rate).toFixed(2)), number((to / rate).toFixed(2))));
    } else {
      say(said('loop-refused', number(SHORTEST_LOOP), number(seconds.toFixed(2))));
    }
    showLoop();
  }

  let last = -1;
  function tick(time) {
    const step = calm.matches ? 1000 : 40;
    if (time - last >= step) {
      last = time;
      byId('place').textContent = number((place() / rate).toFixed(1));
      overview.draw(shown, place());
    }
    requestAnimationFrame(tick);
  }
  requestAnimationFrame(tick);
  showLoop();

  return {
    isPlaying: () => player?.isPlaying() ?? false,
    chosen: () => chosen,
    toggle(behind) {
      player ??= madePlayer(behind);
      if (player.isPlaying()) {
        player.stop();
      } else {
        player.resume();
        player.start();
      }
      byId('play').textContent = said(player.isPlaying() ? 'stop' : 'play');
      say(player.isPlaying() ? said('plays', chosen) : said('stopped'));
    },
    /** Switches to A, B or X; "behind" tells which sound that is. */
    hear(name, behind) {
      chosen = name;
      player?.hear(behind(name));
      for (const each of ['A', 'B', 'X']) {
        byId(`hear-${each}`).setAttribute('aria-pressed', String(each === name));
      }
      say(said('heard', name));
    },
    rewind: () => player?.rewind(),
    changeLevel(stepDb) {
      const slider = byId('level');
      slider.valueAsNumber += stepDb;
      player?.setLevel(10 ** (slider.valueAsNumber / 20));
      byId('level-text').textContent = `${String(slider.value).replace('-', '−')} dB`;
    },
    repeatWhole: () => repeat(0, sounds.A[0].length),
    repeatFromHere: () => repeat(place(), shown.to),
    repeatToHere: () => repeat(shown.from, place()),
    repeatTyped() {
      const from = byId('loop-from').valueAsNumber;
      const to = byId('loop-to').valueAsNumber;
      // two decimals cut off the last frames
      const end = Math.abs(to - seconds) < 0.006 ? sounds.A[0].length : Math.round(to * rate);
      repeat(Math.round(from * rate), end);
    },
  };
}

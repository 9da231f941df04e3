/** Binds the controls and keys of the page to what they do. */
function openPage() {
  const byId = (id) => document.getElementById(id);
  const facts = JSON.parse(byId('facts-json').textContent);
  const say = (text) => {
    byId('status').textContent = text;
  };
  const { trials } = facts;
  const memory = makeMemory(`offtape-listen:${facts.page}`, trials);
  const test = makeTest(trials, !facts.training, memory.read());
  let heardX = false;
  let mayForget = false;

  byId('name-a').textContent = facts.a.file;
  byId('name-b').textContent = facts.b.file;
    const listening = makeListening(facts, say);

  function answer() {
    return document.querySelector('input[name=answer]:checked')?.value ?? null;
  }

  function keep() {
    memory.write(test.rounds());
    byId('kept').textContent = memory.works()
      ? 'Settled answers are kept by this browser for this page only.'
      : 'This browser keeps nothing for this page: answers are lost if it is closed or loaded again.';
  }

  function show() {
    const isUnderWay = test.isUnderWay();
    byId('trial').hidden = !isUnderWay;
    byId('hear-X').disabled = !isUnderWay;
    const isDone = !isUnderWay && test.rounds().length > 0;
    byId('begin').hidden = isUnderWay || isDone;
    byId('before').hidden = isUnderWay || isDone;
    byId('test').hidden = isDone;
    byId('result').hidden = true;
    const kind = facts.training ? 'Practice' : 'Trial';
    byId('h-test').textContent = isUnderWay ? `${kind} ${test.trial()} of ${trials}` : 'Test';
    byId('progress').max = trials;
    byId('progress').value = isUnderWay ? test.trial() - 1 : 0;
    if (isDone) {
      showResults(facts, trials, test.rounds());
    }
  }

  function nextTrial() {
    heardX = false;
    document.querySelectorAll('input[name=answer]').forEach((radio) => {
      radio.checked = false;
    });
    listening.hear('A', test.behind);
    show();
    byId(test.isUnderWay() ? 'h-test' : 'h-result').focus();
  }

  function begin() {
    if (!test.isUnderWay()) {
      test.begin();
      keep();
      nextTrial();
      say(`Trial 1 of ${trials}. X is drawn.`);
    }
  }

  function settle() {
    if (!test.isUnderWay()) {
      return;
    }
    if (test.follow(memory.read())) {
      nextTrial();
      say('Another window of this page went on with the test; this one follows it.');
      return;
    }
    if (!heardX || answer() === null) {
      say(heardX ? 'Say first whether X is A or B.' : 'Listen to X first: play, and switch to X.');
      return;
    }
    const done = test.settle(answer());
    keep();
    const told = facts.training ? ` ${done.isRight ? 'Right' : 'Wrong'}: X was ${done.x}.` : '';
    nextTrial();
    const next = test.isUnderWay() ? `Trial ${test.trial()} of ${trials}.` : 'That was the last trial.';
    say(`Answer kept.${told} ${next}`);
  }

  function forget() {
    if (!mayForget) {
      mayForget = true;
      say('All answers will be gone: save them first, then press once more to clear them.');
      return;
    }
    mayForget = false;
    test.forget();
    keep();
    show();
    byId('h-test').focus();
    say('All answers are cleared. Ready for another listener.');
  }

  function hear(name) {
    if (name === 'X' && !test.isUnderWay()) {
      say('There is no X before the test begins.');
      return;
    }
    listening.hear(name, test.behind);
    heardX ||= name === 'X' && listening.isPlaying();
  }

  function toggle() {
    listening.toggle(test.behind);
    heardX ||= listening.chosen() === 'X' && test.isUnderWay();
  }

  function pick(name) {
    if (test.isUnderWay()) {
      byId(`is-${name}`).checked = true;
      byId(`is-${name}`).focus();
      say(`X is ${name}? Settle it with Enter.`);
    }
  }

  for (const name of ['A', 'B', 'X']) {
    byId(`hear-${name}`).addEventListener('click', () => hear(name));
  }
  const clicks = {
    play: toggle,
    begin,
    settle,
    again: begin,
    forget,
    'loop-whole': listening.repeatWhole,
    'save-csv': () => save('listening-answers.csv', 'text/csv', answersAsCsv(facts, test.rounds())),
    'save-json': () =>
      save('listening-answers.json', 'application/json', answersAsJson(facts, facts.page, trials, test.rounds())),
  };
  Object.entries(clicks).forEach(([id, action]) => byId(id).addEventListener('click', action));
  byId('level').addEventListener('input', () => listening.changeLevel(0));
  byId('loop-from').addEventListener('change', listening.repeatTyped);
  byId('loop-to').addEventListener('change', listening.repeatTyped);
  takeKeys(
    {
      ' ': toggle,
      p: toggle,
      a: () => hear('A'),
      b: () => hear('B'),
      x: () => hear('X'),
      1: () => pick('A'),
      2: () => pick('B'),
      Enter: () => (test.isUnderWay() ? settle() : !byId('begin').hidden && begin()),
      s: listening.repeatFromHere,
      e: listening.repeatToHere,
      w: listening.repeatWhole,
      r: listening.rewind,
      '+': () => listening.changeLevel(2),
      '-': () => listening.changeLevel(-2),
    },
    () => byId('keys-on').checked,
  );
  addEventListener('beforeunload', (event) => {
    if (test.isUnderWay() && !memory.works()) {
      event.preventDefault();
    }
  });
  byId('before').textContent = beforeWords(trials, !facts.training);
  byId('begin').textContent = facts.training ? 'Begin to practise' : 'Begin the test';
  listening.changeLevel(0);
  show();
  keep();
  say(
    test.isUnderWay()
      ? `The test goes on with trial ${test.trial()} of ${trials}; X is drawn anew for it.`
      : 'Ready. Space plays and stops.',
  );
}

openPage();

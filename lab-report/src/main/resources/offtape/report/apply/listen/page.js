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
    byId('kept').textContent = said(memory.works() ? 'kept' : 'not-kept');
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
    const kind = facts.training ? 'heading-practice' : 'heading-trial';
    byId('h-test').textContent = isUnderWay ? said(kind, test.trial(), trials) : said('heading');
    byId('progress').max = trials;
    byId('progress').value = isUnderWay ? test.trial() - 1 : 0;
    if (isDone) {
      showResults(trials, test.rounds());
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
      say(said('first-trial', trials));
    }
  }

  function settle() {
    if (!test.isUnderWay()) {
      return;
    }
    if (test.follow(memory.read())) {
      nextTrial();
      say(said('followed'));
      return;
    }
    if (!heardX || answer() === null) {
      say(said(heardX ? 'say-first' : 'listen-first'));
      return;
    }
    const done = test.settle(answer());
    keep();
    const told = facts.training ? [said(done.isRight ? 'told-right' : 'told-wrong', done.x)] : [];
    nextTrial();
    const next = test.isUnderWay() ? said('next-trial', test.trial(), trials) : said('was-last');
    say([said('answer-kept'), ...told, next].join(' '));
  }

  function forget() {
    if (!mayForget) {
      mayForget = true;
      say(said('forget-first'));
      return;
    }
    mayForget = false;
    test.forget();
    keep();
    show();
    byId('h-test').focus();
    say(said('forgotten'));
  }

  function hear(name) {
    if (name === 'X' && !test.isUnderWay()) {
      say(said('no-x'));
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
      say(said('picked', name));
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
  byId('begin').textContent = said(facts.training ? 'begin-practice' : 'begin-test');
  listening.changeLevel(0);
  show();
  keep();
  say(test.isUnderWay() ? said('goes-on', test.trial(), trials) : said('ready'));
}

openPage();

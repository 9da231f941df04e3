/**
 * Single keys for everything, anywhere but where somebody types or a control takes the key itself.
 *
 * @param {Object<string, () => void>} actions by key, letters small
 * @param {() => boolean} areOn
 */
function takeKeys(actions, areOn) {
  document.addEventListener('keydown', (event) => {
    const { target, key } = event;
    const isTyping = target.matches('input[type=number]');
    const isOwnKey =
      (target.matches('button, summary, input[type=checkbox]') && (key === ' ' || key === 'Enter')) ||
      (target.matches('input[type=radio]:not(:checked)') && key === ' ');
    if (!areOn() || isTyping || isOwnKey || event.ctrlKey || event.metaKey || event.altKey || event.repeat) {
      return;
    }
    const action = actions[key.length === 1 ? key.toLowerCase() : key];
    if (action) {
      event.preventDefault();
      action();
    }
  });
}

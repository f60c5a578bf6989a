//! Words in the page for scripts that note many readings: the page's own form, filled and sent as fast as
//! the page takes it. They wait on changes of the page and never on the clock.

/// To stand before a script.
pub const HANDS: &str = "
  const clean = (text) => (text ?? '').replace(/\\s+/g, ' ').trim();
  const press = (words) => {
    const button = [...document.querySelectorAll('button')].find((b) => clean(b.textContent).startsWith(words));
    if (!button) throw new Error(`no button ${words}: ${document.body.innerText}`);
    button.click();
  };
  const control = (label) => {
    const all = [...document.querySelectorAll('label')];
    return all.find((l) => clean(l.textContent).startsWith(label) && l.control)?.control;
  };
  const put = (label, text) => {
    const field = control(label);
    if (!field) throw new Error(`no field ${label}`);
    field.value = text;
    for (const name of ['input', 'change']) field.dispatchEvent(new Event(name, { bubbles: true }));
  };
  const until = (what, is) => new Promise((go, stop) => {
    if (is()) return go();
    const watch = new MutationObserver(() => is() && end(go));
    const late = setTimeout(() => end(() => stop(new Error(`${what}: ${document.body.innerText}`))), 30000);
    const end = (then) => { watch.disconnect(); clearTimeout(late); then(); };
    watch.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  });
  // What was told is drawn by then.
  const soon = () => new Promise((go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => { port1.close(); go(); };
    port2.postMessage(0);
  });
  const form = () => document.querySelector('.reading-form');
  const outcome = () => clean(document.querySelector('.reading-form .form-outcome')?.textContent);
  const fill = async (note) => {
    if (!form()) press('Add a reading');
    await until('there is a form', () => form() && control('Note'));
    put('Hydrometer reads', '1.0480');
    put('Sample temperature', '20');
    put('Note', note);
  };
  // 'saved', or why not.
  const send = async () => {
    press('Save the reading');
    for (let n = 0; n < 3; n += 1) await soon();
    await until('there is an answer', () => !form() || outcome());
    return form() ? outcome() : 'saved';
  };
";

/// Every reading that lies in the store whole, by its note; and how many lie there that are not whole.
pub const LYING: &str = "
  const lying = () => {
    const found = { notes: [], broken: 0 };
    for (const key of Object.keys(localStorage).filter((key) => key.startsWith('fermentside/reading/'))) {
      const text = localStorage[key];
      const head = text.slice(0, text.indexOf('\\n')).split(' ');
      const rest = text.slice(text.indexOf('\\n') + 1);
      if (new TextEncoder().encode(rest).length !== Number(head[2])) { found.broken += 1; continue; }
      found.notes.push(JSON.parse(rest.slice(rest.indexOf('\\n') + 1)).note ?? '');
    }
    return found;
  };
";

// Starts the page: the chosen theme, the wasm, the words for when it fails, and the offline worker.
//
// What the page (Rust) and this file say to each other, all on <html> (as attributes) and window (as events):
//
//   data-theme="day" | "night"     set here before the first paint from localStorage["fermentside.theme"];
//                                  absent: the phone decides. The page changes both.
//   data-ready                     set by the page once it is mounted.
//   data-stopped                   set here when the page could not start or has panicked; #stopped is shown,
//                                  with a copy of all that is stored.
//   data-offline="ready"           set here, with the event "fermentside:offline-ready", once everything the
//                                  page needs is kept for use without a network.
//   data-update="ready"            set here, with the event "fermentside:update-ready", once a newer version is
//                                  wholly kept and waits. Nothing changes until it is accepted.
//   "fermentside:update-accept"    sent by the page when the person takes the newer version. Then the waiting
//                                  worker is let in and the page is loaded once more. Save first.
//
//   <button data-hand-out="name"   touched: the text in data-text, of the kind in data-type, is shared as a file
//     data-type data-text>         of that name where the phone can share one, else saved. Once it is done, and
//                                  not when the sharing is called off, the button gets the event "handed-out".
//
// Attributes are set before events are sent, so a page that mounts late looks at the attribute first.
(() => {
  const root = document.documentElement;

  try {
    const theme = localStorage.getItem("fermentside.theme");
    if (theme === "day" || theme === "night") root.dataset.theme = theme;
  } catch {
    // Storage is refused: the phone's own choice of theme serves.
  }

  // Where the browser guards what may become markup or script, no more than this may: the pictures that the
  // page draws, in the few words of SVG that they are made of, and the one worker.
  const WORD = /^<\/?(?:svg|title|desc|g|path|text|tspan|rect|circle|line|clipPath|defs|pattern)(?:\s+(?!on)[a-zA-Z-]+="[^"<>]*")*\s*\/?>$/;
  const HOST = new URL("sw.js", document.baseURI).href;
  globalThis.trustedTypes?.createPolicy("default", {
    createHTML: (text) => {
      const words = text.match(/<[^>]*>?/g) ?? [];
      return words.every((word) => WORD.test(word)) ? text : null;
    },
    createScriptURL: (address) => (new URL(address, document.baseURI).href === HOST ? address : null),
  });

  // All that is stored, readable or not; Gear takes it back like a copy.
  const rescue = () => {
    try {
      const keys = Object.keys(localStorage).filter((key) => key.startsWith("fermentside/"));
      return JSON.stringify(Object.fromEntries(keys.map((key) => [key, localStorage[key]])), null, 1);
    } catch {
      return "{}"; // storage is refused: there is nothing to hand out
    }
  };

  const stop = (why) => {
    if (why) console.error(why);
    root.dataset.stopped = "";
    document.getElementById("opening")?.remove();
    const stopped = document.getElementById("stopped");
    if (!stopped) return;
    const all = rescue();
    const copy = stopped.querySelector("[data-hand-out]");
    copy.dataset.text = all;
    copy.hidden = all === "{}";
    stopped.hidden = false;
  };

  // A panic ends in a trap; after it nothing of the page runs any more.
  const trapped = (error) => error instanceof WebAssembly.RuntimeError;
  addEventListener("error", (event) => trapped(event.error) && stop());
  addEventListener("unhandledrejection", (event) => trapped(event.reason) && stop());

  const page = document.getElementById("page");
  const code = import(page.href);
  code.catch(() => {}); // told below, once there is a body to tell it in
  // The first paint comes before the wasm; where none is told of, the page is not kept from starting.
  const painted = () => new Promise((go) => {
    if (document.hidden) return go();
    setTimeout(go, 1000);
    new PerformanceObserver(go).observe({ type: "paint", buffered: true });
  });
  addEventListener("DOMContentLoaded", async () => {
    try {
      await painted();
      const { default: start } = await code;
      await start({ module_or_path: new URL(page.dataset.wasm, document.baseURI) });
    } catch (error) {
      stop(error);
    }
  });

  addEventListener("click", async (event) => {
    const from = event.target.closest?.("[data-hand-out]");
    if (!from) return;
    const { handOut: name, type, text } = from.dataset;
    const file = new File([text], name, { type });
    if (navigator.canShare?.({ files: [file] })) {
      try {
        await navigator.share({ files: [file], title: name });
        return from.dispatchEvent(new Event("handed-out"));
      } catch (error) {
        if (error.name === "AbortError") return;
      }
    }
    const link = document.createElement("a");
    link.href = URL.createObjectURL(file);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    from.dispatchEvent(new Event("handed-out"));
  });

  const tell = (what) => {
    root.dataset[what] = "ready";
    dispatchEvent(new Event(`fermentside:${what}-ready`));
  };

  // The worker looks whether it has every file, and fetches what the browser has cleared away. A debug
  // build's worker keeps nothing (see public/sw.js): then nothing is promised.
  const tellIfKept = (worker) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => {
      port1.close();
      if (data) tell("offline");
      else addEventListener("online", () => tellIfKept(worker), { once: true });
    };
    worker.postMessage("WHOLE", [port2]);
  };

  const watch = (registration, worker) => {
    const look = () => {
      if (worker.state === "installed" && registration.active) tell("update");
      if (worker.state === "activated") tellIfKept(worker);
    };
    worker.addEventListener("statechange", look);
    look();
  };

  const keepForOffline = async () => {
    const registration = await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
    for (const worker of [registration.active, registration.waiting, registration.installing]) {
      if (worker) watch(registration, worker);
    }
    registration.addEventListener("updatefound", () => watch(registration, registration.installing));

    // A page left open for days asks again when it is looked at, at most once an hour.
    let asked = Date.now();
    document.addEventListener("visibilitychange", () => {
      if (document.hidden || Date.now() - asked < 3600e3) return;
      asked = Date.now();
      registration.update().catch(() => {}); // no network: later
    });

    addEventListener("fermentside:update-accept", () => {
      const waiting = registration.waiting;
      // Another tab may have let it in already.
      if (!waiting) return location.reload();
      // Watched on the worker itself: a page loaded past the worker is told of no change of controller.
      waiting.addEventListener("statechange", () => waiting.state === "activated" && location.reload());
      waiting.postMessage("SKIP");
    });
  };

  if ("serviceWorker" in navigator) {
    // After the page's own files, so that the two do not compete for a slow network.
    addEventListener("load", () => keepForOffline().catch((error) => console.warn("Not kept for offline use:", error)));
  }
})();

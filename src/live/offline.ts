import { signal } from "@preact/signals";
import { failureOf } from "../../shared/failure.ts";
import type { OfflineState } from "../../shared/words/offline.ts";
import { tell } from "../document/notices.ts";

/** Whether the program starts without a network. */
export const offlineState = signal<OfflineState>("not-here");
/** Loads the new version that waits; null while there is none. */
export const loadNewVersion = signal<(() => void) | null>(null);

/** How often a page that is looked at asks for a newer version, milliseconds. */
const ASK_EVERY_MS = 3_600_000;

/**
 * Lets the browser keep the program's files, and says when a newer version of them is there: it is loaded only when
 * the person says so. Where the browser keeps none (a page opened from a file, a plain network address) nothing is
 * done.
 */
export async function keepOffline(): Promise<void> {
  if (import.meta.env.DEV || !location.protocol.startsWith("http")) return;
  const address = new URL("service-worker.js", document.baseURI);
  const registration = await navigator.serviceWorker
    ?.register(address, { updateViaCache: "none" })
    .catch(() => undefined);
  if (!registration) return;
  follow(registration);
  registration.addEventListener("updatefound", () => follow(registration));
  askNowAndThen(registration);
}

/** Follows a version on its way to being kept whole: the first one is ready then, a later one waits. */
function follow(registration: ServiceWorkerRegistration): void {
  const { active, waiting, installing } = registration;
  offlineState.value = active ? "ready" : "fetching";
  if (waiting && active) offer(registration);
  installing?.addEventListener("statechange", () => {
    if (installing.state === "redundant" && !registration.active) offlineState.value = "not-here";
    if (installing.state === "activated") offlineState.value = "ready";
    if (installing.state === "installed" && registration.active) offer(registration);
  });
}

function offer(registration: ServiceWorkerRegistration): void {
  const load = () => {
    const { waiting } = registration;
    if (!waiting) return location.reload();
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), {
      once: true,
    });
    waiting.postMessage("take-over");
  };
  loadNewVersion.value = load;
  tell("info", failureOf("program/new-version"), { label: "Load it now", run: load });
}

function askNowAndThen(registration: ServiceWorkerRegistration): void {
  let askedMs = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden" || Date.now() - askedMs < ASK_EVERY_MS) return;
    askedMs = Date.now();
    registration.update().catch(() => {});
  });
}

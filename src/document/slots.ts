const OWN = "drystead.slot";
const MOST_SLOTS = 16;
/** How long a page that is just closing may take to let go, ms: this tab's own from before a reload, another. */
const OWN_WAIT_MS = 5000;
const OTHER_WAIT_MS = 1000;
/** How long another page has to let go of its place, or to answer that it holds one, ms. */
const HAND_OVER_MS = 5000;
const ANSWER_MS = 300;

/** A place to save one plan. */
export interface Slot {
  /** Null when all are held by other pages. */
  readonly name: string | null;
  /** True when another open page holds it and saves its plan there. */
  readonly isElsewhere: boolean;
}

let letGo: (() => void) | null = null;
let onStolen: (() => void) | null = null;
/** What the browser calls this page among those that hold locks. */
let ownId: string | undefined;

/**
 * A place to save one plan: this tab's own from before a reload, else the latest saved one, else an empty one. Where
 * another open page holds the first two, that place is given as it is: its plan can be looked at here.
 * @param recentFirst places that hold a plan, the latest first
 * @param stolen called when another page takes the place without being given it
 */
export async function takeSlot(recentFirst: readonly string[], stolen: () => void): Promise<Slot> {
  onStolen = stolen;
  const own = sessionStorage.getItem(OWN);
  const [wanted = own] = own !== null && recentFirst.includes(own) ? [own] : recentFirst;
  if (wanted === null) return { name: await takeEmptySlot(recentFirst), isElsewhere: false };
  const isFree = await hold(wanted, wanted === own ? OWN_WAIT_MS : OTHER_WAIT_MS);
  if (isFree) sessionStorage.setItem(OWN, wanted);
  return { name: wanted, isElsewhere: !isFree };
}

/** A place where nothing is saved yet. Null when all are held. */
export function takeEmptySlot(occupied: readonly string[]): Promise<string | null> {
  const numbered = Array.from({ length: MOST_SLOTS }, (_, index) => `${index + 1}`);
  return takeFree(numbered.filter((each) => !occupied.includes(each)));
}

/** The first of some places that no page holds, taken for this tab. Null when all are held. */
export async function takeFree(names: readonly string[]): Promise<string | null> {
  for (const name of names) {
    if (!(await hold(name, 0))) continue;
    sessionStorage.setItem(OWN, name);
    return name;
  }
  return null;
}

/** Lets another page have the place that this one holds. */
export function releaseSlot(): void {
  letGo?.();
  letGo = null;
}

/** Takes a place that another page was asked for: once it lets go, at the latest when it has not answered for long. */
export async function takeOverSlot(name: string): Promise<void> {
  if (!(await hold(name, HAND_OVER_MS))) await steal(name);
  sessionStorage.setItem(OWN, name);
}

/** Whether this page still has a place that it took: another may have taken it while this one did not run. */
export async function stillHolds(name: string): Promise<boolean> {
  return !navigator.locks || (await holderOf(name)) === ownId;
}

async function holderOf(name: string): Promise<string | undefined> {
  const { held = [] } = await navigator.locks.query();
  return held.find((lock) => lock.name === lockOf(name))?.clientId;
}

/** Resolves when no page holds a place any more, without taking it; never where the browser has no locks. */
export function whenFree(name: string): Promise<void> {
  if (!navigator.locks) return new Promise(() => {});
  return navigator.locks.request(lockOf(name), () => {});
}

/** Pages that save and look at the plan of a place speak to each other here. */
export function channelOf(name: string): BroadcastChannel {
  return new BroadcastChannel(lockOf(name));
}

const lockOf = (name: string) => `drystead.slot.${name}`;

function hold(name: string, waitMs: number): Promise<boolean> {
  if (!navigator.locks) return nobodyAnswers(name, waitMs);
  return request(
    name,
    waitMs > 0 ? { signal: AbortSignal.timeout(waitMs) } : { ifAvailable: true },
  );
}

function steal(name: string): Promise<boolean> {
  return navigator.locks ? request(name, { steal: true }) : Promise.resolve(true);
}

function request(name: string, options: LockOptions): Promise<boolean> {
  return new Promise((resolve) => {
    let isHeld = false;
    const untilClosed = (lock: Lock | null) => {
      isHeld = lock !== null;
      resolve(isHeld);
      if (!isHeld) return undefined;
      void holderOf(name).then((id) => {
        ownId = id;
      });
      return new Promise<void>((done) => {
        letGo = done;
      });
    };
    navigator.locks.request(lockOf(name), options, untilClosed).catch(() => {
      if (isHeld) onStolen?.();
      resolve(false);
    });
  });
}

/** Without locks (a page from a plain network address): whether no page says that it holds a place. */
async function nobodyAnswers(name: string, waitMs: number): Promise<boolean> {
  const channel = channelOf(name);
  const until = Date.now() + waitMs;
  let isFree = false;
  do {
    isFree = await new Promise<boolean>((resolve) => {
      channel.onmessage = ({ data }) => data === "taken" && resolve(false);
      channel.postMessage("who");
      setTimeout(() => resolve(true), ANSWER_MS);
    });
  } while (!isFree && Date.now() < until);
  channel.close();
  return isFree;
}
